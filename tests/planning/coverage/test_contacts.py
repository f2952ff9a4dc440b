"""Contacts of outlines against distances that Shapely measures."""

import math

import numpy as np
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from shapely import Polygon, affinity

from planning.coverage.contacts import contacts_of, moves_that_clear, ring_of
from tests.planning.coverage.samples import L_SHAPE, SHIRT, box

STAR = tuple(
    (
        math.cos(n * math.pi / 7) * (60 if n % 2 else 25),
        math.sin(n * math.pi / 7) * (60 if n % 2 else 25),
    )
    for n in range(14)
)
MOVES = st.floats(-350, 350)


@settings(max_examples=60, deadline=None)
@given(st.sampled_from([STAR, SHIRT, L_SHAPE]), MOVES, MOVES, st.floats(0, 360))
def test_the_smallest_gap_is_the_distance(other, x, y, turn):
    shape = affinity.translate(affinity.rotate(Polygon(STAR), turn, origin=(0, 0)), x, y)
    distance = shape.distance(Polygon(other))
    assume(distance > 0.001)
    ring = ring_of(tuple(shape.exterior.coords[:-1]))
    found = contacts_of(ring, ring_of(other), distance + 1)
    assert abs(found.gaps.min() - distance) < 1e-6


@settings(max_examples=60, deadline=None)
@given(MOVES, MOVES, st.floats(0, 360))
def test_the_smallest_gap_inside_is_the_distance_to_the_edge(x, y, turn):
    shape = affinity.rotate(Polygon(STAR), turn, origin=(0, 0))
    shape = affinity.translate(shape, 200 + x / 2, 300 + y)
    assume(Polygon(SHIRT).contains(shape))
    distance = shape.distance(Polygon(SHIRT).exterior)
    ring = ring_of(tuple(shape.exterior.coords[:-1]))
    found = contacts_of(ring, ring_of(SHIRT), distance + 1, inside=True)
    assert abs(found.gaps.min() - distance) < 1e-6


@settings(max_examples=60, deadline=None)
@given(st.floats(0.5, 8), st.floats(0, 360), st.floats(0, 2 * math.pi))
def test_a_small_move_changes_the_smallest_gap_as_its_contacts_say(gap, turn, way):
    one = affinity.rotate(Polygon(STAR), turn, origin=(0, 0))
    two = Polygon(box(200, 90, one.bounds[2] + gap, -45))
    found = contacts_of(ring_of(tuple(one.exterior.coords[:-1])), ring_of(box_of(two)), 30)
    move = np.array([math.cos(way), math.sin(way)]) * 0.05
    moved = affinity.translate(one, *move)
    reckoned = (found.gaps + found.normals @ move).min()
    assert abs(reckoned - moved.distance(two)) < 0.002


def box_of(shape):
    return tuple(shape.exterior.coords[:-1])


def test_a_corner_that_lies_too_far_in_is_pointed_back_out():
    small, large = ring_of(box(10, 10, 98, 40)), ring_of(box(100, 100))
    found = contacts_of(small, large, 5)
    assert found.gaps.round(6).tolist() == [-2]
    assert found.normals.round(6).tolist() == [[1, 0]]
    within = contacts_of(small, large, 5, inside=True)
    row = within.gaps.argmin()
    assert within.gaps[row] == -8
    assert within.normals[row].round(6).tolist() == [-1, 0]


@settings(max_examples=40, deadline=None)
@given(MOVES, MOVES, st.floats(0.1, 50), st.floats(0.1, 50))
def test_a_move_into_a_box_is_found(x, y, wide, high):
    normals = np.array([(1.0, 0.0), (-1.0, 0.0), (0.0, 1.0), (0.0, -1.0)])
    spare = np.array([-x, x + wide, -y, y + high])
    move = moves_that_clear(normals, spare[None, :])[0]
    assert (normals @ move + spare).min() >= 0

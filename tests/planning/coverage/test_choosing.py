"""Choosing among lays that all hold: never a costlier one, and the wished one where it is plain."""

import itertools
import random
import time

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import Polygon
from shapely import box as rectangle

from planning.coverage.choosing import Wishes, better_lay, cost_of, on_panels
from planning.coverage.leftover import _most_cells, largest_rectangle_mm2, leftover_share
from planning.coverage.problem import Locked, Problem, ProblemError
from planning.coverage.verify import faults_of
from tests.planning.coverage.samples import L_SHAPE, box, cut_up, lying, panel, piece

SIDE = piece(box(100, 100), count=4)
SHIRT = panel(id="p0", garment="shirt")
DRESS = panel(id="p1", garment="dress")
COAT = panel(id="p2", garment="coat")
PROBLEM = Problem((SHIRT, DRESS, COAT), (SIDE,))
SPREAD = (
    lying(SIDE, SHIRT, 10, 10),
    lying(SIDE, SHIRT, 120, 10, copy=1),
    lying(SIDE, DRESS, 10, 10, copy=2),
    lying(SIDE, COAT, 10, 10, copy=3),
)
ONLY = {"few_garments": 0.0, "leftover": 0.0, "same_cloth": 0.0}


def garments(problem, lay):
    return {problem.panel(place.panel).garment for place in lay}


def test_each_wish_costs_what_it_weighs():
    assert cost_of(PROBLEM, SPREAD, Wishes(**{**ONLY, "few_garments": 2.0})) == 6
    assert cost_of(PROBLEM, SPREAD, Wishes(**{**ONLY, "same_cloth": 3.0})) == 6
    kept = Wishes(**ONLY, keep_whole=("shirt", "coat"))
    assert cost_of(PROBLEM, SPREAD, kept) == 20
    assert cost_of(PROBLEM, SPREAD, Wishes(**ONLY)) == 0


def test_pieces_are_gathered_on_one_garment():
    found = better_lay(PROBLEM, SPREAD, Wishes(), 6)
    assert not faults_of(PROBLEM, found)
    assert len(garments(PROBLEM, found)) == 1


def test_a_garment_to_be_kept_whole_is_kept():
    wishes = Wishes(keep_whole=("shirt", "coat"))
    found = better_lay(PROBLEM, SPREAD, wishes, 6)
    assert garments(PROBLEM, found) == {"dress"}


def test_copies_of_one_piece_come_from_one_cloth():
    large = piece(box(300, 500), "large")
    problem = Problem((SHIRT, DRESS), (large, piece(box(80, 80), count=2)))
    small = problem.pieces[1]
    lay = (
        lying(large, SHIRT, 10, 10),
        lying(small, SHIRT, 312, 10),
        lying(small, DRESS, 10, 10, copy=1),
    )
    assert not faults_of(problem, lay)
    found = better_lay(problem, lay, Wishes(**{**ONLY, "same_cloth": 1.0}), 4)
    assert len({place.panel for place in found if place.piece == "side"}) == 1


def test_a_lay_is_never_worse_than_the_one_given():
    problem, planted = cut_up(3, 12, 0.9)
    wishes = Wishes(keep_whole=("b",))
    found = better_lay(problem, planted, wishes, 1.0)
    assert not faults_of(problem, found)
    assert cost_of(problem, found, wishes) <= cost_of(problem, planted, wishes)


def test_looking_longer_is_never_worse():
    # each attempt has its own time, the same in a long look as in a short one
    few = Wishes(leftover=0.0)
    costs = [
        cost_of(PROBLEM, better_lay(PROBLEM, SPREAD, few, seconds), few) for seconds in (0, 2, 4)
    ]
    assert costs == sorted(costs, reverse=True)


def test_locked_cloth_is_not_left_out():
    lock = Locked("side", 3, "p2", False, 0.0, (10.0, 10.0))
    locked = Problem(PROBLEM.panels, PROBLEM.pieces, locked=(lock,))
    found = better_lay(locked, SPREAD, Wishes(), 6)
    assert not faults_of(locked, found)
    assert garments(locked, found) == {"coat"}


def test_panels_alone_keep_what_pieces_are_bound_to():
    bound = piece(box(9, 9), garments=("shirt", "coat"))
    problem = Problem(PROBLEM.panels, (bound,))
    assert on_panels(problem, {"p1"}) is None
    assert on_panels(problem, {"p0", "p1"}).pieces[0].panels == ("p0",)
    assert on_panels(problem, ()) is None


def test_a_garment_that_is_not_there_is_refused():
    for call in (cost_of, lambda *given: better_lay(*given, 1)):
        with pytest.raises(ProblemError, match="keep_whole: there is no garment 'hat'"):
            call(PROBLEM, SPREAD, Wishes(keep_whole=("hat",)))


def test_a_wish_to_stop_is_heard_and_progress_told():
    heard = []
    started = time.monotonic()
    found = better_lay(PROBLEM, SPREAD, Wishes(), 60, stop=lambda: True, progress=heard.append)
    assert found == SPREAD
    assert time.monotonic() - started < 30  # far from 60, on any machine
    assert heard


def test_the_cloth_left_is_whole_panels_and_the_largest_rectangle():
    # of the dress 390 by 590 are usable, of the shirt a strip above the piece: 390 by 488
    wide = piece(box(390, 100), "wide")
    problem = Problem((SHIRT, DRESS), (wide,))
    share = leftover_share(problem, (lying(wide, SHIRT, 5, 5),))
    assert share == pytest.approx((390 * 590 + 390 * 480) / (2 * 390 * 590), abs=0.001)


def test_a_rectangle_on_the_grain_is_found_in_a_panel_that_leans():
    turned = Polygon([(0, 0), (80, 60), (20, 140), (-60, 80)])  # a square of 100 turned by 36.87
    assert largest_rectangle_mm2(turned.buffer(0.001), 90 + 36.8699) >= 90 * 90
    assert largest_rectangle_mm2(Polygon(L_SHAPE), 90) == pytest.approx(200 * 600, rel=0.01)
    assert largest_rectangle_mm2(rectangle(0, 0, 5, 5), 90) == 0


@settings(max_examples=40, deadline=None)
@given(st.integers(1, 7), st.integers(1, 7), st.integers(0, 10**6))
def test_the_largest_rectangle_of_cells_is_that_of_trying_all(rows, columns, seed):
    dice = random.Random(seed)
    cells = np.array([[dice.random() < 0.7 for _ in range(columns)] for _ in range(rows)])
    tried = (
        (bottom - top) * (right - left)
        for top, bottom in itertools.combinations(range(rows + 1), 2)
        for left, right in itertools.combinations(range(columns + 1), 2)
        if cells[top:bottom, left:right].all()
    )
    assert _most_cells(cells) == max(tried, default=0)

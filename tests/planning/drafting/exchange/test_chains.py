import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planning.drafting.exchange.chains import GAP_MM, chained, closed_ring
from tests.planning.drafting.shapes_for_tests import circle


@settings(deadline=None)
@given(order=st.permutations(range(24)), turned=st.lists(st.booleans(), min_size=24, max_size=24))
def test_pieces_of_a_ring_are_joined_in_any_order_and_any_way_round(order, turned):
    ring = circle(100, 24)
    sides = [[ring[i], ring[(i + 1) % 24]] for i in order]
    sides = [side[::-1] if over else side for side, over in zip(sides, turned, strict=True)]
    (chain,) = chained(sides)
    closed = closed_ring(chain, is_closed=False)
    assert closed is not None
    assert set(closed.ring) == set(ring)
    assert len(closed.ring) == 24


def test_where_three_lines_meet_none_is_joined():
    spokes = [[(0.0, 0.0), (9.0, 0.0)], [(0.0, 0.0), (0.0, 9.0)], [(-9.0, 0.0), (0.0, 0.0)]]
    assert chained(spokes) == spokes


def test_ends_a_little_apart_are_joined_and_further_apart_are_not():
    near = [[(0.0, 0.0), (9.0, 0.0)], [(9.05, 0.05), (9.0, 9.0)]]
    far = [[(0.0, 0.0), (9.0, 0.0)], [(9.2, 0.0), (9.0, 9.0)]]
    assert len(chained(near)) == 1
    assert len(chained(far)) == 2


@pytest.mark.parametrize(("gap_mm", "told_mm"), [(0, 0), (0.05, 0), (0.3, 0.3), (GAP_MM, GAP_MM)])
def test_a_gap_is_closed_and_told_when_it_can_be_seen(gap_mm, told_mm):
    closed = closed_ring([(0, 0), (50, 0), (50, 50), (0, 50), (0, gap_mm)], is_closed=False)
    assert closed is not None
    assert closed.gap_mm == pytest.approx(told_mm)


def test_a_wider_gap_leaves_the_line_open():
    line = [(0, 0), (50, 0), (50, 50), (0, 50), (0, 0.6)]
    assert closed_ring(line, is_closed=False) is None
    closed = closed_ring(line, is_closed=True)
    assert closed is not None
    assert len(closed.ring) == 5


def test_a_ring_drawn_clockwise_keeps_its_first_corner():
    closed = closed_ring([(0, 0), (0, 9), (9, 9), (9, 0)], is_closed=True)
    assert closed is not None
    assert closed.ring == ((0, 0), (9, 0), (9, 9), (0, 9))
    assert closed.was_clockwise


@pytest.mark.parametrize("line", [[], [(0, 0)], [(0, 0), (9, 0)], [(0, 0), (9, 0), (0, 0)]])
def test_two_corners_are_no_ring(line):
    assert closed_ring(line, is_closed=True) is None

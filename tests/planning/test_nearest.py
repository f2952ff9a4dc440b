import pytest

from planning.coverage.problem import Panel, Piece, Problem
from planning.nearest import near_miss

STRIP = ((0.0, 0.0), (600.0, 0.0), (600.0, 100.0), (0.0, 100.0))


def square(side: float, **facts) -> Piece:
    return Piece("side", ((0, 0), (side, 0), (side, side), (0, side)), **facts)


def test_the_overhang_is_what_cannot_lie_on_the_cloth():
    problem = Problem((Panel("strip", "shirt", STRIP),), (square(120.0),), edge_margin_mm=5)
    found = near_miss(problem, "side")
    assert found.panel == "strip"
    assert found.outside_mm2 == pytest.approx(120 * (120 - 90))


def test_the_largest_panel_is_not_always_the_nearest():
    near = Panel("near", "shirt", ((0, 0), (118, 0), (118, 118), (0, 118)))
    problem = Problem((Panel("strip", "shirt", STRIP), near), (square(112.0),), edge_margin_mm=5)
    assert near_miss(problem, "side").panel == "near"


def test_a_piece_with_no_panel_has_no_nearest_place():
    problem = Problem((Panel("strip", "shirt", STRIP),), (square(50.0, garments=("coat",)),))
    assert near_miss(problem, "side") is None

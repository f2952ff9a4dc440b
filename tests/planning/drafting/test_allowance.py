import pytest
from shapely import LineString, Polygon, distance, points

from planning.drafting.allowance import cut_line_of
from planning.drafting.errors import CutLineCrosses
from planning.drafting.rings import Ring, is_simple, signed_area_mm2
from shared.errors import OutlineError
from tests.planning.drafting.shapes_for_tests import BOW_TIE, EL, SLOTTED, SQUARE, circle


def test_no_allowance_leaves_the_seam_line() -> None:
    assert cut_line_of(EL, 0) == EL


@pytest.mark.parametrize("ring", [SQUARE, EL, circle(30)])
@pytest.mark.parametrize("allowance", [3.0, 6.0, 10.0])
def test_the_cut_line_lies_at_one_distance_everywhere(ring: Ring, allowance: float) -> None:
    cut = cut_line_of(ring, allowance)
    rim = LineString([*cut, cut[0]]).segmentize(1.0)
    away = distance(points(rim.coords), Polygon(ring))
    assert away.min() == pytest.approx(allowance, abs=0.06)
    assert away.max() == pytest.approx(allowance, abs=0.06)


def test_the_cut_line_is_simple_and_anticlockwise_whichever_way_the_seam_runs() -> None:
    for ring in (EL, EL[::-1]):
        cut = cut_line_of(ring, 6)
        assert is_simple(cut)
        assert signed_area_mm2(cut) > signed_area_mm2(EL)


def test_an_allowance_that_fills_a_slot_is_refused_with_the_place() -> None:
    with pytest.raises(CutLineCrosses, match=r"near \((46|54), 50\)"):
        cut_line_of(SLOTTED, 6)


def test_a_slot_wide_enough_for_both_allowances_is_kept() -> None:
    assert is_simple(cut_line_of(SLOTTED, 3.5))


def test_an_allowance_that_closes_a_ring_is_refused() -> None:
    nearly_closed = [(0, 0), (60, 0), (60, 60), (32, 60), (32, 50), (50, 50), (50, 10)]
    nearly_closed += [(10, 10), (10, 50), (28, 50), (28, 60), (0, 60)]
    with pytest.raises(CutLineCrosses, match="runs into itself"):
        cut_line_of(tuple(nearly_closed), 3)


@pytest.mark.parametrize("allowance", [-1, float("nan"), float("inf")])
def test_an_allowance_that_is_no_width_is_refused(allowance: float) -> None:
    with pytest.raises(OutlineError, match="seam allowance"):
        cut_line_of(SQUARE, allowance)


def test_a_seam_line_that_crosses_itself_is_refused() -> None:
    with pytest.raises(OutlineError, match="crosses itself"):
        cut_line_of(BOW_TIE, 6)

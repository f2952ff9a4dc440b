import pytest
from shapely import Point, Polygon, unary_union
from shapely.affinity import scale

from planning.drafting.heart import heart
from planning.drafting.pieces import DraftSize
from planning.drafting.rings import bounds_mm, is_simple, signed_area_mm2
from tests.planning.drafting.shapes_for_tests import corner_deg

every_heart = pytest.mark.parametrize("size", [heart(h) for h in (100, 200, 500)])


@every_heart
def test_two_halves_make_a_heart_as_high_and_wide_as_it_says(size: DraftSize) -> None:
    half = Polygon(size.piece("heart front").seam_line)
    whole = unary_union([half, scale(half, xfact=-1, origin=(0, 0))])
    left, low, right, high = whole.bounds
    assert high - low == pytest.approx(size.height_mm, rel=0.005)
    assert right - left == pytest.approx(size.width_mm, rel=0.01)


@every_heart
def test_front_and_back_have_one_outline(size: DraftSize) -> None:
    assert signed_area_mm2(size.piece("heart front").seam_line) == pytest.approx(
        signed_area_mm2(size.piece("heart back").seam_line), rel=1e-6
    )


@every_heart
def test_it_is_pointed_below_and_parted_above(size: DraftSize) -> None:
    front = size.piece("heart front")
    assert 70 < 2 * corner_deg(front, "side, lower") < 110
    assert 270 < 2 * corner_deg(front, "centre") < 330


@every_heart
def test_the_bands_go_once_round_and_are_as_wide_all_along(size: DraftSize) -> None:
    lower, upper = size.piece("lower band"), size.piece("upper band")
    rim = sum(
        size.piece("heart front").stretch_mm(edge)
        for edge in ("side, lower", "side, upper", "lobe, outer", "lobe, inner")
    )
    long = sum(bounds_mm(band.seam_line)[2] for band in (lower, upper))
    assert long == pytest.approx(rim, abs=0.01)
    assert bounds_mm(lower.seam_line)[3] == bounds_mm(upper.seam_line)[3]


@every_heart
@pytest.mark.parametrize("allowance_mm", [4.0, 10.0])
def test_it_can_be_cut(size: DraftSize, allowance_mm: float) -> None:
    for piece in heart(size.height_mm, allowance_mm):
        assert is_simple(piece.cut_line), piece.name


@every_heart
def test_it_is_turned_through_a_straight_opening_in_the_back(size: DraftSize) -> None:
    back = size.piece("heart back")
    assert back.opening
    assert 50 <= back.stretch_mm(back.opening.name) <= 80
    assert {x for x, _ in back.points_of(back.opening)} == {0}


def test_each_half_has_a_place_for_a_detail_inside_it() -> None:
    front = heart(200).piece("heart front")
    (place,) = front.marks
    assert place.name == "detail place"
    assert Polygon(front.seam_line).buffer(-20).contains(Point(place.at))

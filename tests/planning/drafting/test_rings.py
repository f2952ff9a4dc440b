import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely import Polygon

from planning.drafting.rings import (
    Point,
    Ring,
    bounds_mm,
    is_simple,
    length_mm,
    mirrored,
    perimeter_mm,
    point_along,
    signed_area_mm2,
    widths_across,
)
from tests.planning.drafting.shapes_for_tests import BOW_TIE, EL, SQUARE


def test_area_and_perimeter_of_a_square() -> None:
    assert signed_area_mm2(SQUARE) == 10_000
    assert perimeter_mm(SQUARE) == 400


def test_a_clockwise_ring_has_a_negative_area() -> None:
    assert signed_area_mm2(SQUARE[::-1]) == -10_000


def test_a_mirrored_ring_keeps_area_direction_and_length() -> None:
    assert signed_area_mm2(mirrored(EL)) == signed_area_mm2(EL)
    assert perimeter_mm(mirrored(EL)) == perimeter_mm(EL)
    assert mirrored(mirrored(EL)) == EL


@pytest.mark.parametrize("ring", [BOW_TIE, SQUARE[:2], (*SQUARE, SQUARE[0]), ()])
def test_rings_that_cross_or_touch_themselves_are_not_simple(ring: Ring) -> None:
    assert not is_simple(ring)


@pytest.mark.parametrize("ring", [SQUARE, EL])
def test_plain_outlines_are_simple(ring: Ring) -> None:
    assert is_simple(ring)


def test_bounds_name_the_corners_of_the_box() -> None:
    assert bounds_mm(EL) == (0, 0, 60, 80)


@pytest.mark.parametrize(("distance", "point"), [(-5, (0, 0)), (0, (0, 0)), (99, (10, 10))])
def test_walking_past_the_ends_stops_there(distance: float, point: Point) -> None:
    assert point_along([(0, 0), (10, 0), (10, 10)], distance) == point


@given(st.floats(0, 20))
def test_the_point_along_lies_where_it_says(distance: float) -> None:
    line = [(0.0, 0.0), (10.0, 0.0), (10.0, 10.0)]
    at = point_along(line, distance)
    walked = [*line[:1], at] if distance <= 10 else [*line[:2], at]
    assert length_mm(walked) == pytest.approx(distance)


def test_widths_across_an_el() -> None:
    assert widths_across(EL, [10, 50, 500]) == [60, 20, 0]


@given(st.lists(st.tuples(st.floats(-500, 500), st.floats(-500, 500)), min_size=3, max_size=3))
def test_the_area_of_any_triangle_is_shapelys(corners: list[Point]) -> None:
    assert abs(signed_area_mm2(tuple(corners))) == pytest.approx(Polygon(corners).area, abs=1e-6)

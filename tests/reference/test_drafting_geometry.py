"""Drafting geometry against closed forms and against other people's code."""

import math

import pytest
from scipy.integrate import quad
from scipy.special import ellipe
from shapely import LinearRing, Polygon

from planning.drafting.allowance import cut_line_of
from planning.drafting.bear import bear
from planning.drafting.curves import ellipse_perimeter_mm
from planning.drafting.library import drafted
from planning.drafting.measures import CHARACTERS
from planning.drafting.pieces import DraftSize
from planning.drafting.rings import perimeter_mm, signed_area_mm2
from tests.planning.drafting.shapes_for_tests import SQUARE, circle

SIZES = [
    *(bear(height, name) for height in (150, 300, 460) for name in CHARACTERS),
    *(drafted(key, 300) for key in ("rabbit", "pillow", "heart")),
    drafted("bear", 300, pose="sitting", face="aside"),
]


@pytest.mark.parametrize("size", SIZES)
def test_areas_and_perimeters_are_shapelys(size: DraftSize) -> None:
    """Shapely (GEOS) measures the same rings by its own code."""
    for piece in size:
        for ring in (piece.seam_line, piece.cut_line):
            assert signed_area_mm2(ring) == pytest.approx(Polygon(ring).area, rel=1e-12)
            assert perimeter_mm(ring) == pytest.approx(LinearRing(ring).length, rel=1e-12)


@pytest.mark.parametrize("size", SIZES)
def test_edge_lengths_add_up_to_shapelys_perimeter(size: DraftSize) -> None:
    for piece in size:
        walked = sum(piece.stretch_mm(edge.name) for edge in piece.edges)
        assert walked == pytest.approx(LinearRing(piece.seam_line).length, rel=1e-12)


@pytest.mark.parametrize("allowance", [3.0, 6.0, 12.7])
def test_offset_of_a_circle_is_a_larger_circle(allowance: float) -> None:
    """Steiner's formula (J. Steiner, 1840) for a disc: radius r + a."""
    cut = cut_line_of(circle(50), allowance)
    assert perimeter_mm(cut) == pytest.approx(2 * math.pi * (50 + allowance), rel=1e-3)
    assert signed_area_mm2(cut) == pytest.approx(math.pi * (50 + allowance) ** 2, rel=1e-3)


@pytest.mark.parametrize("allowance", [3.0, 6.0, 12.7])
def test_offset_of_a_square_has_rounded_corners(allowance: float) -> None:
    """Steiner's formula for any convex shape: L + 2 pi a, and A + L a + pi a squared."""
    cut = cut_line_of(SQUARE, allowance)
    assert perimeter_mm(cut) == pytest.approx(400 + 2 * math.pi * allowance, abs=0.2)
    steiner = 10_000 + 400 * allowance + math.pi * allowance**2
    assert signed_area_mm2(cut) == pytest.approx(steiner, rel=2e-4)


def test_offset_of_the_sole_obeys_steiner() -> None:
    """The sole is convex, so the formula holds for it whatever its shape."""
    sole = bear(300).piece("sole")
    length, area = perimeter_mm(sole.seam_line), signed_area_mm2(sole.seam_line)
    assert perimeter_mm(sole.cut_line) == pytest.approx(length + 2 * math.pi * 6, rel=1e-3)
    steiner = area + 6 * length + 36 * math.pi
    assert signed_area_mm2(sole.cut_line) == pytest.approx(steiner, rel=1e-3)


@pytest.mark.parametrize("height", [150, 300, 500])
def test_the_seat_is_the_ellipse_of_its_rim(height: float) -> None:
    """Perimeter by SciPy's complete elliptic integral, area pi a b; drawn in 96 straight steps."""
    size = drafted("bear", height, pose="sitting")
    rim_mm = 2 * sum(size.piece(f"body {end}").stretch_mm("seat") for end in ("front", "back"))
    ring = size.piece("seat").seam_line
    a, b = (max(values) - min(values) for values in zip(*ring, strict=True))
    by_integral = 4 * a / 2 * ellipe(1 - b * b / a / a)
    assert by_integral == pytest.approx(rim_mm, rel=1e-3)
    assert signed_area_mm2(ring) == pytest.approx(math.pi * a * b / 4, rel=1e-3)


@pytest.mark.parametrize(("a", "b"), [(10, 10), (10, 9), (10, 7.2), (10, 5), (10, 4)])
def test_ramanujans_ellipse_against_numeric_integration(a: float, b: float) -> None:
    """S. Ramanujan, Quarterly Journal of Mathematics 45 (1914), first formula.

    Checked against the arc-length integral and SciPy's complete elliptic integral.
    """
    by_quadrature = (
        4 * quad(lambda t: math.hypot(a * math.sin(t), b * math.cos(t)), 0, math.pi / 2)[0]
    )
    assert by_quadrature == pytest.approx(4 * a * ellipe(1 - b * b / a / a), rel=1e-9)
    assert ellipse_perimeter_mm(a, b) == pytest.approx(by_quadrature, rel=1e-4)

"""A maker's own pieces against closed forms and against other people's geometry."""

import math

import pyclipper
import pytest
from scipy.integrate import quad
from scipy.special import ellipe
from shapely import LineString, Polygon, distance, points
from shapely.affinity import rotate, scale

from planning.drafting.basic_shapes import BASIC_SHAPES, entry_of_shape
from planning.drafting.clips import clips_of
from planning.drafting.entering import entered_piece
from planning.drafting.grading import graded_piece
from planning.drafting.hands import is_handed
from planning.drafting.pieces import DraftPiece
from planning.drafting.rings import length_mm, perimeter_mm, signed_area_mm2
from planning.drafting.seams import HAND_DRAWN_TOLERANCE_MM, TOLERANCE_MM
from tests.planning.drafting.entries_for_tests import (
    HALF_EGG,
    SQUARE_CORNERS,
    piece_of,
    round_points,
)
from tests.planning.drafting.shapes_for_tests import EL

TRIANGLE = ((0.0, 0.0), (130.0, 0.0), (40.0, 90.0))
OUTLINES = [SQUARE_CORNERS, EL, TRIANGLE, HALF_EGG, round_points(50)]


def shape(key: str, *values: float) -> DraftPiece:
    keys = [name for name, _ in BASIC_SHAPES[key].measures]
    entry = entry_of_shape(key, dict(zip(keys, values, strict=True)), 6)
    return entered_piece(entry, key, 2, 1)


@pytest.mark.parametrize("outline", OUTLINES)
@pytest.mark.parametrize("is_cut_line", [False, True])
def test_areas_lengths_and_edges_are_shapelys(outline: tuple[object], is_cut_line: bool) -> None:
    """Shapely (GEOS) measures the same rings and edges by its own code."""
    piece = piece_of(outline, is_cut_line=is_cut_line)
    for ring in (piece.seam_line, piece.cut_line):
        assert signed_area_mm2(ring) == pytest.approx(Polygon(ring).area, rel=1e-12)
        assert perimeter_mm(ring) == pytest.approx(Polygon(ring).length, rel=1e-12)
    for edge in piece.edges:
        line = piece.points_of(edge)
        assert length_mm(line) == pytest.approx(LineString(line).length, rel=1e-12)
    walked = sum(length_mm(piece.points_of(edge)) for edge in piece.edges)
    assert walked == pytest.approx(Polygon(piece.seam_line).length, rel=1e-12)


@pytest.mark.parametrize("allowance", [3.0, 6.0, 12.7])
def test_the_inset_of_a_circle_is_a_smaller_circle(allowance: float) -> None:
    """Steiner's formula (J. Steiner, 1840) the other way round: radius r - a."""
    piece = piece_of(round_points(50, 24), is_cut_line=True, allowance_mm=allowance)
    inner = 50 - allowance
    assert perimeter_mm(piece.seam_line) == pytest.approx(2 * math.pi * inner, rel=2e-3)
    assert signed_area_mm2(piece.seam_line) == pytest.approx(math.pi * inner**2, rel=2e-3)


@pytest.mark.parametrize("allowance", [3.0, 6.0, 12.7])
def test_the_inset_of_a_square_is_a_smaller_square(allowance: float) -> None:
    piece = piece_of(SQUARE_CORNERS, is_cut_line=True, allowance_mm=allowance)
    side = 100 - 2 * allowance
    assert signed_area_mm2(piece.seam_line) == pytest.approx(side**2, rel=1e-9)
    for edge in piece.edges:
        assert piece.stretch_mm(edge.name) == pytest.approx(side, rel=1e-9)


@pytest.mark.parametrize("allowance", [2.0, 6.0, 15.0])
def test_the_inset_of_a_triangle_is_the_triangle_smaller(allowance: float) -> None:
    """The inner parallel of a triangle is the triangle by 1 - a / r, r the inscribed circle's."""
    piece = piece_of(TRIANGLE, is_cut_line=True, allowance_mm=allowance)
    area, around = Polygon(TRIANGLE).area, Polygon(TRIANGLE).length
    factor = 1 - allowance / (2 * area / around)
    assert signed_area_mm2(piece.seam_line) == pytest.approx(factor**2 * area, rel=1e-5)
    assert perimeter_mm(piece.seam_line) == pytest.approx(factor * around, rel=1e-5)


@pytest.mark.parametrize("outline", OUTLINES)
@pytest.mark.parametrize("allowance", [1.5, 6.0])
def test_the_inset_is_what_clipper_finds(outline: tuple[object], allowance: float) -> None:
    """Angus Johnson's Clipper library offsets in whole numbers, here of a micrometre."""
    piece = piece_of(outline, is_cut_line=True, allowance_mm=allowance)
    offset = pyclipper.PyclipperOffset(miter_limit=5.0)
    grid = [(round(1000 * x), round(1000 * y)) for x, y in piece.cut_line]
    offset.AddPath(grid, pyclipper.JT_MITER, pyclipper.ET_CLOSEDPOLYGON)
    (theirs,) = offset.Execute(-1000 * allowance)
    clipped = Polygon([(x / 1000, y / 1000) for x, y in theirs])
    ours = Polygon(piece.seam_line)
    assert ours.symmetric_difference(clipped).area < 0.02 * allowance * ours.length
    assert ours.area == pytest.approx(clipped.area, rel=2e-3)


@pytest.mark.parametrize("outline", [SQUARE_CORNERS, TRIANGLE, round_points(50)])
def test_the_cutting_line_of_a_convex_outline_obeys_steiner(outline: tuple[object]) -> None:
    """J. Steiner, 1840: L + 2 pi a and A + L a + pi a squared round any convex shape."""
    piece = piece_of(outline)
    length, area = perimeter_mm(piece.seam_line), signed_area_mm2(piece.seam_line)
    assert perimeter_mm(piece.cut_line) == pytest.approx(length + 12 * math.pi, rel=1e-3)
    steiner = area + 6 * length + 36 * math.pi
    assert signed_area_mm2(piece.cut_line) == pytest.approx(steiner, rel=1e-3)


def test_a_square_folded_along_its_diagonal() -> None:
    """Pythagoras: the diagonal of a square is its side times the square root of 2."""
    half = [(0, 0), (100, 0), (100, 100, False, "diagonal")]
    assert piece_of(half).stretch_mm("diagonal") == pytest.approx(100 * math.sqrt(2))
    whole = Polygon(piece_of(half, fold_edge="diagonal").seam_line)
    assert whole.symmetric_difference(Polygon(SQUARE_CORNERS)).area < 1e-3


def test_the_other_half_is_shapelys_mirror_image() -> None:
    whole = Polygon(piece_of(HALF_EGG, fold_edge="fold").seam_line)
    half = Polygon(piece_of(HALF_EGG).seam_line)
    opened = half.union(scale(half, xfact=-1, origin=(0, 0)))
    assert whole.symmetric_difference(opened).area < 0.01


def _circle_and_tip(radius: float, height: float) -> tuple[float, float]:
    """Area and perimeter of a circle with its two tangents from a tip."""
    tangent = math.sqrt((height - radius) ** 2 - radius**2)
    beta = math.atan2(tangent, radius)
    return (
        radius * tangent + radius**2 * (math.pi - beta),
        2 * tangent + 2 * radius * (math.pi - beta),
    )


CLOSED_FORMS: dict[str, tuple[tuple[float, ...], float, float]] = {
    "rectangle": ((100, 60), 6000, 320),
    "trapezium": ((100, 40, 60), 4200, 140 + 2 * math.hypot(30, 60)),
    "triangle": ((60, 90), 2700, 60 + 2 * math.hypot(30, 90)),
    "circle": ((80,), math.pi * 40**2, math.pi * 80),
    "oval": ((60, 100), math.pi * 30 * 50, 4 * 50 * ellipe(1 - 0.36)),
    "half-circle": ((100,), math.pi * 50**2 / 2, 100 + math.pi * 50),
    "ear": ((60, 60, 45), math.pi * 30 * 45 / 2, 60 + 2 * 45 * ellipe(1 - 4 / 9)),
    "limb": ((200, 60, 60), 60 * 140 + math.pi * 30**2, 280 + math.pi * 60),
    "teardrop": ((60, 100), *_circle_and_tip(30, 100)),
}


@pytest.mark.parametrize("key", CLOSED_FORMS)
def test_shapes_have_the_area_and_perimeter_of_the_textbook(key: str) -> None:
    """Elementary formulas; the perimeter of an ellipse is 4 a E(m), SciPy's elliptic integral."""
    values, area, around = CLOSED_FORMS[key]
    piece = shape(key, *values)
    assert signed_area_mm2(piece.seam_line) == pytest.approx(area, rel=3e-3)
    assert perimeter_mm(piece.seam_line) == pytest.approx(around, rel=2e-3)


def test_an_ear_narrower_at_the_foot_is_a_segment_of_an_ellipse() -> None:
    """Half-axes a = 30 and b, the chord 40 wide: area a b (pi - t + sin t cos t), cos t = c / b."""
    chord = math.sqrt(1 - (20 / 30) ** 2)  # of b: the middle of the ellipse above the foot
    b = 50 / (1 + chord)
    t = math.acos(chord)
    area = 30 * b * (math.pi - t + math.sin(t) * math.cos(t))
    assert signed_area_mm2(shape("ear", 40, 60, 50).seam_line) == pytest.approx(area, rel=2e-3)


def test_a_wedge_swells_by_a_quarter_of_a_sine() -> None:
    """The mean of a quarter sine is 2 / pi, so the area is found without adding up slices."""
    below = 120 * (10 + (70 - 10) * 2 / math.pi)
    above = 80 * (30 + (70 - 30) * 2 / math.pi)
    wedge = shape("wedge", 200, 10, 70, 120, 30)
    assert signed_area_mm2(wedge.seam_line) == pytest.approx(below + above, rel=1e-4)


def test_a_heart_is_a_square_and_two_half_circles_stretched() -> None:
    """Area is kept by the factor of each direction: (1 + pi / 4) of the square of side 1."""
    wide, tall = 1 + math.sqrt(0.5), 1.5 * math.sqrt(0.5) + 0.5
    area = (1 + math.pi / 4) * (100 / wide) * (110 / tall)
    assert signed_area_mm2(shape("heart", 100, 110).seam_line) == pytest.approx(area, rel=2e-3)


def test_a_wide_foot_is_joined_without_a_corner() -> None:
    """Shapely cuts the limb's outline out of discs: a foot, a top, a strip and two hollows."""
    ankle = math.sqrt(90**2 - 75**2)
    disc = Polygon([(45 * math.cos(t / 500), 45 * math.sin(t / 500)) for t in range(3142)])
    strip = Polygon([(-30, 45), (30, 45), (30, 170), (-30, 170)])
    kite = Polygon([(0, 45), (75, 45 + ankle), (-75, 45 + ankle)])
    sides = [
        Polygon([(x + s * 75, y + 45 + ankle) for x, y in disc.exterior.coords]) for s in (1, -1)
    ]
    foot = Polygon([(x, y + 45) for x, y in disc.exterior.coords])
    top = Polygon([(x * 30 / 45, y * 30 / 45 + 170) for x, y in disc.exterior.coords])
    joined = kite.difference(sides[0]).difference(sides[1])
    textbook = strip.difference(sides[0]).difference(sides[1]).union(foot).union(top).union(joined)
    limb = Polygon(shape("limb", 200, 60, 90).seam_line)
    assert limb.symmetric_difference(textbook).area < 3e-3 * textbook.area


@pytest.mark.parametrize("key", BASIC_SHAPES)
def test_a_graded_piece_obeys_the_laws_of_scale(key: str) -> None:
    """Galileo's square law: k times the length, k squared times the area."""
    values = {"wedge": (200, 10, 70, 120, 30), "limb": (200, 60, 90), "ear": (40, 60, 50)}
    usual = (60.0, 100.0, 120.0)[: len(BASIC_SHAPES[key].measures)]
    piece = shape(key, *values.get(key, usual))
    for factor in (0.6, 2.5):
        other = graded_piece(piece, factor, 6)
        seam, cut = Polygon(other.seam_line), Polygon(other.cut_line)
        assert seam.length == pytest.approx(factor * Polygon(piece.seam_line).length)
        assert seam.area == pytest.approx(factor**2 * Polygon(piece.seam_line).area)
        # a scaled cutting line would be 6 k away
        away = distance(points(cut.exterior.coords), seam)
        assert [away.min(), away.max()] == pytest.approx([6, 6], abs=0.05)


@pytest.mark.parametrize("outline", [*OUTLINES, [(0, 0), (90, 0), (120, 70), (10, 50)]])
@pytest.mark.parametrize("grain_deg", [0.0, 30.0, 90.0])
def test_a_hand_is_what_shapelys_mirror_image_does_not_cover(
    outline: tuple[object], grain_deg: float
) -> None:
    """Compared by area, and by Shapely's own turning and scaling, where the room compares lines."""
    piece = piece_of(outline)
    own = rotate(Polygon(piece.cut_line), 90 - grain_deg, origin="centroid")
    images = [scale(own, x, y, origin="centroid") for x, y in ((-1, 1), (1, -1))]
    strays = min(own.symmetric_difference(image).area for image in images)
    handed = is_handed(DraftPiece("p", piece.seam_line, piece.cut_line, 2, 1, grain_deg=grain_deg))
    assert handed == (strays > 0.01 * own.area)


def test_an_oval_is_tight_where_its_radius_is_under_40_mm() -> None:
    """The radius of curvature of an ellipse is (a² sin² t + b² cos² t)^1.5 / (a b)."""
    a, b = 60.0, 45.0

    def speed(t: float) -> float:
        return math.hypot(a * math.sin(t), b * math.cos(t))

    def tight(t: float) -> float:
        return speed(t) if speed(t) ** 3 / (a * b) < 40 else 0.0

    flat_from = math.asin(math.sqrt(((40 * a * b) ** (2 / 3) - b * b) / (a * a - b * b)))
    long_mm = 4 * quad(tight, 0, flat_from)[0]
    oval = shape("oval", 2 * a, 2 * b)
    assert clips_of(oval, oval.edges[0]).tight_mm == pytest.approx(long_mm, rel=0.03)


def test_hand_drawn_seams_are_held_closer_than_a_sixteenth_of_an_inch() -> None:
    """Threads no. 200, Dec 2018/Jan 2019, "10 Patternwork Skills": 1/16 inch."""
    assert TOLERANCE_MM < HAND_DRAWN_TOLERANCE_MM <= 25.4 / 16

"""Pattern files against standards, closed forms and another program's reader and writer."""

import io
import math

import ezdxf
import pytest
from ezdxf import units
from ezdxf.path import make_path
from shapely import LinearRing, Point, Polygon

from planning.drafting.exchange.found import Found, FoundPiece
from planning.drafting.exchange.read import read_pattern_file
from planning.drafting.exchange.write import dxf_of
from planning.drafting.library import built_in_pattern

FLAT_MM = 0.1  # the promise: no curve is farther from its chords


def read_svg(inside: str, head: str = 'width="400mm" viewBox="0 0 400 400"') -> FoundPiece:
    data = f'<svg xmlns="http://www.w3.org/2000/svg" {head}>{inside}</svg>'
    return read_pattern_file(data.encode(), "a.svg").pieces[0]


@pytest.mark.parametrize(
    "inch", ["1in", "2.54cm", "25.4mm", "72pt", "6pc", "96px", "101.6Q", "1IN", "+.1e1in"]
)
def test_an_inch_in_every_absolute_unit_of_css(inch):
    # source: W3C CSS Values and Units, absolute lengths: 1in = 2.54cm = 25.4mm = 72pt = 6pc = 96px,
    # 1Q = 1/40 cm
    head = f'width="{inch}" height="{inch}" viewBox="0 0 100 100"'
    data = f'<svg {head}><rect x="10" y="10" width="50" height="50"/></svg>'
    assert read_pattern_file(data.encode(), "a.svg").width_mm == pytest.approx(12.7, rel=1e-12)
    # inside a drawing at 96 units to the inch
    data = f'<svg width="10in" viewBox="0 0 960 960"><rect width="{inch}" height="{inch}"/></svg>'
    assert read_pattern_file(data.encode(), "a.svg").width_mm == pytest.approx(25.4, rel=1e-12)


@pytest.mark.parametrize("radius_mm", [5, 50, 180])
@pytest.mark.parametrize("scale", [0.25, 1, 20])
def test_a_circle_is_followed_within_a_tenth_of_a_millimetre(radius_mm, scale):
    # source: area of a circle; a chord's sagitta is r (1 - cos(half its angle))
    circle = f'<circle r="{radius_mm / scale}" transform="scale({scale})"/>'
    ring = read_svg(circle).outline
    assert all(math.hypot(*corner) == pytest.approx(radius_mm) for corner in ring)
    assert LinearRing(ring).distance(Point(0, 0)) >= radius_mm - FLAT_MM
    missing_mm2 = math.pi * radius_mm**2 - Polygon(ring).area
    assert 0 < missing_mm2 < 2 * math.pi * radius_mm * FLAT_MM


@pytest.mark.parametrize(
    ("path", "area_mm2", "long_mm"),
    [
        # Archimedes, Quadrature of the Parabola: two thirds of the triangle of its tangents
        ("M0 0 Q 100 160 200 0 Z", 2 / 3 * 200 * 160 / 2, 260),
        ("M0 0 Q 50 80 100 80 T 200 0 Z", 2 * (100 * 80 / 2 + 2 / 3 * 50 * 80 / 2), 260),
        # y dx over x = w (3t² - 2t³), y = 3h t (1 - t): three fifths of the box
        ("M0 0 C 0 120 200 120 200 0 Z", 3 / 5 * 200 * 120, 320),
        # a half ellipse
        ("M0 0 A 100 40 0 0 1 200 0 Z", math.pi * 100 * 40 / 2, 240),
        # SVG 1.1, F.6.6: radii too small for their ends are made just large enough
        ("M0 0 A 1 1 0 0 1 200 0 Z", math.pi * 100**2 / 2, 315),
        # and a radius of nothing is a straight line
        ("M0 0 A 0 5 0 0 1 200 0 V100 Z", 200 * 100 / 2, 10),
    ],
)
def test_curves_of_svg_enclose_their_closed_form_area(path, area_mm2, long_mm):
    piece = read_svg(f'<path d="{path}"/>')
    assert Polygon(piece.outline).area == pytest.approx(area_mm2, abs=long_mm * FLAT_MM)


@pytest.mark.parametrize(
    ("transform", "matrix"),
    [
        # source: SVG 1.1, 7.6, the matrix of each transform
        ("translate(30,10)", (1, 0, 0, 1, 30, 10)),
        ("scale(2)", (2, 0, 0, 2, 0, 0)),
        ("rotate(30)", (math.cos(math.pi / 6), 0.5, -0.5, math.cos(math.pi / 6), 0, 0)),
        ("skewX(45)", (1, 0, 1, 1, 0, 0)),
        ("skewY(45)", (1, 1, 0, 1, 0, 0)),
        ("translate(7 9) rotate(90) translate(-7 -9)", (0, 1, -1, 0, 16, 2)),
        ("rotate(90, 7, 9)", (0, 1, -1, 0, 16, 2)),
        ("matrix(1 2 3 4 5 6)", (1, 2, 3, 4, 5, 6)),
    ],
)
def test_transforms_are_the_matrices_of_the_standard(transform, matrix):
    a, b, c, d, e, f = matrix
    corners = ((0, 0), (50, 0), (20, 30))
    piece = read_svg(f'<polygon transform="{transform}" points="0,0 50,0 20,30"/>')
    expected = Polygon([(a * x + c * y + e, -(b * x + d * y + f)) for x, y in corners])
    assert Polygon(piece.outline).symmetric_difference(expected).area < 1e-6


def pattern(release: str = "R12", unit: str = "METRIC") -> ezdxf.document.Drawing:
    document = ezdxf.new(release)
    if release != "R12":
        document.header["$INSUNITS"] = units.M  # what the text says goes first
    for words in ("Style Name: test", f"Units: {unit}", "Sample Size: 30"):
        document.modelspace().add_text(words, dxfattribs={"layer": "1"})
    return document


def saved(document: ezdxf.document.Drawing, newline: str = "\n") -> Found:
    stream = io.StringIO()
    document.write(stream)
    text = stream.getvalue().replace("\n", newline)
    return read_pattern_file(text.encode(document.output_encoding), "ezdxf.dxf")


def on(layer: str) -> dict[str, str]:
    return {"layer": layer}


@pytest.mark.parametrize("newline", ["\n", "\r\n"])
def test_a_release_12_pattern_that_ezdxf_wrote_is_read_by_its_layers(newline):
    # source: layers of ASTM D6673-10, restated; the file written by ezdxf
    document = pattern()
    block = document.blocks.new("BACK-30")
    half = [(0, 0), (80, 0), (80, 60), (40, 120), (0, 120)]
    block.add_polyline2d(half, close=True, dxfattribs=on("1"))
    block.add_polyline2d([(0, 8), (72, 8), (72, 58), (36, 112), (0, 112)], dxfattribs=on("14"))
    for corner in half:
        block.add_point(corner, dxfattribs=on("2"))
    block.add_point((80, 30), dxfattribs=on("4"))
    block.add_line((0, 0), (0, 120), dxfattribs=on("6"))
    block.add_line((20, 20), (20, 90), dxfattribs=on("7"))
    block.add_line((10, 50), (60, 50), dxfattribs=on("8"))
    block.add_line((0, 70), (60, 70), dxfattribs=on("9"))
    block.add_circle((50, 40), 3, dxfattribs=on("11"))
    block.add_point((30, 30), dxfattribs=on("13"))
    for words in ("Piece Name: BACK", "Quantity: 1", "Annotation: fur"):
        block.add_text(words, dxfattribs=on("1"))
    document.modelspace().add_blockref("BACK-30", (500, 500), dxfattribs=on("1"))
    found = saved(document, newline)
    (piece,) = found.pieces
    assert (piece.name, piece.size, piece.count, piece.mirrored) == ("BACK", "30", 1, 0)
    assert (found.unit_words, found.is_unit_sure) == ("millimetres, said by the file", True)
    assert piece.is_unfolded
    assert Polygon(piece.outline).bounds == (-80, 0, 80, 120)
    assert Polygon(piece.seam_line).bounds == (-72, 8, 72, 112)
    assert [notch.at for notch in piece.notches] == [(80, 30), (-80, 30)]
    assert [mark.at for mark in piece.marks] == [(30, 30), (-30, 30)]
    assert len(piece.lines) == 2
    assert piece.grain_deg == 90
    assert piece.notes == ("Cut-outs inside, left out: 1.", "The file says: “annotation: fur”.")
    assert [note for note in found.notes if "layer" in note] == [
        "Left out in the blocks: 1 on layer “9” (stripe lines).",
    ]


def test_english_units_are_inches():
    document = pattern(unit="ENGLISH")
    block = document.blocks.new("PAD")
    block.add_polyline2d([(0, 0), (4, 0), (4, 2), (0, 2)], close=True, dxfattribs=on("1"))
    found = saved(document)
    # source: the inch of 25.4 mm, agreement of 1959
    assert (found.width_mm, found.height_mm) == pytest.approx((101.6, 50.8))


@pytest.mark.parametrize("release", ["R12", "R2000", "R2018"])
@pytest.mark.parametrize("bulge", [1.0, -0.5, math.tan(math.pi / 8), 0.05, 3.0])
def test_a_bulge_is_the_tangent_of_a_quarter_of_its_angle(release, bulge):
    # source: DXF reference, VERTEX and LWPOLYLINE; area of a circular segment r²/2 (a - sin a)
    document = pattern(release)
    block = document.blocks.new("PAD")
    corners = [(0, 0, bulge), (100, 0, 0), (100, 300, 0), (0, 300, 0)]
    if release == "R12":
        block.add_polyline2d(corners, format="xyb", close=True, dxfattribs=on("1"))
    else:
        block.add_lwpolyline(corners, format="xyb", close=True, dxfattribs=on("1"))
    (piece,) = saved(document).pieces
    angle = 4 * math.atan(abs(bulge))
    radius_mm = 50 / math.sin(angle / 2)
    segment = math.copysign(radius_mm**2 / 2 * (angle - math.sin(angle)), bulge)
    # an anticlockwise ring with a bulge to the right of its edge swells outward
    slack = FLAT_MM * radius_mm * angle
    assert Polygon(piece.outline).area == pytest.approx(100 * 300 + segment, abs=slack)


def test_arcs_splines_and_ellipses_make_one_boundary_as_ezdxf_draws_them():
    document = pattern("R2000")
    block = document.blocks.new("EAR")
    arc = block.add_arc((0, 0), 60, 0, 180, dxfattribs=on("1"))
    curve = block.add_spline(degree=3, dxfattribs=on("1"))
    curve.control_points = [(-60, 0), (-60, -90), (20, -60), (20, -100)]
    curve.knots = [0, 0, 0, 0, 1, 1, 1, 1]
    # a quarter, 40 wide and 100 tall
    ellipse = block.add_ellipse(
        (20, 0), (0, 100), 0.4, math.pi, 3 * math.pi / 2, dxfattribs=on("1")
    )
    (piece,) = saved(document).pieces
    fine = [
        (point.x, point.y)
        for entity in (arc, curve, ellipse)
        for point in make_path(entity).flattening(0.001)
    ]
    shape = Polygon(piece.outline)
    assert shape.hausdorff_distance(Polygon(fine)) < FLAT_MM + 0.03
    assert shape.area == pytest.approx(Polygon(fine).area, rel=0.002)


def test_a_polyline_seen_from_below_is_turned_over():
    # source: DXF reference, arbitrary axis: with an extrusion of (0, 0, -1) x runs to the left
    document = pattern("R2000")
    block = document.blocks.new("PAD")
    corners = [(10, 0), (50, 0), (50, 30)]
    block.add_lwpolyline(corners, close=True, dxfattribs={"layer": "1", "extrusion": (0, 0, -1)})
    assert Polygon(saved(document).pieces[0].outline).bounds == (-50, 0, -10, 30)


def test_a_drawing_of_metres_says_so():
    document = ezdxf.new("R2010")
    document.header["$INSUNITS"] = units.M
    document.modelspace().add_lwpolyline([(0, 0), (0.3, 0), (0.3, 0.2)], close=True)
    found = saved(document)
    assert (found.width_mm, found.height_mm) == pytest.approx((300, 200))
    assert found.unit_words == "metres, said by the file"


def test_ezdxf_finds_our_layers_where_the_standard_has_them():
    # source: layers of ASTM D6673-10, restated
    size = built_in_pattern().sizes[2]
    document = ezdxf.read(io.StringIO(dxf_of(size, "Bear").decode("ascii")))
    assert document.dxfversion == "AC1009"
    texts = {text.dxf.text for text in document.modelspace().query("TEXT")}
    assert {"Style Name: Bear", f"Sample Size: {size.name}", "Units: METRIC"} <= texts
    blocks = [block for block in document.blocks if not block.name.startswith("*")]
    for piece, block in zip(size.pieces, blocks, strict=True):
        closed = {e.dxf.layer: e for e in block.query("POLYLINE") if e.is_closed}
        assert set(closed) == {"1", "14"}
        for layer, ring in (("1", piece.cut_line), ("14", piece.seam_line)):
            corners = [(v.dxf.location.x, v.dxf.location.y) for v in closed[layer].vertices]
            assert Polygon(corners).symmetric_difference(Polygon(ring)).area < 0.05
        (grain,) = [e for e in block.query("LINE") if e.dxf.layer == "7"]
        assert (grain.dxf.end - grain.dxf.start).angle_deg % 360 == pytest.approx(piece.grain_deg)
        slits = [e for e in block.query("LINE") if e.dxf.layer == "4"]
        assert len(slits) == sum(1 + notch.is_double for notch in piece.notches)
        assert len([e for e in block.query("POINT") if e.dxf.layer == "13"]) == len(piece.marks)
        said = {text.dxf.text for text in block.query("TEXT")}
        assert {f"Piece Name: {piece.name}", f"Size: {size.name}"} <= said

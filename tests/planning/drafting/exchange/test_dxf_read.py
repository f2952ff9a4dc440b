"""Blocks, layers and texts of a DXF pattern, and drawings that have none."""

import pytest
from shapely import Polygon

from planning.drafting.exchange.found import PatternFileError
from planning.drafting.exchange.read import read_pattern_file
from planning.drafting.pieces import Mark, Notch, PlacementLine
from planning.drafting.rings import bounds_mm, signed_area_mm2
from tests.planning.drafting.exchange.files_for_tests import (
    BOX,
    INNER,
    block,
    dxf,
    from_dxf,
    line,
    lwpolyline,
    point,
    polyline,
    tags,
    text,
)

METRIC = text("Units: METRIC")


def one(inside, model=METRIC, name="LEG"):
    (piece,) = from_dxf(block(name, inside), model).pieces
    return piece


def test_a_block_is_a_piece_with_its_texts():
    said = text("Piece Name: leg") + text("SIZE: 38 cm") + text("Quantity: 1,1")
    piece = one(polyline("1", BOX) + said)
    assert (piece.name, piece.size, piece.count, piece.mirrored) == ("leg", "38 cm", 2, 1)
    assert piece.outline == BOX
    assert (piece.line, piece.seam_line, piece.has_grain) == ("cut", None, False)
    assert piece.notes == ()


def test_a_clockwise_boundary_is_turned_round():
    piece = one(polyline("1", BOX[::-1]))
    assert signed_area_mm2(piece.outline) == 6000


def test_blocks_that_are_no_pieces_are_passed_by():
    inside = polyline("1", BOX)
    found = from_dxf(block("LEG", inside) + block("*U1", inside) + block("$FRAME", inside), METRIC)
    assert [piece.name for piece in found.pieces] == ["LEG"]


def test_where_a_block_is_inserted_does_not_move_it():
    insert = tags((0, "INSERT"), (8, "1"), (2, "LEG"), (10, 500), (20, 70), (41, 2))
    assert one(polyline("1", BOX), METRIC + insert).outline == BOX


@pytest.mark.parametrize(
    ("model", "header", "scale", "words", "is_sure"),
    [
        (METRIC, "", 1, "millimetres, said by the file", True),
        (text("Units: ENGLISH"), "", 25.4, "inches, said by the file", True),
        (
            text("UNITS:english"),
            tags((9, "$INSUNITS"), (70, 4)),
            25.4,
            "inches, said by the file",
            True,
        ),
        ("", tags((9, "$INSUNITS"), (70, 1)), 25.4, "inches, said by the file", True),
        ("", tags((9, "$INSUNITS"), (70, 5)), 10, "centimetres, said by the file", True),
        ("", tags((9, "$INSUNITS"), (70, 0)), 1, "millimetres, assumed", False),
        ("", "", 1, "millimetres, assumed", False),
        (text("Units: ELLS"), "", 1, "millimetres, assumed", False),
    ],
)
def test_the_unit_is_the_text_then_the_header_then_asked(model, header, scale, words, is_sure):
    found = from_dxf(block("LEG", polyline("1", BOX)), model, header)
    assert found.width_mm == pytest.approx(100 * scale)
    assert (found.unit_words, found.is_unit_sure) == (words, is_sure)
    assert any("does not say its unit" in note for note in found.notes) is not is_sure


def test_a_stated_unit_overrides_the_text():
    data = dxf(block("LEG", polyline("1", BOX)), text("Units: ENGLISH"))
    found = read_pattern_file(data, "leg.dxf", mm_per_unit=10)
    assert (found.width_mm, found.unit_words) == (1000, "10 mm to the unit, as you said")


def test_an_unsure_unit_of_metres_asks_for_the_unit():
    with pytest.raises(PatternFileError, match="Say which unit"):
        from_dxf(block("LEG", polyline("1", BOX)), "", tags((9, "$INSUNITS"), (70, 6)))


def test_the_sew_line_is_the_seam_line():
    piece = one(polyline("1", BOX) + polyline("14", INNER))
    assert (piece.outline, piece.seam_line) == (BOX, INNER)


def test_a_sew_line_outside_is_the_cutting_line():
    piece = one(polyline("1", INNER) + polyline("14", BOX))
    assert (piece.outline, piece.seam_line) == (BOX, INNER)
    assert "outside" in piece.notes[0]


@pytest.mark.parametrize(
    ("sew", "words"),
    [
        (line("14", (10, 10), (90, 10)), "not one closed line"),
        (polyline("14", ((50, 10), (150, 10), (150, 50))), "crosses the boundary"),
    ],
)
def test_a_sew_line_of_no_use_is_left_out_and_said(sew, words):
    piece = one(polyline("1", BOX) + sew)
    assert piece.seam_line is None
    assert words in piece.notes[0]


def test_a_boundary_of_lines_any_way_round_is_joined():
    sides = [(BOX[0], BOX[1]), (BOX[2], BOX[1]), (BOX[3], BOX[0]), (BOX[2], (0.05, 60.0))]
    piece = one("".join(line("1", *side) for side in sides))
    assert Polygon(piece.outline).area == pytest.approx(6000, rel=0.002)
    assert len(piece.outline) == 4


def test_a_boundary_that_misses_closing_by_little_is_closed_and_said():
    piece = one(polyline("1", (*BOX, (0.0, 0.4)), closed=False))
    assert "missed closing by 0.4 mm" in piece.notes[0]


def test_lwpolylines_are_read_also_in_a_release_12_file():
    piece = one(lwpolyline("1", BOX) + lwpolyline("14", INNER))
    assert (piece.outline, piece.seam_line) == (BOX, INNER)


@pytest.mark.parametrize("version", ["", "AC1009", "AC1015"])
def test_modern_entities_keep_their_layer_in_any_release(version):
    header = tags((9, "$ACADVER"), (1, version)) if version else ""
    marked = tags((0, "LWPOLYLINE"), (100, "AcDbEntity"), (8, "1"), (100, "AcDbPolyline"))
    body = marked + tags((90, 4), (70, 1)) + "".join(tags((10, x), (20, y)) for x, y in BOX)
    found = from_dxf(block("LEG", body + polyline("14", INNER)), METRIC, header)
    assert (found.pieces[0].outline, found.pieces[0].seam_line) == (BOX, INNER)
    assert found.notes == ()


def test_the_longest_line_on_layer_7_is_the_grain():
    lines = line("7", (50, 10), (50, 50)) + line("7", (20, 45), (22, 50))
    found = from_dxf(block("LEG", polyline("1", BOX) + lines), METRIC)
    assert (found.pieces[0].grain_deg, found.pieces[0].has_grain) == (90, True)
    assert any("pile" in note for note in found.notes)


def test_notches_are_points_slits_and_vees():
    piece = one(
        polyline("1", BOX)
        + point("4", 30, 0)
        + line("4", (100, 35), (100 - 5, 35))
        + polyline("80", ((48, 60), (50, 55), (52, 60)), closed=False)
    )
    assert piece.notches == (
        Notch("notch 1", (30, 0)),
        Notch("notch 2", (100, 35)),
        Notch("notch 3", (50, 60)),
    )


def test_a_slit_is_placed_where_it_meets_the_sew_line():
    rings = polyline("1", BOX) + polyline("14", INNER)
    assert one(rings + line("4", (50, 0), (50, 10))).notches == (Notch("notch 1", (50, 10)),)


def test_drill_holes_are_marks_and_internal_lines_are_lines():
    ring = tags((0, "CIRCLE"), (8, "13"), (10, 40), (20, 30), (40, 2))
    piece = one(polyline("1", BOX) + point("13", 20, 20) + ring + line("8", (10, 10), (90, 10)))
    assert [mark.name for mark in piece.marks] == ["mark 1", "mark 2"]
    assert piece.marks[0] == Mark("mark 1", (20, 20))
    assert piece.marks[1].at == pytest.approx((40, 30), abs=0.1)
    assert piece.lines == (PlacementLine("line 1", ((10, 10), (90, 10))),)


def test_what_is_not_understood_is_named_with_its_number():
    inside = (
        polyline("1", BOX)
        + polyline("11", ((20, 20), (30, 20), (30, 30)))
        + line("PRINT", (1, 1), (2, 2)) * 3
        + point("2", 0, 0) * 4
        + text("Annotation: on the fold", "15")
        + text("# 7", "2")
    )
    blocks = block("LEG", inside) + block("ARM", inside)
    found = from_dxf(blocks, METRIC + line("FRAME", (0, 0), (9, 9)))
    assert found.notes == (
        "Left out in the blocks: 6 on layer “PRINT”.",
        "Left out outside the blocks: 1 on layer “FRAME”.",
    )
    assert found.pieces[0].notes == (
        "The file does not say how many to cut: one, until you say otherwise.",
        "Cut-outs inside, left out: 1.",
        "The file says: “annotation: on the fold”.",
    )


def test_each_size_of_a_piece_is_kept_with_its_size():
    name = text("Piece Name: leg")
    blocks = (
        block("leg_30", polyline("1", BOX) + name)
        + block("leg_38", polyline("1", BOX) + name)
        + block("leg_46", polyline("1", BOX) + name + text("Size: 46 cm"))
        + block("arm", polyline("1", BOX))
    )
    found = from_dxf(blocks, METRIC + text("Sample Size: 38"))
    assert [(p.name, p.size) for p in found.pieces] == [
        ("leg", "30"),
        ("leg", "38"),
        ("leg", "46 cm"),
        ("arm", "38"),
    ]


def test_a_block_without_a_boundary_is_named_beside_one_that_has_one():
    found = from_dxf(block("LEG", polyline("1", BOX)) + block("NOTE", text("hello")), METRIC)
    assert len(found.pieces) == 1
    assert "“NOTE” has no closed boundary" in found.notes[0]


def test_without_blocks_closed_lines_are_pieces_and_even_ones_inside_seam_lines():
    model = (
        polyline("CUT", BOX)
        + polyline("SEW", INNER)
        + "".join(line("CUT", a, b) for a, b in (((200, 0), (300, 0)), ((300, 0), (300, 80))))
        + line("CUT", (300, 80), (200, 0))
        + line("FOLD", (400, 0), (500, 0))
    )
    found = from_dxf("", METRIC + model)
    assert [p.name for p in found.pieces] == ["piece 1", "piece 2"]
    assert found.pieces[0].seam_line == INNER
    assert bounds_mm(found.pieces[1].outline) == (200, 0, 300, 80)
    assert found.notes == ("Open lines were left out: 1 on layer “FOLD”.",)


@pytest.mark.parametrize(
    "change",
    [
        lambda data: data.replace(b"\n", b"\r\n"),
        lambda data: b"\n \n" + data,
        lambda data: b"\xef\xbb\xbf" + data,
        lambda data: b"999\na comment\n" + data,
        lambda data: data.replace(b"0\nEOF\n", b""),
        lambda data: data.replace(b"\n8\n", b"\n  8\n"),
        lambda data: data + b"\n\n",
    ],
    ids=["CRLF", "blank lines", "byte mark", "comment", "no end mark", "padded", "blank end"],
)
def test_the_common_ways_to_write_a_file_are_read(change):
    data = change(dxf(block("a leg", polyline("1", BOX)), METRIC))
    assert read_pattern_file(data, "leg.dxf").pieces[0].outline == BOX


def test_a_file_in_an_older_encoding_is_read():
    data = dxf(block("LEG", polyline("1", BOX) + text("Piece Name: Aermel")), METRIC)
    found = read_pattern_file(data.replace(b"Aermel", b"\xc4rmel"), "leg.dxf")
    assert found.pieces[0].name == "Ärmel"


def test_a_file_that_had_to_be_mended_says_so():
    data = dxf(block("LEG", polyline("1", BOX)), METRIC)
    found = read_pattern_file(data.replace(b"POLYLINE\n", b"POLYLINE\n5\nXYZ\n"), "leg.dxf")
    assert found.pieces[0].outline == BOX
    assert "mended while reading" in found.notes[0]


def test_a_missing_end_mark_is_said():
    data = dxf(block("LEG", polyline("1", BOX)), METRIC).replace(b"0\nEOF\n", b"")
    assert read_pattern_file(data, "leg.dxf").notes[0].startswith("The file's end mark was missing")


def test_a_gap_in_a_drawing_without_blocks_is_closed_and_said():
    found = from_dxf("", METRIC + polyline("CUT", (*BOX, (0.0, 0.4)), closed=False))
    assert "missed closing by 0.4 mm" in found.pieces[0].notes[0]


def test_closed_and_open_lines_inside_a_boundary_are_counted():
    inside = polyline("1", INNER) + line("1", (20, 20), (30, 30))
    notes = one(polyline("1", BOX) + inside).notes
    assert notes[0] == "Closed lines inside, on layer 1, left out: 1."
    assert notes[1] == "Open lines on layer 1, left out: 1."


def test_an_entity_that_nobody_knows_is_counted():
    inside = polyline("1", BOX) + tags((0, "WIDGET"), (8, "PRINT"), (10, 5), (20, 5))
    notes = from_dxf(block("LEG", inside), METRIC).notes
    assert notes == ("Left out in the blocks: 1 on layer “0”.",)


def test_a_closed_line_of_one_point_is_nothing():
    piece = one(polyline("1", BOX) + line("6", (0, 0), (0, 60)) + polyline("14", ((5, 5),)))
    assert piece.seam_line is None

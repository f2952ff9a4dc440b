"""What is a piece in an SVG drawing, and what becomes of everything else."""

import pytest
from shapely import Polygon

from planning.drafting.exchange.found import PatternFileError
from planning.drafting.exchange.read import read_pattern_file
from planning.drafting.rings import bounds_mm, signed_area_mm2
from tests.planning.drafting.exchange.files_for_tests import SQUARE, from_svg, svg


def box(found, number=0):
    return pytest.approx(bounds_mm(found.pieces[number].outline), abs=1e-6)


def test_an_outline_is_a_piece_anticlockwise_with_y_upwards():
    found = from_svg('<path id="sleeve" d="M10 20 H110 V70 H10 Z"/>')
    (piece,) = found.pieces
    assert piece.name == "sleeve"
    assert box(found) == (10, -70, 110, -20)
    assert signed_area_mm2(piece.outline) == pytest.approx(5000)
    assert (piece.line, piece.seam_line, piece.count, piece.mirrored) == ("cut", None, 1, 0)
    assert (piece.has_grain, piece.grain_deg) == (False, 90)
    assert (found.kind, found.width_mm, found.height_mm) == ("svg", 100, 50)


@pytest.mark.parametrize(
    ("shape", "corners"),
    [
        ('<polygon points="0,0 100,0 100,50"/>', 3),
        ('<polyline points="0 0 100 0 100 50 0 50 0 0"/>', 4),
        ('<rect x="0" y="0" width="100" height="50"/>', 4),
        ('<path d="m0,0h100v50h-100z"/>', 4),
        ('<rect width="100mm" height="50mm"/>', 4),
    ],
)
def test_straight_shapes_keep_their_corners(shape, corners):
    assert len(from_svg(shape).pieces[0].outline) == corners


def test_transforms_nest_and_one_shape_is_used_twice():
    found = from_svg(
        '<defs><g id="pad"><rect width="20" height="10"/></g></defs>'
        '<g transform="translate(100 0)"><g transform="rotate(90)">'
        '<use href="#pad" transform="scale(2)"/></g></g>'
        '<use href="#pad" x="200" y="5"/>'
    )
    assert len(found.pieces) == 2
    assert box(found, 0) == (80, -40, 100, 0)
    assert box(found, 1) == (200, -15, 220, -5)
    assert [piece.name for piece in found.pieces] == ["pad", "pad 2"]


def test_a_symbol_is_shown_only_where_it_is_used():
    found = from_svg(
        '<symbol id="s"><rect width="20" height="10"/></symbol><use href="#s" x="50"/>'
    )
    assert box(found) == (50, -10, 70, 0)


def test_a_mirrored_shape_is_still_anticlockwise():
    found = from_svg('<path transform="matrix(-1 0 0 1 100 0)" d="M0 0 H60 V30 Z"/>')
    assert signed_area_mm2(found.pieces[0].outline) == pytest.approx(900)
    assert found.pieces[0].outline[1] != found.pieces[0].outline[0]


@pytest.mark.parametrize(
    ("shape", "name"),
    [
        ('<rect id="r1" aria-label="left ear" width="9" height="9"/>', "left ear"),
        ('<rect id="r1" width="9" height="9"><title>ear</title></rect>', "ear"),
        ('<rect id="r1" width="9" height="9"/>', "r1"),
        ('<g id="ears"><rect width="9" height="9"/></g>', "ears"),
        ('<rect width="9" height="9"/>', "piece 1"),
        ('<rect xmlns:x="urn:x" x:label="no" width="9" height="9"/>', "piece 1"),
    ],
)
def test_a_piece_is_named_by_its_label_title_or_id(shape, name):
    assert from_svg(shape).pieces[0].name == name


def test_an_even_line_inside_is_the_seam_line():
    found = from_svg(SQUARE + '<rect x="8" y="8" width="84" height="84"/>')
    (piece,) = found.pieces
    assert Polygon(piece.seam_line).area == pytest.approx(84 * 84)
    assert "8.0 mm inside" in piece.notes[0]


def test_a_hole_inside_is_named_and_left_out():
    found = from_svg(SQUARE + '<circle id="button" cx="30" cy="30" r="8"/>')
    (piece,) = found.pieces
    assert piece.seam_line is None
    assert any("the circle “button”" in note for note in piece.notes)
    assert any("taken for the cutting line" in note for note in piece.notes)


def test_a_line_inside_the_seam_line_is_named_too():
    found = from_svg(
        SQUARE
        + '<rect x="8" y="8" width="84" height="84"/><circle id="eye" cx="50" cy="50" r="4"/>'
    )
    assert found.pieces[0].seam_line is not None
    assert any("“eye”" in note for note in found.pieces[0].notes)


def test_subpaths_are_lines_of_their_own():
    found = from_svg('<path d="M0 0h40v40h-40z m100 0 h20 v20 h-20 z"/>')
    assert [Polygon(p.outline).area for p in found.pieces] == pytest.approx([1600, 400])


def test_a_small_gap_is_closed_and_said():
    found = from_svg('<path id="gappy" d="M0 0 H100 V100 H0 V0.3"/>')
    assert "missed closing by 0.3 mm" in found.pieces[0].notes[0]


def test_open_lines_are_named_beside_a_closed_one():
    found = from_svg(
        SQUARE + '<path id="fold" d="M0 200 H50"/><line x1="0" y1="300" x2="9" y2="9"/>'
    )
    assert len(found.pieces) == 1
    assert found.notes == ("Open lines were left out: the path “fold”, line number 1.",)


def test_only_open_lines_are_refused_by_name():
    with pytest.raises(PatternFileError, match="the path “back”"):
        from_svg('<path id="back" d="M0 0 H100 V100 H0 V0.6"/>')


def test_hidden_shapes_pictures_and_text_are_counted_and_left_out():
    found = from_svg(
        SQUARE
        + '<g style="display:none"><rect x="200" width="50" height="50"/></g><text>Cut 2</text>'
        + '<image href="data:image/png;base64,AAAA" width="9" height="9"/>'
    )
    assert len(found.pieces) == 1
    assert found.notes == ("Not read: 1 hidden shape or group, 1 image, 1 text.",)


def test_the_frame_of_the_page_is_no_piece():
    found = from_svg('<rect width="400" height="400"/>' + SQUARE)
    assert [piece.name for piece in found.pieces] == ["square"]


def test_a_piece_that_fills_the_page_is_a_piece():
    assert len(from_svg('<rect width="400" height="400"/>').pieces) == 1


def test_a_second_copy_in_the_same_place_is_left_out():
    found = from_svg(SQUARE + '<path id="again" d="M0 0 H100 V100 H0 Z"/>')
    assert len(found.pieces) == 1
    assert "again" in found.notes[0]


def test_an_old_doctype_that_declares_nothing_is_read():
    doctype = (
        b'<?xml version="1.0"?>\n<!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN" '
        b'"http://www.w3.org/Graphics/SVG/1.1/DTD/svg11.dtd">\n'
    )
    assert len(read_pattern_file(doctype + svg(SQUARE), "old.svg").pieces) == 1


def test_the_kind_is_told_by_content_and_utf16_is_read():
    text = '<?xml version="1.0" encoding="UTF-16"?>' + svg(SQUARE).decode()
    assert read_pattern_file(text.encode("utf-16"), "misnamed.dxf").kind == "svg"


def test_a_stated_unit_overrides_the_file():
    found = read_pattern_file(svg(SQUARE), "drawing.svg", mm_per_unit=2.5)
    assert (found.width_mm, found.is_unit_sure) == (250, True)
    assert found.unit_words == "2.5 mm to the unit, as you said"


@pytest.mark.parametrize(
    ("head", "scale", "is_sure"),
    [
        ('width="400" height="400"', 25.4 / 96, False),
        ("", 25.4 / 96, False),
        ('viewBox="0 0 400 400"', 25.4 / 96, False),
        ('width="100%" height="100%" viewBox="0 0 400 400"', 25.4 / 96, False),
        ('width="400px" height="400px" viewBox="0 0 400 400"', 25.4 / 96, False),
        ('width="200mm" viewBox="0 0 400 400"', 0.5, True),
        ('width="20cm" height="200mm" viewBox="0 0 400 400"', 0.5, True),
        ('width="200mm" height="200mm"', 25.4 / 96, False),
        ('width="200mm" viewBox="0 0 400 400" style="width: 50%"', 0.5, False),
    ],
)
def test_the_unit_is_sure_only_when_the_file_gives_a_true_size(head, scale, is_sure):
    found = from_svg(SQUARE, head)
    assert found.width_mm == pytest.approx(100 * scale)
    assert found.is_unit_sure is is_sure
    assert ("assumed" in found.unit_words) is (
        "mm" not in head and "px" not in head or "viewBox" not in head
    )


def test_a_stretched_drawing_is_refused():
    with pytest.raises(PatternFileError, match="stretched"):
        from_svg(SQUARE, 'width="400mm" height="300mm" viewBox="0 0 400 400"')

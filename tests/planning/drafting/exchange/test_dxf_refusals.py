"""What is refused of a DXF file, and that nothing is read by half."""

import pytest

from planning.drafting.exchange.found import PatternFileError
from planning.drafting.exchange.read import MOST_BYTES, read_pattern_file
from planning.drafting.exchange.write import dxf_of
from planning.drafting.library import built_in_pattern
from tests.planning.drafting.exchange.files_for_tests import (
    BOX,
    block,
    dxf,
    from_dxf,
    line,
    polyline,
    section,
    tags,
    text,
)

WHOLE = polyline("1", BOX)


@pytest.mark.parametrize(
    ("inside", "words"),
    [
        (polyline("1", ((0, 0), ("nan", 0), (9, 9))), "the block “LEG”, layer “1” is no number"),
        (polyline("1", ((0, 0), ("inf", 0), (9, 9))), "the block “LEG”, layer “1” is no number"),
        (polyline("1", ((0, 0), ("wide", 0), (9, 9))), "“wide” is no number"),
        (polyline("1", ((0, 0), ("60,5", 0), (9, 9))), "at line 42: “60,5” is no number"),
        (polyline("1", ((0, 0), (5001, 0), (9, 9))), "the block “LEG” is 5.0 m long"),
        (polyline("1", ((0, 0), (100, 100), (0, 100), (100, 0))), "the block “LEG” crosses"),
        (WHOLE + polyline("1", ((200, 0), (300, 0), (300, 90))), "two boundaries"),
        (line("1", (0, 0), (50, 0)), "“LEG” has no closed boundary"),
        (tags((0, "CIRCLE"), (8, "1"), (10, 0), (20, 0), (40, "1e300")), "over a kilometre"),
        (tags((0, "SPLINE"), (8, "1"), (70, 8)), "no sound DXF"),
    ],
)
def test_a_boundary_that_cannot_be_cut_is_refused_with_its_place(inside, words):
    with pytest.raises(PatternFileError) as refusal:
        from_dxf(block("LEG", inside), text("Units: METRIC"))
    assert words in str(refusal.value)


def test_a_curve_of_no_numbers_is_refused():
    knots = [(40, k) for k in (0, 0, "nan", 0, 1, "inf", 1, 1)]
    corners = [t for x, y in ((0, 0), (90, 90), (-90, 90), (1, 0)) for t in ((10, x), (20, y))]
    curve = tags((0, "SPLINE"), (100, "AcDbEntity"), (8, "1"), (100, "AcDbSpline"), (71, 3))
    with pytest.raises(PatternFileError, match=r"“LEG”, layer “1” \(SPLINE\)"):
        from_dxf(block("LEG", curve + tags((70, 8), (72, 8), (73, 4), *knots, *corners)))


@pytest.mark.parametrize("share", [0.02, 0.1, 0.3, 0.5, 0.7, 0.9, 0.99])
def test_a_file_that_breaks_off_is_refused_whole(share):
    data = dxf_of(built_in_pattern().sizes[0], "Bear")
    with pytest.raises(PatternFileError):
        read_pattern_file(data[: int(len(data) * share)], "bear.dxf")


def test_a_file_that_breaks_off_in_a_block_names_it():
    data = dxf(block("LEG", WHOLE) + block("ARM", WHOLE))
    with pytest.raises(PatternFileError, match="breaks off in the block “ARM”"):
        read_pattern_file(data[: data.index(b"ARM") + 30], "legs.dxf")


def test_a_file_that_breaks_off_before_a_block_has_its_name_is_refused():
    with pytest.raises(PatternFileError, match="breaks off: "):
        read_pattern_file(b"0\nSECTION\n2\nBLOCKS\n0\nBLOCK\n", "short.dxf")


def test_two_blocks_of_one_name_are_refused():
    with pytest.raises(PatternFileError, match="Two blocks are called “leg”"):
        from_dxf(block("leg", WHOLE) + block("LEG", WHOLE))


def test_a_line_that_is_no_group_code_is_named():
    with pytest.raises(PatternFileError, match="line 5: “hello”"):
        read_pattern_file(b"0\nSECTION\n2\nBLOCKS\nhello\nworld\n0\nENDSEC\n0\nEOF\n", "a.dxf")


def test_the_line_is_counted_from_the_top_of_the_file():
    with pytest.raises(PatternFileError, match="line 7: “hello”"):
        read_pattern_file(b"\n\n0\nSECTION\n2\nBLOCKS\nhello\nworld\n", "a.dxf")


@pytest.mark.parametrize("data", [b"", b"\n\n", b"0\nEOF\n", section("ENTITIES", "").encode()])
def test_an_empty_file_is_refused(data):
    with pytest.raises(PatternFileError):
        read_pattern_file(data, "empty.dxf")


@pytest.mark.parametrize(
    ("blocks", "words"),
    [
        (block("LEG", line("1", (0, 0), (1, 1)) * 61_000), "entities"),
        ("".join(block(f"B{n}", "") for n in range(1_100)), "blocks"),
        (
            block("LEG", tags((0, "LWPOLYLINE"), (8, "1")) + tags((10, 1), (20, 1)) * 101_000),
            "points",
        ),
        (block("LEG", tags((0, "CIRCLE"), (8, "1"), (10, 0), (20, 0), (40, 9e5)) * 50), "points"),
    ],
)
def test_more_than_a_pattern_can_hold_is_stopped(blocks, words):
    with pytest.raises(PatternFileError, match=words):
        from_dxf(blocks)


def test_many_lines_from_one_place_are_no_outline():
    star = "".join(line("1", (0, 0), (n, 50)) for n in range(5_000))
    with pytest.raises(PatternFileError, match="no closed boundary"):
        from_dxf(block("LEG", star))


@pytest.mark.parametrize(
    ("data", "name", "words"),
    [
        (b"0\nSECTION\n" * 5_000_000, "large.dxf", "at most 8 MB"),
        (b"<svg>" + b" " * MOST_BYTES["svg"], "large.svg", "at most 4 MB"),
        (b"%PDF-1.7 ...", "a.svg", "a PDF"),
        (b"PK\x03\x04...", "a.dxf", "packed folder"),
        (b"\x1f\x8b...", "a.svgz", "compressed"),
        (b"hello", "a.txt", "neither an SVG nor a DXF"),
        (b"", "a.svg", "neither an SVG nor a DXF"),
        (b"0\nSECTION\n\0", "a.dxf", "binary DXF"),
        (b"<html></html>", "a.svg", "root is “html”"),
    ],
)
def test_other_files_and_too_large_ones_are_refused_at_once(data, name, words):
    with pytest.raises(PatternFileError) as refusal:
        read_pattern_file(data, name)
    assert words in str(refusal.value)


@pytest.mark.parametrize("mm_per_unit", [0, -1, float("nan"), float("inf")])
def test_a_unit_of_nothing_is_refused(mm_per_unit):
    with pytest.raises(PatternFileError, match="unit"):
        read_pattern_file(dxf(block("LEG", WHOLE)), "leg.dxf", mm_per_unit)

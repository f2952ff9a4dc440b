"""What the program writes it reads back: every piece of every built-in size."""

import io
import math
import re
from collections.abc import Callable, Sequence
from dataclasses import replace

import ezdxf
import pytest
from defusedxml.ElementTree import fromstring
from shapely import Polygon, affinity

from planning.drafting.exchange.found import Found, FoundPiece
from planning.drafting.exchange.read import read_pattern_file
from planning.drafting.exchange.write import dxf_of, piece_from, svg_of
from planning.drafting.library import built_in_pattern
from planning.drafting.pieces import DraftPiece, DraftSize
from planning.drafting.rings import Point, bounds_mm, mirrored

NEAR_MM = 0.01
SIZES = built_in_pattern().sizes
every_size = pytest.mark.parametrize("size", SIZES, ids=lambda size: size.name)
both_kinds = pytest.mark.parametrize(
    "write",
    [lambda size: svg_of(size, "Bear").encode(), lambda size: dxf_of(size, "Bear")],
    ids=["svg", "dxf"],
)


def apart_mm(ours: Sequence[Point], theirs: Sequence[Point] | None) -> float:
    assert theirs is not None
    return max((math.dist(a, b) for a, b in zip(ours, theirs, strict=True)), default=0.0)


def assert_same(piece: DraftPiece, found: FoundPiece) -> None:
    assert (found.name, found.count, found.mirrored) == (piece.name, piece.count, piece.mirrored)
    assert found.line == "cut"
    assert found.has_grain
    assert found.grain_deg == pytest.approx(piece.grain_deg, abs=0.01)
    assert apart_mm(piece.cut_line, found.outline) < NEAR_MM
    assert apart_mm(piece.seam_line, found.seam_line) < NEAR_MM
    for ours, theirs in ((piece.notches, found.notches), (piece.marks, found.marks)):
        assert [one.name for one in ours] == [one.name for one in theirs]
        assert apart_mm([one.at for one in ours], [one.at for one in theirs]) < NEAR_MM
    assert [n.is_double for n in piece.notches] == [n.is_double for n in found.notches]
    assert [line.name for line in piece.lines] == [line.name for line in found.lines]
    for ours_line, theirs_line in zip(piece.lines, found.lines, strict=True):
        assert apart_mm(ours_line.points, theirs_line.points) < NEAR_MM


@both_kinds
@every_size
def test_every_piece_comes_back_as_it_went(
    size: DraftSize, write: Callable[[DraftSize], bytes]
) -> None:
    found = read_pattern_file(write(size), "bear")
    assert [piece.size for piece in found.pieces] == [size.name] * len(size.pieces)
    for piece, back in zip(size.pieces, found.pieces, strict=True):
        assert_same(piece, back)
    assert (found.unit_words, found.is_unit_sure) == ("millimetres, said by the file", True)


@every_size
def test_svg_keeps_the_named_edges_and_has_nothing_to_ask(size: DraftSize) -> None:
    found = read_pattern_file(svg_of(size, "Bear").encode(), "bear.svg")
    for piece, back in zip(size.pieces, found.pieces, strict=True):
        assert (back.edges, back.opening, back.notes) == (piece.edges, piece.opening, ())
        whole = piece_from(back, 0)
        assert (whole.edges, whole.opening, whole.labels) == (
            piece.edges,
            piece.opening,
            piece.labels,
        )
    assert found.notes == ()


@both_kinds
def test_the_largest_piece_gives_the_size_to_check(write: Callable[[DraftSize], bytes]) -> None:
    size = SIZES[2]
    found = read_pattern_file(write(size), "bear")
    largest = max(size.pieces, key=lambda piece: Polygon(piece.cut_line).area)
    left, low, right, high = bounds_mm(largest.cut_line)
    assert found.width_mm == pytest.approx(right - left, abs=NEAR_MM)
    assert found.height_mm == pytest.approx(high - low, abs=NEAR_MM)


def placed(found: Found, origins: Sequence[Point]) -> list[Polygon]:
    return [
        affinity.translate(Polygon(piece.outline), *origin)
        for piece, origin in zip(found.pieces, origins, strict=True)
    ]


@every_size
def test_no_two_pieces_overlap_on_the_sheet_and_none_leaves_it(size: DraftSize) -> None:
    text = svg_of(size, "Bear")
    moves = re.findall(r"translate\((\S+) (\S+)\)", text)
    shapes = placed(
        read_pattern_file(text.encode(), "bear.svg"), [(float(x), -float(y)) for x, y in moves]
    )
    wide, tall = (float(side) for side in fromstring(text).get("viewBox").split()[2:])
    for index, shape in enumerate(shapes):
        left, low, right, high = shape.bounds
        assert 0 <= left < right <= wide
        assert -tall <= low < high <= 0
        assert all(shape.distance(other) >= 9 for other in shapes[:index])


def test_the_drawing_is_in_millimetres_with_a_line_to_check_it() -> None:
    root = fromstring(svg_of(SIZES[0], "Bear"))
    assert root.get("width") == f"{root.get('viewBox').split()[2]}mm"
    assert root.get("height") == f"{root.get('viewBox').split()[3]}mm"
    assert [e.get("d") for e in root.iter() if (e.get("d") or "").endswith("h100")] != []
    assert "Cut 2: 1 as drawn, 1 turned over." in [e.text for e in root.iter() if e.text]


def test_no_two_blocks_overlap_in_the_dxf_drawing_and_the_check_line_is_100_mm() -> None:
    document = ezdxf.read(io.StringIO(dxf_of(SIZES[2], "Bear").decode("ascii")))
    inserts = {e.dxf.name: e.dxf.insert for e in document.modelspace().query("INSERT")}
    found = read_pattern_file(dxf_of(SIZES[2], "Bear"), "bear.dxf")
    shapes = placed(found, [(at.x, at.y) for at in inserts.values()])
    assert len(shapes) == len(SIZES[2].pieces)
    assert all(a.distance(b) >= 9 for i, a in enumerate(shapes) for b in shapes[:i])
    (check,) = document.modelspace().query("LINE")
    assert check.dxf.start.distance(check.dxf.end) == pytest.approx(100)


def hard_names(size: DraftSize) -> DraftSize:
    first = size.pieces[0]
    name = "Ärmel “links” <b>&amp; \n0\nEOF\n"
    marks = tuple(replace(mark, name=f"Öse\r\n{mark.name}") for mark in first.marks)
    return replace(size, pieces=(replace(first, name=name, marks=marks), *size.pieces[1:]))


@both_kinds
def test_a_name_with_any_signs_stays_a_name(write: Callable[[DraftSize], bytes]) -> None:
    found = read_pattern_file(write(hard_names(SIZES[1])), "bear")
    assert found.pieces[0].name == "Ärmel “links” <b>&amp; 0 EOF"
    assert found.pieces[0].marks[0].name == "Öse arm joint"
    assert len(found.pieces) == len(SIZES[1].pieces)


def test_dxf_is_seven_bit_and_release_12_block_names_are_plain() -> None:
    data = dxf_of(hard_names(SIZES[1]), "Bär")
    assert data.isascii()
    names = re.findall(r"\nBLOCK\n8\n1\n2\n(.*)\n", data.decode())
    assert len(set(names)) == len(names) == len(SIZES[1].pieces)
    assert all(re.fullmatch(r"[A-Z0-9_]{1,31}", name) for name in names)


def test_a_piece_turned_in_the_drawing_keeps_its_shape_and_turns_its_grain() -> None:
    text = svg_of(SIZES[2], "Bear").replace('" data-piece="leg"', ' rotate(-30)" data-piece="leg"')
    ours = SIZES[2].piece("leg")
    back = next(p for p in read_pattern_file(text.encode(), "b.svg").pieces if p.name == "leg")
    assert back.grain_deg == pytest.approx((ours.grain_deg + 30) % 360, abs=0.02)
    turned = affinity.rotate(Polygon(ours.cut_line), 30, origin=(0, 0))
    assert Polygon(back.outline).symmetric_difference(turned).area < 1


def test_a_piece_turned_over_in_the_drawing_loses_its_named_edges_and_says_so() -> None:
    text = svg_of(SIZES[2], "Bear").replace('" data-piece="leg"', ' scale(-1 1)" data-piece="leg"')
    back = next(p for p in read_pattern_file(text.encode(), "b.svg").pieces if p.name == "leg")
    over = Polygon(mirrored(SIZES[2].piece("leg").cut_line))
    assert Polygon(back.outline).symmetric_difference(over).area < 1
    assert back.edges == ()
    assert "turned over" in back.notes[0]

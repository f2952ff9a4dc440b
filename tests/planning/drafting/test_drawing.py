import re
from dataclasses import replace

import pytest
from shapely import LineString, Point, Polygon

from planning.drafting.bear import bear
from planning.drafting.drawing import MARGIN_MM, drawing_of
from planning.drafting.pieces import DraftPiece
from planning.drafting.rings import bounds_mm

every_piece = pytest.mark.parametrize("piece", bear(230).pieces, ids=lambda piece: piece.name)
PAIR = re.compile(r"(-?[\d.]+) (-?[\d.]+)")


def places(path: str) -> list[tuple[float, float]]:
    return [(float(x), -float(y)) for x, y in PAIR.findall(path)]


@every_piece
def test_the_drawing_is_the_cut_line_and_a_margin(piece: DraftPiece) -> None:
    drawn = drawing_of(piece)
    left, low, right, high = bounds_mm(piece.cut_line)
    assert drawn.width_mm == pytest.approx(right - left + 2 * MARGIN_MM, abs=0.02)
    assert drawn.height_mm == pytest.approx(high - low + 2 * MARGIN_MM, abs=0.02)
    assert places(drawn.cut_path) == [pytest.approx(p, abs=0.006) for p in piece.cut_line]
    assert places(drawn.seam_path) == [pytest.approx(p, abs=0.006) for p in piece.seam_line]


@every_piece
def test_the_grain_arrow_lies_inside_and_points_along_the_grain(piece: DraftPiece) -> None:
    start, end = places(drawing_of(piece).grain_path)[:2]
    assert Polygon(piece.seam_line).contains(LineString([start, end]))
    assert start[0] == pytest.approx(end[0], abs=0.02)
    assert (end[1] > start[1]) == (piece.grain_deg == 90)


def test_the_grain_arrow_follows_a_turned_grain() -> None:
    turned = replace(bear(230).piece("leg"), grain_deg=45)
    start, end = places(drawing_of(turned).grain_path)[:2]
    assert end[0] - start[0] == pytest.approx(end[1] - start[1], abs=0.03)
    assert end[0] > start[0]


@every_piece
def test_each_notch_has_its_ticks_outside_the_seam_line(piece: DraftPiece) -> None:
    ticks = re.findall(r"M[^M]+", drawing_of(piece).notch_path)
    assert len(ticks) == sum(2 if notch.is_double else 1 for notch in piece.notches)
    for tick in ticks:
        assert Polygon(piece.seam_line).distance(Point(places(tick)[1])) > 2.5


def test_a_piece_without_an_opening_has_no_opening_path() -> None:
    assert drawing_of(bear(230).piece("sole")).opening_path == ""


def test_marks_and_edges_are_named_where_they_are() -> None:
    drawn = drawing_of(bear(230).piece("head side"))
    assert [mark.name for mark in drawn.marks] == ["eye"]
    assert [label.name for label in drawn.edge_labels][:2] == ["neck", "nape to crown"]
    assert [name for name, _ in drawn.line_paths] == ["ear"]


def test_a_grain_line_is_found_in_a_bent_piece_whose_centre_is_outside() -> None:
    bent = ((0, 0), (80, 0), (80, 100), (70, 100), (70, 10), (10, 10), (10, 100), (0, 100))
    piece = replace(bear(230).piece("sole"), seam_line=bent, cut_line=bent, notches=(), edges=())
    start, end = places(drawing_of(piece).grain_path)[:2]
    assert Polygon(bent).covers(LineString([start, end]))

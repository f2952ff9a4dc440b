"""When a line inside another is its seam line."""

import pytest
from shapely import Polygon

from planning.drafting.allowance import cut_line_of
from planning.drafting.exchange.outlines import Outline, inset_mm, pieces_among
from planning.drafting.library import built_in_pattern
from tests.planning.drafting.shapes_for_tests import BOW_TIE, EL, SQUARE, circle


def outline(ring, name):
    return Outline(ring, name, f"the line “{name}”")


@pytest.mark.parametrize("piece", built_in_pattern().sizes[2].pieces, ids=lambda p: p.name)
@pytest.mark.parametrize("allowance_mm", [3, 6, 10, 15])
def test_the_seam_line_of_every_built_in_piece_is_known_by_its_even_distance(piece, allowance_mm):
    cut = cut_line_of(piece.seam_line, allowance_mm)
    assert inset_mm(cut, piece.seam_line) == pytest.approx(allowance_mm, abs=0.1)


@pytest.mark.parametrize("allowance_mm", [3, 6, 10, 15])
@pytest.mark.parametrize("piece", built_in_pattern().sizes[2].pieces, ids=lambda p: p.name)
def test_so_is_one_whose_cut_line_has_sharp_corners(piece, allowance_mm):
    grown = Polygon(piece.seam_line).buffer(allowance_mm, join_style="mitre", mitre_limit=3)
    cut = tuple(grown.exterior.coords[:-1])
    assert inset_mm(cut, piece.seam_line) == pytest.approx(allowance_mm, abs=0.1)


@pytest.mark.parametrize(
    ("outer", "inner"),
    [
        (SQUARE, ((10, 20), (90, 20), (90, 80), (10, 80))),  # wider at two sides
        (SQUARE, ((6, 6), (50, 6), (50, 94), (6, 94))),  # half of it
        (circle(100), circle(98.5)),  # nearer than a seam
        (circle(100), circle(55)),  # farther than a seam
        (EL, ((6, 6), (14, 6), (14, 14), (6, 14))),  # a hole in a foot
        (SQUARE, BOW_TIE),
    ],
)
def test_a_line_that_is_not_even_is_no_seam_line(outer, inner):
    assert inset_mm(outer, inner) is None


def test_a_speck_is_left_out_and_named():
    pieces, notes = pieces_among([outline(SQUARE, "a"), outline(circle(2), "dot")])
    assert [piece.name for piece in pieces] == ["a"]
    assert pieces[0].notes[1].startswith("The file does not say how many")
    pieces, notes = pieces_among([outline(circle(2), "dot")])
    assert (pieces, notes) == ([], ["A speck was left out: the line “dot”."])


def test_pieces_side_by_side_are_pieces_and_keep_their_order():
    right = tuple((x + 100.0, y) for x, y in SQUARE)
    pieces, _ = pieces_among([outline(right, "right"), outline(SQUARE, "left")])
    assert [piece.name for piece in pieces] == ["right", "left"]


def test_a_line_inside_may_cross_itself():
    knot = tuple((x + 20, y + 20) for x, y in BOW_TIE)
    pieces, _ = pieces_among([outline(SQUARE, "a"), outline(knot, "knot")])
    assert "“knot”" in pieces[0].notes[1]

"""A piece that was read becoming a whole one."""

from dataclasses import replace

import pytest
from shapely import Polygon

from planning.drafting.exchange.found import FoundPiece, PatternFileError
from planning.drafting.exchange.write import piece_from
from planning.drafting.library import built_in_pattern
from planning.drafting.pieces import Edge, Notch
from tests.planning.drafting.exchange.files_for_tests import BOX, INNER
from tests.planning.drafting.shapes_for_tests import EL, SLOTTED

FOUND = FoundPiece(
    "pad", "", BOX, "cut", None, 3, 1, 45.0, True, notches=(Notch("a", (50.0, 0.0), True),)
)


def test_both_lines_of_the_file_are_kept_whatever_the_allowance():
    piece = piece_from(replace(FOUND, seam_line=INNER, edges=(Edge("foot", 0, 1),)), 3)
    assert (piece.cut_line, piece.seam_line) == (BOX, INNER)
    assert piece.edges == (Edge("foot", 0, 1),)
    assert (piece.count, piece.mirrored, piece.grain_deg) == (3, 1, 45)
    assert piece.labels == ("Cut 3: 2 as drawn, 1 turned over.",)


def test_a_notch_on_the_cutting_line_is_carried_to_the_seam_line():
    assert piece_from(FOUND, 10).notches == (Notch("a", (50, 10), True),)


def test_a_missing_seam_line_keeps_its_corners():
    seam = piece_from(FOUND, 10).seam_line
    assert set(seam) == set(INNER)
    inner = piece_from(replace(FOUND, outline=EL), 4).seam_line
    # by hand: the L with every side 4 mm in, its inner corner at (16, 16)
    expected = [(4, 4), (56, 4), (56, 16), (16, 16), (16, 76), (4, 76)]
    assert Polygon(inner).symmetric_difference(Polygon(expected)).area == pytest.approx(0)


def test_a_missing_cutting_line_is_drawn_outside():
    piece = piece_from(replace(FOUND, line="seam", edges=(Edge("foot", 0, 1),)), 6)
    assert piece.seam_line == BOX
    assert piece.edges == (Edge("foot", 0, 1),)
    # Steiner: area + perimeter a + pi a², less what the sixteen chords to a quarter turn cut off
    assert Polygon(piece.cut_line).area == pytest.approx(6000 + 320 * 6 + 3.14159 * 36, rel=1e-3)


def test_the_edges_of_an_outline_that_is_no_seam_line_are_dropped():
    piece = piece_from(replace(FOUND, edges=(Edge("a", 0, 1),), opening=Edge("a", 0, 1)), 6)
    assert (piece.edges, piece.opening) == ((), None)


@pytest.mark.parametrize("line", ["cut", "seam"])
def test_no_allowance_leaves_one_line(line):
    piece = piece_from(replace(FOUND, line=line), 0)
    assert piece.seam_line == piece.cut_line == BOX


@pytest.mark.parametrize("piece", built_in_pattern().sizes[1].pieces, ids=lambda p: p.name)
def test_the_seam_line_of_a_built_in_piece_is_found_again_from_its_cutting_line(piece):
    found = replace(FOUND, outline=piece.cut_line, notches=())
    seam = piece_from(found, 6).seam_line
    # the cutting line leaves out vertices up to 0.02 mm; at a corner that moves the tip further
    assert Polygon(seam).hausdorff_distance(Polygon(piece.seam_line)) < 0.2
    assert Polygon(seam).area == pytest.approx(Polygon(piece.seam_line).area, rel=0.001)


@pytest.mark.parametrize(
    ("outline", "line", "allowance_mm", "words"),
    [
        (BOX, "cut", 30, "too narrow"),
        (
            ((0, 0), (100, 0), (100, 40), (60, 40), (60, 8), (40, 8), (40, 40), (0, 40)),
            "cut",
            5,
            "too narrow",
        ),
        (((0, 0), (300, 0), (300, 8)), "cut", 3, "a tip near"),
        (SLOTTED, "seam", 6, "“pad”: A seam allowance of 6 mm runs into itself"),
        (BOX, "cut", -1, "nothing or more"),
        (BOX, "seam", float("nan"), "nothing or more"),
        (BOX, "seam", float("inf"), "nothing or more"),
    ],
)
def test_an_allowance_without_room_is_refused(outline, line, allowance_mm, words):
    with pytest.raises(PatternFileError, match=words):
        piece_from(replace(FOUND, outline=outline, line=line), allowance_mm)

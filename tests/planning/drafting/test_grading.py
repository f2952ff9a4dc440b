import math
from dataclasses import replace

import pytest
from shapely import Point, Polygon

from planning.drafting.bear import bear
from planning.drafting.entry import EnteredNotch
from planning.drafting.errors import CutLineCrosses, DraftError
from planning.drafting.grading import graded, graded_piece
from planning.drafting.pieces import DraftSize, Mark, PlacementLine
from planning.drafting.rings import perimeter_mm, signed_area_mm2
from shared.errors import OutlineError
from tests.planning.drafting.entries_for_tests import HALF_EGG, NAMED_SQUARE, piece_of

EGG = replace(
    piece_of(
        HALF_EGG,
        fold_edge="fold",
        opening="foot",
        notches=(EnteredNotch("hip", "side", 30, is_double=True),),
        marks=(Mark("eye", (20.0, 50.0)),),
    ),
    lines=(PlacementLine("pocket", ((-10.0, 20.0), (10.0, 20.0))),),
)
SIZE = DraftSize("20 cm", 200.0, (EGG,), 6.0, notes=("as tall as a cup",))


@pytest.mark.parametrize("factor", [0.5, 1.5, 3.2])
def test_lengths_grow_by_the_factor_and_areas_by_its_square(factor: float) -> None:
    size = graded(SIZE, 200 * factor)
    egg = size.pieces[0]
    assert perimeter_mm(egg.seam_line) == pytest.approx(factor * perimeter_mm(EGG.seam_line))
    assert signed_area_mm2(egg.seam_line) == pytest.approx(
        factor**2 * signed_area_mm2(EGG.seam_line)
    )
    for edge in EGG.edges:
        assert egg.stretch_mm(edge.name) == pytest.approx(factor * EGG.stretch_mm(edge.name))


@pytest.mark.parametrize("height", [150.0, 460.0])
def test_grading_the_bear_is_drafting_it_at_that_height(height: float) -> None:
    for ours, drafted in zip(graded(bear(300), height), bear(height), strict=True):
        assert signed_area_mm2(ours.seam_line) == pytest.approx(
            signed_area_mm2(drafted.seam_line), rel=1e-4
        )
        assert signed_area_mm2(ours.cut_line) == pytest.approx(
            signed_area_mm2(drafted.cut_line), rel=1e-4
        )


@pytest.mark.parametrize("height", [100.0, 500.0])
def test_the_allowance_keeps_its_width(height: float) -> None:
    egg = graded(SIZE, height).pieces[0]
    seam = Polygon(egg.seam_line)
    away = [seam.distance(Point(corner)) for corner in egg.cut_line]
    assert min(away) == pytest.approx(6, abs=0.05)
    assert max(away) == pytest.approx(6, abs=0.05)


def test_notches_marks_and_lines_move_with_the_seam_line() -> None:
    egg = graded(SIZE, 400).pieces[0]
    assert all(notch.at in egg.seam_line for notch in egg.notches)
    assert egg.marks[0] == Mark("eye", (40.0, 100.0))
    assert egg.lines[0].points == ((-20, 40), (20, 40))
    assert egg.notches[0].is_double
    assert (egg.edges, egg.opening, egg.count, egg.mirrored) == (EGG.edges, EGG.opening, 2, 1)


def test_a_grade_has_the_name_and_the_notes_of_its_own_height() -> None:
    size = graded(SIZE, 305)
    assert (size.name, size.height_mm, size.notes) == ("30.5 cm", 305, ())
    assert graded(bear(300), 150).notes[0].startswith("The arm outer is")


def test_its_own_height_leaves_a_size_as_it_is() -> None:
    assert graded(SIZE, 200.0) is SIZE


@pytest.mark.parametrize("height", [29.9, 2000.1, 0, -300, math.nan, math.inf])
def test_heights_out_of_range_are_refused(height: float) -> None:
    with pytest.raises(DraftError, match="30 and 2000 mm"):
        graded(SIZE, height)
    with pytest.raises(DraftError, match="30 and 2000 mm"):
        graded(replace(SIZE, height_mm=height), 300)


@pytest.mark.parametrize("factor", [0, -1, math.nan, math.inf])
def test_factors_that_are_no_size_are_refused(factor: float) -> None:
    with pytest.raises(DraftError, match="factor"):
        graded_piece(EGG, factor, 6)


def test_a_negative_allowance_is_refused() -> None:
    with pytest.raises(OutlineError, match="seam allowance"):
        graded_piece(EGG, 2, -1)


def test_a_slot_that_closes_when_smaller_is_refused_with_the_piece() -> None:
    slot = [(0, 0), (100, 0), (100, 100), (60, 100), (60, 50), (40, 50), (40, 100), (0, 100)]
    size = replace(SIZE, pieces=(piece_of(NAMED_SQUARE), replace(piece_of(slot), name="bib")))
    assert graded(size, 180).pieces[1].name == "bib"
    with pytest.raises(CutLineCrosses, match="piece “bib”: .* runs into itself"):
        graded(size, 60)

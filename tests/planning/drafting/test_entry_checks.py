import math
from dataclasses import replace
from typing import Any

import pytest

from planning.drafting.entering import entered_piece
from planning.drafting.entry import EnteredNotch, EntryError
from planning.drafting.pieces import Mark
from tests.planning.drafting.entries_for_tests import (
    HALF_EGG,
    NAMED_SQUARE,
    SQUARE_CORNERS,
    entry_of,
    round_points,
)


def refusal(points: Any, count: int = 2, mirrored: int = 1, **facts: Any) -> EntryError:
    with pytest.raises(EntryError) as refused:
        entered_piece(entry_of(points, **facts), "piece", count, mirrored)
    assert str(refused.value).endswith(".")
    return refused.value


@pytest.mark.parametrize(
    ("points", "row", "words"),
    [
        ([], None, "at least three points"),
        (SQUARE_CORNERS[:2], None, "at least three points"),
        (round_points(500, 301), None, "at most 300 points"),
        ((*SQUARE_CORNERS, (0, 0)), 4, "Point 5 is in the place of point 1"),
        ((*SQUARE_CORNERS[:2], *SQUARE_CORNERS[1:]), 2, "Point 3 is in the place of point 2"),
        ((*SQUARE_CORNERS[:3], (0, math.nan)), 3, "Point 4 is not given in numbers"),
        ((*SQUARE_CORNERS[:3], (-math.inf, 0)), 3, "Point 4 is not given in numbers"),
        ((*SQUARE_CORNERS[:3], (0, 2000.1)), 3, "larger than a table"),
        ([(0, 0), (50, 0), (90, 0)], None, "no area"),
        ([(0, 0), (50, 0), (90, 0.01)], None, "no area"),
        ([(0, 0), (100, 0), (100, 100, True, "top"), (0, 100)], 2, "Point 3 lies on a curve"),
        ([(0, 0, False, "a"), (9, 0), (9, 9, False, "a")], 2, "Two edges are called “a”"),
        ([(0, 0, False, "edge 2"), (9, 0), (9, 9)], 1, "Two edges are called “edge 2”"),
        (((-1500, 0), (1500, 0), (0, 900)), None, "larger than a table"),
    ],
)
def test_points_no_outline_can_be_drawn_from_are_refused(
    points: Any, row: int | None, words: str
) -> None:
    refused = refusal(points)
    assert (refused.field, refused.row) == ("points", row)
    assert words in str(refused)


def test_a_half_that_is_too_large_when_opened_out_is_refused() -> None:
    wide = [(0, 0), (1100, 0), (1100, 50), (0, 50, False, "fold")]
    assert "larger than a table" in str(refusal(wide, fold_edge="fold"))


def test_three_hundred_points_are_taken() -> None:
    assert len(entered_piece(entry_of(round_points(500, 300)), "p", 1, 0).seam_line) == 2400


@pytest.mark.parametrize("field", ["allowance_mm", "outside_mm"])
@pytest.mark.parametrize("width", [-0.1, math.nan, math.inf, 2001.0])
def test_widths_that_are_none_are_refused(field: str, width: float) -> None:
    facts: dict[str, Any] = {field: width}
    refused = refusal(SQUARE_CORNERS, **facts)
    assert (refused.field, refused.row) == (field, None)


@pytest.mark.parametrize(("count", "mirrored"), [(0, 0), (-1, 0), (2, 3), (2, -1)])
def test_copies_that_cannot_be_cut_are_refused(count: int, mirrored: int) -> None:
    assert refusal(SQUARE_CORNERS, count, mirrored).field == "count"


def test_a_grain_without_an_angle_is_refused() -> None:
    with pytest.raises(EntryError) as refused:
        entered_piece(entry_of(SQUARE_CORNERS), "piece", 1, 0, math.nan)
    assert refused.value.field == "grain_deg"


@pytest.mark.parametrize(
    ("at_mm", "edge", "words"),
    [
        (100.6, "foot", "100.6 mm along “foot”, which is 100.0 mm long"),
        (-0.6, "foot", "along “foot”"),
        (math.nan, "foot", "not given in numbers"),
        (5.0, "sole", "no edge in the table is called that"),
        (5.0, "foot, other half", "no edge in the table is called that"),
        (5.0, "left", "on the fold"),
    ],
)
def test_a_notch_off_its_edge_is_refused_with_its_row(at_mm: float, edge: str, words: str) -> None:
    good = EnteredNotch("good", "foot", 50.0)
    refused = refusal(
        NAMED_SQUARE, fold_edge="left", notches=(good, EnteredNotch("bad", edge, at_mm))
    )
    assert (refused.field, refused.row) == ("notches", 1)
    assert words in str(refused)


@pytest.mark.parametrize("at", [(50.0, 101.0), (-1.0, 50.0), (math.inf, 0.0)])
def test_a_mark_outside_is_refused_with_its_row(at: tuple[float, float]) -> None:
    refused = refusal(SQUARE_CORNERS, marks=(Mark("eye", (50.0, 50.0)), Mark("nose", at)))
    assert (refused.field, refused.row) == ("marks", 1)


def test_a_mark_in_the_seam_allowance_is_outside() -> None:
    mark = Mark("eye", (3.0, 50.0))
    assert refusal(SQUARE_CORNERS, is_cut_line=True, marks=(mark,)).field == "marks"


@pytest.mark.parametrize("opening", ["sole", "edge 9", "left"])
def test_an_unknown_opening_is_refused(opening: str) -> None:
    assert refusal(NAMED_SQUARE, fold_edge="left", opening=opening).field == "opening"


@pytest.mark.parametrize(
    ("points", "fold", "words"),
    [
        (NAMED_SQUARE, "middle", "No edge in the table"),
        (HALF_EGG, "side", "bent"),
        (round_points(50), "outline", "bent"),
        ([(0, 0, False, "all"), (50, 0, True), (50, 50, True)], "all", "bent"),
        (
            [(0, 0), (50, 0), (50, 80), (-20, 80), (0, 60, False, "fold")],
            "fold",
            "both sides",
        ),
        (
            [(0, 0), (50, 0), (50, 80), (0, 70), (20, 65), (0, 60, False, "fold")],
            "fold",
            "once more",
        ),
    ],
)
def test_an_edge_that_is_no_fold_is_refused(points: Any, fold: str, words: str) -> None:
    refused = refusal(points, fold_edge=fold)
    assert refused.field == "fold_edge"
    assert words in str(refused)


def test_a_name_that_is_taken_by_the_other_half_is_refused() -> None:
    named = [*HALF_EGG[:2], (40, 60, False, "foot, other half"), HALF_EGG[4]]
    assert "foot, other half" in str(refusal(named, fold_edge="fold"))


def test_an_allowance_that_runs_into_itself_is_refused_at_its_field() -> None:
    slotted = [(0, 0), (100, 0), (100, 100), (54, 100), (54, 50), (46, 50), (46, 100), (0, 100)]
    refused = refusal(slotted)
    assert refused.field == "allowance_mm"
    assert "runs into itself" in str(refused)


def test_nothing_of_the_entry_is_changed_by_drawing_it() -> None:
    typed = entry_of(NAMED_SQUARE)
    entered_piece(typed, "piece", 1, 0)
    assert typed == replace(typed)

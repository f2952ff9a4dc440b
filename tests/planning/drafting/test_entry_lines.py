from typing import Any

import pytest

from planning.drafting.curves import smooth, smooth_loop
from planning.drafting.entry import EntryError
from planning.drafting.entry_lines import outline_of, ring_of
from planning.drafting.rings import signed_area_mm2
from tests.planning.drafting.entries_for_tests import (
    HALF_EGG,
    NAMED_SQUARE,
    entry_of,
    round_points,
)


def test_corners_are_joined_by_straight_lines() -> None:
    drawn, is_turned = outline_of(entry_of(NAMED_SQUARE).points)
    assert not is_turned
    assert [edge.line for edge in drawn][:2] == [[(0, 0), (100, 0)], [(100, 0), (100, 100)]]
    assert [edge.name for edge in drawn] == ["foot", "right", "head", "left"]


def test_curve_points_between_corners_are_passed_through_smoothly() -> None:
    drawn, _ = outline_of(entry_of(HALF_EGG).points)
    side = next(edge for edge in drawn if edge.name == "side")
    curve = smooth([(30, 0), (50, 40), (35, 85), (0, 100)])
    assert side.line == [pytest.approx(point) for point in curve]
    assert (50, 40) in side.line


def test_a_run_of_curve_points_may_go_over_the_end_of_the_table() -> None:
    turned = (*HALF_EGG[3:], *HALF_EGG[:3])
    drawn, _ = outline_of(entry_of(turned).points)
    plain, _ = outline_of(entry_of(HALF_EGG).points)
    assert {edge.name: edge.line for edge in drawn} == {edge.name: edge.line for edge in plain}


def test_curve_points_alone_make_a_smooth_loop() -> None:
    points = round_points(50)
    drawn, _ = outline_of(entry_of(points).points)
    assert [edge.name for edge in drawn] == ["outline"]
    loop = smooth_loop([(x, y) for x, y, *_ in points])
    assert drawn[0].line == [pytest.approx(point) for point in loop]


def test_one_corner_starts_and_ends_the_only_edge() -> None:
    drawn, _ = outline_of(entry_of([(0, 0), (40, 60, True), (-40, 60, True)]).points)
    assert [edge.name for edge in drawn] == ["edge 1"]
    assert drawn[0].line[0] == drawn[0].line[-1] == (0, 0)


def test_a_table_that_runs_clockwise_is_turned_and_keeps_its_names() -> None:
    clockwise = [(0, 0, False, "left"), (0, 9, False, "head"), (9, 9, False, "right"), (9, 0)]
    drawn, is_turned = outline_of(entry_of(clockwise).points)
    assert is_turned
    assert signed_area_mm2(ring_of(drawn)) == 81
    assert {edge.name: edge.line for edge in drawn}["left"] == [(0, 9), (0, 0)]


@pytest.mark.parametrize(
    ("points", "row", "words"),
    [
        ([(0, 0), (9, 9), (9, 0), (0, 9)], 0, "line after point 1 crosses the line after point 3."),
        (
            [(0, 0), (90, 0), (90, 90), (50, -40), (0, 90)],
            0,
            "line after point 1 crosses the line after point 3.",
        ),
        (
            [(0, 0), (90, 0), (90, 60), (70, 60), (70, 30), (80, 70), (50, 90)],
            2,
            "line after point 3 crosses the line after point 5.",
        ),
        ([(0, 0), (90, 0), (50, 0), (50, 60)], 0, "after point 1 crosses the line after point 2."),
        ([(0, 0), (90, 0), (90, 60), (50, 0), (0, 60)], 0, "after point 1 crosses the line after"),
    ],
)
def test_lines_that_cross_or_touch_are_named(points: Any, row: int, words: str) -> None:
    with pytest.raises(EntryError) as refused:
        outline_of(entry_of(points).points)
    assert (refused.value.field, refused.value.row) == ("points", row)
    assert words in str(refused.value)


def test_a_curve_that_turns_back_on_itself_is_named() -> None:
    back_and_forth = [(0, 0), (-40, 0, True), (-80, 0, True), (90, 0, True)]
    with pytest.raises(EntryError, match="curve after point 3 crosses itself"):
        outline_of(entry_of(back_and_forth).points)

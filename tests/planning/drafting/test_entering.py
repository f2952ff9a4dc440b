import math
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import LinearRing, Polygon

from planning.drafting.allowance import cut_line_of
from planning.drafting.entering import entered_piece
from planning.drafting.entry import EnteredNotch, EntryError
from planning.drafting.pieces import DraftPiece, Mark
from planning.drafting.rings import is_simple, length_mm, perimeter_mm, signed_area_mm2
from tests.planning.drafting.entries_for_tests import (
    HALF_EGG,
    NAMED_SQUARE,
    SQUARE_CORNERS,
    entry_of,
    piece_of,
    round_points,
)


def is_sound(piece: DraftPiece) -> bool:
    """Rings simple and anticlockwise, the seam inside the cut, the edges a partition."""
    around = [point for edge in piece.edges for point in piece.points_of(edge)[:-1]]
    first = piece.edges[0].start
    return (
        is_simple(piece.seam_line)
        and is_simple(piece.cut_line)
        and 0 < signed_area_mm2(piece.seam_line) <= signed_area_mm2(piece.cut_line)
        and Polygon(piece.cut_line).buffer(0.001).covers(Polygon(piece.seam_line))
        and tuple(around) == (*piece.seam_line[first:], *piece.seam_line[:first])
    )


def test_a_piece_knows_what_was_said_of_it() -> None:
    entry = entry_of(NAMED_SQUARE, opening="left", marks=(Mark("eye", (50.0, 60.0)),))
    piece = entered_piece(entry, "pad", 4, 2, grain_deg=45)
    assert (piece.name, piece.count, piece.mirrored, piece.grain_deg) == ("pad", 4, 2, 45)
    assert piece.opening is not None
    assert piece.opening.name == "left"
    assert piece.marks == (Mark("eye", (50.0, 60.0)),)
    assert piece.labels == ("Cut 4: 2 as drawn, 2 turned over.",)
    assert is_sound(piece)


def test_a_seam_line_gets_its_cutting_line_outside() -> None:
    piece = piece_of(SQUARE_CORNERS)
    assert piece.seam_line == SQUARE_CORNERS
    assert piece.cut_line == tuple(
        (round(x, 4), round(y, 4)) for x, y in cut_line_of(SQUARE_CORNERS, 6)
    )


def test_a_cutting_line_is_kept_and_the_seam_line_lies_inside() -> None:
    piece = piece_of(SQUARE_CORNERS, is_cut_line=True)
    assert piece.cut_line == SQUARE_CORNERS
    assert piece.seam_line == ((6, 6), (94, 6), (94, 94), (6, 94))
    assert is_sound(piece)


def test_without_allowance_both_lines_are_one() -> None:
    notch = EnteredNotch("hip", "side", 33.3)
    piece = piece_of(HALF_EGG, is_cut_line=True, allowance_mm=0, notches=(notch,))
    assert piece.cut_line == piece.seam_line


def test_a_line_drawn_round_a_template_is_set_in_first() -> None:
    on_seam = piece_of(SQUARE_CORNERS, outside_mm=1.5)
    assert on_seam.seam_line == ((1.5, 1.5), (98.5, 1.5), (98.5, 98.5), (1.5, 98.5))
    on_cut = piece_of(SQUARE_CORNERS, outside_mm=1.5, is_cut_line=True)
    assert on_cut.cut_line == on_seam.seam_line
    assert on_cut.seam_line[0] == (7.5, 7.5)


def test_the_fold_is_set_in_with_the_template_but_has_no_allowance() -> None:
    half = [(0, 0), (50, 0), (50, 80), (0, 80, False, "fold")]
    piece = piece_of(half, fold_edge="fold", outside_mm=1, is_cut_line=True, allowance_mm=5)
    assert Polygon(piece.cut_line).bounds == pytest.approx((1 - 48, 1, 49, 79))
    assert Polygon(piece.seam_line).bounds == pytest.approx((1 - 43, 6, 44, 74))


@pytest.mark.parametrize("clockwise", [False, True])
def test_a_notch_is_measured_from_the_corner_its_edge_starts_at(clockwise: bool) -> None:
    points = list(NAMED_SQUARE)
    if clockwise:
        points = [(x, 100 - y, is_curve, name) for x, y, is_curve, name in NAMED_SQUARE]
    notch = EnteredNotch("hip", "foot", 20, is_double=True)
    piece = piece_of(points, notches=(notch,), is_cut_line=True)
    at = piece.notches[0].at
    assert at == (26, 94 if clockwise else 6)
    assert at in piece.seam_line
    assert (piece.notches[0].name, piece.notches[0].is_double) == ("hip", True)


def test_notches_at_both_ends_of_an_edge_and_a_little_past_them_are_taken() -> None:
    notches = [EnteredNotch(f"n{at}", "foot", at) for at in (-0.4, 0, 100, 100.4)]
    piece = piece_of(NAMED_SQUARE, notches=tuple(notches))
    assert [notch.at for notch in piece.notches] == [(0, 0), (0, 0), (100, 0), (100, 0)]


def test_notches_and_marks_come_again_on_the_other_half() -> None:
    piece = piece_of(
        HALF_EGG,
        fold_edge="fold",
        notches=(EnteredNotch("hip", "side", 30),),
        marks=(Mark("eye", (20.0, 50.0)), Mark("nose", (0.3, 70.0))),
    )
    right, left = piece.notches
    assert left.at == pytest.approx((-right.at[0], right.at[1]))
    assert {right.at, left.at} <= set(piece.seam_line)
    assert [(mark.name, mark.at) for mark in piece.marks] == [
        ("eye", (20, 50)),
        ("nose", (0.3, 70)),
        ("eye", (-20, 50)),
    ]


@settings(max_examples=50, deadline=None)
@given(st.lists(st.floats(0, 1), min_size=1, max_size=6), st.booleans(), st.booleans())
def test_notches_lie_on_the_seam_line_and_leave_its_length(
    shares: list[float], is_cut_line: bool, is_turned: bool
) -> None:
    points = list(HALF_EGG)
    if is_turned:
        points = [(-point[0], *point[1:]) for point in HALF_EGG]
    plain = piece_of(points, fold_edge="fold", is_cut_line=is_cut_line)
    long_mm = plain.stretch_mm("side")
    notches = tuple(
        EnteredNotch(f"n{row}", "side", share * long_mm) for row, share in enumerate(shares)
    )
    piece = piece_of(points, fold_edge="fold", is_cut_line=is_cut_line, notches=notches)
    assert len(piece.notches) == 2 * len(notches)
    assert all(notch.at in piece.seam_line for notch in piece.notches)
    assert perimeter_mm(piece.seam_line) == pytest.approx(perimeter_mm(plain.seam_line), abs=0.01)
    assert is_sound(piece)


@pytest.mark.parametrize("opening", ["side", "side, other half"])
def test_either_half_may_hold_the_opening(opening: str) -> None:
    piece = piece_of(HALF_EGG, fold_edge="fold", opening=opening)
    assert piece.opening is not None
    assert piece.opening.name == opening


def test_the_direction_of_the_table_makes_no_other_piece() -> None:
    there = piece_of(HALF_EGG)
    back = piece_of(tuple(reversed(HALF_EGG)))
    assert signed_area_mm2(back.seam_line) == pytest.approx(signed_area_mm2(there.seam_line))
    assert set(back.seam_line) == set(there.seam_line)


@st.composite
def stars(draw: st.DrawFn) -> list[tuple[float, float, bool]]:
    """Outlines that can be seen whole from their middle, with corners and curve points."""
    how_many = draw(st.integers(5, 14))
    reach = st.floats(60, 110)
    points = []
    for step in range(how_many):
        turn, radius = 2 * math.pi * step / how_many, draw(reach)
        points.append((radius * math.cos(turn), radius * math.sin(turn), draw(st.booleans())))
    return points if draw(st.booleans()) else points[::-1]


@settings(max_examples=60, deadline=None)
@given(stars(), st.booleans())
def test_any_star_becomes_a_sound_piece(points: list[Any], is_cut_line: bool) -> None:
    try:
        piece = piece_of(points, is_cut_line=is_cut_line, allowance_mm=3)
    except EntryError as refused:
        # a deep hollow between two corners may be too narrow for the allowance
        assert refused.field == "allowance_mm"  # noqa: PT017
        return
    assert is_sound(piece)
    walked = sum(length_mm(piece.points_of(edge)) for edge in piece.edges)
    assert walked == pytest.approx(LinearRing(piece.seam_line).length)
    corners = [point for point in points if not point[2]]
    assert len(piece.edges) == max(len(corners), 1)


@settings(max_examples=60, deadline=None)
@given(stars())
def test_stars_without_allowance_are_never_refused(points: list[Any]) -> None:
    piece = piece_of(points, allowance_mm=0)
    assert is_sound(piece)
    assert {(round(x, 4), round(y, 4)) for x, y, _ in points} <= set(piece.seam_line)


def test_a_loop_without_corners_is_one_edge() -> None:
    piece = piece_of(round_points(50), is_cut_line=True)
    assert [(edge.name, edge.start, edge.end) for edge in piece.edges] == [("outline", 0, 0)]
    assert is_sound(piece)

import math

import pytest
from shapely import LinearRing, Point

from planning.drafting.bear import bear
from planning.drafting.clips import clips_of, clips_of_piece
from planning.drafting.entry import EnteredNotch
from planning.drafting.pieces import DraftPiece
from planning.drafting.rings import length_mm
from tests.planning.drafting.entries_for_tests import (
    HALF_EGG,
    SQUARE_CORNERS,
    piece_of,
    round_points,
)


def half_round(radius_mm: float, hollow: bool) -> DraftPiece:
    """A strip whose upper edge bends in a half circle, out of it or into it."""
    sign, turns = (-1, range(15, 180, 15)) if hollow else (1, range(165, 0, -15))
    arc = [
        (radius_mm * math.cos(math.radians(t)), sign * radius_mm * math.sin(math.radians(t)), True)
        for t in turns
    ]
    arc = sorted(arc, reverse=True)
    wide, low = radius_mm + 50, -radius_mm - 50
    return piece_of(
        [(-wide, low), (wide, low), (wide, 0), (radius_mm, 0, False, "bend"), *arc]
        + [(-radius_mm, 0), (-wide, 0)],
    )


@pytest.mark.parametrize("radius", [10.0, 25.0, 38.0])
def test_a_tight_circle_is_tight_all_round(radius: float) -> None:
    circle = piece_of(round_points(radius, 24))
    clips = clips_of(circle, circle.edges[0])
    assert clips.tight_mm == pytest.approx(2 * math.pi * radius, rel=2e-3)
    assert not clips.inward
    assert clips.least == math.ceil(clips.tight_mm / 6)
    assert clips.most == math.ceil(clips.tight_mm / 3)


@pytest.mark.parametrize("radius", [42.0, 90.0])
def test_a_wide_circle_needs_no_clips(radius: float) -> None:
    circle = piece_of(round_points(radius, 24))
    clips = clips_of(circle, circle.edges[0])
    assert (clips.tight_mm, clips.least, clips.most, clips.spots) == (0, 0, 0, ())
    assert clips_of_piece(circle) == ()


def test_straight_edges_and_corners_need_no_clips() -> None:
    assert clips_of_piece(piece_of(SQUARE_CORNERS)) == ()
    assert clips_of_piece(piece_of([(0, 0), (15, 0), (15, 15), (0, 15)])) == ()
    # every corner of an octagon turns by 45 degrees or less, and no edge of it bends
    octagon = [(7, 0), (17, 0), (24, 7.1), (24, 17), (17, 24), (7, 24), (0, 17), (0, 7.1)]
    assert clips_of_piece(piece_of(octagon)) == ()


@pytest.mark.parametrize("hollow", [False, True])
def test_a_hollow_bend_is_clipped_and_a_full_one_notched_out(hollow: bool) -> None:
    (clips,) = clips_of_piece(half_round(25, hollow))
    assert (clips.edge, clips.inward) == ("bend", hollow)
    # the line unbends towards the corners at its ends, within the first marked point
    assert 0.8 * math.pi * 25 < clips.tight_mm < math.pi * 25


def test_spots_lie_on_the_seam_line_four_and_a_half_millimetres_apart() -> None:
    circle = piece_of(round_points(25, 24))
    (clips,) = clips_of_piece(circle)
    rim = LinearRing(circle.seam_line)
    assert clips.least <= len(clips.spots) <= clips.most
    assert all(rim.distance(Point(spot)) < 1e-9 for spot in clips.spots)
    along = [rim.project(Point(spot)) for spot in clips.spots]
    steps = [b - a for a, b in zip(along, along[1:], strict=False)]
    assert steps == pytest.approx([4.5] * len(steps), abs=1e-6)
    assert along[0] == pytest.approx(rim.length - along[-1], abs=1e-6)


def test_an_edge_that_bends_both_ways_has_clips_of_both_kinds() -> None:
    wave = [(x, 40 * math.sin(math.radians(2 * x)), True) for x in range(170, 0, -10)]
    piece = piece_of([(0, -60), (180, -60), (180, 0, False, "wave"), *wave, (0, 0)])
    full, hollow = clips_of_piece(piece)
    assert (full.inward, hollow.inward) == (False, True)
    assert full.tight_mm == pytest.approx(hollow.tight_mm, rel=0.05)
    edge = next(edge for edge in piece.edges if edge.name == "wave")
    assert clips_of(piece, edge).tight_mm == max(full.tight_mm, hollow.tight_mm)


def test_a_notch_changes_little() -> None:
    """A notch splits a straight step of the sampled curve; that is no flat and no sharper bend."""
    circle = piece_of(round_points(30, 24))
    notched = piece_of(
        round_points(30, 24), notches=tuple(EnteredNotch("n", "outline", at) for at in (21.3, 77.7))
    )
    (plain,), (with_notches,) = clips_of_piece(circle), clips_of_piece(notched)
    assert with_notches.tight_mm == pytest.approx(plain.tight_mm, abs=0.01)


@pytest.mark.parametrize("height", [150, 300, 500])
def test_no_edge_of_the_bear_is_tighter_than_it_is_long(height: float) -> None:
    for piece in bear(height):
        for clips in clips_of_piece(piece):
            assert 3 <= clips.tight_mm <= length_mm(piece.stretch(clips.edge)) + 1e-9
            assert 0 < clips.least <= len(clips.spots) <= clips.most


def test_a_larger_bear_has_a_smaller_share_to_clip() -> None:
    shares = []
    for height in (150, 300, 500):
        ear = bear(height).piece("ear")
        clips = clips_of(ear, ear.edges[1])
        shares.append(clips.tight_mm / ear.stretch_mm(clips.edge))
    assert shares == sorted(shares, reverse=True)


def test_both_halves_of_a_folded_piece_are_clipped_alike() -> None:
    found = {clips.edge: clips for clips in clips_of_piece(piece_of(HALF_EGG, fold_edge="fold"))}
    assert found["side"].least == found["side, other half"].least

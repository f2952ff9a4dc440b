from dataclasses import replace

import pytest
from shapely import Polygon

from planning.drafting.bear import bear
from planning.drafting.hands import hand_faults, hand_picture, is_handed
from planning.drafting.pieces import DraftPiece
from planning.drafting.rings import Ring, signed_area_mm2
from planning.drafting.shapes import moved
from tests.planning.drafting.entries_for_tests import (
    HALF_EGG,
    NAMED_SQUARE,
    piece_of,
    round_points,
)

EGG = piece_of(HALF_EGG, fold_edge="fold")
ELL = piece_of([(0, 0), (60, 0), (60, 20), (20, 20), (20, 80), (0, 80)])
# Turned half round it is itself; turned over it is not.
SLANT = piece_of([(0, 0), (80, 0), (110, 60), (30, 60)])


def turned(piece: DraftPiece, turn_deg: float) -> DraftPiece:
    def ring(points: Ring) -> Ring:
        return tuple(moved(list(points), (15.0, -7.0), turn_deg))

    return replace(
        piece, cut_line=ring(piece.cut_line), grain_deg=(piece.grain_deg + turn_deg) % 360
    )


@pytest.mark.parametrize("piece", [EGG, piece_of(NAMED_SQUARE), piece_of(round_points(40))])
@pytest.mark.parametrize("turn_deg", [0, 30, 90, 180, 255])
def test_a_piece_that_is_the_same_turned_over_has_no_hand(
    piece: DraftPiece, turn_deg: float
) -> None:
    assert not is_handed(turned(piece, turn_deg))


@pytest.mark.parametrize("piece", [ELL, SLANT])
@pytest.mark.parametrize("turn_deg", [0, 30, 90, 180, 255])
def test_a_piece_that_differs_turned_over_has_a_hand(piece: DraftPiece, turn_deg: float) -> None:
    assert is_handed(turned(piece, turn_deg))


def test_a_piece_that_is_alike_turned_over_and_half_round_has_no_hand() -> None:
    """Mirrored across the middle of its length: a leaf whose one side is fuller."""
    leaf = piece_of([(0, 0, False, "flat"), (100, 0, False, "full"), (50, 40, True)])
    assert not is_handed(replace(leaf, grain_deg=90))
    assert not is_handed(replace(leaf, grain_deg=0))


def test_the_grain_decides_where_the_shape_alone_would_not() -> None:
    """An egg lying across the slant of its grain cannot be laid as its own mirror image."""
    assert is_handed(replace(EGG, grain_deg=45))


@pytest.mark.parametrize(("bump_mm", "handed"), [(0.4, False), (6.0, True)])
def test_a_millimetre_makes_no_hand(bump_mm: float, handed: bool) -> None:
    bumped = [(0, 0), (100, 0), (100, 100), (50 + bump_mm, 160), (0, 100)]
    assert is_handed(piece_of(bumped)) == handed


def test_the_hands_of_the_bear_are_as_a_sewer_knows_them() -> None:
    hands = {piece.name: is_handed(piece) for piece in bear(300)}
    assert hands["head side"]
    assert hands["arm outer"]
    assert hands["leg"]
    assert not hands["head gusset"]


def test_the_bear_has_no_fault() -> None:
    assert hand_faults(bear(300)) == ()


@pytest.mark.parametrize(
    ("count", "mirrored", "faulty"),
    [(1, 0, False), (1, 1, False), (2, 0, True), (2, 1, False), (2, 2, True), (4, 1, False)],
)
def test_copies_that_all_face_one_way_are_a_fault(count: int, mirrored: int, faulty: bool) -> None:
    piece = replace(ELL, count=count, mirrored=mirrored)
    assert bool(hand_faults([piece])) == faulty


def test_a_fault_says_which_piece_and_what_to_do() -> None:
    (fault,) = hand_faults([replace(EGG, mirrored=0), replace(SLANT, count=4, mirrored=0)])
    assert (fault.piece, fault.count) == ("piece", 4)
    assert fault.text.startswith("All 4 copies of “piece” face the same way")
    assert "Cut 2 of them turned over" in fault.text


def test_pieces_that_are_meant_alike_are_no_fault() -> None:
    section = replace(SLANT, name="section", count=6, mirrored=0)
    assert hand_faults([section], {"section"}) == ()
    assert len(hand_faults([section], {"cap"})) == 1


@pytest.mark.parametrize("mirrored", [0, 2])
def test_the_picture_shows_two_alike_and_then_a_pair(mirrored: int) -> None:
    wrong, right = hand_picture(replace(ELL, mirrored=mirrored))
    shift = wrong[1][0][0] - wrong[0][0][0]
    assert wrong[1] == tuple((pytest.approx(x + shift), y) for x, y in wrong[0])
    assert not Polygon(right[0]).equals(Polygon(moved(list(right[1]), (0, 0), about=right[1][0])))
    for pair in (wrong, right):
        first, second = (Polygon(ring) for ring in pair)
        assert first.distance(second) > 5
        assert first.bounds[0] == first.bounds[1] == second.bounds[1] == 0
        assert all(
            signed_area_mm2(ring) == pytest.approx(signed_area_mm2(ELL.cut_line)) for ring in pair
        )


def test_copies_that_are_all_turned_over_are_shown_so() -> None:
    wrong, right = hand_picture(replace(ELL, mirrored=2))
    assert Polygon(wrong[1]).equals_exact(Polygon(right[1]), 1e-9)
    wrong, right = hand_picture(replace(ELL, mirrored=0))
    assert wrong[0] == right[0]

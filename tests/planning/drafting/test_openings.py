import math
from itertools import pairwise

import pytest

from planning.drafting.library import drafted
from planning.drafting.openings import LEAST_MM, MOST_MM, opened
from planning.drafting.pieces import DraftPiece
from planning.drafting.rings import length_mm
from tests.planning.drafting.shapes_for_tests import ANIMALS

STUFFED = ("body back", "arm outer", "arm inner", "leg")
STRAIGHT = [(10.0 * step, 0.0) for step in range(21)]


def turning_deg(piece: DraftPiece) -> float:
    """The most that two steps of an opening differ in heading."""
    assert piece.opening
    headings = [
        math.degrees(math.atan2(b[1] - a[1], b[0] - a[0]))
        for a, b in pairwise(piece.points_of(piece.opening))
    ]
    return max(abs((b - a + 180) % 360 - 180) for a in headings for b in headings)


@pytest.mark.parametrize("key", ANIMALS)
@pytest.mark.parametrize("pose", ["standing", "sitting"])
def test_body_arms_and_legs_make_five_openings(key: str, pose: str) -> None:
    size = drafted(key, 300, pose=pose)
    named = {piece.name: piece.opening.name for piece in size if piece.opening}
    assert named["body back"] == "centre back, opening"
    assert {named[name] for name in STUFFED[1:]} == {"opening"}
    arms, legs = size.piece("arm outer").count, size.piece("leg").count // 2
    assert 1 + arms + legs == 5


@pytest.mark.parametrize("key", ANIMALS)
@pytest.mark.parametrize("pose", ["standing", "sitting"])
@pytest.mark.parametrize("height_mm", [150, 230, 300, 380, 460, 500])
def test_an_opening_lets_a_hand_in_wherever_the_edge_is_long_enough(
    key: str, pose: str, height_mm: float
) -> None:
    size = drafted(key, height_mm, pose=pose)
    for name in STUFFED:
        piece = size.piece(name)
        assert piece.opening
        open_mm = piece.stretch_mm(piece.opening.name)
        edge = "centre back" if name == "body back" else "back"
        whole_mm = open_mm + sum(piece.stretch_mm(f"{edge}, {part}") for part in ("lower", "upper"))
        assert open_mm <= MOST_MM
        assert open_mm >= min(LEAST_MM, 0.58 * whole_mm), name
        # small ones take more of the edge, so they bend more
        assert turning_deg(piece) < (40 if height_mm >= 300 else 70), name


def test_openings_of_both_arm_layers_meet() -> None:
    size = drafted("rabbit", 230)
    for edge in ("back, lower", "opening", "back, upper"):
        assert size.piece("arm outer").stretch_mm(edge) == pytest.approx(
            size.piece("arm inner").stretch_mm(edge)
        )


def test_an_opening_that_is_right_stays_as_it_is() -> None:
    assert [length_mm(part) for part in opened(STRAIGHT, (5, 11), (1, 19))] == [50, 60, 90]


def test_a_short_opening_grows_to_both_sides_and_no_further_than_it_may() -> None:
    assert [length_mm(part) for part in opened(STRAIGHT, (9, 11), (8, 19))] == [80, 50, 70]
    assert [length_mm(part) for part in opened(STRAIGHT, (9, 11), (9, 12))] == [90, 30, 80]


def test_a_long_opening_shrinks_from_both_sides() -> None:
    assert [length_mm(part) for part in opened(STRAIGHT, (4, 16), (1, 19))] == [60, 80, 60]


def test_the_parts_share_their_ends() -> None:
    lower, opening, upper = opened(STRAIGHT, (9, 11), (1, 19))
    assert lower[-1] == opening[0]
    assert opening[-1] == upper[0]

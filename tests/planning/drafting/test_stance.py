import math

import pytest

from planning.drafting.errors import DraftError
from planning.drafting.library import drafted, seams_for
from planning.drafting.pieces import DraftPiece
from planning.drafting.rings import length_mm
from planning.drafting.stance import TURN_DEG, Stance
from tests.planning.drafting.shapes_for_tests import ANIMALS, corner_deg

every_animal = pytest.mark.parametrize("key", ANIMALS)


def mark(piece: DraftPiece, name: str) -> tuple[float, float]:
    return next(mark.at for mark in piece.marks if mark.name == name)


@pytest.mark.parametrize(("pose", "face"), [("lying", "ahead"), ("standing", "up")])
def test_an_unknown_stance_is_refused(pose: str, face: str) -> None:
    with pytest.raises(DraftError, match="Choose one of"):
        Stance(pose, face)


@every_animal
def test_a_sitting_animal_is_as_tall_from_seat_to_crown_as_asked(key: str) -> None:
    """Standing, the seat is a stated share of the height; sitting, that share is left out."""
    sitting, standing = drafted(key, 300, pose="sitting"), drafted(key, 300)
    grown = sitting.piece("head side").stretch_mm("neck") / standing.piece("head side").stretch_mm(
        "neck"
    )
    tall_cm = 30 * grown
    assert 300 / (300 * grown) == pytest.approx(1 - SEAT_SHARES[key], rel=1e-5)
    assert f"it would stand {tall_cm:.0f} cm tall" in sitting.notes[0]
    assert "from the seat to the crown" in sitting.notes[0]


SEAT_SHARES = {"bear": 0.28, "bear-baby": 0.23, "bear-long": 0.36, "rabbit": 0.275}


@every_animal
def test_sitting_moves_the_legs_to_the_front_and_lower(key: str) -> None:
    shares = {}
    for pose in ("standing", "sitting"):
        front = drafted(key, 300, pose=pose).piece("body front")
        side = (*front.stretch("side, seat to hip"), *front.stretch("side, hip to shoulder")[1:])
        notch = next(n.at for n in front.notches if n.name == "hip")
        below = front.stretch_mm("side, seat to hip") / length_mm(side)
        inward = notch[0] - mark(front, "leg joint")[0]
        wide = max(x for x, _ in front.seam_line) - min(x for x, _ in front.seam_line)
        shares[pose] = (below, inward / wide)
    assert shares["sitting"][0] < 0.6 * shares["standing"][0]
    assert shares["sitting"][1] > 2 * shares["standing"][1]


@every_animal
def test_the_seat_of_a_sitting_animal_is_flat_and_wide(key: str) -> None:
    size = drafted(key, 300, pose="sitting")
    seat, front = size.piece("seat"), size.piece("body front")
    wide = max(x for x, _ in seat.seam_line) - min(x for x, _ in seat.seam_line)
    assert size.width_mm
    assert 0.35 * size.width_mm < wide < size.width_mm
    assert corner_deg(front, "seat") == pytest.approx(90, abs=6)


@every_animal
def test_the_rim_over_the_seat_runs_on_straight_across_every_seam(key: str) -> None:
    size = drafted(key, 300, pose="sitting")
    front, back = size.piece("body front"), size.piece("body back")
    at_side = corner_deg(front, "side, seat to hip") + corner_deg(back, "seat")
    assert at_side == pytest.approx(180, abs=8)
    assert 2 * corner_deg(front, "seat") == pytest.approx(180, abs=8)
    assert 2 * corner_deg(back, "centre back, lower") == pytest.approx(180, abs=8)


@every_animal
@pytest.mark.parametrize("pose", ["standing", "sitting"])
def test_a_face_aside_moves_chin_and_nape_round_the_neck_by_its_angle(key: str, pose: str) -> None:
    size = drafted(key, 300, pose=pose, face="aside")
    front, back = size.piece("body front"), size.piece("body back")
    round_mm = 2 * sum(
        piece.stretch_mm(f"neck, {part}") for piece in (front, back) for part in ("side", "centre")
    )
    turned_deg = 360 * front.stretch_mm("neck, centre") / round_mm
    assert turned_deg == pytest.approx(TURN_DEG, abs=0.1)
    assert back.stretch_mm("neck, centre") == pytest.approx(
        front.stretch_mm("neck, centre"), abs=0.01
    )
    assert "chin, face aside" in {notch.name for notch in front.notches}
    assert "nape, face aside" in {notch.name for notch in back.notches}
    assert "looks aside" in size.notes[-1] or "looks aside" in " ".join(size.notes)


@every_animal
def test_a_face_aside_changes_only_the_joining_and_not_the_outlines(key: str) -> None:
    ahead, aside = drafted(key, 300), drafted(key, 300, face="aside")
    for before, after in zip(ahead, aside, strict=True):
        new = [point for point in after.seam_line if point not in before.seam_line]
        assert len(new) <= 1
        assert math.isclose(
            length_mm([*before.seam_line, before.seam_line[0]]),
            length_mm([*after.seam_line, after.seam_line[0]]),
            abs_tol=0.001,
        )


def test_the_neck_of_a_face_aside_is_walked_from_chin_to_nape_both_ways() -> None:
    names = [seam.name for seam in seams_for("bear", face="aside") if seam.name.startswith("neck")]
    assert len(names) == 2
    assert all("chin to nape" in name for name in names)

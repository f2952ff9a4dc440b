"""The body measures of an animal: a few finished lengths, each a share of the standing height.

The shares are this project's own, chosen by eye; they are nobody's pattern.
Everything drafted and drawn, flat pieces and finished figure alike, comes from these measures.
"""

import math
from dataclasses import astuple, dataclass

from planning.drafting.errors import DraftError
from planning.drafting.stance import Stance

SMALLEST_MM = 150.0
LARGEST_MM = 500.0


@dataclass(frozen=True)
class BodyMeasures:
    """Finished measures in millimetres (or shares of the height, in ``CHARACTERS``).

    ``height_mm`` runs from sole to crown, ears not counted. ``seat_height_mm`` is from the floor to
    the lowest point of the body, ``hip_height_mm`` and ``shoulder_height_mm`` to the joints. Widths
    of limbs are their finished thickness; ``brow_mm``, ``nose_mm`` and ``nape_mm`` are full widths
    of the head gusset.
    """

    height_mm: float
    head_height_mm: float
    head_depth_mm: float
    muzzle_mm: float
    brow_mm: float
    nose_mm: float
    nape_mm: float
    ear_width_mm: float
    ear_height_mm: float
    body_length_mm: float
    body_width_mm: float
    body_depth_mm: float
    seat_height_mm: float
    shoulder_height_mm: float
    arm_length_mm: float
    arm_width_mm: float
    hip_height_mm: float
    leg_width_mm: float
    ankle_width_mm: float
    foot_length_mm: float

    @property
    def head_width_mm(self) -> float:
        """Across the stuffed head at the ears: the gusset and both sides make an oval girth.

        Each side runs from the gusset seam to the chin, about the head's height; the oval of that
        girth (pi times the sum of its half-axes, nearly) is as high as the head.
        """
        girth_mm = self.brow_mm + 2 * self.head_height_mm
        return 2 * (girth_mm / math.pi - self.head_height_mm / 2)

    @property
    def leg_length_mm(self) -> float:
        """From the sole to the rounded top of the leg, half a leg's width above the joint."""
        return self.hip_height_mm + self.leg_width_mm / 2


CHARACTERS: dict[str, BodyMeasures] = {
    "classic": BodyMeasures(
        height_mm=1.0,
        head_height_mm=0.30,
        head_depth_mm=0.335,
        muzzle_mm=0.105,
        brow_mm=0.25,
        nose_mm=0.055,
        nape_mm=0.08,
        ear_width_mm=0.135,
        ear_height_mm=0.105,
        body_length_mm=0.42,
        body_width_mm=0.29,
        body_depth_mm=0.26,
        seat_height_mm=0.28,
        shoulder_height_mm=0.62,
        arm_length_mm=0.37,
        arm_width_mm=0.105,
        hip_height_mm=0.36,
        leg_width_mm=0.13,
        ankle_width_mm=0.105,
        foot_length_mm=0.185,
    ),
    "baby": BodyMeasures(
        height_mm=1.0,
        head_height_mm=0.36,
        head_depth_mm=0.375,
        muzzle_mm=0.085,
        brow_mm=0.32,
        nose_mm=0.06,
        nape_mm=0.105,
        ear_width_mm=0.15,
        ear_height_mm=0.105,
        body_length_mm=0.41,
        body_width_mm=0.32,
        body_depth_mm=0.29,
        seat_height_mm=0.23,
        shoulder_height_mm=0.56,
        arm_length_mm=0.31,
        arm_width_mm=0.12,
        hip_height_mm=0.31,
        leg_width_mm=0.145,
        ankle_width_mm=0.125,
        foot_length_mm=0.19,
    ),
    "long-limbed": BodyMeasures(
        height_mm=1.0,
        head_height_mm=0.255,
        head_depth_mm=0.30,
        muzzle_mm=0.11,
        brow_mm=0.205,
        nose_mm=0.045,
        nape_mm=0.065,
        ear_width_mm=0.11,
        ear_height_mm=0.09,
        body_length_mm=0.385,
        body_width_mm=0.24,
        body_depth_mm=0.215,
        seat_height_mm=0.36,
        shoulder_height_mm=0.675,
        arm_length_mm=0.45,
        arm_width_mm=0.09,
        hip_height_mm=0.43,
        leg_width_mm=0.11,
        ankle_width_mm=0.09,
        foot_length_mm=0.165,
    ),
}


def measures_of(
    height_mm: float, character: str = "classic", stance: Stance | None = None
) -> BodyMeasures:
    """Return the measures of a bear of this height and character.

    The height of one that sits is from seat to crown; its measures are those of the taller bear it
    would be, standing. Raises DraftError for an unknown character or a height outside 150 to
    500 mm.
    """
    if character not in CHARACTERS:
        known = ", ".join(CHARACTERS)
        raise DraftError(f"There is no bear called “{character}”. Choose one of: {known}.")
    return grown(CHARACTERS[character], height_mm, stance or Stance(), "bear")


def grown(shares: BodyMeasures, height_mm: float, stance: Stance, what: str) -> BodyMeasures:
    """Return the measures of an animal from its shares; refuses as ``measures_of`` does."""
    if not SMALLEST_MM <= height_mm <= LARGEST_MM:
        way = "sit" if stance.is_sitting else "stand"
        raise DraftError(
            f"The {what} can {way} {SMALLEST_MM:g} to {LARGEST_MM:g} mm tall, not {height_mm:g} mm."
        )
    standing_mm = height_mm / (1 - shares.seat_height_mm) if stance.is_sitting else height_mm
    return BodyMeasures(*(share * standing_mm for share in astuple(shares)))


def flat_width_mm(finished_width_mm: float) -> float:
    """Return the width of a flat tube that stuffs out to a round one of this thickness.

    Half the girth of the circle: a tube laid flat shows half its cloth on each side.

    >>> round(flat_width_mm(10), 2)
    15.71
    """
    return math.pi / 2 * finished_width_mm

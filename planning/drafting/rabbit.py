"""The rabbit: a round head, long lined ears, long feet and a tail, on the same body as the bear.

Its measures are its own; ears are not counted in its height. The shares were chosen by eye.
"""

import math
from dataclasses import replace

from planning.drafting.arm import arm
from planning.drafting.bear import SEAM_ALLOWANCE_MM, animal_width_mm, stance_notes
from planning.drafting.body import body
from planning.drafting.curves import Line
from planning.drafting.leg import leg
from planning.drafting.measures import BodyMeasures, grown
from planning.drafting.outline import Drawn, Making, made
from planning.drafting.pieces import DraftPiece, DraftSize, Mark
from planning.drafting.practice import turning_notes
from planning.drafting.rabbit_head import rabbit_head
from planning.drafting.rings import length_mm, point_along
from planning.drafting.stance import Stance

RABBIT = BodyMeasures(
    height_mm=1.0,
    head_height_mm=0.30,
    head_depth_mm=0.30,
    muzzle_mm=0.07,
    brow_mm=0.24,
    nose_mm=0.06,
    nape_mm=0.085,
    ear_width_mm=0.115,
    ear_height_mm=0.36,
    body_length_mm=0.425,
    body_width_mm=0.265,
    body_depth_mm=0.24,
    seat_height_mm=0.275,
    shoulder_height_mm=0.625,
    arm_length_mm=0.35,
    arm_width_mm=0.09,
    hip_height_mm=0.345,
    leg_width_mm=0.12,
    ankle_width_mm=0.105,
    foot_length_mm=0.225,
)
TAIL_SHARE = 0.105  # of the height: the tail across, laid flat
_TAIL_STEPS = 48
_TAIL_OPEN = 12  # of the steps round it


def rabbit(
    height_mm: float,
    seam_allowance_mm: float = SEAM_ALLOWANCE_MM,
    stance: Stance | None = None,
) -> DraftSize:
    """Draft one rabbit: sole to crown when it stands, seat to crown when it sits.

    Raises DraftError for a height outside 150 to 500 mm, OutlineError for a negative allowance and
    CutLineCrosses for one too wide for the rabbit.
    """
    stance = stance or Stance()
    m = measures_of_rabbit(height_mm, stance)
    top = rabbit_head(m, stance, seam_allowance_mm)
    pieces = (
        *(_with_tail_place(p) for p in body(m, top.neck_mm, stance, seam_allowance_mm)),
        *top.pieces,
        *arm(m, seam_allowance_mm),
        *leg(m, seam_allowance_mm),
        _tail(m, seam_allowance_mm),
    )
    return DraftSize(
        name=f"{height_mm / 10:g} cm",
        height_mm=height_mm,
        pieces=pieces,
        seam_allowance_mm=seam_allowance_mm,
        width_mm=animal_width_mm(m),
        notes=(*stance_notes(m, stance), *turning_notes(pieces)),
    )


def measures_of_rabbit(height_mm: float, stance: Stance | None = None) -> BodyMeasures:
    """Return the measures of a rabbit of this height; raises DraftError outside 150 to 500 mm."""
    return grown(RABBIT, height_mm, stance or Stance(), "rabbit")


def _with_tail_place(piece: DraftPiece) -> DraftPiece:
    """Mark on the centre-back seam where the tail is sewn on."""
    if piece.name != "body back":
        return piece
    lower = piece.stretch("centre back, lower")
    return replace(piece, marks=(Mark("tail", point_along(lower, length_mm(lower) / 2)),))


def _tail(m: BodyMeasures, allowance_mm: float) -> DraftPiece:
    rim = _circle(TAIL_SHARE * m.height_mm / 2)
    tip = (_TAIL_STEPS + _TAIL_OPEN) // 2
    opening, first, second = rim[: _TAIL_OPEN + 1], rim[_TAIL_OPEN : tip + 1], rim[tip:]
    return made(
        [
            Drawn("opening", opening, "opening, end"),
            Drawn("rim, first half", first, "tail tip"),
            Drawn("rim, second half", second, "opening, start"),
        ],
        Making("tail", count=2, mirrored=1, opening="opening"),
        allowance_mm,
    )


def _circle(radius_mm: float) -> Line:
    turns = [2 * math.pi * step / _TAIL_STEPS for step in range(_TAIL_STEPS)]
    ring = [(radius_mm * math.cos(t), radius_mm * math.sin(t)) for t in turns]
    return [*ring, ring[0]]

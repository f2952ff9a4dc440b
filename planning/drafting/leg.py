"""The leg: two mirrored halves with a foot, and an oval sole, wider at the toes.

The sole keeps its shape and takes the size at which its rim equals the lower edges of both halves.
"""

import math

from planning.drafting.curves import Line, smooth
from planning.drafting.measures import BodyMeasures, flat_width_mm
from planning.drafting.openings import opened_between
from planning.drafting.outline import Drawn, Making, made
from planning.drafting.pieces import DETAIL_PLACE, DraftPiece, Mark
from planning.drafting.rings import length_mm

SOLE_WIDTH = 0.72  # of its length
SOLE_STEPS = 96
OPENING = (0.42, 0.78)  # of the back edge from the heel up: the usual opening
WIDEST_OPENING = (0.10, 0.84)


def leg(m: BodyMeasures, allowance_mm: float) -> tuple[DraftPiece, ...]:
    """Draft the leg and the sole that fits it."""
    lower, back, front = _leg_lines(m)
    back_parts = opened_between(back, OPENING, WIDEST_OPENING)
    top = back[-1]
    joint = Mark("leg joint", (top[0], m.hip_height_mm))
    return (
        made(
            [
                Drawn("foot", lower, "heel"),
                Drawn("back, lower", back_parts[0], "opening, lower end"),
                Drawn("opening", back_parts[1], "opening, upper end"),
                Drawn("back, upper", back_parts[2], "hip"),
                Drawn("front", front, "toe"),
            ],
            Making("leg", count=4, mirrored=2, opening="opening", marks=(joint,)),
            allowance_mm,
        ),
        _sole(length_mm(lower), allowance_mm),
    )


def _leg_lines(m: BodyMeasures) -> tuple[Line, Line, Line]:
    foot = m.foot_length_mm * _rim_of_unit_sole() / 2
    thigh, ankle = flat_width_mm(m.leg_width_mm), flat_width_mm(m.ankle_width_mm)
    return leg_lines(foot, thigh, ankle, m.leg_length_mm)


def leg_lines(foot: float, thigh: float, ankle: float, tall: float) -> tuple[Line, Line, Line]:
    """Return lower edge (toe to heel), back (heel to top) and front (top to toe) of a leg.

    The toe is at (0, 0) and points to the left; all four measures are in millimetres.
    """
    top = (foot - 0.46 * thigh, tall)
    shin = 0.975 * foot - ankle
    lower = smooth([(0.0, 0.0), (foot, 0.0)], start_deg=352, end_deg=8)
    back = smooth(
        [
            (foot, 0.0),
            (0.985 * foot, 0.24 * tall),
            (foot + 0.01 * thigh, 0.56 * tall),
            (foot - 0.01 * thigh, 0.80 * tall),
            (foot - 0.16 * thigh, 0.94 * tall),
            top,
        ],
        start_deg=98,
        end_deg=180,
    )
    front = smooth(
        [
            top,
            (foot - 0.80 * thigh, 0.935 * tall),
            (foot - 0.98 * thigh, 0.78 * tall),
            (foot - 0.97 * thigh, 0.56 * tall),
            (shin, 0.36 * tall),
            (0.45 * shin + 0.07 * foot, 0.235 * tall),
            (0.02 * foot, 0.12 * tall),
            (0.0, 0.0),
        ],
        start_deg=180,
        end_deg=262,
    )
    return lower, back, front


def _sole(half_rim_mm: float, allowance_mm: float) -> DraftPiece:
    size = 2 * half_rim_mm / _rim_of_unit_sole()
    outline = [(x * size, y * size) for x, y in _unit_sole()]
    toe = SOLE_STEPS // 2
    return made(
        [
            Drawn("right half", outline[: toe + 1], "toe"),
            Drawn("left half", outline[toe:], "heel"),
        ],
        Making("sole", count=2, mirrored=1, marks=(Mark(DETAIL_PLACE, (0.0, 0.06 * size)),)),
        allowance_mm,
    )


def _unit_sole() -> Line:
    """Return a sole of length 1, heel at the bottom, anticlockwise, its first point repeated."""
    angles = [2 * math.pi * step / SOLE_STEPS for step in range(SOLE_STEPS + 1)]
    return [
        (SOLE_WIDTH / 2 * math.sin(a) * (1 - 0.14 * math.cos(a)), -math.cos(a) / 2) for a in angles
    ]


def _rim_of_unit_sole() -> float:
    return length_mm(_unit_sole())

"""An animal's body and limbs from its left side, on the pattern's own profiles; it looks left."""

from planning.drafting.arm import arm_outline
from planning.drafting.curves import smooth_loop
from planning.drafting.leg import leg_lines
from planning.drafting.measures import BodyMeasures
from planning.drafting.rings import Point
from planning.drafting.shapes import Shape, moved, oval, rounded
from planning.drafting.stance import Stance

ARM_FORWARD_DEG = {"standing": -16.0, "sitting": -34.0}


def side_body(m: BodyMeasures, stance: Stance) -> list[Shape]:
    """Return the body alone; the head is drawn over it, and the limbs over the head."""
    seat = 0.0 if stance.is_sitting else m.seat_height_mm
    deep, long = m.body_depth_mm, m.body_length_mm
    neck = seat + long
    low = _sitting_seat(deep, long) if stance.is_sitting else _standing_seat(deep, long)
    outline = smooth_loop(
        [
            (0.0, neck + 0.03 * long),
            (-0.27 * deep, neck),
            (-0.39 * deep, neck - 0.20 * long),
            (-0.50 * deep, neck - 0.42 * long),
            *((x, y + seat) for x, y in low),
            (0.40 * deep, seat + 0.52 * long),
            (0.39 * deep, seat + 0.80 * long),
            (0.31 * deep, neck),
        ]
    )
    return [Shape("figure-body", [(x, max(y, 0.0)) for x, y in outline[:-1]])]


def side_tail(m: BodyMeasures, stance: Stance, radius_mm: float) -> list[Shape]:
    """A round tail behind the seat."""
    seat = 0.0 if stance.is_sitting else m.seat_height_mm
    at = (0.50 * m.body_depth_mm, seat + 0.19 * m.body_length_mm)
    return [Shape("figure-tail", oval(at, radius_mm, radius_mm))]


def side_limbs(m: BodyMeasures, stance: Stance) -> list[Shape]:
    """Return the near leg and the near arm."""
    return [*_leg(m, stance), _arm(m, stance)]


def _standing_seat(deep: float, long: float) -> list[Point]:
    return [
        (-0.54 * deep, 0.36 * long),
        (-0.41 * deep, 0.11 * long),
        (-0.06 * deep, 0.0),
        (0.30 * deep, 0.06 * long),
        (0.46 * deep, 0.25 * long),
    ]


def _sitting_seat(deep: float, long: float) -> list[Point]:
    return [
        (-0.55 * deep, 0.32 * long),
        (-0.47 * deep, 0.09 * long),
        (-0.22 * deep, 0.0),
        (0.24 * deep, 0.0),
        (0.47 * deep, 0.09 * long),
        (0.50 * deep, 0.26 * long),
    ]


def _leg(m: BodyMeasures, stance: Stance) -> list[Shape]:
    foot, thigh, ankle = m.foot_length_mm, m.leg_width_mm, m.ankle_width_mm
    lower, back, front = leg_lines(foot, thigh, ankle, m.leg_length_mm)
    line = rounded([lower[0], *back, *front[1:-1]], 0.13 * foot)
    top = back[-1]
    if not stance.is_sitting:
        return [Shape("figure-leg", moved(line, (0.0, m.leg_length_mm), about=top))]
    joint = (top[0], m.hip_height_mm)
    at = (-0.12 * m.body_depth_mm, 0.5 * thigh)
    sole = oval((foot / 2, 0.005 * m.height_mm), 0.42 * foot, 0.028 * m.height_mm)
    return [
        Shape("figure-leg", moved(line, at, turn_deg=-90, about=joint)),
        Shape("figure-foot", moved(sole, at, turn_deg=-90, about=joint)),
    ]


def _arm(m: BodyMeasures, stance: Stance) -> Shape:
    line = arm_outline(m.arm_width_mm, m.arm_length_mm)[:-1]
    joint = (0.0, 0.86 * m.arm_length_mm)
    lift = m.seat_height_mm if stance.is_sitting else 0.0
    at = (0.0, m.shoulder_height_mm - lift)
    return Shape("figure-arm", moved(line, at, ARM_FORWARD_DEG[stance.pose], about=joint))

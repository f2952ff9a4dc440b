"""An animal's body and limbs from the front, behind its head; x = 0 is the middle."""

from planning.drafting.arm import arm_outline
from planning.drafting.curves import Line, smooth_loop
from planning.drafting.leg import SOLE_WIDTH
from planning.drafting.measures import BodyMeasures
from planning.drafting.rings import Point
from planning.drafting.shapes import Shape, flipped, moved, oval
from planning.drafting.stance import Stance

ARM_REACHING = 0.80  # an arm that reaches forwards looks so much shorter
TOES_DEG = (-24.0, 0.0, 24.0)  # where the stitched toes lie on the tip of a foot


def front_body(m: BodyMeasures, stance: Stance) -> list[Shape]:
    """Return body, legs and arms, those behind first."""
    if stance.is_sitting:
        thighs, feet = _sitting_legs(m)
        arms = _arms(m, -m.seat_height_mm, ARM_REACHING, out_deg=15)
        return [*_body(m, 0.0, flat=0.30), *thighs, *arms, *feet]
    return [*_legs(m), *_body(m, m.seat_height_mm, flat=0.0), *_arms(m, 0.0, 1.0, out_deg=18)]


def both(class_name: str, line: Line, is_closed: bool = True) -> list[Shape]:
    """Return a shape and its mirror image."""
    return [Shape(class_name, line, is_closed), Shape(class_name, flipped(line), is_closed)]


def symmetric(right: list[Point]) -> Line:
    """Close a shape from its right half, listed from the top middle to the bottom middle."""
    left = [(-x, y) for x, y in reversed(right[1:-1])]
    return smooth_loop([*right, *left])[:-1]


def _body(m: BodyMeasures, seat: float, flat: float) -> list[Shape]:
    """The body on a seat that is flat for so much of its width to either side."""
    wide, long = m.body_width_mm, m.body_length_mm
    neck = seat + long
    outline = symmetric(
        [
            (0.0, neck + 0.02 * long),
            (0.25 * wide, neck - 0.01 * long),
            (0.395 * wide, neck - 0.15 * long),
            (0.465 * wide, neck - 0.38 * long),
            (0.50 * wide, seat + (0.38 - 0.3 * flat) * long),
            ((0.43 + 0.15 * flat) * wide, seat + (0.15 - 0.2 * flat) * long),
            ((0.24 + 0.35 * flat) * wide, seat + (0.025 - 0.05 * flat) * long),
            (0.0, seat),
        ]
    )
    seam: Line = [(0.0, neck), (0.0, seat)]
    outline = [(x, max(y, seat)) for x, y in outline]
    return [Shape("figure-body", outline), Shape("figure-seam", seam, is_closed=False)]


def _legs(m: BodyMeasures) -> list[Shape]:
    """Legs that stand a little apart, a rounded foot in front of each."""
    thigh, ankle, tall = m.leg_width_mm / 2, m.ankle_width_mm / 2, m.leg_length_mm
    x, out = 0.5 * m.body_width_mm - 0.50 * thigh, 0.10 * thigh
    leg = smooth_loop(
        [
            (x, tall),
            (x - 0.72 * thigh, tall - 0.42 * thigh),
            (x - 0.98 * thigh, tall - 1.25 * thigh),
            (x - 0.90 * thigh, 0.52 * tall),
            (x + out - 1.02 * ankle, 0.24 * tall),
            (x + out - 0.80 * ankle, 0.06 * tall),
            (x + out, 0.03 * tall),
            (x + out + 0.80 * ankle, 0.06 * tall),
            (x + out + 1.02 * ankle, 0.24 * tall),
            (x + 0.98 * thigh, 0.52 * tall),
            (x + thigh, tall - 1.25 * thigh),
            (x + 0.72 * thigh, tall - 0.42 * thigh),
        ]
    )[:-1]
    half, rise = 0.53 * SOLE_WIDTH * m.foot_length_mm, 0.27 * m.foot_length_mm
    toe = (x + 1.5 * out, rise)
    return [
        *both("figure-leg", leg),
        *both("figure-leg", oval(toe, half, rise)),
        *(shape for line in _toes(toe, half, rise) for shape in both("figure-seam", line, False)),
    ]


def _toes(at: Point, half: float, rise: float) -> list[Line]:
    """Three stitches fanned over the tip of a foot."""
    tip = [(0.0, -0.12 * rise), (0.0, -0.62 * rise)]
    spread = 0.028 * half
    return [
        moved([(x + spread * deg, y + abs(deg) * 0.006 * rise) for x, y in tip], at)
        for deg in TOES_DEG
    ]


def _sitting_legs(m: BodyMeasures) -> tuple[list[Shape], list[Shape]]:
    """Thighs and feet of legs that reach forwards: soles to the front, toes up and a little out."""
    half, high = SOLE_WIDTH * m.foot_length_mm / 2, m.foot_length_mm / 2
    x = 0.5 * m.body_width_mm + 0.10 * half
    foot = moved(oval((0.0, 0.0), 1.16 * half, 1.06 * high), (x, 1.05 * high), turn_deg=-10)
    sole = moved(_sole(0.94 * half, 0.92 * high), (x, 1.03 * high), turn_deg=-10)
    thigh = oval((0.72 * x, 0.66 * m.leg_width_mm), 0.66 * m.leg_width_mm, 0.64 * m.leg_width_mm)
    return both("figure-leg", thigh), [*both("figure-leg", foot), *both("figure-foot", sole)]


def _sole(half: float, high: float) -> Line:
    return symmetric(
        [
            (0.0, high),
            (0.72 * half, 0.74 * high),
            (half, 0.16 * high),
            (0.74 * half, -0.62 * high),
            (0.0, -high),
        ]
    )


def _arms(m: BodyMeasures, lift: float, seen: float, out_deg: float) -> list[Shape]:
    long = seen * m.arm_length_mm
    line = arm_outline(1.06 * m.arm_width_mm, long)[:-1]
    joint = (0.0, 0.86 * long)
    at = (0.43 * m.body_width_mm, m.shoulder_height_mm + lift)
    return both("figure-arm", moved(line, at, turn_deg=out_deg, about=joint))

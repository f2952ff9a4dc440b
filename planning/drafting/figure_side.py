"""The bear from its left side: the pattern's own profiles at their stuffed thickness."""

from planning.drafting.bear_arm import arm_outline
from planning.drafting.bear_head import BROW_SHARE, CROWN_SHARE, ear_lines, eye_from, side_lines
from planning.drafting.bear_leg import leg_lines
from planning.drafting.curves import STEPS, Line, smooth, smooth_loop
from planning.drafting.figure_front import EYE_SHARE
from planning.drafting.measures import BodyMeasures
from planning.drafting.rings import Point, length_mm, point_along
from planning.drafting.shapes import Shape, moved, oval, scaled


def side_shapes(m: BodyMeasures) -> tuple[Shape, ...]:
    """Return every line of the side view, those behind first; the nose looks to the left."""
    return (_body(m), *_head(m), _leg(m), _arm(m))


def _body(m: BodyMeasures) -> Shape:
    deep, long, seat = m.body_depth_mm, m.body_length_mm, m.seat_height_mm
    neck = seat + long
    outline = smooth_loop(
        [
            (0.0, neck + 0.03 * long),
            (-0.27 * deep, neck),
            (-0.39 * deep, neck - 0.20 * long),
            (-0.50 * deep, neck - 0.42 * long),
            (-0.54 * deep, seat + 0.36 * long),
            (-0.41 * deep, seat + 0.11 * long),
            (-0.06 * deep, seat),
            (0.30 * deep, seat + 0.06 * long),
            (0.46 * deep, seat + 0.25 * long),
            (0.40 * deep, seat + 0.52 * long),
            (0.40 * deep, seat + 0.80 * long),
            (0.31 * deep, neck),
        ]
    )
    return Shape("figure-body", outline[:-1])


def _head(m: BodyMeasures) -> tuple[Shape, ...]:
    chin, neck, top = side_lines(m)
    middle = ((neck[0][0] + neck[-1][0]) / 2, 0.0)
    at = (0.0, m.seat_height_mm + m.body_length_mm)

    def placed(line: Line) -> Line:
        return moved(line, at, about=middle)

    top_mm = length_mm(top)
    eye = eye_from(m, point_along(top, (1 - BROW_SHARE) * top_mm)).at
    crown = point_along(top, (1 - CROWN_SHARE) * top_mm)
    radius = EYE_SHARE * m.height_mm / 2
    return (
        Shape("figure-head", placed(_rounded_head(chin, neck, top))),
        Shape("figure-mouth", placed(_mouth(m)), is_closed=False),
        Shape("figure-nose", placed(_nose(m, chin[0]))),
        Shape("figure-eye", placed(oval(eye, 0.8 * radius, radius))),
        *(Shape(name, placed(line)) for name, line in _ear(m, crown)),
    )


def _rounded_head(chin: Line, neck: Line, top: Line) -> Line:
    """The profile, with the sewn neck drawn in round instead of spread flat."""
    throat, nape = neck[0], neck[-1]
    wide = nape[0] - throat[0]
    under = smooth(
        [
            chin[-1 - STEPS],
            (throat[0] + 0.18 * wide, -0.01 * wide),
            (nape[0] - 0.22 * wide, -0.02 * wide),
            top[STEPS],
        ],
        start_deg=345,
        end_deg=82,
    )
    return [*chin[: -1 - STEPS], *under, *top[STEPS + 1 : -1]]


def _mouth(m: BodyMeasures) -> Line:
    mz, tall = m.muzzle_mm, m.head_height_mm
    return smooth([(0.02 * mz, 0.30 * tall), (0.35 * mz, 0.265 * tall), (0.72 * mz, 0.30 * tall)])


def _nose(m: BodyMeasures, tip: Point) -> Line:
    size = 0.62 * m.nose_mm
    return moved(
        smooth_loop(
            [(0.0, 0.0), (0.75 * size, 0.10 * size), (0.42 * size, -0.42 * size)]
            + [(0.02 * size, -0.62 * size), (-0.10 * size, -0.25 * size)]
        )[:-1],
        tip,
    )


def _ear(m: BodyMeasures, crown: Point) -> tuple[tuple[str, Line], ...]:
    """The ear stands across the head, so from the side it shows narrow."""
    curve, foot = ear_lines(m)
    outline = scaled([*curve, *foot[1:-1]], 0.62, 1.0)
    middle = (0.62 * m.ear_width_mm / 2, 0.0)
    sunk = (crown[0] - 0.22 * m.ear_width_mm, crown[1] - 0.30 * m.ear_height_mm)
    inner = scaled(moved(outline, (0.0, 0.0), about=middle), 0.60)
    return (
        ("figure-ear", moved(outline, sunk, turn_deg=-14, about=middle)),
        ("figure-ear-inner", moved(inner, (sunk[0], sunk[1] + 0.18 * m.ear_height_mm), -14)),
    )


def _leg(m: BodyMeasures) -> Shape:
    lower, back, front = leg_lines(
        m.foot_length_mm, m.leg_width_mm, m.ankle_width_mm, m.leg_length_mm
    )
    line = [lower[0], *back, *front[1:-1]]
    top = back[-1]
    return Shape("figure-leg", moved(line, (0.0, top[1]), about=top))


def _arm(m: BodyMeasures) -> Shape:
    line = arm_outline(m.arm_width_mm, m.arm_length_mm)[:-1]
    joint = (0.0, 0.86 * m.arm_length_mm)
    return Shape("figure-arm", moved(line, (0.0, m.shoulder_height_mm), turn_deg=-16, about=joint))

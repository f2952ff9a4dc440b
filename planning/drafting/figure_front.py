"""The bear from the front: back-to-front shapes, from the body measures alone."""

from planning.drafting.bear_arm import arm_outline
from planning.drafting.bear_head import BROW_SHARE, ear_lines, eye_from, side_lines
from planning.drafting.bear_leg import SOLE_WIDTH
from planning.drafting.curves import Line, smooth, smooth_loop
from planning.drafting.measures import BodyMeasures
from planning.drafting.rings import Point, length_mm, point_along
from planning.drafting.shapes import Shape, flipped, moved, oval, scaled

EYE_SHARE = 1 / 28  # of the height: the diameter of an eye


def front_shapes(m: BodyMeasures) -> tuple[Shape, ...]:
    """Return every line of the front view, those behind first; x = 0 is the middle."""
    return (*_ears(m), *_body(m), *_legs(m), *_arms(m), *_head(m), *_face(m))


def _both(class_name: str, line: Line, is_closed: bool = True) -> tuple[Shape, Shape]:
    return Shape(class_name, line, is_closed), Shape(class_name, flipped(line), is_closed)


def _symmetric(right: list[Point]) -> Line:
    """Close a shape from its right half, listed from the top middle to the bottom middle."""
    left = [(-x, y) for x, y in reversed(right[1:-1])]
    return smooth_loop([*right, *left])[:-1]


def _ears(m: BodyMeasures) -> tuple[Shape, ...]:
    curve, foot = ear_lines(m)
    outline = [*curve, *foot[1:-1]]
    half = m.head_width_mm / 2
    at = (0.60 * half, m.height_mm - 0.165 * m.head_height_mm)
    middle = (m.ear_width_mm / 2, 0.0)
    inner = moved(scaled(moved(outline, (0.0, 0.0), about=middle), 0.62), (0.0, 0.0))
    lift = (at[0] + 0.12 * m.ear_height_mm, at[1] + 0.18 * m.ear_height_mm)
    return (
        *_both("figure-ear", moved(outline, at, turn_deg=-34, about=middle)),
        *_both("figure-ear-inner", moved(inner, lift, turn_deg=-34)),
    )


def _body(m: BodyMeasures) -> tuple[Shape, ...]:
    wide, long, seat = m.body_width_mm, m.body_length_mm, m.seat_height_mm
    neck = seat + long
    outline = _symmetric(
        [
            (0.0, neck + 0.02 * long),
            (0.24 * wide, neck),
            (0.40 * wide, neck - 0.14 * long),
            (0.465 * wide, neck - 0.36 * long),
            (0.50 * wide, seat + 0.38 * long),
            (0.43 * wide, seat + 0.15 * long),
            (0.23 * wide, seat + 0.02 * long),
            (0.0, seat),
        ]
    )
    seam: Line = [(0.0, neck), (0.0, seat)]
    return (Shape("figure-body", outline), Shape("figure-seam", seam, is_closed=False))


def _legs(m: BodyMeasures) -> tuple[Shape, ...]:
    thigh, ankle, tall = m.leg_width_mm / 2, m.ankle_width_mm / 2, m.leg_length_mm
    foot = SOLE_WIDTH * m.foot_length_mm / 2
    x = 0.5 * m.body_width_mm - 0.55 * thigh
    leg = smooth_loop(
        [
            (x, tall),
            (x - 0.78 * thigh, tall - 0.45 * thigh),
            (x - thigh, tall - 1.3 * thigh),
            (x - 0.98 * thigh, 0.55 * tall),
            (x - ankle, 0.26 * tall),
            (x - 0.82 * foot, 0.07 * tall),
            (x, 0.04 * tall),
            (x + 0.82 * foot, 0.07 * tall),
            (x + ankle, 0.26 * tall),
            (x + 0.98 * thigh, 0.55 * tall),
            (x + thigh, tall - 1.3 * thigh),
            (x + 0.78 * thigh, tall - 0.45 * thigh),
        ]
    )[:-1]
    rise = 0.135 * tall
    toe = (x, rise)
    return (*_both("figure-leg", leg), *_both("figure-foot", oval(toe, foot, rise)))


def _arms(m: BodyMeasures) -> tuple[Shape, ...]:
    line = arm_outline(m.arm_width_mm, m.arm_length_mm)[:-1]
    joint = (0.0, 0.86 * m.arm_length_mm)
    at = (0.44 * m.body_width_mm, m.shoulder_height_mm)
    return _both("figure-arm", moved(line, at, turn_deg=20, about=joint))


def _head(m: BodyMeasures) -> tuple[Shape, ...]:
    half, tall, top = m.head_width_mm / 2, m.head_height_mm, m.height_mm
    outline = _symmetric(
        [
            (0.0, top),
            (0.52 * half, top - 0.05 * tall),
            (0.90 * half, top - 0.27 * tall),
            (1.0 * half, top - 0.56 * tall),
            (0.86 * half, top - 0.80 * tall),
            (0.48 * half, top - 0.96 * tall),
            (0.0, top - 1.01 * tall),
        ]
    )
    seam = smooth(
        [
            (0.5 * m.nose_mm, top - 0.52 * tall),
            (0.30 * m.brow_mm, top - 0.34 * tall),
            (0.34 * m.brow_mm, top - 0.08 * tall),
        ]
    )
    return (Shape("figure-head", outline), *_both("figure-seam", seam, is_closed=False))


def _eye_height_mm(m: BodyMeasures) -> float:
    _, _, profile = side_lines(m)
    brow = point_along(profile, (1 - BROW_SHARE) * length_mm(profile))
    return m.seat_height_mm + m.body_length_mm + eye_from(m, brow).at[1]


def _face(m: BodyMeasures) -> tuple[Shape, ...]:
    half, tall, top = m.head_width_mm / 2, m.head_height_mm, m.height_mm
    muzzle = (0.0, top - 0.68 * tall)
    nose_top, nose_low = top - 0.525 * tall, top - 0.625 * tall
    wide = 0.62 * m.nose_mm
    nose = _symmetric(
        [(0.0, nose_top), (wide, nose_top - 0.02 * tall), (0.4 * wide, nose_low + 0.02 * tall)]
        + [(0.0, nose_low)]
    )
    eye = (0.23 * m.brow_mm + 0.1 * half, _eye_height_mm(m))
    radius = EYE_SHARE * m.height_mm / 2
    glint = (eye[0] - 0.3 * radius, eye[1] + 0.35 * radius)
    lip = nose_low - 0.075 * tall
    smile = smooth(
        [(0.0, lip), (0.22 * half, lip - 0.035 * tall), (0.40 * half, lip + 0.02 * tall)]
    )
    return (
        Shape("figure-muzzle", oval(muzzle, 0.56 * half, 0.185 * tall)),
        Shape("figure-mouth", [(0.0, nose_low), (0.0, lip)], is_closed=False),
        *_both("figure-mouth", smile, is_closed=False),
        Shape("figure-nose", nose),
        *_both("figure-eye", oval(eye, radius, radius)),
        Shape("figure-glint", oval(glint, 0.26 * radius, 0.26 * radius, steps=16)),
        Shape(
            "figure-glint", oval((glint[0] - 2 * eye[0], glint[1]), 0.26 * radius, 0.26 * radius)
        ),
    )

"""How the faces of bear and rabbit look: by eye, on the measures of the pattern."""

from planning.drafting.bear_head import bear_profile, ear_lines
from planning.drafting.curves import Line, smooth_loop
from planning.drafting.figure_form import HeadForm
from planning.drafting.figure_head import EarLook, Face, Look
from planning.drafting.measures import BodyMeasures
from planning.drafting.rabbit_head import long_ear_lines, rabbit_profile
from planning.drafting.shapes import moved, rounded, scaled


def bear_look(m: BodyMeasures) -> Look:
    """Return the head of a bear with these measures."""
    half, tall = m.head_width_mm / 2, m.head_height_mm
    form = HeadForm(bear_profile(m), half, 0.50 * half, m.muzzle_mm)
    curve, foot = ear_lines(m)
    ear = EarLook(
        *_ear_shapes(curve, foot, m.ear_width_mm, inner=0.60, sunk_mm=0.16 * m.ear_height_mm),
        left_mm=0.62 * half,
        behind_mm=0.62 * form.depth_mm,
        up_mm=0.82 * tall,
        lean_deg=32,
        back_deg=6,
        narrowest=0.62,
    )
    face = Face(
        eye_radius_mm=0.0595 * tall,
        eye_out_deg=38,
        nose=_bear_nose(0.62 * m.nose_mm, 0.055 * tall),
        nose_up_mm=0.435 * tall,
        pad=(0.56 * half, 0.185 * tall, 0.325 * tall),
        smile=(
            (0.0, 0.305 * tall),
            (0.20 * half, 0.268 * tall),
            (0.38 * half, 0.315 * tall),
        ),
    )
    return Look(form, ear, face, (0.5 * m.nose_mm, 0.38 * m.brow_mm))


def rabbit_look(m: BodyMeasures) -> Look:
    """Return the head of a rabbit with these measures."""
    half, tall = m.head_width_mm / 2, m.head_height_mm
    form = HeadForm(rabbit_profile(m), half, 0.46 * half, m.muzzle_mm)
    curve, foot = long_ear_lines(m)
    ear = EarLook(
        *_ear_shapes(curve, foot, m.ear_width_mm, inner=0.66, sunk_mm=0.02 * m.ear_height_mm),
        left_mm=0.36 * half,
        behind_mm=0.60 * form.depth_mm,
        up_mm=0.93 * tall,
        lean_deg=11,
        back_deg=14,
        narrowest=0.66,
    )
    face = Face(
        eye_radius_mm=0.058 * tall,
        eye_out_deg=46,
        nose=_bear_nose(0.50 * m.nose_mm, 0.038 * tall),
        nose_up_mm=0.40 * tall,
        pad=(0.46 * half, 0.125 * tall, 0.30 * tall),
        smile=(
            (0.0, 0.315 * tall),
            (0.14 * half, 0.275 * tall),
            (0.30 * half, 0.295 * tall),
        ),
    )
    return Look(form, ear, face, (0.5 * m.nose_mm, 0.38 * m.brow_mm))


def _ear_shapes(
    curve: Line, foot: Line, wide: float, inner: float, sunk_mm: float
) -> tuple[Line, Line]:
    """Return outline and lining with rounded feet, the middle of the foot at the origin."""
    whole = moved([*curve, *foot[1:-1]], (0.0, 0.0), about=(wide / 2, sunk_mm))
    outline = rounded(whole, 0.16 * wide)
    tall = max(y for _, y in outline)
    lining = moved(scaled(rounded(whole, 0.30 * wide), inner), (0.0, 0.5 * (1 - inner) * tall))
    return outline, lining


def _bear_nose(half: float, high: float) -> Line:
    """A rounded triangle, point down, its middle at the origin."""
    return smooth_loop(
        [
            (0.0, 0.92 * high),
            (0.62 * half, 0.88 * high),
            (half, 0.35 * high),
            (0.45 * half, -0.60 * high),
            (0.0, -high),
            (-0.45 * half, -0.60 * high),
            (-half, 0.35 * high),
            (-0.62 * half, 0.88 * high),
        ]
    )[:-1]

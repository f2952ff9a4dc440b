"""What makes a head a rabbit's: a brow that rounds down to a small nose, and long lined ears."""

from dataclasses import replace

from planning.drafting.curves import Line, smooth
from planning.drafting.head import FULLNESS, EarPlace, Head, Profile, head
from planning.drafting.measures import BodyMeasures
from planning.drafting.outline import Drawn, Making, made, split_line
from planning.drafting.pieces import DraftPiece
from planning.drafting.rings import length_mm
from planning.drafting.stance import Stance

BROW_SHARE = 0.27
EYE_INSET = (0.125, 0.17)  # of the head's height, back and down: further to the sides than a bear's
EAR_EASE = 0.03


def rabbit_head(m: BodyMeasures, stance: Stance, allowance_mm: float) -> Head:
    """Draft side, gusset, ear and ear lining, and the whole neck edge of the sewn head."""
    flat = replace(
        m,
        head_height_mm=FULLNESS * m.head_height_mm,
        head_depth_mm=FULLNESS * m.head_depth_mm,
    )
    curve, foot = long_ear_lines(m)
    place = EarPlace(
        length_mm(foot) / (1 + EAR_EASE), crown_share=0.60, on_gusset=0.42, slant_deg=10
    )
    drafted = head(m, rabbit_profile(flat), place, stance, allowance_mm)
    ears = (
        _ear("ear outer", curve, foot, allowance_mm),
        _ear("ear lining", curve, foot, allowance_mm),
    )
    return Head((*drafted.pieces, *ears), drafted.neck_mm)


def rabbit_profile(m: BodyMeasures) -> Profile:
    """Return the profile of a rabbit's head with these measures."""
    deep, tall = m.head_depth_mm, m.head_height_mm
    nose, throat, nape = (0.0, 0.43 * tall), (0.34 * deep, 0.0), (0.84 * deep, 0.02 * tall)
    chin = smooth(
        [
            nose,
            (0.02 * deep, 0.31 * tall),
            (0.12 * deep, 0.155 * tall),
            (0.25 * deep, 0.085 * tall),
            throat,
        ],
        start_deg=286,
        end_deg=282,
    )
    neck = smooth([throat, nape], start_deg=12, end_deg=352)
    top = smooth(
        [
            nape,
            (0.955 * deep, 0.26 * tall),
            (deep, 0.55 * tall),
            (0.89 * deep, 0.86 * tall),
            (0.63 * deep, tall),
            (0.38 * deep, 0.93 * tall),
            (0.21 * deep, 0.745 * tall),
            (0.105 * deep, 0.545 * tall),
            nose,
        ],
        start_deg=83,
        end_deg=192,
    )
    inset = (EYE_INSET[0] * tall, EYE_INSET[1] * tall)
    return Profile(chin, neck, top, BROW_SHARE, inset)


def long_ear_lines(m: BodyMeasures) -> tuple[Line, Line]:
    """Return the sewn curve and the foot of a long ear, a little fuller to the outside."""
    w, h = m.ear_width_mm, m.ear_height_mm
    curve = smooth(
        [
            (0.83 * w, 0.0),
            (0.93 * w, 0.18 * h),
            (1.02 * w, 0.45 * h),
            (0.90 * w, 0.78 * h),
            (0.55 * w, h),
            (0.16 * w, 0.80 * h),
            (0.00 * w, 0.46 * h),
            (0.09 * w, 0.18 * h),
            (0.17 * w, 0.0),
        ],
    )
    return curve, smooth([(0.17 * w, 0.0), (0.5 * w, 0.016 * h), (0.83 * w, 0.0)])


def _ear(name: str, curve: Line, foot: Line, allowance_mm: float) -> DraftPiece:
    halves = split_line(curve, length_mm(curve) / 2)
    return made(
        [
            Drawn("foot", foot),
            Drawn("outer curve", halves[0], "ear top"),
            Drawn("inner curve", halves[1]),
        ],
        Making(name, count=2, mirrored=1, opening="foot"),
        allowance_mm,
    )

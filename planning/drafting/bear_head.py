"""What makes a head a bear's: a profile with muzzle, stop, forehead and crown, and round ears."""

from dataclasses import replace

from planning.drafting.curves import Line, smooth
from planning.drafting.head import FULLNESS, EarPlace, Head, Profile, head
from planning.drafting.measures import BodyMeasures
from planning.drafting.outline import Drawn, Making, made, split_line
from planning.drafting.pieces import DraftPiece
from planning.drafting.rings import length_mm
from planning.drafting.stance import Stance

BROW_SHARE = 0.23  # of the way from nose to nape: where the eyes sit
EYE_INSET = 0.055  # of the head's height, back and down from there
LONG_MUZZLE = 0.35  # of the head's height; over a shorter one the eyes sit lower, as a child's do
EAR_EASE = 0.03  # the ear's foot is this much longer than its line, so that it cups


def bear_head(m: BodyMeasures, stance: Stance, allowance_mm: float) -> Head:
    """Draft side, gusset and ear, and the whole neck edge of the sewn head."""
    flat = replace(
        m,
        head_height_mm=FULLNESS * m.head_height_mm,
        head_depth_mm=FULLNESS * m.head_depth_mm,
        muzzle_mm=FULLNESS * m.muzzle_mm,
    )
    # The eye is set in by a share of the stuffed head.
    profile = replace(bear_profile(flat), eye_inset_mm=_eye_inset_mm(m))
    curve, foot = ear_lines(m)
    place = EarPlace(
        length_mm(foot) / (1 + EAR_EASE), crown_share=0.60, on_gusset=0.32, slant_deg=14
    )
    drafted = head(m, profile, place, stance, allowance_mm)
    return Head((*drafted.pieces, _ear(curve, foot, allowance_mm)), drafted.neck_mm)


def bear_profile(m: BodyMeasures) -> Profile:
    """Return the profile of a bear's head with these measures, as stuffed."""
    mz, tall = m.muzzle_mm, m.head_height_mm
    skull = m.head_depth_mm - mz
    nose = (0.0, 0.47 * tall)
    throat, nape = (mz + 0.10 * skull, 0.0), (mz + 0.86 * skull, 0.02 * tall)
    chin = smooth(
        [
            nose,
            (0.04 * mz, 0.29 * tall),
            (0.40 * mz, 0.155 * tall),
            (0.88 * mz, 0.095 * tall),
            throat,
        ],
        start_deg=262,
        end_deg=278,
    )
    neck = smooth([throat, nape], start_deg=12, end_deg=352)
    top = smooth(
        [
            nape,
            (mz + 0.965 * skull, 0.26 * tall),
            (mz + skull, 0.56 * tall),
            (mz + 0.86 * skull, 0.87 * tall),
            (mz + 0.52 * skull, tall),
            (mz + 0.20 * skull, 0.88 * tall),
            (mz + 0.02 * skull, 0.665 * tall),
            (0.50 * mz, nose[1] + 0.20 * mz),
            nose,
        ],
        start_deg=83,
        end_deg=172,
    )
    return Profile(chin, neck, top, BROW_SHARE, _eye_inset_mm(m))


def _eye_inset_mm(m: BodyMeasures) -> tuple[float, float]:
    back = EYE_INSET * m.head_height_mm
    lower = 0.5 * max(0.0, LONG_MUZZLE * m.head_height_mm - m.muzzle_mm)
    return (back, back + lower)


def ear_lines(m: BodyMeasures) -> tuple[Line, Line]:
    """Return the sewn curve and the foot of the ear, a little fuller to the outside."""
    w, h = m.ear_width_mm, m.ear_height_mm
    curve = smooth(
        [
            (w, 0.0),
            (1.04 * w, 0.36 * h),
            (0.90 * w, 0.78 * h),
            (0.53 * w, h),
            (0.13 * w, 0.80 * h),
            (-0.03 * w, 0.38 * h),
            (0.0, 0.0),
        ],
    )
    return curve, smooth([(0.0, 0.0), (0.5 * w, 0.07 * h), (w, 0.0)])


def _ear(curve: Line, foot: Line, allowance_mm: float) -> DraftPiece:
    halves = split_line(curve, length_mm(curve) / 2)
    return made(
        [
            Drawn("foot", foot),
            Drawn("outer curve", halves[0], "ear top"),
            Drawn("inner curve", halves[1]),
        ],
        Making("ear", count=4, mirrored=2, opening="foot"),
        allowance_mm,
    )

"""The head: two sides, a gusset from the nose over the brow to the nape, and the ears.

The side is a profile with muzzle, stop, forehead and crown. The gusset is a width along a centre
line whose length is found so that its long edge equals the profile's upper edge. Three edges
meet at the nose so that it lies flat there; at the back of the neck side and gusset together make a
straight run for the neck seam.
"""

import math
from dataclasses import dataclass, replace

from scipy.optimize import brentq

from planning.drafting.curves import Line, smooth
from planning.drafting.measures import BodyMeasures
from planning.drafting.outline import Drawn, Making, made, split_line
from planning.drafting.pieces import DraftPiece, Mark, PlacementLine
from planning.drafting.rings import Point, length_mm

BROW_SHARE = 0.23  # of the way from nose to nape: where the eyes sit
CROWN_SHARE = 0.60  # where the ears cross the gusset seam
EAR_ON_GUSSET = 0.32  # of the ear's foot; the rest lies on the side of the head
FULLNESS = 1.06  # flat sides are drawn this much larger, since stuffing rounds and shortens them
EAR_EASE = 0.03  # the ear's foot is this much longer than its line, so that it cups


@dataclass(frozen=True)
class Head:
    """The pieces of the head and the length of the neck edge they leave open."""

    pieces: tuple[DraftPiece, ...]
    neck_mm: float


def head(m: BodyMeasures, allowance_mm: float) -> Head:
    """Draft the head: side, gusset and ear, and the whole neck edge of the sewn head."""
    chin, neck, top = side_lines(_flat(m))
    gusset_edge, centre_mm = _gusset_edge(m, length_mm(top))
    ear_curve, ear_foot = ear_lines(m)
    foot_mm = length_mm(ear_foot) / (1 + EAR_EASE)
    pieces = (
        _side(m, chin, neck, top, foot_mm, allowance_mm),
        _gusset(m, gusset_edge, centre_mm, foot_mm, allowance_mm),
        _ear(ear_curve, ear_foot, allowance_mm),
    )
    return Head(pieces, 2 * length_mm(neck) + m.nape_mm)


def _flat(m: BodyMeasures) -> BodyMeasures:
    return replace(
        m,
        head_height_mm=FULLNESS * m.head_height_mm,
        head_depth_mm=FULLNESS * m.head_depth_mm,
        muzzle_mm=FULLNESS * m.muzzle_mm,
    )


def side_lines(m: BodyMeasures) -> tuple[Line, Line, Line]:
    """Return chin (nose to throat), neck edge (throat to nape) and top (nape to nose).

    The nose is at x = 0 and looks to the left; the neck lies at y = 0.
    """
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
    return chin, neck, top


def _gusset_edge(m: BodyMeasures, target_mm: float) -> tuple[Line, float]:
    """Return the right long edge (nose to nape) and the centre length that makes it fit."""

    def excess(centre_mm: float) -> float:
        return length_mm(_gusset_curve(m, centre_mm)) - target_mm

    centre_mm = float(brentq(excess, 0.5 * target_mm, target_mm, xtol=1e-9))
    return _gusset_curve(m, centre_mm), centre_mm


def _gusset_curve(m: BodyMeasures, centre_mm: float) -> Line:
    half_nose, half_brow, half_nape = m.nose_mm / 2, m.brow_mm / 2, m.nape_mm / 2
    return smooth(
        [
            (0.0, 0.0),
            (0.72 * half_nose, 0.22 * half_nose),
            (half_nose, 0.9 * half_nose),
            (half_nose * 1.12, 0.17 * centre_mm),
            (0.86 * half_brow, 0.36 * centre_mm),
            (half_brow, 0.50 * centre_mm),
            (0.90 * half_brow, 0.66 * centre_mm),
            (0.5 * (half_brow + half_nape), 0.84 * centre_mm),
            (half_nape, centre_mm),
        ],
        start_deg=0,
        end_deg=92,
    )


def _side(
    m: BodyMeasures, chin: Line, neck: Line, top: Line, foot_mm: float, allowance_mm: float
) -> DraftPiece:
    top_mm = length_mm(top)
    parts = split_line(top, (1 - CROWN_SHARE) * top_mm, (1 - BROW_SHARE) * top_mm)
    return made(
        [
            Drawn("neck", neck),
            Drawn("nape to crown", parts[0], "crown", is_double=True),
            Drawn("crown to brow", parts[1], "brow"),
            Drawn("brow to nose", parts[2], "nose"),
            Drawn("chin", chin),
        ],
        Making(
            "head side",
            count=2,
            mirrored=1,
            marks=(eye_from(m, parts[1][-1]),),
            lines=(_ear_line_on_side(m, parts[1][0], foot_mm),),
        ),
        allowance_mm,
    )


def eye_from(m: BodyMeasures, brow: Point) -> Mark:
    return Mark("eye", (brow[0] + 0.055 * m.head_height_mm, brow[1] - 0.055 * m.head_height_mm))


def _ear_line_on_side(m: BodyMeasures, crown: Point, foot_mm: float) -> PlacementLine:
    span = (1 - EAR_ON_GUSSET) * foot_mm
    down = (crown[0] - 0.30 * span, crown[1] - 3 * span)
    start = smooth([crown, down], start_deg=246, end_deg=285)
    return PlacementLine("ear", tuple(split_line(start, span)[0]))


def _gusset(
    m: BodyMeasures, edge: Line, centre_mm: float, foot_mm: float, allowance_mm: float
) -> DraftPiece:
    edge_mm = length_mm(edge)
    right = split_line(edge, BROW_SHARE * edge_mm, CROWN_SHARE * edge_mm)
    left = [_turned_over(part) for part in reversed(right)]
    nape = [edge[-1], (-edge[-1][0], edge[-1][1])]
    crown = right[1][-1]
    inward = EAR_ON_GUSSET * foot_mm
    slant = math.radians(14)
    foot = (crown[0] - inward * math.cos(slant), crown[1] - inward * math.sin(slant))
    return made(
        [
            Drawn("nose to brow, right", right[0], "brow"),
            Drawn("brow to crown, right", right[1], "crown", is_double=True),
            Drawn("crown to nape, right", right[2]),
            Drawn("nape", nape),
            Drawn("nape to crown, left", left[0], "crown", is_double=True),
            Drawn("crown to brow, left", left[1], "brow"),
            Drawn("brow to nose, left", left[2], "nose"),
        ],
        Making(
            "head gusset",
            count=1,
            mirrored=0,
            grain_deg=270,
            marks=(Mark("nose", (0.0, 0.5 * m.nose_mm)),),
            lines=(
                PlacementLine("ear, right", (crown, foot)),
                PlacementLine("ear, left", ((-crown[0], crown[1]), (-foot[0], foot[1]))),
            ),
        ),
        allowance_mm,
    )


def _turned_over(line: Line) -> Line:
    return [(-x, y) for x, y in reversed(line)]


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

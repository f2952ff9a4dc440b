"""The head of an animal: two sides and a gusset from the nose over the brow to the nape.

The side is a profile. The gusset is a width along a centre line whose length is found so that its
long edge equals the profile's upper edge. Three edges meet at the nose so that it lies flat there;
at the back of the neck side and gusset together make a straight run for the neck seam.
"""

import math
from dataclasses import dataclass

from scipy.optimize import brentq

from planning.drafting.curves import Line, smooth
from planning.drafting.measures import BodyMeasures
from planning.drafting.outline import Drawn, Making, made, split_line
from planning.drafting.pieces import EYE, DraftPiece, Mark, PlacementLine
from planning.drafting.rings import Point, length_mm, point_along
from planning.drafting.stance import Stance

FULLNESS = 1.06  # flat sides are drawn this much larger, since stuffing rounds and shortens them


@dataclass(frozen=True)
class Profile:
    """A head from its left side, and where its face is.

    ``chin`` runs from nose to throat, ``neck`` on to the nape, ``top`` over the crown to the nose;
    the nose is at x = 0 and looks to the left, the neck lies at y = 0. ``brow_share`` is how far
    from nose to nape the eyes sit, ``eye_inset_mm`` how far from there they lie, back and down.
    """

    chin: Line
    neck: Line
    top: Line
    brow_share: float
    eye_inset_mm: Point

    @property
    def eye(self) -> Point:
        brow = point_along(self.top, (1 - self.brow_share) * length_mm(self.top))
        return (brow[0] + self.eye_inset_mm[0], brow[1] - self.eye_inset_mm[1])


@dataclass(frozen=True)
class EarPlace:
    """Where an ear is sewn on, and the length of its line: ``foot_mm``, ease left out.

    ``crown_share`` is how far from nose to nape the line crosses the gusset seam, and
    ``on_gusset`` the share of it that lies on the gusset, slanting back by ``slant_deg``.
    """

    foot_mm: float
    crown_share: float
    on_gusset: float
    slant_deg: float


@dataclass(frozen=True)
class Head:
    """Side and gusset, and the length of the neck edge they leave open."""

    pieces: tuple[DraftPiece, ...]
    neck_mm: float


def head(
    m: BodyMeasures, profile: Profile, ear: EarPlace, stance: Stance, allowance_mm: float
) -> Head:
    """Draft side and gusset round a profile."""
    edge, centre_mm = _gusset_edge(m, length_mm(profile.top))
    pieces = (
        _side(profile, ear, allowance_mm),
        _gusset(m, edge, profile, ear, stance, allowance_mm),
    )
    return Head(pieces, 2 * length_mm(profile.neck) + m.nape_mm)


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


def _side(profile: Profile, ear: EarPlace, allowance_mm: float) -> DraftPiece:
    top_mm = length_mm(profile.top)
    parts = split_line(
        profile.top, (1 - ear.crown_share) * top_mm, (1 - profile.brow_share) * top_mm
    )
    return made(
        [
            Drawn("neck", profile.neck),
            Drawn("nape to crown", parts[0], "crown", is_double=True),
            Drawn("crown to brow", parts[1], "brow"),
            Drawn("brow to nose", parts[2], "nose"),
            Drawn("chin", profile.chin),
        ],
        Making(
            "head side",
            count=2,
            mirrored=1,
            marks=(Mark(EYE, profile.eye),),
            lines=(_ear_line_on_side(parts[1][0], (1 - ear.on_gusset) * ear.foot_mm),),
        ),
        allowance_mm,
    )


def _ear_line_on_side(crown: Point, span_mm: float) -> PlacementLine:
    down = (crown[0] - 0.30 * span_mm, crown[1] - 3 * span_mm)
    start = smooth([crown, down], start_deg=246, end_deg=285)
    return PlacementLine("ear", tuple(split_line(start, span_mm)[0]))


def _gusset(
    m: BodyMeasures,
    edge: Line,
    profile: Profile,
    ear: EarPlace,
    stance: Stance,
    allowance_mm: float,
) -> DraftPiece:
    edge_mm = length_mm(edge)
    right = split_line(edge, profile.brow_share * edge_mm, ear.crown_share * edge_mm)
    left = [_turned_over(part) for part in reversed(right)]
    crown = right[1][-1]
    inward, slant = ear.on_gusset * ear.foot_mm, math.radians(ear.slant_deg)
    foot = (crown[0] - inward * math.cos(slant), crown[1] - inward * math.sin(slant))
    return made(
        [
            Drawn("nose to brow, right", right[0], "brow"),
            Drawn("brow to crown, right", right[1], "crown", is_double=True),
            Drawn("crown to nape, right", right[2]),
            *_nape_edges(edge[-1], stance),
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


def _nape_edges(right: Point, stance: Stance) -> tuple[Drawn, ...]:
    left, middle = (-right[0], right[1]), (0.0, right[1])
    if not stance.is_aside:
        return (Drawn("nape", [right, left]),)
    return (
        Drawn("nape, right", [right, middle], "nape, face aside"),
        Drawn("nape, left", [middle, left]),
    )


def _turned_over(line: Line) -> Line:
    return [(-x, y) for x, y in reversed(line)]

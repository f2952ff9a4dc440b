"""A head drawn from any side: ears, outline, seams, muzzle, mouth, nose and eyes, back to front."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from operator import itemgetter

from shapely import Polygon

from planning.drafting.curves import Line, smooth
from planning.drafting.figure_form import HeadForm, Seen, silhouette
from planning.drafting.rings import Point
from planning.drafting.shapes import Shape, flipped, moved, oval, ring_of, scaled

LEAST_SEEN = 0.15  # skin that is seen less squarely than this is left out
EYE_IN = 0.84  # of the way out to the edge of the slice: eyes sit beside the gusset seam
MOUTH_SEEN = 0.4
NEAR_EAR = 0.40  # of the skull's half width: an ear nearer than this is drawn before the head


@dataclass(frozen=True)
class EarLook:
    """An ear from in front: outline and lining, the middle of its foot at the origin.

    The foot is ``left_mm`` to the side, ``behind_mm`` behind the nose and ``up_mm`` above the neck.
    The ear leans out by ``lean_deg``, back by ``back_deg``, and from the side shows at least the
    share ``narrowest`` of its width.
    """

    outline: Line
    lining: Line
    left_mm: float
    behind_mm: float
    up_mm: float
    lean_deg: float
    back_deg: float
    narrowest: float


@dataclass(frozen=True)
class Face:
    """The look of a face, heights from the neck.

    ``pad`` is the muzzle's half width, half height and the height of its middle; ``smile`` runs
    from under the nose to the left, as (left, height).
    """

    eye_radius_mm: float
    eye_out_deg: float
    nose: Line
    nose_up_mm: float
    pad: tuple[float, float, float]
    smile: Sequence[Point]


@dataclass(frozen=True)
class Look:
    """All that a head is drawn from."""

    form: HeadForm
    ear: EarLook
    face: Face
    gusset_mm: tuple[float, float]  # half its width at the nose and at the brow


def head_shapes(look: Look, seen: Seen, at: Point) -> list[Shape]:
    """Return the head with the middle of its neck at ``at`` on the page."""
    skull = silhouette(look.form, seen)
    near_mm = NEAR_EAR * look.form.skull_half_mm
    ears = sorted((_ear(look, seen, side) for side in (1, -1)), key=itemgetter(0))
    drawn = [
        *(shape for near, pair in ears if near <= near_mm for shape in pair),
        Shape("figure-head", skull),
        *_seams(look, seen),
        *_pad(look, seen, skull),
        *(shape for near, pair in ears if near > near_mm for shape in pair),
        *_mouth(look, seen),
        _nose(look, seen),
        *_eyes(look, seen),
    ]
    return [Shape(shape.class_name, moved(shape.line, at), shape.is_closed) for shape in drawn]


def _ear(look: Look, seen: Seen, side: int) -> tuple[float, list[Shape]]:
    """Return how near the onlooker an ear is, and its shapes; ``side`` is 1 for the left."""
    ear, form = look.ear, look.form
    place = (side * ear.left_mm, form.middle_mm - ear.behind_mm, ear.up_mm)
    x, up = seen.on_page(place)
    turn = -side * ear.lean_deg * seen.across + seen.along * (ear.back_deg + 8 * side)
    narrow = max(seen.across, ear.narrowest)
    shapes = []
    for name, line in (("figure-ear", ear.outline), ("figure-ear-inner", ear.lining)):
        own = line if side == 1 else flipped(line)
        shapes.append(Shape(name, moved(scaled(own, narrow, 1.0), (x, up), turn_deg=turn)))
    return seen.nearness_mm(place), shapes


def _seams(look: Look, seen: Seen) -> list[Shape]:
    """The seams of the gusset, as far as they are seen from here."""
    lines = []
    for side in (1, -1):
        if side * seen.along > 0.6:
            continue
        line = smooth([_seam_point(look, seen, side, step / 6) for step in range(1, 7)])
        if seen.across > 0.7:
            highest = max(range(len(line)), key=lambda n: line[n][1])
            line = line[: highest + 1]
        lines.append(Shape("figure-seam", line, is_closed=False))
    return lines


def _seam_point(look: Look, seen: Seen, side: int, share: float) -> Point:
    """Return a place on a gusset seam, so far on the way from the nose to the ear."""
    form, (nose_half, brow_half) = look.form, look.gusset_mm
    x = look.ear.behind_mm * share
    rise = min(1.0, share / 0.8)
    half = nose_half + (brow_half - nose_half) * rise * rise * (3 - 2 * rise)
    return seen.on_page(form.on_skin(x, side * min(half, 0.86 * form.half_width_mm(x))))


def _pad(look: Look, seen: Seen, skull: Line) -> list[Shape]:
    """The round of the muzzle, unless it is seen quite from the side."""
    if seen.across < 0.3:
        return []
    half, high, up = look.face.pad
    form = look.form
    x, _ = seen.on_page((0.0, form.middle_mm - 0.35 * form.muzzle_mm, up))
    wide = half * (seen.across + 0.35 * abs(seen.along))
    inside = Polygon(skull).intersection(Polygon(oval((x, up), wide, high, steps=64)))
    return [Shape("figure-muzzle", ring_of(inside, 0.0))]


def _mouth(look: Look, seen: Seen) -> list[Shape]:
    form, smile = look.form, look.face.smile
    drawn = smooth(smile)
    lines = []
    for side in (1, -1):
        line = [
            seen.on_page((side * left, _ahead_mm(form, left), up))
            for left, up in drawn
            if seen.facing(side * _out_deg(form, left)) > MOUTH_SEEN
        ]
        if len(line) > 4:
            lines.append(Shape("figure-mouth", line, is_closed=False))
    if seen.facing(0) > LEAST_SEEN:
        low, top = smile[0][1], look.face.nose_up_mm
        middle = [seen.on_page((0.0, form.middle_mm, up)) for up in (top, low)]
        lines.append(Shape("figure-mouth", middle, is_closed=False))
    return lines


def _out_deg(form: HeadForm, left_mm: float) -> float:
    return math.degrees(math.asin(min(1.0, left_mm / form.muzzle_half_mm)))


def _ahead_mm(form: HeadForm, left_mm: float) -> float:
    round_off = 1 - math.cos(math.radians(_out_deg(form, left_mm)))
    return form.middle_mm - 1.3 * form.muzzle_mm * round_off


def _nose(look: Look, seen: Seen) -> Shape:
    wide = max(x for x, _ in look.face.nose)
    x = (look.form.middle_mm - 0.45 * wide) * seen.along
    narrow = max(seen.across, 0.62)
    return Shape(
        "figure-nose", moved(scaled(look.face.nose, narrow, 1.0), (x, look.face.nose_up_mm))
    )


def _eyes(look: Look, seen: Seen) -> list[Shape]:
    form, face = look.form, look.face
    behind, up = form.profile.eye
    shapes = []
    for side in (1, -1):
        square = seen.facing(side * face.eye_out_deg)
        if square < LEAST_SEEN:
            continue
        left = side * EYE_IN * form.beside(behind, up)
        x, _ = seen.on_page((left, form.middle_mm - behind, up))
        radius = face.eye_radius_mm
        wide = radius * max(0.6, square)
        glint = (x - 0.3 * wide, up + 0.35 * radius)
        shapes.append(Shape("figure-eye", oval((x, up), wide, radius)))
        shapes.append(Shape("figure-glint", oval(glint, 0.28 * wide, 0.28 * radius, steps=16)))
    return shapes

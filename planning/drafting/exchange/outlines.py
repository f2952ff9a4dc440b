"""Which closed outlines of a drawing are pieces, and which lie inside one.

A drawing without the layers of a pattern file says nothing but lines. An outline inside no other is
a piece. One inside a piece is taken for its seam line when it is everywhere about equally far
inside; anything else inside is left out and named. The limits are common practice, no source.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from shapely import LinearRing, MultiPoint, Polygon, STRtree, distance, line_interpolate_point

from planning.drafting.exchange.checked import MOST_PIECES, SPECK, refuse_unsound
from planning.drafting.exchange.found import FoundPiece, PatternFileError
from planning.drafting.rings import Ring, is_simple

ALLOWANCES_MM = (2.0, 40.0)  # a line this far inside may be a seam line
EVEN_SHARE = 0.1  # of the allowance, or EVEN_MM: how far an even line may stray
EVEN_MM = 0.5
EVEN_SAMPLES = 400
STRAIGHT_ON = 0.9  # of the samples; the rest are corners
LEAST_AREA_MM2 = 25.0  # a smaller outline is a mark or a speck
MOST_OUTLINES = 2 * MOST_PIECES

CUT_ASSUMED = (
    "The file does not say whether the outline is the cutting line or the seam line; "
    "it was taken for the cutting line."
)
COUNT_UNSAID = "The file does not say how many to cut: one, until you say otherwise."


@dataclass(frozen=True)
class Outline:
    """A closed line, what the file calls it, where it is, and what was done to close it."""

    ring: Ring
    name: str
    place: str
    notes: tuple[str, ...] = ()


def pieces_among(outlines: Sequence[Outline]) -> tuple[list[FoundPiece], list[str]]:
    """Return the pieces in the file's order, and a sentence for each outline that is none.

    Raises PatternFileError for a piece that crosses itself or is too large.
    """
    if len(outlines) > MOST_OUTLINES:
        raise PatternFileError(
            f"The drawing holds {len(outlines)} closed lines; at most {MOST_OUTLINES} are read. "
            "Take out lettering and pictures."
        )
    kept, notes = _without_copies(outlines)
    inside = _containers(kept)
    pieces: list[FoundPiece] = []
    for index, outline in enumerate(kept):
        if inside[index]:
            continue
        if MultiPoint(outline.ring).convex_hull.area < LEAST_AREA_MM2:
            notes.append(f"{SPECK}: {outline.place}.")
            continue
        refuse_unsound(outline.ring, outline.place)
        within = [kept[other] for other, holders in enumerate(inside) if index in holders]
        direct = [kept[other] for other, holders in enumerate(inside) if holders == [index]]
        pieces.append(_piece(outline, within, direct, len(pieces) + 1))
    return pieces, notes


def _without_copies(outlines: Sequence[Outline]) -> tuple[list[Outline], list[str]]:
    seen: set[frozenset[tuple[float, float]]] = set()
    kept, notes = [], []
    for outline in outlines:
        key = frozenset((round(x, 2), round(y, 2)) for x, y in outline.ring)
        if key in seen:
            notes.append(f"A second copy in the same place was left out: {outline.place}.")
        else:
            kept.append(outline)
        seen.add(key)
    return kept, notes


def _containers(outlines: Sequence[Outline]) -> list[list[int]]:
    """For each outline, the numbers of all simple outlines round it."""
    simple = [index for index, outline in enumerate(outlines) if is_simple(outline.ring)]
    tree = STRtree([Polygon(outlines[index].ring) for index in simple])
    holders: list[list[int]] = [[] for _ in outlines]
    if not simple:
        return holders
    rings = [LinearRing(outline.ring) for outline in outlines]
    for inner, outer in tree.query(rings, predicate="covered_by").T:
        if simple[outer] != inner:
            holders[inner].append(simple[outer])
    return holders


def _piece(
    outline: Outline, within: Sequence[Outline], direct: Sequence[Outline], number: int
) -> FoundPiece:
    seam = next(((line, a) for line in direct if (a := inset_mm(outline.ring, line.ring))), None)
    notes = [*outline.notes]
    if seam:
        notes.append(f"The line {seam[1]:.1f} mm inside the outline was taken for the seam line.")
    else:
        notes.append(CUT_ASSUMED)
    notes += [
        f"Left out, because it is no even seam line: {line.place}, inside this piece."
        for line in within
        if not (seam and line is seam[0])
    ]
    notes.append(COUNT_UNSAID)
    return FoundPiece(
        name=outline.name or f"piece {number}",
        size="",
        outline=outline.ring,
        line="cut",
        seam_line=seam[0].ring if seam else None,
        count=1,
        mirrored=0,
        grain_deg=90.0,
        has_grain=False,
        notes=tuple(notes),
    )


def inset_mm(outer: Ring, inner: Ring) -> float | None:
    """Return how far inside ``outer`` the even copy ``inner`` runs, or None when it is not even.

    >>> inset_mm(((0, 0), (60, 0), (60, 60), (0, 60)), ((6, 6), (54, 6), (54, 54), (6, 54)))
    6.0
    """
    if not is_simple(inner):
        return None
    gaps = distance(_samples(inner), LinearRing(outer))
    middle = float(np.median(gaps))
    least, most = ALLOWANCES_MM
    slack = max(EVEN_MM, EVEN_SHARE * middle)
    is_even = float(np.mean(abs(gaps - middle) <= slack)) >= STRAIGHT_ON
    # a cut corner of 40 degrees is three allowances from the seam's corner
    is_whole = bool((distance(_samples(outer), LinearRing(inner)) <= 3 * middle + slack).all())
    return round(middle, 2) if least <= middle <= most and is_even and is_whole else None


def _samples(ring: Ring) -> np.ndarray:
    shares = np.linspace(0, 1, EVEN_SAMPLES, endpoint=False)
    return line_interpolate_point(LinearRing(ring), shares, normalized=True)

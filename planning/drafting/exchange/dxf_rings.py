"""The outline and the seam line of one block: layers 1 and 14, unfolded where layer 6 is a fold.

The outer of the two is the outline, because some writers put the sew line on layer 1.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from shapely import LineString, Point, Polygon

from planning.drafting.exchange.chains import Closed, Line, closed_ring
from planning.drafting.exchange.checked import refuse_unsound
from planning.drafting.exchange.dxf_layers import BOUNDARY, MIRROR, SEW
from planning.drafting.exchange.dxf_lines import Drawn, rings_of
from planning.drafting.exchange.found import PatternFileError
from planning.drafting.exchange.unfold import FOLD_MM, Fold, unfolded
from planning.drafting.rings import Ring, is_simple, length_mm

LEAST_FOLD_MM = 1.0
TOUCH_MM = 0.01  # a seam line may touch the outline


@dataclass(frozen=True)
class PieceRings:
    """The outline, the seam line if there is one, and the fold if only half was drawn."""

    outline: Ring
    seam: Ring | None
    fold: Fold | None
    notes: tuple[str, ...]


def piece_rings(drawn: Drawn, place: str) -> PieceRings | None:
    """Return the rings of a block, or None when its boundary is not closed.

    Raises PatternFileError when the boundary crosses itself, is over 5 m, or is two.
    """
    closed, still_open = rings_of(drawn.strokes.get(BOUNDARY, []))
    boundary = _largest(closed)
    fold = _fold(drawn)
    outline = (
        _unfolded(boundary, still_open, fold) if _is_on_edge(boundary, still_open, fold) else None
    )
    is_half = outline is not None
    if outline is None and boundary:
        outline = boundary.ring
    if outline is None:
        return None
    refuse_unsound(outline, place)
    notes = _boundary_notes(closed, boundary, still_open, place)
    if fold and not is_half:
        notes.append(
            "A mirror line runs through the inside, so the piece was taken as drawn whole."
        )
    seam, note = _seam(drawn, outline, fold if is_half else None)
    if seam and Polygon(seam).area > Polygon(outline).area:
        outline, seam = seam, outline
    return PieceRings(outline, seam, fold if is_half else None, (*notes, *note))


def _fold(drawn: Drawn) -> Fold | None:
    lines = [stroke.points for stroke in drawn.strokes.get(MIRROR, []) if len(stroke.points) > 1]
    longest = max(lines, key=length_mm, default=None)
    if longest is None or length_mm((longest[0], longest[-1])) < LEAST_FOLD_MM:
        return None
    return longest[0], longest[-1]


def _is_on_edge(boundary: Closed | None, still_open: Sequence[Line], fold: Fold | None) -> bool:
    if fold is None:
        return False
    edges = [(*boundary.ring, boundary.ring[0])] if boundary else [tuple(o) for o in still_open]
    return any(
        all(LineString(edge).distance(Point(end)) <= FOLD_MM for end in fold) for edge in edges
    )


def _unfolded(
    boundary: Closed | None, still_open: Sequence[Line], fold: Fold | None
) -> Ring | None:
    if fold is None:
        return None
    halves: list[tuple[Sequence[tuple[float, float]], bool]] = (
        [(boundary.ring, True)] if boundary else [(line, False) for line in still_open]
    )
    for points, is_closed in halves:
        whole = unfolded(points, is_closed, fold)
        closed = closed_ring(whole, is_closed=True) if whole else None
        if closed:
            return closed.ring
    return None


def _boundary_notes(
    closed: Sequence[Closed], boundary: Closed | None, still_open: Sequence[Line], place: str
) -> list[str]:
    notes = []
    if boundary and boundary.gap_mm:
        notes.append(f"The outline missed closing by {boundary.gap_mm:.1f} mm and was closed.")
    if boundary:
        shape = Polygon(boundary.ring).buffer(TOUCH_MM)
        others = [one for one in closed if one is not boundary]
        if not all(shape.covers(LineString(one.ring)) for one in others):
            raise PatternFileError(
                f"There are two boundaries on layer {BOUNDARY} of {place}. Give each piece a block."
            )
        if others:
            notes.append(f"Closed lines inside, on layer {BOUNDARY}, left out: {len(others)}.")
        if still_open:
            notes.append(f"Open lines on layer {BOUNDARY}, left out: {len(still_open)}.")
    return notes


def _seam(drawn: Drawn, outline: Ring, fold: Fold | None) -> tuple[Ring | None, list[str]]:
    closed, still_open = rings_of(drawn.strokes.get(SEW, []))
    if not (closed or still_open):
        return None, []
    largest = _largest(closed)
    seam = _unfolded(largest, still_open, fold) if fold else (largest.ring if largest else None)
    if seam is None or not is_simple(seam):
        return None, [f"The sew line on layer {SEW} is not one closed line, so it was left out."]
    outer, inner = sorted((outline, seam), key=lambda ring: -Polygon(ring).area)
    if not Polygon(outer).buffer(TOUCH_MM).covers(Polygon(inner)):
        return None, [f"The sew line on layer {SEW} crosses the boundary, so it was left out."]
    if outer is seam:
        return seam, [f"The line on layer {SEW} lies outside and was taken for the cutting line."]
    return seam, []


def _largest(closed: Sequence[Closed]) -> Closed | None:
    return max(closed, key=lambda one: Polygon(one.ring).convex_hull.area, default=None)

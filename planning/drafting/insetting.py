"""Setting an outline in by a constant distance while every edge keeps its name and its corners.

The inset is Shapely's negative buffer with mitred corners. A corner goes to where its two lines
meet once both have moved inwards. What would lose an edge or a part of the piece is refused.
"""

import math
from collections.abc import Sequence
from itertools import accumulate

from shapely import (
    LinearRing,
    LineString,
    MultiPolygon,
    Polygon,
    distance,
    dwithin,
    points,
    prepare,
)
from shapely import Point as Place
from shapely.geometry.polygon import orient

from planning.drafting.curves import Line
from planning.drafting.entry import EntryError
from planning.drafting.entry_lines import ring_of
from planning.drafting.outline import Drawn
from planning.drafting.rings import Point, Ring, length_mm
from planning.drafting.vertices import with_vertices

MITRE_LIMIT = 5.0  # the corner of a sharper slot is cut off at so many distances
DEEPEST = (
    3.0  # distances from the outline to its inset; a rounded finger that is left out is deeper
)
SNAP_MM = 0.1
SAME_VERTEX_MM = 0.01
LEAST_EDGE_MM = 0.5


def inset(drawn: Sequence[Drawn], by_mm: float, field: str) -> list[Drawn]:
    """Return the edges of ``drawn`` set in by ``by_mm``, anticlockwise one after another.

    Raises EntryError with ``field`` when nothing is left, the piece falls apart, or an edge or a
    narrow part of the outline disappears.
    """
    if by_mm == 0:
        return list(drawn)
    ring = ring_of(drawn)
    starts = accumulate((len(edge.line) - 1 for edge in drawn[:-1]), initial=0)
    reaches = [_reach(ring, start) for start in starts]
    rim = _rim(ring, by_mm, field)
    deepest_mm = by_mm * max(DEEPEST, *(math.hypot(*reach) for reach in reaches))
    _refuse_lost_part(ring, rim, deepest_mm, by_mm, field)
    rim_line = LineString(rim)
    at_mm = [
        _place_on(rim_line, edge, (by_mm * across, by_mm * up), field)
        for edge, (across, up) in zip(drawn, reaches, strict=True)
    ]
    return _parted(drawn, rim, at_mm, field)


def _reach(ring: Ring, at: int) -> Point:
    """Return how far a corner moves when its two lines move inwards by 1 (to the left)."""
    before, here, after = ring[at - 1], ring[at], ring[(at + 1) % len(ring)]
    (ax, ay), (bx, by) = _left(before, here), _left(here, after)
    grows = 1 / max(1 + ax * bx + ay * by, 1e-9)
    across, up = grows * (ax + bx), grows * (ay + by)
    is_hollow = ax * by - ay * bx < 0
    shorter = min(1.0, MITRE_LIMIT / math.hypot(across, up)) if is_hollow else 1.0
    return (shorter * across, shorter * up)


def _left(a: Point, b: Point) -> Point:
    span = math.dist(a, b)
    return ((a[1] - b[1]) / span, (b[0] - a[0]) / span)


def _rim(ring: Ring, by_mm: float, field: str) -> Line:
    """Return the inset outline as a closed line."""
    shape = Polygon(ring).buffer(-by_mm, join_style="mitre", mitre_limit=MITRE_LIMIT)
    if shape.is_empty:
        raise EntryError(f"Set in by {by_mm:g} mm, nothing is left of the piece.", field)
    if isinstance(shape, MultiPolygon):
        raise EntryError(f"Set in by {by_mm:g} mm, the piece falls into two parts.", field)
    kept: Line = []
    for x, y in orient(shape).exterior.coords[:-1]:
        if not kept or math.dist(kept[-1], (x, y)) > SAME_VERTEX_MM:
            kept.append((x, y))
    if math.dist(kept[-1], kept[0]) <= SAME_VERTEX_MM:
        kept.pop()
    return [*kept, kept[0]]


def _refuse_lost_part(ring: Ring, rim: Line, deepest_mm: float, by_mm: float, field: str) -> None:
    line = LinearRing(rim)
    prepare(line)  # asking all vertices one by one is most of the work otherwise
    if not dwithin(line, points(ring), deepest_mm + SNAP_MM).all():
        x, y = ring[int(distance(line, points(ring)).argmax())]
        text = f"Near ({x:.0f}, {y:.0f}) mm the outline is too narrow to be set in by {by_mm:g} mm."
        raise EntryError(text, field)


def _place_on(rim: LineString, edge: Drawn, by: Point, field: str) -> float:
    """Return how far along the rim the corner lies at which an edge starts."""
    moved = Place(edge.line[0][0] + by[0], edge.line[0][1] + by[1])
    if rim.distance(moved) > math.hypot(*by):
        raise _lost(edge, field)
    return float(rim.project(moved))


def _parted(drawn: Sequence[Drawn], rim: Line, at_mm: list[float], field: str) -> list[Drawn]:
    """Cut the rim at the corners; each edge must still come after the one before it."""
    closed, places = with_vertices(rim, at_mm, SNAP_MM)
    around = len(closed) - 1
    first = places[0] % around
    turned = [*closed[first:-1], *closed[: first + 1]]
    starts = [(place - first) % around for place in places]
    parts = []
    for edge, start, end in zip(drawn, starts, [*starts[1:], around], strict=True):
        line = turned[start : end + 1]
        if start >= end or length_mm(line) < LEAST_EDGE_MM:
            raise _lost(edge, field)
        parts.append(Drawn(edge.name, line))
    return parts


def _lost(edge: Drawn, field: str) -> EntryError:
    text = f"Set in that far, the edge “{edge.name}” disappears: make it longer or take less."
    return EntryError(text, field)

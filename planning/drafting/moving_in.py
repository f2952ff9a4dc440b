"""An outline moved inwards by a constant distance, with its edges kept track of.

Used where a paper piece has its seam allowance drawn on it, and where a pen ran outside a template.
Corners stay corners (mitred). Refuses a distance that swallows an edge or parts the piece.
"""

import math
from collections.abc import Sequence

from shapely import Polygon
from shapely.geometry.polygon import orient

from planning.drafting.rings import Point
from planning.drafting.tracing import Side
from shared.errors import OutlineError

SHARPEST = 8.0  # how many distances a mitred corner may lie from the corner it came from


def moved_in(sides: Sequence[Side], by_mm: float) -> tuple[Side, ...]:
    """Return the edges ``by_mm`` further in; they must run anticlockwise.

    Raises OutlineError when nothing is left, or an edge is no longer there.

    >>> square = (Side("rim", ((0, 0), (10, 0), (10, 10), (0, 10), (0, 0))),)
    >>> moved_in(square, 1.0)[0].line
    ((1.0, 1.0), (9.0, 1.0), (9.0, 9.0), (1.0, 9.0), (1.0, 1.0))
    """
    if by_mm == 0:
        return tuple(sides)
    ring = _shrunk([point for side in sides for point in side.line[:-1]], by_mm)
    starts = [_nearest(ring, side.line[0], by_mm, side.name) for side in sides]
    if len(sides) == 1:
        return (Side(sides[0].name, _between(ring, starts[0], starts[0])),)
    first = starts[0]
    order = [(start - first) % len(ring) for start in starts]
    if order != sorted(set(order)):
        raise OutlineError(_too_wide(by_mm))
    return tuple(
        Side(side.name, _between(ring, start, end))
        for side, start, end in zip(sides, starts, [*starts[1:], first], strict=True)
    )


def _shrunk(ring: Sequence[Point], by_mm: float) -> list[Point]:
    small = Polygon(ring).buffer(-by_mm, join_style="mitre", mitre_limit=SHARPEST)
    if small.is_empty or not isinstance(small, Polygon) or small.interiors:
        raise OutlineError(_too_wide(by_mm))
    return [(x, y) for x, y in orient(small).exterior.coords[:-1]]


def _nearest(ring: Sequence[Point], corner: Point, by_mm: float, name: str) -> int:
    index = min(range(len(ring)), key=lambda i: math.dist(ring[i], corner))
    if math.dist(ring[index], corner) > (SHARPEST + 1) * by_mm:
        raise OutlineError(f"{_too_wide(by_mm)} Nothing is left where “{name}” begins.")
    return index


def _between(ring: Sequence[Point], start: int, end: int) -> tuple[Point, ...]:
    if start < end:
        return tuple(ring[start : end + 1])
    return (*ring[start:], *ring[: end + 1])


def _too_wide(by_mm: float) -> str:
    return f"{by_mm:g} mm inwards is more than the piece has room for."

"""A piece traced point by point: corners, and between them points that a curve runs through.

Points are taken in order round the piece, either way round. A run of curved points between two
corners is one smooth line; a corner ends an edge. Nothing is measured here and no allowance added.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from planning.drafting.curves import Line, smooth, smooth_loop
from planning.drafting.rings import Point
from shared.errors import OutlineError

SAME_PLACE_MM = 0.01
LARGEST_MM = 3000.0  # this project's own limit: longer than any cutting table in a house


@dataclass(frozen=True)
class TracedPoint:
    """One point of a tracing, in millimetres; a curve runs through it, or it is a corner."""

    x: float
    y: float
    is_curved: bool = False

    @property
    def at(self) -> Point:
        return (self.x, self.y)


@dataclass(frozen=True)
class Side:
    """One edge of an outline: its name and its line from corner to corner."""

    name: str
    line: tuple[Point, ...]


def sides_through(points: Sequence[TracedPoint]) -> tuple[Side, ...]:
    """Return the edges of a traced outline, named 'edge 1' onwards from the first corner.

    Raises OutlineError for fewer than three points, a point out of reach or one given twice.

    >>> square = [TracedPoint(0, 0), TracedPoint(9, 0), TracedPoint(9, 9), TracedPoint(0, 9)]
    >>> [side.name for side in sides_through(square)]
    ['edge 1', 'edge 2', 'edge 3', 'edge 4']
    """
    _check(points)
    corners = [index for index, point in enumerate(points) if not point.is_curved]
    if not corners:
        return (Side("edge 1", tuple(smooth_loop([point.at for point in points]))),)
    first = corners[0]
    turned = [*points[first:], *points[:first], points[first]]
    ends = [index for index, point in enumerate(turned) if not point.is_curved]
    return tuple(
        Side(f"edge {number}", tuple(_run(turned[start : end + 1])))
        for number, (start, end) in enumerate(pairwise(ends), 1)
    )


def _run(points: Sequence[TracedPoint]) -> Line:
    places = [point.at for point in points]
    return places if len(places) == 2 else smooth(places)


def _check(points: Sequence[TracedPoint]) -> None:
    if len(points) < 3:
        raise OutlineError("An outline needs at least three points.")
    for number, point in enumerate(points, 1):
        if not all(math.isfinite(part) and abs(part) <= LARGEST_MM for part in point.at):
            raise OutlineError(
                f"Point {number} is more than {LARGEST_MM / 10:g} cm away, which no table holds. "
                "Check the unit."
            )
    for number, (here, following) in enumerate(pairwise([*points, points[0]]), 1):
        if math.dist(here.at, following.at) <= SAME_PLACE_MM:
            other = number % len(points) + 1
            raise OutlineError(f"Points {number} and {other} are the same place.")

"""Plain plane geometry of lines and rings, in millimetres: length, area, walking along, crossing.

A ring is a tuple of corners, not closed; an open line is any sequence of points. The one tolerance
for "the same place" is ``SAME_PLACE_MM``.
"""

import math
from collections.abc import Sequence
from itertools import pairwise

from shapely import LinearRing

Point = tuple[float, float]
Ring = tuple[Point, ...]

SAME_PLACE_MM = 1e-6


def length_mm(points: Sequence[Point]) -> float:
    """Return the length of an open line.

    >>> length_mm([(0, 0), (3, 4), (3, 5)])
    6.0
    """
    return sum(math.dist(a, b) for a, b in pairwise(points))


def perimeter_mm(ring: Ring) -> float:
    """Return the length once round a ring.

    >>> perimeter_mm(((0, 0), (3, 0), (3, 4)))
    12.0
    """
    return length_mm((*ring, ring[0]))


def signed_area_mm2(ring: Ring) -> float:
    """Return the area inside a ring: positive when it runs anticlockwise.

    >>> signed_area_mm2(((0, 0), (2, 0), (2, 3), (0, 3)))
    6.0
    """
    return sum(a[0] * b[1] - b[0] * a[1] for a, b in pairwise((*ring, ring[0]))) / 2


def mirrored(ring: Ring) -> Ring:
    """Return the ring turned over left to right (x to -x), still anticlockwise.

    >>> mirrored(((0, 0), (2, 0), (2, 1)))
    ((-2, 1), (-2, 0), (0, 0))
    """
    return tuple((-x, y) for x, y in reversed(ring))


def is_simple(ring: Ring) -> bool:
    """Say whether the ring has at least three corners and never touches or crosses itself."""
    return len(set(ring)) == len(ring) >= 3 and bool(LinearRing(ring).is_simple)


def bounds_mm(ring: Sequence[Point]) -> tuple[float, float, float, float]:
    """Return the smallest x and y and the largest x and y."""
    xs, ys = zip(*ring, strict=True)
    return min(xs), min(ys), max(xs), max(ys)


def point_along(points: Sequence[Point], distance_mm: float) -> Point:
    """Return the point at a distance along an open line; past its ends, the end itself.

    >>> point_along([(0, 0), (10, 0), (10, 10)], 12)
    (10.0, 2.0)
    """
    left_mm = max(distance_mm, 0.0)
    for a, b in pairwise(points):
        step_mm = math.dist(a, b)
        if left_mm <= step_mm and step_mm > 0:
            share = left_mm / step_mm
            return (a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1]))
        left_mm -= step_mm
    return points[-1]


def widths_across(ring: Ring, heights_mm: Sequence[float]) -> list[float]:
    """Return, for each height y, how wide the ring is across there (outermost to outermost).

    >>> widths_across(((0, 0), (4, 0), (4, 2), (0, 2)), [1.0])
    [4.0]
    """
    widths = []
    for height in heights_mm:
        hits = [
            a[0] + (height - a[1]) / (b[1] - a[1]) * (b[0] - a[0])
            for a, b in pairwise((*ring, ring[0]))
            if (a[1] - height) * (b[1] - height) <= 0 and a[1] != b[1]
        ]
        widths.append(max(hits) - min(hits) if hits else 0.0)
    return widths

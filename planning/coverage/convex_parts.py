"""A shape cut into convex parts, and the sum of two shapes by their parts (after Minkowski).

Triangles (constrained Delaunay) are joined across their common edges while what they make together
is still convex. The sum of two convex shapes is the hull of the sums of their corners, and the sum
of any two shapes is all the sums of their parts together.
"""

from collections.abc import Sequence
from typing import Any

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely.geometry.base import BaseGeometry

type Corners = NDArray[np.float64]

STILL_CONVEX = 1.0 + 1e-9


def convex_parts(shape: BaseGeometry) -> list[Corners]:
    """The corners of convex parts that together are the shape.

    >>> from shapely import box
    >>> [len(part) for part in convex_parts(box(0, 0, 2, 1).union(box(0, 0, 1, 2)))]
    [4, 4]
    """
    triangles = list(shapely.constrained_delaunay_triangles(shape).geoms)
    parts = [shapely.get_coordinates(triangle)[:-1] for triangle in triangles]
    areas = [triangle.area for triangle in triangles]
    part_of = list(range(len(parts)))

    def root(number: int) -> int:
        while part_of[number] != number:
            number = part_of[number]
        return number

    for first, second in _neighbours(parts):
        one, other = root(first), root(second)
        corners = np.concatenate([parts[one], parts[other]])
        hull = shapely.MultiPoint(corners).convex_hull
        if one != other and hull.area <= (areas[one] + areas[other]) * STILL_CONVEX:
            parts[one], areas[one] = shapely.get_coordinates(hull)[:-1], float(hull.area)
            part_of[other] = one
    return [part for number, part in enumerate(parts) if part_of[number] == number]


def _neighbours(triangles: Sequence[Corners]) -> list[tuple[int, int]]:
    """The pairs of triangles with a common edge, the longest edge first."""
    seen: dict[frozenset[tuple[float, float]], int] = {}
    pairs = []
    for number, corners in enumerate(triangles):
        ring = [(float(x), float(y)) for x, y in corners]
        for start, end in zip(ring, (*ring[1:], ring[0]), strict=True):
            edge = frozenset((start, end))
            if edge in seen:
                length = float(np.hypot(start[0] - end[0], start[1] - end[1]))
                pairs.append((-length, seen[edge], number))
            seen[edge] = number
    return [(first, second) for _, first, second in sorted(pairs)]


def sum_of_shapes(first: Sequence[Corners], second: Sequence[Corners]) -> BaseGeometry:
    """All points that are a point of the first shape plus one of the second, by convex parts."""
    sums = [
        (one[:, None, :] + other[None, :, :]).reshape(-1, 2) for one in first for other in second
    ]
    numbers = np.repeat(np.arange(len(sums)), [len(points) for points in sums])
    points: Any = shapely.points(np.concatenate(sums))
    hulls: Any = shapely.convex_hull(shapely.multipoints(points, indices=numbers))
    whole: BaseGeometry = hulls[0] if len(hulls) == 1 else shapely.union_all(hulls)
    return whole

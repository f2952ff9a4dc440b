"""Vertices put into a line at distances along it, without doubling those that are there."""

import math
from collections.abc import Sequence
from itertools import accumulate, pairwise

from planning.drafting.curves import Line
from planning.drafting.rings import point_along


def with_vertices(line: Line, at_mm: Sequence[float], snap_mm: float) -> tuple[Line, list[int]]:
    """Return the line with a vertex at each distance, and the vertices' places in it.

    A vertex within ``snap_mm`` of a distance serves as it is.

    >>> with_vertices([(0.0, 0.0), (4.0, 0.0)], [1.0, 3.999], 0.01)
    ([(0.0, 0.0), (1.0, 0.0), (4.0, 0.0)], [1, 2])
    """
    steps = [math.dist(a, b) for a, b in pairwise(line)]
    vertices = dict(zip(accumulate(steps, initial=0.0), line, strict=False))
    wanted = []
    for along_mm in at_mm:
        nearest = min(vertices, key=lambda there: abs(there - along_mm))
        if abs(nearest - along_mm) > snap_mm:
            nearest = along_mm
            vertices[along_mm] = point_along(line, along_mm)
        wanted.append(nearest)
    order = sorted(vertices)
    places = {along_mm: place for place, along_mm in enumerate(order)}
    return [vertices[along_mm] for along_mm in order], [places[each] for each in wanted]

"""Lines moved about the plane for the drawing of the finished bear."""

import math
from dataclasses import dataclass

from shapely import Polygon, get_coordinates, get_exterior_ring
from shapely.geometry.base import BaseGeometry

from planning.drafting.curves import Line
from planning.drafting.rings import Point


@dataclass(frozen=True)
class Shape:
    """One line of a drawing, in millimetres, y upwards from the floor."""

    class_name: str
    line: Line
    is_closed: bool = True


def moved(line: Line, to: Point, turn_deg: float = 0.0, about: Point = (0.0, 0.0)) -> Line:
    """Turn a line anticlockwise about a point, then carry that point to ``to``.

    >>> moved([(2.0, 0.0)], to=(5.0, 5.0), about=(1.0, 0.0))
    [(6.0, 5.0)]
    """
    c, s = math.cos(math.radians(turn_deg)), math.sin(math.radians(turn_deg))
    ax, ay = about
    return [
        (to[0] + c * (x - ax) - s * (y - ay), to[1] + s * (x - ax) + c * (y - ay)) for x, y in line
    ]


def scaled(line: Line, across: float, up: float | None = None) -> Line:
    """Stretch a line from the origin, across and up.

    >>> scaled([(2.0, 1.0)], 2.0)
    [(4.0, 2.0)]
    """
    return [(x * across, y * (across if up is None else up)) for x, y in line]


def flipped(line: Line) -> Line:
    """Return the line turned over left to right, walked the same way."""
    return [(-x, y) for x, y in line]


def oval(centre: Point, half_width_mm: float, half_height_mm: float, steps: int = 48) -> Line:
    """Return an ellipse as a closed line, its first point not repeated."""
    turns = [2 * math.pi * step / steps for step in range(steps)]
    return [
        (centre[0] + half_width_mm * math.cos(t), centre[1] + half_height_mm * math.sin(t))
        for t in turns
    ]


def rounded(line: Line, radius_mm: float) -> Line:
    """Round the outward corners of a closed line, as stuffing does."""
    soft = Polygon(line).buffer(-radius_mm, quad_segs=24).buffer(radius_mm, quad_segs=24)
    return ring_of(soft, 0.02)


def ring_of(shape: BaseGeometry, smoothing_mm: float) -> Line:
    """Return the outer ring of a polygon, without the corners nearly on a straight line."""
    ring = get_coordinates(get_exterior_ring(shape.simplify(smoothing_mm)))
    return [(float(x), float(y)) for x, y in ring][:-1]

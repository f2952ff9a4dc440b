"""What counts as an outline: one simple ring with an area, every point within reason.

Knows nothing of garments. A ring is a sequence of (x, y) in millimetres, not closed; it may run
either way round on the way in and runs anticlockwise on the way out.
"""

import math
from collections.abc import Sequence

from shapely import Polygon
from shapely.geometry.polygon import orient
from shapely.validation import explain_validity

from shared.errors import OutlineError
from shared.units import LONGEST_MM

Point = tuple[float, float]
Ring = tuple[Point, ...]

SMALLEST_AREA_MM2 = 100.0  # a square of one centimetre: nothing smaller is worth a panel
SAME_POINT_MM = 0.01


def clean_ring(points: Sequence[Sequence[float]], *, least_mm2: float = SMALLEST_AREA_MM2) -> Ring:
    """Return the ring anticlockwise, open, without repeated points.

    Raises OutlineError naming the corner where one can be named.

    >>> clean_ring([(0, 0), (0, 50), (50, 50), (50, 0), (0, 0)])
    ((0.0, 0.0), (50.0, 0.0), (50.0, 50.0), (0.0, 50.0))
    """
    ring = _without_repeats([_checked(number, point) for number, point in enumerate(points, 1)])
    if len(ring) < 3:
        raise OutlineError("An outline needs at least three corners.")
    shape = Polygon(ring)
    if not shape.is_valid:
        raise OutlineError(f"The outline crosses or touches itself{_where(shape)}.")
    if shape.area < least_mm2:
        raise OutlineError("The outline has next to no area. Check the corners and the unit.")
    turned = orient(shape).exterior.coords[:-1]
    start = list(turned).index(ring[0])
    return tuple((x, y) for x, y in (*turned[start:], *turned[:start]))


def _checked(number: int, point: Sequence[float]) -> Point:
    if len(point) != 2 or not all(math.isfinite(part) for part in point):
        raise OutlineError(f"Corner {number} is not a pair of lengths.")
    if any(abs(part) > LONGEST_MM for part in point):
        raise OutlineError(f"Corner {number} is more than ten metres away. Check the unit.")
    return float(point[0]), float(point[1])


def _without_repeats(points: list[Point]) -> list[Point]:
    kept = [
        p for n, p in enumerate(points) if n == 0 or math.dist(p, points[n - 1]) > SAME_POINT_MM
    ]
    if len(kept) > 1 and math.dist(kept[0], kept[-1]) <= SAME_POINT_MM:
        kept.pop()
    return kept


def _where(shape: Polygon) -> str:
    found = explain_validity(shape).partition("[")[2].rstrip("]").split()
    if len(found) != 2:
        return ""
    x_mm, y_mm = (float(part) for part in found)
    return f" near {x_mm / 10:.1f} cm across, {y_mm / 10:.1f} cm up"

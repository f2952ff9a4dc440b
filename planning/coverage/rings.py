"""Whether an outline is a sound ring, and the harmless defects that are mended on the way.

Mended: a repeated point, a closing point, a clockwise ring, a spike that goes out and comes back
along itself. Refused: a ring that crosses or touches itself, has no area, or holds a number that
is none. A mended ring encloses the same cloth as the ring that was given.
"""

import math
import re

from shapely import LinearRing, Polygon, is_valid_reason

from planning.coverage.problem import Outline, Point

SAME_POINT_MM = 1e-3  # a thousandth of a millimetre: no tape or blade knows it
SMALLEST_AREA_MM2 = 1.0
LARGEST_COORDINATE_MM = 1e6  # a kilometre: anything beyond is a slip of units
MOST_POINTS = 5000

_PLACE = re.compile(r"\[(\S+) (\S+)\]")


def mended(outline: Outline) -> Outline:
    """The ring without repeats, closing point and spikes, anticlockwise; fewer than 3 if none.

    >>> mended(((0, 0), (0, 9), (9, 9), (9, 9), (9, 0), (0, 0)))
    ((9, 0), (9, 9), (0, 9), (0, 0))
    """
    points = list(outline)
    while len(points) >= 3:
        kept = _without_needless(points)
        if len(kept) == len(points):
            break
        points = kept
    if len(points) >= 3 and not LinearRing(points).is_ccw:
        points.reverse()
    return tuple(points)


def fault_of_ring(outline: Outline) -> str | None:
    """What is wrong with the ring, as the end of a sentence; None for a sound one.

    >>> fault_of_ring(((0, 0), (10, 10), (10, 0), (0, 10)))
    'the ring crosses or touches itself near (5, 5)'
    """
    if len(outline) > MOST_POINTS:
        return f"the ring has {len(outline)} points; at most {MOST_POINTS} are read"
    for x, y in outline:
        if not (math.isfinite(x) and math.isfinite(y)):
            return "a coordinate is not a number"
        if max(abs(x), abs(y)) > LARGEST_COORDINATE_MM:
            return f"the point ({x:g}, {y:g}) lies more than a kilometre away; are these mm?"
    ring = mended(outline)
    if len(ring) < 3:
        return "the ring has no area"
    polygon = Polygon(ring)
    if not polygon.is_valid:
        return f"the ring crosses or touches itself near {_place(is_valid_reason(polygon))}"
    if polygon.area < SMALLEST_AREA_MM2:
        return "the ring has no area"
    return None


def _without_needless(points: list[Point]) -> list[Point]:
    """One pass that drops repeats and the tips of spikes."""
    kept: list[Point] = []
    for index, point in enumerate(points):
        before = kept[-1] if kept else points[-1]
        after = points[(index + 1) % len(points)]
        if math.dist(before, point) > SAME_POINT_MM and not _is_spike(before, point, after):
            kept.append(point)
    return kept


def _is_spike(before: Point, tip: Point, after: Point) -> bool:
    """Whether the ring goes out to the tip and comes straight back."""
    out = (before[0] - tip[0], before[1] - tip[1])
    back = (after[0] - tip[0], after[1] - tip[1])
    reach, width = math.hypot(*out), math.hypot(*back)
    if min(reach, width) <= SAME_POINT_MM:
        return False
    if out[0] * back[0] + out[1] * back[1] <= 0:
        return False
    off_line = abs(out[0] * back[1] - out[1] * back[0]) / max(reach, width)
    return off_line <= SAME_POINT_MM


def _place(reason: str) -> str:
    found = _PLACE.search(reason)
    return f"({float(found[1]):.6g}, {float(found[2]):.6g})" if found else "one of its points"

"""Clips into the allowance of tight curves, so that it spreads or lies flat once turned.

Clips every 3 to 6 mm on tight curves are common practice, no source. What counts as tight, a radius
under 40 mm, and that the closest clips go to a radius of 10 mm or less, are this project's own.
"""

import math
from collections.abc import Sequence

from shapely import LineString

from planning.drafting.rings import Point

TIGHT_MM, TIGHTEST_MM = 40.0, 10.0  # radii
WIDEST_GAP_MM, CLOSEST_GAP_MM = 6.0, 3.0
LOOK_MM = 6.0  # the bend is measured over this much of the line, half of it each way
STEP_MM = 1.0


def clips_along(line: Sequence[Point]) -> tuple[Point, ...]:
    """Return where to clip a stretch of seam line, in order along it.

    >>> clips_along([(0.0, 0.0), (100.0, 0.0)])
    ()
    """
    path = LineString(line)
    clips: list[Point] = []
    owed = 0.0
    for step in range(1, int(path.length / STEP_MM)):
        at_mm = step * STEP_MM
        gap = _gap_mm(radius_mm(path, at_mm))
        owed = owed + STEP_MM / gap if gap else 0.0
        if owed >= 1:
            owed -= 1
            place = path.interpolate(at_mm)
            clips.append((place.x, place.y))
    return tuple(clips)


def radius_mm(path: LineString, at_mm: float) -> float:
    """Return the radius of the circle through three places of the line about ``at_mm``."""
    half = min(LOOK_MM / 2, at_mm, path.length - at_mm)
    a, b, c = (path.interpolate(at_mm + shift) for shift in (-half, 0.0, half))
    twice_area = abs((b.x - a.x) * (c.y - a.y) - (c.x - a.x) * (b.y - a.y))
    sides = a.distance(b) * b.distance(c) * c.distance(a)
    return sides / (2 * twice_area) if twice_area > 1e-9 else math.inf


def _gap_mm(radius: float) -> float:
    """Return how far apart the clips go at this radius; nothing where none are needed."""
    if radius >= TIGHT_MM:
        return 0.0
    share = (max(radius, TIGHTEST_MM) - TIGHTEST_MM) / (TIGHT_MM - TIGHTEST_MM)
    return CLOSEST_GAP_MM + share * (WIDEST_GAP_MM - CLOSEST_GAP_MM)

"""The part of a panel that is there whatever the cloth shrinks by, within a predicted range.

A panel shrunk more is not always inside the same panel shrunk less, so neither end of the range
alone is safe. For a convex outline the four corners of the range are enough; a hollow outline is
sampled on a grid and inset by the largest step between neighbours.
"""

import math
from dataclasses import dataclass
from itertools import pairwise, product

from shapely import Point, Polygon, affinity, intersection_all, union_all
from shapely.geometry.base import BaseGeometry

GRID = 5


@dataclass(frozen=True, slots=True)
class Shrinkage:
    """How much cloth shrinks along and across its grain, each a range in percent."""

    along_pct: tuple[float, float]
    across_pct: tuple[float, float]


def sound_core(
    outline: Polygon, flaws: list[BaseGeometry], shrinkage: Shrinkage, grain_deg: float
) -> tuple[BaseGeometry, list[BaseGeometry]]:
    """Return the outline that is left in every case, and the flaws grown to cover every case.

    Both are in millimetres about the outline's own centre. Areas only ever get smaller.
    """
    origin = outline.centroid
    convex = outline.convex_hull.area - outline.area < 1e-6 * outline.area
    along, across = (_steps(r, 2 if convex else GRID) for r in _ranges(shrinkage))
    cases = [_scaled(outline, a, b, grain_deg, origin) for a, b in product(along, across)]
    core = intersection_all(cases)
    if not convex:
        core = core.buffer(-_between(outline, along, across), join_style="mitre")
    grown = [
        union_all([_scaled(flaw, a, b, grain_deg, origin) for a, b in product(along, across)])
        for flaw in flaws
    ]
    return core, [flaw.convex_hull for flaw in grown]


def _ranges(shrinkage: Shrinkage) -> tuple[tuple[float, float], tuple[float, float]]:
    return shrinkage.along_pct, shrinkage.across_pct


def _steps(pct: tuple[float, float], count: int) -> list[float]:
    low, high = pct
    if low == high:
        return [1 - low / 100]
    return [1 - (low + (high - low) * step / (count - 1)) / 100 for step in range(count)]


def _scaled(
    shape: BaseGeometry, along: float, across: float, grain_deg: float, origin: Point
) -> BaseGeometry:
    upright = affinity.rotate(shape, 90 - grain_deg, origin=origin)
    shrunk = affinity.scale(upright, across, along, origin=origin)
    return affinity.rotate(shrunk, grain_deg - 90, origin=origin)


def _between(outline: Polygon, along: list[float], across: list[float]) -> float:
    """How far a point can lie from its nearest sampled case: half a step at the largest radius."""
    gap = max((abs(a - b) for steps in (along, across) for a, b in pairwise(steps)), default=0.0)
    return _radius(outline) * gap / 2 * math.sqrt(2)


def _radius(outline: Polygon) -> float:
    centre = outline.centroid
    return max(math.dist((centre.x, centre.y), point) for point in outline.exterior.coords)

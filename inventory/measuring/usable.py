"""Usable cloth: a panel's outline less what shrinks away, its edges, its flaws and the places kept.

Every square millimetre taken off is accounted for once, in the order a cutter would meet it, so
that the parts always add up to the whole. Says whether shrinkage was predicted or measured.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from shapely import Point as ShapelyPoint
from shapely import Polygon, make_valid
from shapely.geometry.base import BaseGeometry

from inventory.measuring.rings import Ring
from inventory.measuring.shrinkage import Shrinkage, sound_core

EDGE_MARGIN_MM = 5.0  # seam holes and pressed edges: common practice, no source
FLAW_MARGIN_MM = 3.0  # common practice, no source


@dataclass(frozen=True, slots=True)
class Place:
    """A flaw or detail on a panel: a circle (one point, a radius) or a polygon."""

    name: str
    points: Ring
    radius_mm: float | None = None

    @property
    def shape(self) -> BaseGeometry:
        if self.radius_mm is not None:
            # a quarter circle in 16 chords lies inside the circle; grow so that it lies outside
            return ShapelyPoint(self.points[0]).buffer(self.radius_mm * 1.0025, quad_segs=16)
        return make_valid(Polygon(self.points))


@dataclass(frozen=True, slots=True)
class TakenOff:
    """So much cloth lost to one cause."""

    reason: str
    area_mm2: float


@dataclass(frozen=True, slots=True)
class UsableCloth:
    """What is left of a panel. ``region`` is the usable part itself."""

    outline_mm2: float
    usable_mm2: float
    taken_off: tuple[TakenOff, ...]
    is_shrinkage_predicted: bool
    region: BaseGeometry


def usable_cloth(
    outline: Ring,
    flaws: Sequence[Place] = (),
    kept_aside: Sequence[Place] = (),
    *,
    shrinkage: Shrinkage | None = None,
    grain_deg: float = 90.0,
    edge_margin_mm: float = EDGE_MARGIN_MM,
    flaw_margin_mm: float = FLAW_MARGIN_MM,
) -> UsableCloth:
    """Return the usable region of a panel and what was taken off, in mm2.

    ``shrinkage`` is the predicted range, or None where the panel was measured after washing or
    will not be washed. Empty regions are fine: the usable area is then 0.

    >>> cloth = usable_cloth(((0, 0), (100, 0), (100, 100), (0, 100)))
    >>> cloth.usable_mm2, [(t.reason, t.area_mm2) for t in cloth.taken_off]
    (8100.0, [('5 mm along the edges', 1900.0)])
    """
    panel = Polygon(outline)
    places = [*flaws, *kept_aside]
    shapes = [place.shape for place in places]
    left: BaseGeometry = panel
    taken: list[TakenOff] = []
    if shrinkage is not None:
        left, shapes = sound_core(panel, shapes, shrinkage, grain_deg)
        taken.append(TakenOff("Expected shrinkage in the wash", panel.area - left.area))
    inner = left.buffer(-edge_margin_mm, join_style="mitre")
    taken.append(TakenOff(f"{edge_margin_mm:g} mm along the edges", left.area - inner.area))
    left = inner
    for place, shape in zip(places, shapes, strict=True):
        margin_mm = flaw_margin_mm if place in flaws else 0.0
        rest = left.difference(shape.buffer(margin_mm, quad_segs=16))
        taken.append(TakenOff(place.name, left.area - rest.area))
        left = rest
    return UsableCloth(
        outline_mm2=panel.area,
        usable_mm2=max(0.0, left.area),
        taken_off=tuple(part for part in taken if part.area_mm2 > 0.5),
        is_shrinkage_predicted=shrinkage is not None,
        region=left,
    )

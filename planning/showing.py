"""Details that shall show on a piece: where their middle lies, and what is no longer kept aside."""

from shapely import Point as ShapelyPoint
from shapely import Polygon
from shapely.geometry.base import BaseGeometry

from inventory.cloth import places_of, shrinkage_for
from inventory.measuring.shrinkage import sound_core
from inventory.models import Detail, Panel
from planning.coverage.problem import Point
from planning.spots import middle_of


def still_aside(panel: Panel, pinned: set[int]) -> list[Detail]:
    """The details kept out of the pieces, less those that shall show and what these lie on."""
    details = list(panel.details.all())
    shown = [ShapelyPoint(middle_of(_shape(each))) for each in details if each.pk in pinned]
    return [
        each
        for each in details
        if each.is_kept_aside
        and each.pk not in pinned
        and not any(_shape(each).covers(point) for point in shown)
    ]


def point_of(detail: Detail, panel: Panel) -> Point:
    """The middle of a detail on its panel, where shrinkage to come is taken off."""
    shapes = [_shape(detail)]
    shrinkage = shrinkage_for(panel)
    if shrinkage is not None:
        _, shapes = sound_core(Polygon(panel.outline_mm), shapes, shrinkage, panel.grain_deg)
    return middle_of(shapes[0])


def _shape(detail: Detail) -> BaseGeometry:
    return places_of([detail])[0].shape

"""Where the stripes or checks of a panel run: its repeat, the place it is counted from, its lines.

Only the shell of a garment carries its repeat. A cloth that is said to be striped or checked but
whose repeat nobody has measured is known as such here, so that nobody takes it for plain.
"""

import math

from shapely import LineString, Polygon

from inventory.choices import ClothPart, Surface
from inventory.models import Panel

MOST_LINES = 120  # drawn each way; of a finer repeat only every second line, or every third
STRIPED = (Surface.STRIPE, Surface.CHECK)

type Point = tuple[float, float]
type Repeat = tuple[float | None, float | None]


def repeat_of(panel: Panel) -> Repeat | None:
    """The repeat along and across the grain in mm; None for a panel that has none."""
    garment = panel.garment
    if panel.part != ClothPart.SHELL:
        return None
    if garment.repeat_along_mm is None and garment.repeat_across_mm is None:
        return None
    return garment.repeat_along_mm, garment.repeat_across_mm


def is_unmeasured(panel: Panel) -> bool:
    """Whether the cloth is striped or checked, but its repeat is not known."""
    is_striped = panel.part == ClothPart.SHELL and panel.garment.surface in STRIPED
    return is_striped and repeat_of(panel) is None


def origin_of(panel: Panel) -> Point | None:
    """A place where a stripe starts, in the panel's own frame; None while it is not measured."""
    if panel.repeat_x_mm is None or panel.repeat_y_mm is None:
        return None
    return panel.repeat_x_mm, panel.repeat_y_mm


def stripes_on(panel: Panel) -> str:
    """SVG path data of the panel's stripes; empty where they are not known."""
    repeat, origin = repeat_of(panel), origin_of(panel)
    if repeat is None or origin is None:
        return ""
    return stripe_path(Polygon(panel.outline_mm), panel.grain_deg, repeat, origin)


def stripe_path(outline: Polygon, grain_deg: float, repeat: Repeat, origin: Point) -> str:
    """SVG path data of the lines of a repeat, clipped to the outline.

    Lines lie across the grain where the cloth repeats along it, and the other way about.

    >>> stripe_path(Polygon([(0, 0), (10, 0), (10, 9), (0, 9)]), 90, (5, None), (0, 2))
    'M0.0 2.0L10.0 2.0M0.0 7.0L10.0 7.0'
    """
    along_mm, across_mm = repeat
    lines = _lines(outline, grain_deg, along_mm, origin)
    lines += _lines(outline, grain_deg - 90.0, across_mm, origin)
    return "".join(
        "M" + "L".join(f"{x + 0:.1f} {y + 0:.1f}" for x, y in sorted(line.coords)) for line in lines
    )


def _lines(
    outline: Polygon, step_deg: float, repeat_mm: float | None, origin: Point
) -> list[LineString]:
    """Lines square to a direction, one repeat after the other, where they cross the outline."""
    if not repeat_mm:
        return []
    angle = math.radians(step_deg)
    cos, sin = round(math.cos(angle), 12), round(math.sin(angle), 12)
    reach = [(x - origin[0]) * cos + (y - origin[1]) * sin for x, y in outline.exterior.coords[:-1]]
    first, last = math.ceil(min(reach) / repeat_mm), math.floor(max(reach) / repeat_mm)
    stride = math.ceil(max(1, last - first + 1) / MOST_LINES)
    half = math.hypot(*_size(outline)) + math.dist(origin, outline.exterior.coords[0])
    lines = []
    for number in range(first, last + 1, stride):
        x, y = origin[0] + number * repeat_mm * cos, origin[1] + number * repeat_mm * sin
        line = LineString([(x - half * sin, y + half * cos), (x + half * sin, y - half * cos)])
        cut = line.intersection(outline)
        lines += [part for part in getattr(cut, "geoms", [cut]) if part.geom_type == "LineString"]
    return [line for line in lines if not line.is_empty]


def _size(outline: Polygon) -> Point:
    left, low, right, high = outline.bounds
    return right - left, high - low

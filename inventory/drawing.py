"""A panel as shapes for a page: to scale, in millimetres, turned so that up is up.

Only numbers and path strings; the template owns the elements and their classes.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from shapely.geometry.base import BaseGeometry

from inventory.measuring.usable import Place, UsableCloth
from inventory.models import Panel

ROOM_MM = 12.0  # round the panel, for its edge and the scale bar


@dataclass(frozen=True, slots=True)
class PanelDrawing:
    """Paths in the panel's own frame (y up) and the box that holds them."""

    left_mm: float
    bottom_mm: float
    width_mm: float
    height_mm: float
    outline: str
    usable: str
    flaws: tuple[tuple[str, str], ...]
    details: tuple[tuple[str, str], ...]
    grain: tuple[float, float, float]
    text_mm: float

    @property
    def view_box(self) -> str:
        room = ROOM_MM
        return f"{-room} {-room} {self.width_mm + 2 * room:.1f} {self.height_mm + 3 * room:.1f}"

    @property
    def frame(self) -> str:
        """The transform from the panel's frame to the drawing's, where y runs down."""
        return f"matrix(1 0 0 -1 {-self.left_mm:.2f} {self.height_mm + self.bottom_mm:.2f})"

    @property
    def scale_y_mm(self) -> float:
        return self.height_mm + ROOM_MM


def path_of(shape: BaseGeometry) -> str:
    """Return SVG path data for every ring of a polygon or several."""
    polygons = [part for part in getattr(shape, "geoms", [shape]) if part.geom_type == "Polygon"]
    rings = [ring for part in polygons for ring in (part.exterior, *part.interiors)]
    return "".join(ring_path(ring.coords) for ring in rings)


def ring_path(points: Sequence[Sequence[float]]) -> str:
    """Return SVG path data for one closed ring.

    >>> ring_path([(0, 0), (10, 0), (10, 5)])
    'M0.0 0.0L10.0 0.0L10.0 5.0Z'
    """
    return "M" + "L".join(f"{x:.1f} {y:.1f}" for x, y in points) + "Z"


def panel_drawing(panel: Panel, cloth: UsableCloth) -> PanelDrawing:
    """Return the drawing of a panel with its usable region, flaws and details."""
    plain = bare_drawing(panel.outline_mm, cloth, panel.grain_deg)
    return replace(
        plain,
        flaws=tuple((str(f), _place_path(f.points_mm, f.radius_mm)) for f in panel.flaws.all()),
        details=tuple((str(d), _place_path(d.points_mm, d.radius_mm)) for d in panel.details.all()),
    )


def bare_drawing(
    outline_mm: Sequence[Sequence[float]], cloth: UsableCloth, grain_deg: float
) -> PanelDrawing:
    """Return the drawing of an outline and its usable region, nothing marked on it."""
    xs = [x for x, _ in outline_mm]
    ys = [y for _, y in outline_mm]
    width, height = max(xs) - min(xs), max(ys) - min(ys)
    return PanelDrawing(
        left_mm=min(xs),
        bottom_mm=min(ys),
        width_mm=width,
        height_mm=height,
        outline=ring_path(outline_mm),
        usable=path_of(cloth.region),
        flaws=(),
        details=(),
        grain=((max(xs) + min(xs)) / 2, (max(ys) + min(ys)) / 2, grain_deg),
        text_mm=max(width, height) / 24,
    )


def _place_path(points: Sequence[Sequence[float]], radius_mm: float | None) -> str:
    return path_of(Place("", tuple((x, y) for x, y in points), radius_mm).shape)

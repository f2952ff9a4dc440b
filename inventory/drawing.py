"""A panel as shapes for a page: to scale, in millimetres, turned so that up is up.

Only numbers and path strings; the template owns the elements and their classes.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Any

from shapely.geometry.base import BaseGeometry

from inventory.choices import PanelShape
from inventory.measuring.shapes import outline_from
from inventory.measuring.usable import Place, UsableCloth
from inventory.models import Panel
from inventory.stripes import stripes_on
from shared.units import LengthUnit, format_length

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
    units: LengthUnit
    stripes: str = ""

    @property
    def view_box(self) -> str:
        room = ROOM_MM
        height = self.height_mm + 2 * room + 2 * self.text_mm
        return f"{-room} {-room} {self.width_mm + 2 * room:.1f} {height:.1f}"

    @property
    def frame(self) -> str:
        """The transform from the panel's frame to the drawing's, where y runs down."""
        return f"matrix(1 0 0 -1 {-self.left_mm:.2f} {self.height_mm + self.bottom_mm:.2f})"

    @property
    def grain_path(self) -> str:
        reach = min(self.width_mm, self.height_mm) * 0.22
        return f"M{-reach:.1f} 0L{reach:.1f} 0"

    @property
    def scale_mm(self) -> float:
        """A round length for the scale bar: 10 cm or 4 in, a quarter of that on small panels."""
        full = 100.0 if self.units == "cm" else 101.6
        return full if self.width_mm > full else full / 4

    @property
    def scale_words(self) -> str:
        return format_length(self.scale_mm, self.units)

    @property
    def scale_y_mm(self) -> float:
        return self.height_mm + 1.5 * self.text_mm

    @property
    def scale_path(self) -> str:
        y, tick = self.scale_y_mm - 0.35 * self.text_mm, 0.35 * self.text_mm
        end, stroke = self.scale_mm, f"{y - tick:.1f}v{2 * tick:.1f}"
        return f"M0 {stroke}M0 {y:.1f}H{end:.1f}M{end:.1f} {stroke}"

    @property
    def scale_text_x(self) -> float:
        return self.scale_mm + self.text_mm / 2


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


def panel_drawing(panel: Panel, cloth: UsableCloth, units: LengthUnit) -> PanelDrawing:
    """Return the drawing of a panel with its usable region, flaws, details and stripes."""
    plain = bare_drawing(panel.outline_mm, cloth, panel.grain_deg, units)
    return replace(
        plain,
        flaws=tuple((str(f), _place_path(f.points_mm, f.radius_mm)) for f in panel.flaws.all()),
        details=tuple((str(d), _place_path(d.points_mm, d.radius_mm)) for d in panel.details.all()),
        stripes=stripes_on(panel),
    )


def bare_drawing(
    outline_mm: Sequence[Sequence[float]], cloth: UsableCloth, grain_deg: float, units: LengthUnit
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
        units=units,
    )


def _place_path(points: Sequence[Sequence[float]], radius_mm: float | None) -> str:
    return path_of(Place("", tuple((x, y) for x, y in points), radius_mm).shape)


EXAMPLES: dict[str, dict[str, Any]] = {
    "rectangle": {"width": 300, "length": 400},
    "trapezium": {"top_width": 220, "bottom_width": 360, "length": 400},
    "shirt-body": {
        "chest_width": 520,
        "hem_width": 500,
        "shoulder_width": 430,
        "length": 720,
        "armhole_depth": 240,
        "neck_width": 170,
        "neck_depth": 60,
    },
    "sleeve": {"top_width": 400, "cuff_width": 240, "length": 580, "cap_height": 120},
    "trouser-leg": {
        "waist_width": 220,
        "hip_width": 270,
        "hem_width": 210,
        "rise": 280,
        "length": 1000,
        "crotch_extension": 60,
    },
    "skirt-gore": {"waist_width": 160, "hem_width": 380, "length": 600},
    "corners": {"points": [[0, 0], [300, 40], [380, 260], [180, 400], [40, 300]]},
}


@dataclass(frozen=True, slots=True)
class ShapePicture:
    """A small picture of one panel shape: its value, its words, a path and a view box."""

    value: str
    words: str
    path: str
    box: str


def shape_picture(shape: PanelShape) -> ShapePicture:
    ring = outline_from(shape.value, EXAMPLES[shape.value])
    width, height = max(x for x, _ in ring), max(y for _, y in ring)
    path = ring_path([(x, height - y) for x, y in ring])
    box = f"-10 -10 {width + 20:.0f} {height + 20:.0f}"
    return ShapePicture(shape.value, str(shape.label), path, box)

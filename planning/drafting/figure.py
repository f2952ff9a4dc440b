"""The finished bear, standing, drawn to scale from the same measures as its pattern.

A drawing to choose by: outlines in true millimetres, front and left side. Stuffed cloth varies; the
estimates say by how much.
"""

from dataclasses import dataclass
from typing import Literal

from planning.drafting.figure_front import front_shapes
from planning.drafting.figure_side import side_shapes
from planning.drafting.measures import measures_of
from planning.drafting.svg_paths import path_data, view_box

View = Literal["front", "side"]
MARGIN_SHARE = 0.04  # of the height, round the drawing


@dataclass(frozen=True)
class Figure:
    """A drawing for a page: class names with path data, back to front, and its viewBox in mm."""

    view_box: str
    width_mm: float
    height_mm: float
    paths: tuple[tuple[str, str], ...]


def figure(height_mm: float, character: str = "classic", view: View = "front") -> Figure:
    """Draw the bear of this height and character; raises DraftError as ``measures_of`` does."""
    m = measures_of(height_mm, character)
    shapes = front_shapes(m) if view == "front" else side_shapes(m)
    everywhere = [point for shape in shapes for point in shape.line]
    box = view_box(everywhere, MARGIN_SHARE * height_mm)
    wide, tall = (float(number) for number in box.split()[2:])
    paths = tuple((shape.class_name, path_data(shape.line, shape.is_closed)) for shape in shapes)
    return Figure(box, wide, tall, paths)

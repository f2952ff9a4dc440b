"""The finished animal, drawn to scale from the same measures as its pattern.

A drawing to choose by: outlines in true millimetres, from the front or from its left side. Stuffed
cloth varies; the estimates say by how much.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from planning.drafting.figure_form import Seen
from planning.drafting.figure_front import front_body
from planning.drafting.figure_head import Look, head_shapes
from planning.drafting.figure_looks import bear_look, rabbit_look
from planning.drafting.figure_side import side_body, side_limbs, side_tail
from planning.drafting.measures import BodyMeasures, measures_of
from planning.drafting.rabbit import TAIL_SHARE, measures_of_rabbit
from planning.drafting.shapes import Shape
from planning.drafting.stance import TURN_DEG, Stance
from planning.drafting.svg_paths import path_data, view_box

View = Literal["front", "side"]
MARGIN_SHARE = 0.04  # of the height, round the drawing
YAW_DEG = {"front": 0.0, "side": -90.0}
TAIL_DRAWN = 0.45  # of the flat tail: the radius of the stuffed one


@dataclass(frozen=True)
class Figure:
    """A drawing for a page: class names with path data, back to front, and its viewBox in mm."""

    view_box: str
    width_mm: float
    height_mm: float
    paths: tuple[tuple[str, str], ...]


def figure(
    height_mm: float,
    character: str = "classic",
    view: View = "front",
    stance: Stance | None = None,
) -> Figure:
    """Draw the bear of this height and character; raises DraftError as ``measures_of`` does."""
    stance = stance or Stance()
    m = measures_of(height_mm, character, stance)
    return figure_of(_animal(m, bear_look(m), view, stance), height_mm)


def rabbit_figure(height_mm: float, view: View = "front", stance: Stance | None = None) -> Figure:
    """Draw the rabbit of this height; raises DraftError as ``measures_of_rabbit`` does."""
    stance = stance or Stance()
    m = measures_of_rabbit(height_mm, stance)
    shapes = _animal(m, rabbit_look(m), view, stance)
    tail_mm = TAIL_DRAWN * TAIL_SHARE * m.height_mm
    behind = side_tail(m, stance, tail_mm) if view == "side" else []
    return figure_of([*behind, *shapes], height_mm)


def figure_of(shapes: Sequence[Shape], height_mm: float) -> Figure:
    """Return shapes as a drawing with a margin in proportion to the height."""
    everywhere = [point for shape in shapes for point in shape.line]
    box = view_box(everywhere, MARGIN_SHARE * height_mm)
    wide, tall = (float(number) for number in box.split()[2:])
    paths = tuple((shape.class_name, path_data(shape.line, shape.is_closed)) for shape in shapes)
    return Figure(box, wide, tall, paths)


def _animal(m: BodyMeasures, look: Look, view: View, stance: Stance) -> list[Shape]:
    lift = m.seat_height_mm if stance.is_sitting else 0.0
    neck = (0.0, m.seat_height_mm + m.body_length_mm - lift)
    seen = Seen(YAW_DEG[view] + (TURN_DEG if stance.is_aside else 0.0))
    head = head_shapes(look, seen, neck)
    if view == "front":
        return [*front_body(m, stance), *head]
    return [*side_body(m, stance), *head, *side_limbs(m, stance)]

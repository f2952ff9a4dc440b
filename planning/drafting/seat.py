"""The flat seat of an animal that sits: an oval whose rim is that of the body it closes.

Its lengthwise middle runs from the front of the body (at the bottom) to the back; it is as much
wider than deep as the body is.
"""

import math

from planning.drafting.curves import Line
from planning.drafting.measures import BodyMeasures
from planning.drafting.outline import Drawn, Making, made, split_line
from planning.drafting.pieces import DraftPiece
from planning.drafting.rings import length_mm

STEPS_HALFWAY = 48


def seat(m: BodyMeasures, front_mm: float, back_mm: float, allowance_mm: float) -> DraftPiece:
    """Draft the seat for two front edges and two back edges of these lengths."""
    unit = _half_oval(m.body_width_mm, m.body_depth_mm)
    size = (front_mm + back_mm) / length_mm(unit)
    right = split_line([(x * size, y * size) for x, y in unit], front_mm)
    left = [_turned_over(part) for part in reversed(right)]
    return made(
        [
            Drawn("front, right", right[0], "side", is_double=True),
            Drawn("back, right", right[1], "centre back"),
            Drawn("back, left", left[0], "side", is_double=True),
            Drawn("front, left", left[1], "centre front"),
        ],
        Making("seat", count=1, mirrored=0),
        allowance_mm,
    )


def _half_oval(wide_mm: float, deep_mm: float) -> Line:
    """Return the right half of an ellipse, from its lowest point to its highest."""
    turns = [math.pi * step / STEPS_HALFWAY for step in range(1, STEPS_HALFWAY)]
    round_mm = [(wide_mm / 2 * math.sin(t), -deep_mm / 2 * math.cos(t)) for t in turns]
    return [(0.0, -deep_mm / 2), *round_mm, (0.0, deep_mm / 2)]


def _turned_over(line: Line) -> Line:
    return [(-x, y) for x, y in reversed(line)]

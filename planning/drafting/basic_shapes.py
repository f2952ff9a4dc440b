"""Pieces by measure: a few basic shapes, for a first check before a pattern is traced.

Each shape stands with its length upwards and its lower left corner at the origin. The body-like
oval is two half ellipses that meet at its widest place, so its area is that of one ellipse.
"""

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass

from planning.drafting.rings import Point
from planning.drafting.tracing import LARGEST_MM, Side
from shared.errors import OutlineError

HALF_STEPS = 48  # straight steps to half a turn


@dataclass(frozen=True)
class ShapeMeasure:
    """One length a shape asks for."""

    key: str
    label: str
    hint: str = ""


_WIDTH = ShapeMeasure("width", "Width", "Across, where it is widest.")
_LENGTH = ShapeMeasure("length", "Length", "Up and down, where it is longest.")

MEASURES: dict[str, tuple[ShapeMeasure, ...]] = {
    "rectangle": (_WIDTH, _LENGTH),
    "trapezium": (
        ShapeMeasure("top_width", "Width at the top"),
        ShapeMeasure("bottom_width", "Width at the bottom"),
        ShapeMeasure("length", "Length", "Straight up the middle."),
    ),
    "ellipse": (_WIDTH, _LENGTH),
    "body": (
        _WIDTH,
        _LENGTH,
        ShapeMeasure("widest_at", "Height of the widest place", "Up from the lower end."),
    ),
}


def basic_sides(shape: str, measures_mm: Mapping[str, float]) -> tuple[Side, ...]:
    """Return the edges of a basic shape, anticlockwise.

    Raises OutlineError for an unknown shape and for measures that are missing or contradict.

    >>> [side.name for side in basic_sides("rectangle", {"width": 40, "length": 60})]
    ['bottom', 'right', 'top', 'left']
    """
    if shape not in MEASURES:
        raise OutlineError(f"“{shape}” is no basic shape.")
    lengths = {measure.key: measures_mm.get(measure.key, 0.0) for measure in MEASURES[shape]}
    for measure in MEASURES[shape]:
        if not lengths[measure.key] > 0:
            raise OutlineError(f"{measure.label} is missing.")
        if lengths[measure.key] > LARGEST_MM:
            raise OutlineError(f"{measure.label} is more than any table holds. Check the unit.")
    return _DRAWN[shape](**lengths)


def _rectangle(width: float, length: float) -> tuple[Side, ...]:
    return _four((0.0, 0.0), (width, 0.0), (width, length), (0.0, length))


def _trapezium(top_width: float, bottom_width: float, length: float) -> tuple[Side, ...]:
    middle = max(top_width, bottom_width) / 2
    return _four(
        (middle - bottom_width / 2, 0.0),
        (middle + bottom_width / 2, 0.0),
        (middle + top_width / 2, length),
        (middle - top_width / 2, length),
    )


def _four(a: Point, b: Point, c: Point, d: Point) -> tuple[Side, ...]:
    return (
        Side("bottom", (a, b)),
        Side("right", (b, c)),
        Side("top", (c, d)),
        Side("left", (d, a)),
    )


def _ellipse(width: float, length: float) -> tuple[Side, ...]:
    return _body(width, length, length / 2)


def _body(width: float, length: float, widest_at: float) -> tuple[Side, ...]:
    if widest_at >= length:
        raise OutlineError("The widest place lies above the top.")

    def at(turn: float) -> Point:
        tall = widest_at if math.cos(turn) > 0 else length - widest_at
        return (width / 2 * (1 + math.sin(turn)), widest_at - tall * math.cos(turn))

    turns = [math.pi * step / HALF_STEPS for step in range(2 * HALF_STEPS)]
    ring = [at(turn) for turn in turns]
    return (
        Side("right half", tuple(ring[: HALF_STEPS + 1])),
        Side("left half", (*ring[HALF_STEPS:], ring[0])),
    )


_DRAWN: dict[str, Callable[..., tuple[Side, ...]]] = {
    "rectangle": _rectangle,
    "trapezium": _trapezium,
    "ellipse": _ellipse,
    "body": _body,
}

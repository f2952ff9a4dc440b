"""Shapes drawn from a few measures, as entries a maker may then change point by point.

Measures are of the finished shape, on the seam line, in millimetres. Every shape stands on y = 0
and runs anticlockwise; the grain runs up. Arcs are drawn through points close enough together
that the smooth line leaves the true arc by less than two thousandths of its radius.
"""

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass

from planning.drafting.curves import Line
from planning.drafting.entry import EnteredPoint, Entry, EntryError
from planning.drafting.entry_checks import LARGEST_MM

Points = list[EnteredPoint]

STEP_DEG = 11.25  # between two points of an arc
ROUND_POINTS = 24  # of a whole oval
BULGE_STEPS = 6  # points on a wedge's side from its end to its widest place
PLAIN_MM = 0.01  # a foot no wider than this beyond its limb is a plain round end


@dataclass(frozen=True)
class BasicShape:
    """A shape and its ``measures`` as (key, label); ``points`` draws it from them in that order."""

    name: str
    description: str
    measures: tuple[tuple[str, str], ...]
    points: Callable[..., Points]


def entry_of_shape(key: str, measures_mm: Mapping[str, float], allowance_mm: float) -> Entry:
    """Return the entry of a basic shape.

    Raises EntryError whose field is the key of a measure that is missing, out of range or in
    conflict with another, or "shape" for a shape that is not known.
    """
    if key not in BASIC_SHAPES:
        raise EntryError(f"“{key}” is no basic shape. Known: {', '.join(BASIC_SHAPES)}.", "shape")
    shape = BASIC_SHAPES[key]
    lengths = [_measure(measures_mm, *measure) for measure in shape.measures]
    return Entry(tuple(shape.points(*lengths)), is_cut_line=False, allowance_mm=allowance_mm)


def _measure(measures_mm: Mapping[str, float], key: str, label: str) -> float:
    length_mm = float(measures_mm.get(key, 0.0))
    if not 0 < length_mm <= LARGEST_MM:
        raise EntryError(f"{label}: type a length up to {LARGEST_MM:.0f} mm.", key)
    return length_mm


def _corner(x_mm: float, y_mm: float, edge: str) -> EnteredPoint:
    return EnteredPoint(x_mm, y_mm, edge=edge)


def _curve(line: Line) -> Points:
    return [EnteredPoint(x_mm, y_mm, is_curve=True) for x_mm, y_mm in line]


def _arc(centre: tuple[float, float], radius_mm: float, start_deg: float, end_deg: float) -> Line:
    """Points along an arc with both its ends, turning either way."""
    steps = max(2, math.ceil(abs(end_deg - start_deg) / STEP_DEG))
    turns = [
        math.radians(start_deg + (end_deg - start_deg) * step / steps) for step in range(steps + 1)
    ]
    return [
        (centre[0] + radius_mm * math.cos(turn), centre[1] + radius_mm * math.sin(turn))
        for turn in turns
    ]


def _rectangle(width: float, height: float) -> Points:
    return _trapezium(width, width, height)


def _trapezium(bottom: float, top: float, height: float) -> Points:
    return [
        _corner(-bottom / 2, 0.0, "bottom"),
        _corner(bottom / 2, 0.0, "right side"),
        _corner(top / 2, height, "top"),
        _corner(-top / 2, height, "left side"),
    ]


def _triangle(width: float, height: float) -> Points:
    return [
        _corner(-width / 2, 0.0, "bottom"),
        _corner(width / 2, 0.0, "right side"),
        _corner(0.0, height, "left side"),
    ]


def _circle(diameter: float) -> Points:
    return _oval(diameter, diameter)


def _oval(width: float, height: float) -> Points:
    turns = [2 * math.pi * step / ROUND_POINTS for step in range(ROUND_POINTS)]
    half, rise = width / 2, height / 2
    return _curve([(half * math.cos(turn), rise + rise * math.sin(turn)) for turn in turns])


def _half_circle(diameter: float) -> Points:
    arc = _arc((0.0, 0.0), diameter / 2, 0, 180)
    return [_corner(*arc[-1], "straight edge"), _corner(*arc[0], "round edge"), *_curve(arc[1:-1])]


def _ear(foot: float, width: float, height: float) -> Points:
    """An oval as wide as ``width``, cut off straight where it is as wide as the foot."""
    if foot > width:
        raise EntryError("An ear is at least as wide as its foot.", "width")
    from_deg = -math.degrees(math.acos(foot / width))
    rise = height / (1 - math.sin(math.radians(from_deg)))
    arc = [
        (x * width / 2, height - rise + y * rise)
        for x, y in _arc((0.0, 0.0), 1.0, from_deg, 180 - from_deg)
    ]
    right = _corner(foot / 2, 0.0, "outer curve")
    return [_corner(-foot / 2, 0.0, "foot"), right, *_curve(arc[1:-1])]


def _limb(length: float, width: float, foot: float) -> Points:
    """A strip with a round top and a round foot, joined by hollow arcs of the foot's radius."""
    if foot < width - PLAIN_MM:
        raise EntryError("The foot is at least as wide as the limb.", "foot")
    half, ball = width / 2, foot / 2
    ankle = math.sqrt(max(0.0, (2 * ball) ** 2 - (half + ball) ** 2))
    low, high = ball + ankle, length - half
    if low >= high:
        text = f"With this width and foot a limb is longer than {low + half:.0f} mm."
        raise EntryError(text, "length")
    is_plain = foot - width <= PLAIN_MM
    turn_deg = math.degrees(math.atan2(ankle, half + ball))
    foot_arc = _arc((0.0, ball), ball, -180 - turn_deg, turn_deg)
    left = _arc((-half - ball, low), ball, 0, -turn_deg)
    right = _arc((half + ball, low), ball, 180 + turn_deg, 180)
    around = foot_arc if is_plain else [*left[:-1], *foot_arc, *right[1:]]
    third = (high - low) / 3
    return [
        _corner(-half, low, "foot"),
        *_curve(around[1:-1]),
        _corner(half, low, "right side, lower"),
        _corner(half, low + third, "right side, middle"),
        _corner(half, high - third, "right side, upper"),
        _corner(half, high, "top"),
        *_curve(_arc((0.0, high), half, 0, 180)[1:-1]),
        _corner(-half, high, "left side"),
    ]


def _wedge(length: float, bottom: float, widest: float, widest_at: float, top: float) -> Points:
    """Narrow ends and sides that swell to the widest place, level there."""
    if widest_at >= length:
        raise EntryError("The widest place lies between the two ends.", "widest_at")
    if widest < max(bottom, top):
        raise EntryError("The widest place is at least as wide as both ends.", "widest")
    steps = [step / BULGE_STEPS for step in range(1, BULGE_STEPS + 1)]
    below = [(_swell(bottom, widest, step) / 2, step * widest_at) for step in steps]
    above = [
        (_swell(top, widest, step) / 2, length - step * (length - widest_at)) for step in steps
    ]
    right = [*below, *reversed(above[:-1])]
    left = [(-x, y) for x, y in reversed(right)]
    return [
        _corner(-bottom / 2, 0.0, "bottom"),
        _corner(bottom / 2, 0.0, "right side"),
        *_curve(right),
        _corner(top / 2, length, "top"),
        _corner(-top / 2, length, "left side"),
        *_curve(left),
    ]


def _swell(end: float, widest: float, share: float) -> float:
    return end + (widest - end) * math.sin(math.pi / 2 * share)


def _heart(width: float, height: float) -> Points:
    """A square on its corner with a half circle on each upper side, stretched to the measures."""
    side = math.sqrt(0.5)  # across, of a square with sides of 1
    across, up = width / (side + 1), height / (1.5 * side + 0.5)
    right = [(x * across, y * up) for x, y in _arc((side / 2, 1.5 * side), 0.5, -45, 135)]
    left = [(-x, y) for x, y in reversed(right)]
    return [
        _corner(0.0, 0.0, "right side"),
        _corner(*right[0], "right lobe"),
        *_curve(right[1:-1]),
        _corner(*right[-1], "left lobe"),
        *_curve(left[1:-1]),
        _corner(*left[-1], "left side"),
    ]


def _teardrop(width: float, height: float) -> Points:
    """A circle, and the two straight lines that touch it from the tip."""
    if height <= width:
        raise EntryError("A teardrop is longer than it is wide.", "height")
    radius = width / 2
    turn_deg = math.degrees(math.asin(radius / (height - radius)))
    arc = _arc((0.0, radius), radius, -180 - turn_deg, turn_deg)
    return [
        _corner(*arc[0], "round end"),
        *_curve(arc[1:-1]),
        _corner(*arc[-1], "right side"),
        _corner(0.0, height, "left side"),
    ]


BASIC_SHAPES: dict[str, BasicShape] = {
    "rectangle": BasicShape(
        "Rectangle",
        "Four square corners: bands, pads and boxes.",
        (("width", "Width"), ("height", "Height")),
        _rectangle,
    ),
    "trapezium": BasicShape(
        "Trapezium",
        "Straight bottom and top of different widths, the same slope on both sides.",
        (
            ("bottom_width", "Width at the bottom"),
            ("top_width", "Width at the top"),
            ("height", "Height"),
        ),
        _trapezium,
    ),
    "triangle": BasicShape(
        "Triangle",
        "A straight bottom and two equal sides that meet above its middle.",
        (("width", "Width at the bottom"), ("height", "Height")),
        _triangle,
    ),
    "circle": BasicShape("Circle", "Soles, lids and cheeks.", (("diameter", "Diameter"),), _circle),
    "oval": BasicShape(
        "Oval",
        "An ellipse: soles and tummies.",
        (("width", "Width"), ("height", "Height")),
        _oval,
    ),
    "half-circle": BasicShape(
        "Half circle",
        "One straight edge and one round.",
        (("diameter", "Length of the straight edge"),),
        _half_circle,
    ),
    "ear": BasicShape(
        "Ear",
        "Round, on a straight foot that is as wide as the ear or narrower.",
        (("foot", "Width of the foot"), ("width", "Widest place"), ("height", "Height")),
        _ear,
    ),
    "limb": BasicShape(
        "Arm or leg",
        "Long with a round top, and a round foot that is wider or just as wide.",
        (("length", "Length"), ("width", "Width"), ("foot", "Widest place of the foot")),
        _limb,
    ),
    "wedge": BasicShape(
        "Wedge",
        "A gusset: narrow at both ends, with curved sides and a widest place between.",
        (
            ("length", "Length"),
            ("bottom_width", "Width at the bottom"),
            ("widest", "Widest place"),
            ("widest_at", "From the bottom up to the widest place"),
            ("top_width", "Width at the top"),
        ),
        _wedge,
    ),
    "heart": BasicShape(
        "Heart",
        "A straight-sided tip below and two lobes above.",
        (("width", "Width"), ("height", "Height")),
        _heart,
    ),
    "teardrop": BasicShape(
        "Teardrop",
        "A round end, and two straight sides that run from it to a tip.",
        (("width", "Width"), ("height", "Height")),
        _teardrop,
    ),
}

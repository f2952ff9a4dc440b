"""Panel outlines from tape measurements of an opened garment part.

Each shape is drawn flat with its length running up (the lengthwise grain at 90 degrees) and its
lowest left corner near the origin. Where a real edge is hollow (armhole, neck, crotch) it is drawn
hollow, so that no cloth is counted which is not there: common practice, no source.
"""

import math
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from inventory.measuring.rings import Point, Ring, clean_ring
from shared.errors import OutlineError

CURVE_STEPS = 16


@dataclass(frozen=True, slots=True)
class Measure:
    """One tape measurement a shape asks for; ``default_mm`` where it may be left out."""

    key: str
    label: str
    hint: str
    default_mm: float | None = None


MEASURES: dict[str, tuple[Measure, ...]] = {
    "rectangle": (
        Measure("width", "Width", "Across the grain."),
        Measure("length", "Length", "Along the grain."),
    ),
    "trapezium": (
        Measure("top_width", "Width at the top", "The upper edge."),
        Measure("bottom_width", "Width at the bottom", "The lower edge."),
        Measure("length", "Length", "Straight up the middle."),
    ),
    "shirt-body": (
        Measure("chest_width", "Chest width", "Armpit to armpit."),
        Measure("hem_width", "Hem width", "Along the lower edge."),
        Measure("shoulder_width", "Shoulder width", "Shoulder tip to shoulder tip."),
        Measure("length", "Length", "Highest shoulder point to hem."),
        Measure(
            "armhole_depth", "Armhole depth", "Highest shoulder point down to the armpit line."
        ),
        Measure("neck_width", "Neck width", "Across the neckline."),
        Measure("neck_depth", "Neck depth", "Highest shoulder point down to the neckline."),
        Measure("shoulder_drop", "Shoulder drop", "How far the shoulder slopes down.", 45.0),
    ),
    "sleeve": (
        Measure("top_width", "Width at the armpit", "Opened flat."),
        Measure("cuff_width", "Width at the cuff", "Opened flat, cuff taken off."),
        Measure("length", "Length", "Top of the sleeve head to the cuff."),
        Measure("cap_height", "Height of the sleeve head", "Armpit line up to the top."),
    ),
    "trouser-leg": (
        Measure("waist_width", "Waist width", "Of this one panel."),
        Measure("hip_width", "Hip width", "Of this one panel, above the crotch."),
        Measure("hem_width", "Hem width", "Of this one panel."),
        Measure("rise", "Rise", "Waist straight down to the crotch line."),
        Measure("length", "Length", "Waist to hem."),
        Measure("crotch_extension", "Crotch point", "How far it sticks out past the hip."),
    ),
    "skirt-gore": (
        Measure("waist_width", "Waist width", "The upper edge, straight across."),
        Measure("hem_width", "Hem width", "The lower edge, corner to corner."),
        Measure("length", "Length", "Down the middle."),
    ),
}


def outline_from(shape: str, measures_mm: Mapping[str, Any]) -> Ring:
    """Return the outline of a shape from its measures in millimetres (``corners``: ``points``).

    Raises OutlineError when the measures contradict each other, OutlineError or KeyError never
    pass for a drawn shape: whatever comes back is one simple anticlockwise ring.

    >>> outline_from("rectangle", {"width": 400, "length": 600})
    ((0.0, 0.0), (400.0, 0.0), (400.0, 600.0), (0.0, 600.0))
    """
    if shape == "corners":
        return _at_lower_left(clean_ring(measures_mm["points"]))
    if shape not in DRAWN:
        raise OutlineError(f"“{shape}” is no shape this page knows.")
    lengths = {m.key: float(measures_mm.get(m.key) or m.default_mm or 0) for m in MEASURES[shape]}
    for measure in MEASURES[shape]:
        if lengths[measure.key] <= 0:
            raise OutlineError(f"{measure.label} is missing.")
    return _at_lower_left(clean_ring(DRAWN[shape](**lengths)))


def _at_lower_left(ring: Ring) -> Ring:
    """The ring moved so that its lowest and leftmost are 0: flaws are measured from there."""
    left, low = min(x for x, _ in ring), min(y for _, y in ring)
    return tuple((x - left, y - low) for x, y in ring)


def _rectangle(width: float, length: float) -> list[Point]:
    return [(0, 0), (width, 0), (width, length), (0, length)]


def _trapezium(top_width: float, bottom_width: float, length: float) -> list[Point]:
    middle = max(top_width, bottom_width) / 2
    return [
        (middle - bottom_width / 2, 0),
        (middle + bottom_width / 2, 0),
        (middle + top_width / 2, length),
        (middle - top_width / 2, length),
    ]


def _shirt_body(
    chest_width: float,
    hem_width: float,
    shoulder_width: float,
    length: float,
    armhole_depth: float,
    neck_width: float,
    neck_depth: float,
    shoulder_drop: float,
) -> list[Point]:
    _need(armhole_depth < length, "The armhole is deeper than the shirt is long.")
    _need(neck_depth < length, "The neckline is deeper than the shirt is long.")
    _need(shoulder_drop < armhole_depth, "The shoulder drops below the armpit.")
    _need(neck_width < shoulder_width, "The neckline is wider than the shoulders.")
    middle = max(chest_width, hem_width, shoulder_width) / 2
    right = [
        (hem_width / 2, 0.0),
        *_hollow(
            (chest_width / 2, length - armhole_depth),
            (shoulder_width / 2, length - shoulder_drop),
        ),
    ]
    neck = _arc((0.0, length), neck_width / 2, neck_depth, 0, -math.pi)
    left = [(-x, y) for x, y in reversed(right)]
    return [(middle + x, y) for x, y in (*right, *neck, *left)]


def _sleeve(top_width: float, cuff_width: float, length: float, cap_height: float) -> list[Point]:
    _need(cap_height < length, "The sleeve head is higher than the sleeve is long.")
    middle = max(top_width, cuff_width) / 2
    line = length - cap_height
    head = [
        (top_width * (0.5 - t), line + cap_height * (1 - math.cos(2 * math.pi * t)) / 2)
        for t in (step / (2 * CURVE_STEPS) for step in range(2 * CURVE_STEPS + 1))
    ]
    return [(middle + x, y) for x, y in ((-cuff_width / 2, 0.0), (cuff_width / 2, 0.0), *head)]


def _trouser_leg(
    waist_width: float,
    hip_width: float,
    hem_width: float,
    rise: float,
    length: float,
    crotch_extension: float,
) -> list[Point]:
    _need(rise < length, "The rise is longer than the whole leg.")
    widest = hip_width + crotch_extension
    waist_left = max(0.0, (hip_width - waist_width) / 2)
    hip_line = length - rise / 2
    crotch = _hollow((widest, length - rise), (hip_width, hip_line))
    return [
        ((widest - hem_width) / 2, 0.0),
        ((widest + hem_width) / 2, 0.0),
        *crotch,
        (waist_left + waist_width, length),
        (waist_left, length),
        (0.0, hip_line),
        (0.0, length - rise),
    ]


def _skirt_gore(waist_width: float, hem_width: float, length: float) -> list[Point]:
    """A ring sector: chords ``waist_width`` and ``hem_width``, ``length`` between the arcs."""
    if math.isclose(waist_width, hem_width, rel_tol=1e-6):
        return _rectangle(waist_width, length)
    sine = abs(hem_width - waist_width) / (2 * length)
    _need(sine < 0.95, "The hem is too wide for this length. Measure the gore in two parts.")
    half = math.asin(sine)
    inner = min(waist_width, hem_width) / (2 * sine)
    outer = inner + length
    middle = max(waist_width, hem_width) / 2
    spread = [half * (2 * step / CURVE_STEPS - 1) for step in range(CURVE_STEPS + 1)]
    wide = [(middle + outer * math.sin(a), outer * (1 - math.cos(a))) for a in spread]
    narrow = [(middle + inner * math.sin(a), outer - inner * math.cos(a)) for a in spread]
    ring = [*wide, *reversed(narrow)]
    return ring if hem_width > waist_width else [(x, length - y) for x, y in ring]


DRAWN: dict[str, Callable[..., list[Point]]] = {
    "rectangle": _rectangle,
    "trapezium": _trapezium,
    "shirt-body": _shirt_body,
    "sleeve": _sleeve,
    "trouser-leg": _trouser_leg,
    "skirt-gore": _skirt_gore,
}


def _need(holds: bool, otherwise: str) -> None:
    if not holds:
        raise OutlineError(otherwise)


def _hollow(low: Point, high: Point) -> list[Point]:
    """A quarter ellipse from ``low`` to ``high`` that curves in towards the panel's middle."""
    wide, tall = low[0] - high[0], high[1] - low[1]
    return [
        (high[0] + wide * (1 - math.sin(angle)), low[1] + tall * (1 - math.cos(angle)))
        for angle in (math.pi / 2 * step / CURVE_STEPS for step in range(CURVE_STEPS + 1))
    ]


def _arc(centre: Point, wide: float, tall: float, start: float, end: float) -> Sequence[Point]:
    angles = [start + (end - start) * step / CURVE_STEPS for step in range(CURVE_STEPS + 1)]
    return [(centre[0] + wide * math.cos(a), centre[1] + tall * math.sin(a)) for a in angles]

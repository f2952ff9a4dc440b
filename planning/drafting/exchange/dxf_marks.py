"""What lies on and inside a block's outline: grain, notches, drill holes and internal lines.

Labels that this program wrote give names; otherwise they are counted. In a piece that was drawn as
half, each is doubled on the other side of the fold.
"""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from shapely import LinearRing, Point

from planning.drafting.exchange.chains import heading_deg
from planning.drafting.exchange.dxf_layers import DRILL, GRAIN, INTERNAL, NOTCHES
from planning.drafting.exchange.dxf_lines import Drawn, Stroke
from planning.drafting.exchange.dxf_words import Label, nearest
from planning.drafting.exchange.unfold import Fold, is_on, reflected
from planning.drafting.pieces import Mark, Notch, PlacementLine
from planning.drafting.rings import Point as Place
from planning.drafting.rings import Ring, bounds_mm, length_mm

LABEL_REACH_MM = 1.0
DOUBLE_REACH_MM = 4.0  # from the middle of a double notch to each of its two
OTHER_SIDE = "{}, other side"


@dataclass(frozen=True)
class Marks:
    """The notches, marks and lines of one piece."""

    notches: tuple[Notch, ...]
    marks: tuple[Mark, ...]
    lines: tuple[PlacementLine, ...]


def grain_deg(drawn: Drawn) -> float | None:
    """Return the way of the longest grain line, or None without one."""
    lines = [stroke.points for stroke in drawn.strokes.get(GRAIN, []) if len(stroke.points) > 1]
    longest = max(lines, key=length_mm, default=None)
    if longest is None or math.dist(longest[0], longest[-1]) == 0:
        return None
    return heading_deg(longest[0], longest[-1])


def marks_of(drawn: Drawn, edge: Ring, labels: Sequence[Label], fold: Fold | None) -> Marks:
    """Return everything marked on a piece; notches lie where they come nearest to ``edge``."""
    notches = _notches(drawn, edge, [one for one in labels if one.kind.endswith("notch")])
    marks = _marks(drawn, [one for one in labels if one.kind == "mark"])
    lines = _lines(drawn, [one for one in labels if one.kind == "line"])
    if fold:
        notches += [
            Notch(OTHER_SIDE.format(one.name), reflected(one.at, fold), one.is_double)
            for one in notches
            if not is_on(one.at, fold)
        ]
        marks += [
            Mark(OTHER_SIDE.format(one.name), reflected(one.at, fold))
            for one in marks
            if not is_on(one.at, fold)
        ]
        lines += [
            PlacementLine(
                OTHER_SIDE.format(one.name), tuple(reflected(p, fold) for p in one.points)
            )
            for one in lines
            if not all(is_on(point, fold) for point in one.points)
        ]
    return Marks(tuple(notches), tuple(marks), tuple(lines))


def _notches(drawn: Drawn, edge: Ring, labels: Iterable[Label]) -> list[Notch]:
    rim = LinearRing(edge)
    places = [_foot(stroke, rim) for layer in NOTCHES for stroke in drawn.strokes.get(layer, [])]
    found: list[Notch] = []
    for label in labels:
        is_double = label.kind.startswith("double")
        reach_mm = DOUBLE_REACH_MM if is_double else LABEL_REACH_MM
        claimed = nearest(label, places, reach_mm)[: 1 + is_double]
        if len(claimed) == 1 + is_double:
            found.append(Notch(label.name, _middle([places[n] for n in claimed]), is_double))
            places = [place for number, place in enumerate(places) if number not in claimed]
    return [*found, *(Notch(f"notch {n}", at) for n, at in enumerate(places, 1))]


def _foot(stroke: Stroke, rim: LinearRing) -> Place:
    """Where a notch meets the edge: a slit's nearer end, the middle between the ends of a V."""
    first, last = stroke.points[0], stroke.points[-1]
    if len(stroke.points) > 2:
        return _middle([first, last])
    return min(first, last, key=lambda end: rim.distance(Point(end)))


def _marks(drawn: Drawn, labels: Sequence[Label]) -> list[Mark]:
    places = []
    for stroke in drawn.strokes.get(DRILL, []):
        left, low, right, high = bounds_mm(stroke.points)
        places.append(((left + right) / 2, (low + high) / 2))
    names = _names(places, labels, "mark")
    return [Mark(name, at) for name, at in zip(names, places, strict=True)]


def _lines(drawn: Drawn, labels: Sequence[Label]) -> list[PlacementLine]:
    lines = [
        (*stroke.points, stroke.points[0]) if stroke.is_closed else tuple(stroke.points)
        for stroke in drawn.strokes.get(INTERNAL, [])
        if len(stroke.points) > 1
    ]
    names = _names([line[0] for line in lines], labels, "line")
    return [PlacementLine(name, line) for name, line in zip(names, lines, strict=True)]


def _names(places: Sequence[Place], labels: Sequence[Label], kind: str) -> list[str]:
    names = [f"{kind} {number}" for number in range(1, len(places) + 1)]
    for label in labels:
        for number in nearest(label, places, LABEL_REACH_MM)[:1]:
            names[number] = label.name
    return names


def _middle(places: Sequence[Place]) -> Place:
    return (
        sum(x for x, _ in places) / len(places),
        sum(y for _, y in places) / len(places),
    )

"""Where the words of a laid piece stand: inside it where they fit, else its number, else beside it.

Shapes are in the panel's own frame, in millimetres, y upwards. The widths of letters are those of a
common sans-serif, rounded up, so that words end a little before they must.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from shapely import LineString, Point, Polygon, box, maximum_inscribed_circle, unary_union
from shapely.geometry.base import BaseGeometry

WIDTH = 0.64  # of a letter, as a share of its height
LINE = 1.15  # from one line to the next, as a share of the letters' height
SHARES = (1.0, 0.86)  # of the letters' height, tried in turn
LEVELS = (0.0, 0.12, -0.12, 0.24, -0.24, 0.36, -0.36)  # of a piece's height, from its middle
DISC = 0.85  # the radius of the disc a lone number stands on, as a share of the letters' height
AROUND = 16

type Spot = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Label:
    """Lines of words about a middle. `leader` is the path from a number beside its piece to it."""

    x: float
    y: float
    lines: tuple[str, ...]
    size_mm: float
    leader: str = ""

    @property
    def is_number(self) -> bool:
        return len(self.lines) == 1 and self.lines[0].isdecimal()

    @property
    def disc_mm(self) -> float:
        return DISC * self.size_mm

    @property
    def rows(self) -> tuple[tuple[str, float], ...]:
        """Each line with how far below the middle its letters stand."""
        first = 0.36 - (len(self.lines) - 1) * LINE / 2
        return tuple(
            (line, (first + number * LINE) * self.size_mm) for number, line in enumerate(self.lines)
        )

    @property
    def below_mm(self) -> float:
        """How far below the middle there is room again."""
        high = self.disc_mm if self.is_number else len(self.lines) * LINE * self.size_mm / 2
        return high + 0.6 * self.size_mm

    @property
    def room(self) -> BaseGeometry:
        """What the words cover."""
        if self.is_number:
            return Point(self.x, self.y).buffer(self.disc_mm)
        return _room(self.x, self.y, self.lines, self.size_mm)


def label_inside(
    shape: Polygon, layouts: Sequence[tuple[str, ...]], size_mm: float
) -> Label | None:
    """The first layout of words that fits into the piece, the larger letters first."""
    for lines in layouts:
        for share in SHARES:
            for x, y in _middles(shape):
                if shape.covers(_room(x, y, lines, share * size_mm)):
                    return Label(x, y, lines, share * size_mm)
    return None


def number_inside(shape: Polygon, number: int, size_mm: float) -> Label | None:
    """The number on its disc, where the piece is wide enough for it."""
    circle = maximum_inscribed_circle(shape, tolerance=0.5)
    if circle.length < DISC * size_mm * SHARES[-1]:
        return None
    x, y = circle.coords[0]
    return Label(x, y, (str(number),), min(size_mm, circle.length / DISC))


def number_beside(
    shape: Polygon, number: int, size_mm: float, taken: Sequence[BaseGeometry], frame: BaseGeometry
) -> Label:
    """The number on a disc outside of a small piece, with a line to it; where most room is."""
    middle = Point(maximum_inscribed_circle(shape, tolerance=0.5).coords[0])
    others = unary_union(list(taken))
    best: tuple[float, Spot] | None = None
    for x, y in _around(shape, middle, size_mm):
        disc = Point(x, y).buffer(DISC * size_mm * 1.15)
        cost = disc.intersection(others).area + 3 * disc.difference(frame).area
        cost += 0.001 * middle.distance(Point(x, y))
        if best is None or cost < best[0]:
            best = (cost, (x, y))
    assert best is not None  # noqa: S101 - there are always places around
    x, y = best[1]
    away = math.dist((x, y), (middle.x, middle.y))
    share = max(0.0, 1 - DISC * size_mm / away)
    end = (middle.x + share * (x - middle.x), middle.y + share * (y - middle.y))
    leader = f"M{middle.x:.1f} {middle.y:.1f}L{end[0]:.1f} {end[1]:.1f}"
    return Label(x, y, (str(number),), size_mm, leader)


def arrow_along(shape: Polygon, angle_deg: float, label: BaseGeometry) -> LineString | None:
    """The longest line in a direction inside the piece and clear of its words, shortened a little.

    It is the shorter the farther from the middle it would have to lie.
    """
    x, y = maximum_inscribed_circle(shape, tolerance=0.5).coords[0]
    along = (math.cos(math.radians(angle_deg)), math.sin(math.radians(angle_deg)))
    left, low, right, high = shape.bounds
    reach = math.hypot(right - left, high - low)
    room = shape.buffer(-0.04 * reach).difference(label.buffer(0.02 * reach))
    best, best_mm = None, 0.0
    for step in range(-8, 9):
        aside = step * reach / 24
        start = (x - aside * along[1], y + aside * along[0])
        line = LineString(
            [
                (start[0] - reach * along[0], start[1] - reach * along[1]),
                (start[0] + reach * along[0], start[1] + reach * along[1]),
            ]
        )
        cut = line.intersection(room)
        for part in getattr(cut, "geoms", [cut]):
            length_mm = part.length * (1 - abs(step) / 24)
            if part.geom_type == "LineString" and length_mm > best_mm:
                best, best_mm = part, length_mm
    return _shortened(best) if best is not None else None


def _shortened(line: LineString) -> LineString:
    start, end = line.interpolate(0.12, normalized=True), line.interpolate(0.88, normalized=True)
    return LineString([start, end])


def _middles(shape: Polygon) -> Iterator[Spot]:
    """Middles of the widest stretch at a few heights, from the middle of the piece outwards."""
    left, low, right, high = shape.bounds
    _, centre = maximum_inscribed_circle(shape, tolerance=0.5).coords[0]
    for level in LEVELS:
        y = centre + level * (high - low)
        cut = LineString([(left - 1, y), (right + 1, y)]).intersection(shape)
        parts = [part for part in getattr(cut, "geoms", [cut]) if part.length > 0]
        if parts:
            widest = max(parts, key=lambda part: part.length)
            yield (widest.bounds[0] + widest.bounds[2]) / 2, y


def _room(x: float, y: float, lines: tuple[str, ...], size_mm: float) -> BaseGeometry:
    wide = max(len(line) for line in lines) * WIDTH * size_mm / 2
    high = len(lines) * LINE * size_mm / 2
    return box(x - wide, y - high, x + wide, y + high)


def _around(shape: Polygon, middle: Point, size_mm: float) -> Iterator[Spot]:
    left, low, right, high = shape.bounds
    near = math.hypot(right - left, high - low) / 2 + 1.2 * size_mm
    for far in (near, near + 1.5 * size_mm, near + 3 * size_mm):
        for number in range(AROUND):
            angle = 2 * math.pi * number / AROUND
            yield middle.x + far * math.cos(angle), middle.y + far * math.sin(angle)

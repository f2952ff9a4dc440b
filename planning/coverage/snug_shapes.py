"""What the snug search knows of shapes: pieces at their turns, sheets, and where two would overlap.

All places are moves of a piece's own origin on a sheet, so that "does this piece overlap that one"
is "does this move lie inside one polygon" (the no-fit polygon, by Minkowski sums). Every such
polygon is drawn once, when it is first needed. It runs in a search's own process and knows no
rules but those given as numbers.
"""

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from typing import Any

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import Polygon, affinity, box
from shapely.geometry.base import BaseGeometry
from shapely.geometry.polygon import orient

from planning.coverage.convex_parts import Corners, convex_parts, sum_of_shapes
from planning.coverage.placing import cos_sin

type Floats = NDArray[np.float64]
type Booleans = NDArray[np.bool_]
type Whole = NDArray[np.int64]

GIVE_MM = 0.002  # two shapes may share this much; a fifth of what the verifier forgives
TOUCH_MM = 2.0  # a gap up to this wide still counts as contact, the less the wider it is
AROUND_MM = 10.0
WIDE_TURN_DEG = 45.0  # a range of turns this wide is tried at its quarter turns too


@dataclass(frozen=True, slots=True)
class Puzzle:
    """What is to be laid: sheets and items as numbers, and what may lie where.

    `turns[item]` holds its ranges of turns, `turns_one_way[item]` those on one-way sheets.
    A bond holds items that must lie together on one of some groups of sheets.
    """

    sheets: tuple[Polygon, ...]
    one_way: tuple[bool, ...]
    items: tuple[Polygon, ...]
    copies: tuple[int, ...]
    turns: tuple[Sequence[Sequence[float]], ...]
    turns_one_way: tuple[Sequence[Sequence[float]], ...]
    barred: tuple[frozenset[int], ...]
    bonds: tuple[tuple[frozenset[int], tuple[frozenset[int], ...]], ...]


def puzzle_of(job: Mapping[str, Any]) -> Puzzle:
    """The puzzle in a job as it is sent to a search's process."""
    items = job["items"]
    return Puzzle(
        sheets=tuple(Polygon(sheet["outline"], sheet["holes"]) for sheet in job["sheets"]),
        one_way=tuple(sheet["one_way"] for sheet in job["sheets"]),
        items=tuple(Polygon(item["outline"]) for item in items),
        copies=tuple(item["copies"] for item in items),
        turns=tuple(item["turns"] for item in items),
        turns_one_way=tuple(item["turns_one_way"] for item in items),
        barred=tuple(frozenset(barred) for barred in job["barred"])
        or (frozenset(),) * len(job["sheets"]),
        bonds=tuple(
            (frozenset(items), tuple(frozenset(group) for group in groups))
            for items, groups in job["bonds"]
        ),
    )


@dataclass(frozen=True, slots=True)
class Variant:
    """An item at one of its turns, and convex parts of its core, which is a hair smaller.

    What may overlap nothing is the core.
    """

    item: int
    turn_deg: float
    shape: Polygon
    parts: tuple[Corners, ...]


class Shapes:
    """The variants of a puzzle, numbered, with what any of them allows to any other."""

    def __init__(self, puzzle: Puzzle) -> None:
        self.sheets = puzzle.sheets
        self.variants = [
            variant
            for number in range(len(puzzle.items))
            for variant in _variants_of(puzzle, number)
        ]
        self.item: Whole = np.array([variant.item for variant in self.variants])
        self.perimeter: Floats = np.array([variant.shape.length for variant in self.variants])
        self.area: Floats = np.array([variant.shape.area for variant in self.variants])
        self.middle = [(v.shape.centroid.x, v.shape.centroid.y) for v in self.variants]
        corners = [np.concatenate(variant.parts) for variant in self.variants]
        self._bounds: Floats = np.array(
            [[*ring.min(axis=0), *ring.max(axis=0)] for ring in corners]
        )
        self._half_turned = [self._turned_half(variant) for variant in self.variants]
        self._no_fit: dict[tuple[int, int], BaseGeometry] = {}
        self.open: Booleans = self._open(puzzle)
        # bound methods are remembered for each pair of numbers
        self.reach = cache(self._reach)
        self.furthest = cache(self._furthest)
        self.inner = cache(self._inner)
        self.outside = cache(self._outside_parts)
        self._opposite = cache(self._opposite_parts)
        self.no_fit_rings = cache(self._no_fit_rings)
        self.inner_edges = cache(lambda sheet, number: edges_of(self.inner(sheet, number)))
        self.no_fit_edges = cache(lambda number, laid: edges_of(self.no_fit(number, laid)))

    def _open(self, puzzle: Puzzle) -> Booleans:
        """Whether each variant may lie on each sheet, by the rules and by its width and height."""
        wide = self._bounds[:, 2:] - self._bounds[:, :2]
        rows = []
        for number, sheet in enumerate(puzzle.sheets):
            left, low, right, high = sheet.bounds
            turns = puzzle.turns_one_way if puzzle.one_way[number] else puzzle.turns
            allowed = [
                variant.item not in puzzle.barred[number]
                and _is_turn_of(turns[variant.item], variant.turn_deg)
                for variant in self.variants
            ]
            rows.append(np.array(allowed) & (wide <= (right - left, high - low)).all(axis=1))
        return np.array(rows)

    def _turned_half(self, variant: Variant) -> int | None:
        for number, other in enumerate(self.variants):
            off = (other.turn_deg - variant.turn_deg) % 360.0 - 180.0
            if other.item == variant.item and abs(off) < 1e-9:
                return number
        return None

    def _reach(self, laid: int) -> Floats:
        """For each variant, the box of moves at which it could overlap a laid one at the origin."""
        own, its = self._bounds, self._bounds[laid]
        return np.concatenate([its[:2] - own[:, 2:], its[2:] - own[:, :2]], axis=1)

    def is_near(self, x: Floats, y: Floats, at_x: float, at_y: float, laid: int) -> bool:
        """Whether any variant at one of these moves could touch a laid one."""
        left, low, right, high = self.furthest(laid)
        return bool(
            len(x)
            and x.min() < at_x + right
            and x.max() > at_x + left
            and y.min() < at_y + high
            and y.max() > at_y + low
        )

    def _furthest(self, laid: int) -> tuple[float, float, float, float]:
        """The box of moves beyond which no variant could touch a laid one at the origin."""
        reach = self.reach(laid)
        left, low = reach[:, :2].min(axis=0) - TOUCH_MM
        right, high = reach[:, 2:].max(axis=0) + TOUCH_MM
        return float(left), float(low), float(right), float(high)

    def overlaps(self, numbers: Whole, x: Floats, y: Floats, laid: int) -> Booleans:
        """Which variants, at these moves, overlap a laid one at the origin."""
        left, low, right, high = self.reach(laid)[numbers].T
        near = np.nonzero((x > left) & (x < right) & (y > low) & (y < high))[0]
        found = np.zeros(len(numbers), dtype=bool)
        kinds = numbers[near]
        for kind in set(kinds.tolist()):
            spots = near[kinds == kind]
            found[spots] = are_inside(self.no_fit_edges(kind, laid), x[spots], y[spots])
        return found

    def are_on_sheet(self, numbers: Whole, x: Floats, y: Floats, sheet: int) -> Booleans:
        """Which variants, at these moves, lie wholly on the sheet."""
        found = np.zeros(len(numbers), dtype=bool)
        for kind in set(numbers.tolist()):
            spots = np.nonzero(numbers == kind)[0]
            found[spots] = are_inside(self.inner_edges(sheet, kind), x[spots], y[spots])
        return found

    def no_fit(self, number: int, laid: int) -> BaseGeometry:
        """The moves at which a variant overlaps a laid one at the origin."""
        found = self._no_fit.get((number, laid))
        if found is None:
            found = sum_of_shapes(self.variants[laid].parts, self._opposite(number))
            turned = affinity.scale(found, -1.0, -1.0, origin=(0, 0))
            self._no_fit[number, laid], self._no_fit[laid, number] = found, turned
            half, laid_half = self._half_turned[number], self._half_turned[laid]
            if half is not None and laid_half is not None:
                self._no_fit[half, laid_half], self._no_fit[laid_half, half] = turned, found
        return found

    def no_fit_at(self, number: int, laid: int, x: float, y: float) -> Polygon:
        """The moves at which a variant overlaps one laid at x, y."""
        shell, holes = self.no_fit_rings(number, laid)
        return Polygon(shell + (x, y), [hole + (x, y) for hole in holes])

    def _no_fit_rings(self, number: int, laid: int) -> tuple[Floats, list[Floats]]:
        shape = max(_polygons(self.no_fit(number, laid)), key=lambda part: part.area)
        holes = [shapely.get_coordinates(hole) for hole in shape.interiors]
        return shapely.get_coordinates(shape.exterior), holes

    def _inner(self, sheet: int, number: int) -> BaseGeometry:
        """The moves at which a variant lies on an empty sheet."""
        cloth, core = self.sheets[sheet].bounds, self._bounds[number]
        left, low = cloth[0] - core[0], cloth[1] - core[1]
        right, high = cloth[2] - core[2], cloth[3] - core[3]
        if left > right or low > high:
            return Polygon()
        outside = sum_of_shapes(self.outside(sheet), self._opposite(number))
        inner: BaseGeometry = box(left, low, right, high).difference(outside)
        return inner

    def _outside_parts(self, sheet: int) -> list[Corners]:
        """What is not cloth inside the sheet's box, and a rim around it, in convex parts."""
        cloth = self.sheets[sheet]
        left, low, right, high = cloth.bounds
        around = box(left - AROUND_MM, low - AROUND_MM, right + AROUND_MM, high + AROUND_MM)
        return convex_parts(around.difference(cloth))

    def _opposite_parts(self, number: int) -> list[Corners]:
        return [-part for part in self.variants[number].parts]


def edges_of(shape: BaseGeometry) -> Floats:
    """Rows of x, y and x, y for every edge of a shape and its holes."""
    rows = [np.zeros((0, 4))]
    for part in _polygons(shape):
        for ring in (part.exterior, *part.interiors):
            points = shapely.get_coordinates(ring)
            rows.append(np.concatenate([points[:-1], points[1:]], axis=1))
    return np.concatenate(rows)


def _polygons(shape: BaseGeometry) -> list[Polygon]:
    return [part for part in getattr(shape, "geoms", [shape]) if isinstance(part, Polygon)]


def are_inside(edges: Floats, x: Floats, y: Floats) -> Booleans:
    """Which of the points the edges enclose."""
    x1, y1, x2, y2 = edges.T
    crosses = (y1 <= y[:, None]) != (y2 <= y[:, None])
    rise = np.where(y1 == y2, 1.0, y2 - y1)
    left_of = x[:, None] < x1 + (y[:, None] - y1) / rise * (x2 - x1)
    inside: Booleans = (crosses & left_of).sum(axis=1) % 2 == 1
    return inside


def _turns_tried(puzzle: Puzzle, item: int) -> list[float]:
    """The middle of each range of turns; of a wide one its quarter turns as well."""
    tried: dict[float, None] = {}
    for first, last in (*puzzle.turns[item], *puzzle.turns_one_way[item]):
        tried[round((first + last) / 2 % 360.0, 9)] = None
        if last - first >= WIDE_TURN_DEG:
            for quarter in range(math.ceil(first / 90.0), math.floor(last / 90.0) + 1):
                tried[quarter * 90.0 % 360.0] = None
    return list(tried)


def _is_turn_of(ranges: Sequence[Sequence[float]], turn_deg: float) -> bool:
    return any((turn_deg - first + 1e-6) % 360.0 <= last - first + 2e-6 for first, last in ranges)


def _variants_of(puzzle: Puzzle, number: int) -> Iterator[Variant]:
    item = orient(puzzle.items[number])
    core = item.buffer(-GIVE_MM / 2, join_style="mitre")
    core = max(getattr(core, "geoms", [core]), key=lambda part: part.area)
    parts = convex_parts(core)
    for turn_deg in _turns_tried(puzzle, number):
        cos, sin = cos_sin(turn_deg)
        turn = np.array([[cos, sin], [-sin, cos]])
        shape = Polygon(shapely.get_coordinates(item.exterior) @ turn)
        yield Variant(number, turn_deg, shape, tuple(part @ turn for part in parts))

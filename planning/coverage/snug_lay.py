"""A part of a lay as the snug search builds it: what lies where, and where more could lie.

Each part carries the spots at which a further piece fills a corner (crossings of two contacts),
with the length of contact there, and for each item that has no such spot some spot where it fits
at all. An item for which even that does not exist makes the part dead: it cannot be completed.
Parts are never changed; a part grows into a new one.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import NamedTuple

import numpy as np
import shapely
from shapely import MultiPolygon, Polygon
from shapely.geometry.base import BaseGeometry

from planning.coverage.snug_edges import VARIANT, Edges, crossings, lines_of
from planning.coverage.snug_shapes import Booleans, Floats, Puzzle, Shapes, Whole

# columns of a spot
NUMBER, SHEET, X, Y, CONTACT = range(5)
NO_SPOTS = np.zeros((0, 5))
SAME_SPOT_PER_MM = 4.0
LEAST_CELL_MM2 = 1e-7
MOST_REMEMBERED = 50_000
MOST_REGIONS = 4_000


type Region = tuple[int, int, frozenset[Laid]]


class Laid(NamedTuple):
    """A variant laid on a sheet."""

    number: int
    sheet: int
    x: float
    y: float


@dataclass(frozen=True, slots=True)
class Part:
    """A part of a lay that grew from its first `kept` pieces.

    `contact` is how much of `perimeter`, that of all that is laid, lies flush.

    `spots` has a row for each place worth trying, `lines` for each sheet the contacts still open,
    `anywhere` for an item without a spot of its own a place where it fits.
    """

    laid: tuple[Laid, ...]
    kept: int
    left: Whole
    open: Booleans
    spots: Floats
    lines: tuple[Floats, ...]
    anywhere: dict[int, Laid]
    dead: frozenset[int]
    dead_mm2: float
    contact: float
    perimeter: float
    area_mm2: float

    @property
    def rank(self) -> tuple[float, float]:
        """Parts in the order of promise: the least that cannot be laid, then the snuggest."""
        return self.dead_mm2, -self.contact / max(self.perimeter, 1.0)


class Grower:
    """Makes parts of a lay for one puzzle and lets them grow."""

    def __init__(self, puzzle: Puzzle, shapes: Shapes, edges: Edges) -> None:
        self.shapes, self.edges, self.puzzle = shapes, edges, puzzle
        self._regions: dict[Region, BaseGeometry] = {}
        self._between = lru_cache(MOST_REMEMBERED)(self._contact_between)
        self._item_mm2 = np.array([item.area for item in puzzle.items])

    def part_of(self, laid: Sequence[Laid]) -> Part:
        """The part that holds just these."""
        shapes = self.shapes
        left: Whole = np.array(self.puzzle.copies)
        is_open = shapes.open
        contact = 0.0
        for count, one in enumerate(laid):
            left[shapes.item[one.number]] -= 1
            is_open = self._open_after(is_open, one)
            contact += self.contact_at(laid[:count], one)
        usable = is_open & (left[shapes.item] > 0)
        lines, spots = [], [NO_SPOTS]
        for sheet in range(len(shapes.sheets)):
            here = [one for one in laid if one.sheet == sheet]
            rows = [lines_of(_of(usable[sheet], self.edges.on_sheet(sheet)), 0.0, 0.0)]
            rows += [self._lines_along(one, usable[sheet]) for one in here]
            lines.append(np.concatenate(rows))
            spots.append(self._spots(here, sheet, lines[-1], lines[-1]))
        numbers = [one.number for one in laid]
        return self._settled(
            laid=tuple(laid),
            kept=len(laid),
            left=left,
            is_open=is_open,
            spots=np.concatenate(spots),
            lines=tuple(lines),
            anywhere={},
            dead=(),
            contact=contact,
            perimeter=float(shapes.perimeter[numbers].sum()),
            area_mm2=float(shapes.area[numbers].sum()),
        )

    def grown(self, part: Part, spot: Floats) -> Part:
        """The part with one more piece, laid at one of its spots."""
        one = Laid(int(spot[NUMBER]), int(spot[SHEET]), float(spot[X]), float(spot[Y]))
        shapes, item = self.shapes, self.shapes.item[one.number]
        left = part.left.copy()
        left[item] -= 1
        is_open = self._open_after(part.open, one)
        usable = is_open & (left[shapes.item] > 0)
        spots = self._spots_beside(part.spots, one, usable)
        fresh = self._lines_along(one, usable[one.sheet])
        lines = list(part.lines)
        lines[one.sheet] = np.concatenate([lines[one.sheet], fresh])
        here = [*(other for other in part.laid if other.sheet == one.sheet), one]
        return self._settled(
            laid=(*part.laid, one),
            kept=part.kept,
            left=left,
            is_open=is_open,
            spots=np.concatenate([spots, self._spots(here, one.sheet, fresh, lines[one.sheet])]),
            lines=tuple(lines),
            anywhere=self._still_free(part.anywhere, one, left, is_open),
            dead=part.dead,
            contact=part.contact + float(spot[CONTACT]),
            perimeter=part.perimeter + float(shapes.perimeter[one.number]),
            area_mm2=part.area_mm2 + float(shapes.area[one.number]),
        )

    def contact_at(self, others: Iterable[Laid], one: Laid) -> float:
        """The length of contact of a laid variant with its sheet's edges and the others there."""
        contact = self._between(one, None)
        return contact + sum(
            self._between(one, other) for other in others if other.sheet == one.sheet
        )

    def _contact_between(self, one: Laid, other: Laid | None) -> float:
        """The contact with another laid variant, or with the sheet's edges."""
        numbers, edges = np.array([one.number]), self.edges
        x, y = np.array([one.x]), np.array([one.y])
        if other is None:
            return float(edges.contact_on_sheet(numbers, x, y, one.sheet)[0])
        return float(edges.contact_on_laid(numbers, x - other.x, y - other.y, other.number)[0])

    def in_the_way(self, spots: Floats, spot: Floats) -> Booleans:
        """Which of the spots could not be used any more once this one is."""
        x, y = spots[:, X] - spot[X], spots[:, Y] - spot[Y]
        overlap = self.shapes.overlaps(spots[:, NUMBER].astype(int), x, y, int(spot[NUMBER]))
        rivals: Booleans = overlap & (spots[:, SHEET] == spot[SHEET])
        return rivals

    def _open_after(self, is_open: Booleans, one: Laid) -> Booleans:
        """What may lie on which sheet, now that a bond may have been settled."""
        item = self.shapes.item[one.number]
        for items, groups in self.puzzle.bonds:
            if item in items:
                kept = {sheet for group in groups if one.sheet in group for sheet in group}
                barred = [sheet for sheet in range(len(self.shapes.sheets)) if sheet not in kept]
                is_open = is_open.copy()
                is_open[np.ix_(barred, np.isin(self.shapes.item, list(items)))] = False
        return is_open

    def _lines_along(self, one: Laid, usable: Booleans) -> Floats:
        return lines_of(_of(usable, self.edges.on_laid(one.number)), one.x, one.y)

    def _spots(self, here: Sequence[Laid], sheet: int, first: Floats, second: Floats) -> Floats:
        """The free spots of a sheet where a line of the first crosses one of the second."""
        numbers, x, y = _without_doubles(*crossings(first, second))
        kept = self.shapes.are_on_sheet(numbers, x, y, sheet)
        numbers, x, y = numbers[kept], x[kept], y[kept]
        for other in here:
            if not len(numbers):
                return NO_SPOTS
            if self.shapes.is_near(x, y, other.x, other.y, other.number):
                kept = ~self.shapes.overlaps(numbers, x - other.x, y - other.y, other.number)
                numbers, x, y = numbers[kept], x[kept], y[kept]
        contact = self._contacts(here, sheet, numbers, x, y)
        return np.column_stack([numbers, np.full(len(numbers), sheet), x, y, contact])

    def _contacts(
        self, here: Iterable[Laid], sheet: int, numbers: Whole, x: Floats, y: Floats
    ) -> Floats:
        contact = self.edges.contact_on_sheet(numbers, x, y, sheet)
        for other in here:
            if not self.shapes.is_near(x, y, other.x, other.y, other.number):
                continue
            contact += self.edges.contact_on_laid(numbers, x - other.x, y - other.y, other.number)
        return contact

    def _spots_beside(self, spots: Floats, one: Laid, usable: Booleans) -> Floats:
        """The spots that are left once `one` is laid, with what contact they have with it."""
        numbers, sheets = spots[:, NUMBER].astype(int), spots[:, SHEET].astype(int)
        spots = spots[usable[sheets, numbers]]
        near = np.nonzero(spots[:, SHEET] == one.sheet)[0]
        numbers = spots[near, NUMBER].astype(int)
        x, y = spots[near, X] - one.x, spots[near, Y] - one.y
        spots[near, CONTACT] += self.edges.contact_on_laid(numbers, x, y, one.number)
        return np.delete(spots, near[self.shapes.overlaps(numbers, x, y, one.number)], axis=0)

    def _still_free(
        self, anywhere: dict[int, Laid], one: Laid, left: Whole, is_open: Booleans
    ) -> dict[int, Laid]:
        return {
            item: place
            for item, place in anywhere.items()
            if left[item] > 0
            and is_open[place.sheet, place.number]
            and not (place.sheet == one.sheet and self._overlap(place, one))
        }

    def _overlap(self, place: Laid, one: Laid) -> bool:
        x, y = np.array([place.x - one.x]), np.array([place.y - one.y])
        return bool(self.shapes.overlaps(np.array([place.number]), x, y, one.number)[0])

    def _settled(
        self,
        laid: tuple[Laid, ...],
        kept: int,
        left: Whole,
        is_open: Booleans,
        spots: Floats,
        lines: tuple[Floats, ...],
        anywhere: dict[int, Laid],
        dead: Iterable[int],
        contact: float,
        perimeter: float,
        area_mm2: float,
    ) -> Part:
        """The part with a spot for every item left that has one, and the items that have none."""
        gone = {item for item in dead if left[item] > 0}
        seen = set(self.shapes.item[spots[:, NUMBER].astype(int)].tolist())
        rows = []
        for item in np.nonzero(left)[0].tolist():
            if item in seen or item in gone:
                continue
            place = anywhere.get(item) or self._place(laid, kept, item, is_open)
            if place is None:
                gone.add(item)
                continue
            anywhere[item] = place
            rows.append([*place, self.contact_at(laid, place)])
        return Part(
            laid=laid,
            kept=kept,
            left=left,
            open=is_open,
            spots=np.concatenate([spots, np.array(rows)]) if rows else spots,
            lines=lines,
            anywhere=anywhere,
            dead=frozenset(gone),
            dead_mm2=float(sum(self._item_mm2[item] * left[item] for item in gone)),
            contact=contact,
            perimeter=perimeter,
            area_mm2=area_mm2,
        )

    def _place(self, laid: Sequence[Laid], kept: int, item: int, is_open: Booleans) -> Laid | None:
        """Some place where an item fits beside all that is laid."""
        for number in np.nonzero(self.shapes.item == item)[0].tolist():
            for sheet in np.nonzero(is_open[:, number])[0].tolist():
                here = tuple(one for one in laid if one.sheet == sheet)
                of_kept = sum(one.sheet == sheet for one in laid[:kept])
                free = self._free(number, sheet, here, of_kept)
                if not free.is_empty:
                    cells = getattr(free, "geoms", [free])
                    x, y = max(cells, key=lambda cell: cell.area).exterior.coords[0]
                    return Laid(number, sheet, float(x), float(y))
        return None

    def _free(self, number: int, sheet: int, here: tuple[Laid, ...], kept: int) -> BaseGeometry:
        """The moves at which a variant lies free of all that is laid on the sheet.

        The first `kept` pieces are common to many parts, so their region is remembered by itself.
        """
        key = (number, sheet, frozenset(here))
        if key in self._regions:
            return self._regions[key]
        before = self._regions.get((number, sheet, frozenset(here[:-1])))
        if here and before is not None:
            region, others = before, here[-1:]
        elif len(here) > kept:
            region, others = self._free(number, sheet, here[:kept], kept), here[kept:]
        else:
            region, others = self.shapes.inner(sheet, number), here
        taken = [
            self.shapes.no_fit_at(number, one.number, one.x, one.y)
            for one in others
            if self._could_reach(region, number, one)
        ]
        if taken:
            region = region.difference(taken[0] if len(taken) == 1 else shapely.union_all(taken))
        cells = [cell for cell in getattr(region, "geoms", [region]) if _is_cell(cell)]
        if len(self._regions) > MOST_REGIONS:
            self._regions.clear()
        self._regions[key] = MultiPolygon(cells)
        return self._regions[key]

    def _could_reach(self, region: BaseGeometry, number: int, one: Laid) -> bool:
        if region.is_empty:
            return False
        left, low, right, high = region.bounds
        x0, y0, x1, y1 = self.shapes.reach(one.number)[number]
        return bool(
            x0 + one.x < right and x1 + one.x > left and y0 + one.y < high and y1 + one.y > low
        )


def _is_cell(shape: BaseGeometry) -> bool:
    return isinstance(shape, Polygon) and shape.area > LEAST_CELL_MM2


def _of(usable: Booleans, contacts: Floats) -> Floats:
    kept: Floats = contacts[usable[contacts[:, VARIANT].astype(int)]]
    return kept


def _without_doubles(numbers: Whole, x: Floats, y: Floats) -> tuple[Whole, Floats, Floats]:
    columns = np.round(x * SAME_SPOT_PER_MM).astype(np.int64)
    rows = np.round(y * SAME_SPOT_PER_MM).astype(np.int64)
    keys = (numbers * 1_000_003 + columns) * 1_000_003 + rows
    first = np.unique(keys, return_index=True)[1]
    return numbers[first], x[first], y[first]

"""Making room: one more piece is put where it overlaps least, and all on the sheet move apart.

No piece turns. Each pair of convex parts is kept apart along one edge of their no-fit polygon, the
one that asks least; with those edges chosen the moves that end the overlaps are a linear programme,
and the edges are chosen anew after each (separation by linear programmes: Li and Milenkovic 1995,
European Journal of Operational Research 84, 539-561). It finds the last few millimetres where the
spare cloth lies in the wrong places.
"""

from collections.abc import Iterator, Sequence
from functools import cache
from typing import Any, NamedTuple

import numpy as np
import shapely

from planning.coverage.convex_parts import Corners
from planning.coverage.snug_lay import Grower, Laid
from planning.coverage.snug_shapes import Floats

LONGEST_STEP_MM = 15.0
MOST_STEPS = 12
SETTLED_MM = 1e-6
LEAST_GAIN = 0.02  # share of the overlap that a step must end
COST_OF_MOVING = 1e-4
PLACES_TRIED = 150
MOST_TRIED = 2


class Sides(NamedTuple):
    """The edges of a convex no-fit part: a move lies `outward` . move - `offsets` outside each."""

    outward: Floats
    offsets: Floats


class Row(NamedTuple):
    """One edge that keeps two pieces apart, or one from what is not cloth (`other` None)."""

    one: int
    other: int | None
    outward: Floats
    outside_mm: float


class Room:
    """Makes room on the sheets of one puzzle."""

    def __init__(self, grower: Grower, chance: np.random.Generator) -> None:
        self._grower, self._shapes, self._chance = grower, grower.shapes, chance
        self._between = cache(self._sides_between)
        self._of_sheet = cache(self._sides_of_sheet)

    def with_one_more(self, laid: Sequence[Laid], numbers: Sequence[int]) -> list[Laid] | None:
        """All that is laid, moved, and one of the variants with it; None where none goes in."""
        for new in self._least_overlaps(laid, numbers):
            here = [*(one for one in laid if one.sheet == new.sheet), new]
            apart = self._moved_apart(here)
            if apart:
                return [*(one for one in laid if one.sheet != new.sheet), *apart]
        return None

    def _least_overlaps(self, laid: Sequence[Laid], numbers: Sequence[int]) -> list[Laid]:
        """The best place for each variant on each sheet, those with the least overlap first."""
        found = []
        for number in numbers:
            for sheet in np.nonzero(self._shapes.open[:, number])[0].tolist():
                here = [one for one in laid if one.sheet == sheet]
                moves = self._places(sheet, number)
                if len(moves):
                    overlap = sum(
                        (self._overlap_mm(number, one, moves) for one in here), np.zeros(len(moves))
                    )
                    best = int(overlap.argmin())
                    place = Laid(number, sheet, float(moves[best, 0]), float(moves[best, 1]))
                    found.append((float(overlap[best]), place))
        return [place for _, place in sorted(found)[:MOST_TRIED]]

    def _places(self, sheet: int, number: int) -> Floats:
        """Moves at which a variant lies on the sheet, by chance."""
        region = self._shapes.inner(sheet, number)
        if region.is_empty:
            return np.zeros((0, 2))
        left, low, right, high = region.bounds
        moves = self._chance.uniform((left, low), (right, high), (PLACES_TRIED, 2))
        numbers = np.full(len(moves), number)
        inside: Floats = moves[self._shapes.are_on_sheet(numbers, moves[:, 0], moves[:, 1], sheet)]
        return np.concatenate([inside, shapely.get_coordinates(region)[:PLACES_TRIED]])

    def _overlap_mm(self, number: int, one: Laid, moves: Floats) -> Floats:
        """How far at least each move reaches into the no-fit parts of a laid piece."""
        deepest = np.zeros(len(moves))
        left, low, right, high = self._shapes.reach(one.number)[number]
        x, y = moves[:, 0] - one.x, moves[:, 1] - one.y
        near = np.nonzero((x > left) & (x < right) & (y > low) & (y < high))[0]
        for sides in self._between(number, one.number) if len(near) else ():
            outside = (moves[near] - (one.x, one.y)) @ sides.outward.T - sides.offsets
            deepest[near] = np.maximum(deepest[near], -outside.max(axis=1))
        return deepest

    def _moved_apart(self, here: Sequence[Laid]) -> list[Laid] | None:
        """The pieces of one sheet without overlap, or None where no way was found."""
        places: Floats = np.array([[one.x, one.y] for one in here])
        numbers, sheet = [one.number for one in here], here[0].sheet
        before = np.inf
        for _ in range(MOST_STEPS):
            rows = list(self._rows(numbers, sheet, places))
            overlap = sum(max(0.0, -row.outside_mm) for row in rows)
            if overlap <= SETTLED_MM:
                return [
                    Laid(number, sheet, float(x), float(y))
                    for number, (x, y) in zip(numbers, places, strict=True)
                ]
            if overlap > before * (1 - LEAST_GAIN):
                return None
            before = overlap
            places = places + _step(rows, len(numbers))
        return None

    def _rows(self, numbers: Sequence[int], sheet: int, places: Floats) -> Iterator[Row]:
        """For every two parts that one step could bring together the edge that asks least."""
        for one, number in enumerate(numbers):
            yield from _nearest_sides(self._of_sheet(sheet, number), places[one], one, None)
            for other in range(one):
                move = places[one] - places[other]
                left, low, right, high = self._shapes.reach(numbers[other])[number]
                far = 2 * LONGEST_STEP_MM
                if left - far < move[0] < right + far and low - far < move[1] < high + far:
                    sides = self._between(number, numbers[other])
                    yield from _nearest_sides(sides, move, one, other)

    def _sides_between(self, number: int, laid: int) -> list[Sides]:
        own, its = self._shapes.variants[number].parts, self._shapes.variants[laid].parts
        return [_sides(part, other) for part in own for other in its]

    def _sides_of_sheet(self, sheet: int, number: int) -> list[Sides]:
        own = self._shapes.variants[number].parts
        return [_sides(part, other) for part in own for other in self._shapes.outside(sheet)]


def _sides(own: Corners, other: Corners) -> Sides:
    """The edges of the moves at which a convex part overlaps another."""
    sums = (other[:, None, :] - own[None, :, :]).reshape(-1, 2)
    ring = shapely.get_coordinates(shapely.MultiPoint(sums).convex_hull.normalize())
    run = np.diff(ring, axis=0)
    outward = np.column_stack([-run[:, 1], run[:, 0]]) / np.hypot(*run.T)[:, None]
    return Sides(outward, (outward * ring[:-1]).sum(axis=1))


def _nearest_sides(
    parts: Sequence[Sides], move: Floats, one: int, other: int | None
) -> Iterator[Row]:
    for sides in parts:
        outside = sides.outward @ move - sides.offsets
        side = int(outside.argmax())
        if outside[side] < 2 * LONGEST_STEP_MM:
            yield Row(one, other, sides.outward[side], float(outside[side]))


def _step(rows: Sequence[Row], count: int) -> Floats:
    """The moves, none of them long, that leave the least overlap along the edges chosen."""
    from scipy.optimize import linprog  # slow to load, and seldom needed
    from scipy.sparse import csr_array, eye_array, hstack

    # a row stands for each edge, a pair of columns for the move of each piece
    pairs = [
        (line, piece, sign * row.outward)
        for line, row in enumerate(rows)
        for piece, sign in ((row.one, -1.0), (row.other, 1.0))
        if piece is not None
    ]
    cells = [
        (line, 2 * piece + axis, float(way[axis])) for line, piece, way in pairs for axis in (0, 1)
    ]
    lines, columns, values = zip(*cells, strict=True)
    apart = csr_array((values, (lines, columns)), shape=(len(rows), 2 * count))
    all_cells: Any = hstack([apart, -apart, -eye_array(len(rows))])
    # a move is the difference of two numbers of no less than 0, so that it has its cost
    answer = linprog(
        np.concatenate([np.full(4 * count, COST_OF_MOVING), np.ones(len(rows))]),
        A_ub=all_cells,
        b_ub=np.array([row.outside_mm for row in rows]),
        bounds=[(0.0, LONGEST_STEP_MM)] * (4 * count) + [(0.0, None)] * len(rows),
    )
    if answer.x is None:
        return np.zeros((count, 2))
    moves: Floats = answer.x[: 2 * count] - answer.x[2 * count : 4 * count]
    return moves.reshape(count, 2)

"""Which edges can lie flush against which: along a sheet's edge, or along a piece already laid.

Pieces cut out of cloth without waste lie edge to edge. For each pair of parallel edges that face
each other this keeps the line of moves along which they lie flush, and how long the contact is at a
given move. Where two such lines cross, a piece fills a corner: those are the places worth trying.
"""

import math
from functools import cache

import numpy as np
from shapely.geometry.polygon import orient

from planning.coverage.snug_shapes import TOUCH_MM, Floats, Shapes, Whole, edges_of

PARALLEL_DEG = 0.25
SHORTEST_MM = 4.0  # edges shorter than this are left out
FAR_MM = 1e9

# columns of a contact: the variant, the direction away from what it leans on, the distance along
# that, the direction along the edge, and from where to where both edges run along it
VARIANT, OUT_X, OUT_Y, OFF, ALONG_X, ALONG_Y, OWN_LOW, OWN_HIGH, LOW, HIGH = range(10)


class Edges:
    """The contacts that the variants can have with each sheet and with each other."""

    def __init__(self, shapes: Shapes) -> None:
        self._shapes = shapes
        rows = []
        for number, variant in enumerate(shapes.variants):
            edges = edges_of(variant.shape)
            rows.append(np.column_stack([np.full(len(edges), float(number)), edges]))
        own = np.concatenate(rows)
        self._own = own[_lengths(own[:, 1:]) > SHORTEST_MM]
        self._directions = _directions(self._own[:, 1:])
        self.on_sheet = cache(self._on_sheet)
        self.on_laid = cache(self._on_laid)
        self._sheet_table = cache(lambda sheet: self._table(self.on_sheet(sheet)))
        self._laid_table = cache(lambda laid: self._table(self.on_laid(laid)))

    def _on_sheet(self, sheet: int) -> Floats:
        """The contacts with a sheet's own edges, holes included."""
        return self._contacts(edges_of(orient(self._shapes.sheets[sheet])), facing=1.0)

    def _on_laid(self, laid: int) -> Floats:
        """The contacts with a variant laid at the origin."""
        return self._contacts(edges_of(self._shapes.variants[laid].shape), facing=-1.0)

    def _contacts(self, edges: Floats, facing: float) -> Floats:
        """Every pair of an own edge and one of these that can lie flush.

        Cloth lies to the left of a sheet's edges (`facing` 1) and to the right of a piece's (-1).
        """
        edges = edges[_lengths(edges) > SHORTEST_MM]
        wanted = _directions(edges) + (0.0 if facing > 0 else math.pi)
        off = np.abs((self._directions[:, None] - wanted + math.pi) % (2 * math.pi) - math.pi)
        first, second = np.nonzero(off < math.radians(PARALLEL_DEG))
        own, other = self._own[first], edges[second]
        along = (other[:, 2:] - other[:, :2]) / _lengths(other)[:, None]
        out = facing * np.column_stack([-along[:, 1], along[:, 0]])
        own_out, other_out = _ends_along(own[:, 1:], out), _ends_along(other, out)
        own_along, other_along = _ends_along(own[:, 1:], along), _ends_along(other, along)
        return np.column_stack(
            [own[:, 0], out, other_out[:, 1] - own_out[:, 0], along, own_along, other_along]
        )

    def _table(self, contacts: Floats) -> Floats:
        """The contacts by variant, each with as many rows as the one with most."""
        contacts = contacts[np.argsort(contacts[:, VARIANT], kind="stable")]
        numbers = contacts[:, VARIANT].astype(int)
        counts = np.bincount(numbers, minlength=len(self._shapes.variants))
        table = np.zeros((len(counts), counts.max(initial=0), 10))
        table[:, :, OFF] = FAR_MM
        first = np.cumsum(counts) - counts
        table[numbers, np.arange(len(numbers)) - first[numbers]] = contacts
        return table

    def contact_on_sheet(self, numbers: Whole, x: Floats, y: Floats, sheet: int) -> Floats:
        """The length of contact with the sheet's edges of variants at these moves."""
        return _contact(self._sheet_table(sheet)[numbers], x, y)

    def contact_on_laid(self, numbers: Whole, x: Floats, y: Floats, laid: int) -> Floats:
        """The length of contact with a variant laid at the origin."""
        box = self._shapes.reach(laid)[numbers]
        near = (x > box[:, 0] - TOUCH_MM) & (x < box[:, 2] + TOUCH_MM)
        near &= (y > box[:, 1] - TOUCH_MM) & (y < box[:, 3] + TOUCH_MM)
        found = np.zeros(len(numbers))
        spots = np.nonzero(near)[0]
        if len(spots):
            table = self._laid_table(laid)[numbers[spots]]
            found[spots] = _contact(table, x[spots], y[spots])
        return found


# columns of a line of moves: as of a contact up to ALONG_Y, then from where to where along it
FROM, TO = 6, 7


def lines_of(contacts: Floats, x: float, y: float) -> Floats:
    """The lines of moves along which these contacts hold, what is leant on lying at x, y."""
    off = contacts[:, OFF] + contacts[:, OUT_X] * x + contacts[:, OUT_Y] * y
    along = contacts[:, ALONG_X] * x + contacts[:, ALONG_Y] * y
    return np.column_stack(
        [
            contacts[:, :OFF],
            off,
            contacts[:, ALONG_X : ALONG_Y + 1],
            contacts[:, LOW] - contacts[:, OWN_HIGH] + along,
            contacts[:, HIGH] - contacts[:, OWN_LOW] + along,
        ]
    )


def crossings(first: Floats, second: Floats) -> tuple[Whole, Floats, Floats]:
    """The variants and moves at which a line of the first and one of the second cross."""
    rows, columns = np.nonzero(first[:, None, VARIANT] == second[None, :, VARIANT])
    a, b = first[rows], second[columns]
    cross = a[:, OUT_X] * b[:, OUT_Y] - a[:, OUT_Y] * b[:, OUT_X]
    bent = np.abs(cross) > 0.1  # nearly parallel lines cross nowhere in particular
    a, b, cross = a[bent], b[bent], cross[bent]
    x = (a[:, OFF] * b[:, OUT_Y] - b[:, OFF] * a[:, OUT_Y]) / cross
    y = (a[:, OUT_X] * b[:, OFF] - b[:, OUT_X] * a[:, OFF]) / cross
    ok = _is_on(a, x, y) & _is_on(b, x, y)
    return a[ok, VARIANT].astype(np.int64), x[ok], y[ok]


def _is_on(line: Floats, x: Floats, y: Floats) -> np.ndarray:
    along = line[:, ALONG_X] * x + line[:, ALONG_Y] * y
    on: np.ndarray = (along > line[:, FROM]) & (along < line[:, TO])
    return on


def _contact(table: Floats, x: Floats, y: Floats) -> Floats:
    x, y = x[:, None], y[:, None]
    gap = table[:, :, OUT_X] * x + table[:, :, OUT_Y] * y - table[:, :, OFF]
    along = table[:, :, ALONG_X] * x + table[:, :, ALONG_Y] * y
    high = np.minimum(table[:, :, OWN_HIGH] + along, table[:, :, HIGH])
    low = np.maximum(table[:, :, OWN_LOW] + along, table[:, :, LOW])
    nearness = np.clip(1.0 - np.abs(gap) / TOUCH_MM, 0.0, 1.0)
    total: Floats = (nearness * np.maximum(high - low, 0.0)).sum(axis=1)
    return total


def _lengths(edges: Floats) -> Floats:
    lengths: Floats = np.hypot(edges[:, 2] - edges[:, 0], edges[:, 3] - edges[:, 1])
    return lengths


def _directions(edges: Floats) -> Floats:
    angles: Floats = np.arctan2(edges[:, 3] - edges[:, 1], edges[:, 2] - edges[:, 0])
    return angles


def _ends_along(edges: Floats, direction: Floats) -> Floats:
    """For each edge its lower and its higher end along a direction."""
    start = (edges[:, :2] * direction).sum(axis=1)
    end = (edges[:, 2:] * direction).sum(axis=1)
    return np.column_stack([np.minimum(start, end), np.maximum(start, end)])

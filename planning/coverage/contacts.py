"""Where outlines come near each other: every nearest point of a corner on an edge, with its side.

To first order a small move changes each gap by the part of the move along the contact's normal, so
that pushes and shifts can be reckoned with whole arrays of contacts at once. What is reckoned here
is only ever a proposal; `verify` decides.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from shapely import Polygon, contains_xy

from planning.coverage.problem import Outline
from planning.coverage.rings import mended

type Floats = NDArray[np.float64]
type Whole = NDArray[np.intp]
type Booleans = NDArray[np.bool_]

NO_LENGTH_MM = 1e-9
MOST_MOVES = 100
HAIR_MM = 1e-3
SLIGHT_MM = 1e-6  # two outlines that touch: the edge itself says which way is off


@dataclass(frozen=True, slots=True)
class Contacts:
    """Near places of a ring and another one, row by row.

    `gaps` in mm (below 0 where they overlap); moving the ring by t changes a gap by about
    `normals` . t. Each lies on the other ring between corner `edges` and the next, `shares` of the
    way.
    """

    normals: Floats
    gaps: Floats
    edges: Whole
    shares: Floats

    def __len__(self) -> int:
        return len(self.gaps)

    def thinned(self) -> "Contacts":
        """Of the contacts with one edge, or with one corner, only the nearest."""
        between = (self.shares > 0.0) & (self.shares < 1.0)
        order = np.lexsort([self.gaps, between, self.edges])
        edges, kinds = self.edges[order], between[order]
        is_first = np.ones(len(order), dtype=bool)
        is_first[1:] = (edges[1:] != edges[:-1]) | (kinds[1:] != kinds[:-1])
        kept = order[is_first]
        return Contacts(self.normals[kept], self.gaps[kept], self.edges[kept], self.shares[kept])


def ring_of(outline: Outline) -> Floats:
    """The corners of an outline, anticlockwise, as rows of x and y."""
    return np.array(mended(outline), dtype=float)


def contacts_of(ring: Floats, other: Floats, reach_mm: float, *, inside: bool = False) -> Contacts:
    """The contacts of two anticlockwise rings with gaps of less than `reach_mm`.

    The ring ought to lie clear of the other, or, with `inside`, within it; where it does not, the
    gap is below 0 and the normal points the shortest way out of the fault.

    >>> square = np.array([(0, 0), (4, 0), (4, 4), (0, 4)], dtype=float)
    >>> sorted(set(contacts_of(square, square + (7, 0), 5).gaps.tolist()))
    [3.0]
    """
    is_in, is_over = _is_in(ring, other), _is_in(other, ring)
    if not inside and (is_in.any() or is_over.any()):
        return _parting(ring, other)
    own = _near(ring, other[::-1] if inside else other, reach_mm, is_in == inside)
    theirs = _near(other, ring, reach_mm, ~is_over)
    edges, shares = own.edges, own.shares
    if inside:  # count the corners of the other ring the right way round again
        last = len(other) - 1
        edges, shares = (last - 1 - edges) % len(other), 1.0 - shares
    return Contacts(
        np.concatenate([own.normals, -theirs.normals]),
        np.concatenate([own.gaps, theirs.gaps]),
        np.concatenate([edges, theirs.points]),
        np.concatenate([shares, np.zeros(len(theirs.gaps))]),
    )


def _parting(ring: Floats, other: Floats) -> Contacts:
    """One row for two rings that overlap: the shortest way apart across what they share."""
    shared = Polygon(ring).intersection(Polygon(other)).convex_hull
    corners = np.array(shared.exterior.coords if isinstance(shared, Polygon) else shared.coords)
    run = np.diff(corners, axis=0)
    run = run[np.hypot(run[:, 0], run[:, 1]) > SLIGHT_MM]
    if not len(run):
        return Contacts(np.zeros((0, 2)), np.zeros(0), np.zeros(0, int), np.zeros(0))
    ways = np.stack([run[:, 1], -run[:, 0]], axis=1) / np.hypot(run[:, 0], run[:, 1])[:, None]
    widths = np.ptp(corners @ ways.T, axis=0)
    way = ways[widths.argmin()]
    forward = (other @ way).max() - (ring @ way).min()
    backward = (ring @ way).max() - (other @ way).min()
    normal = way if forward <= backward else -way
    return Contacts(normal[None, :], -widths[[widths.argmin()]], np.zeros(1, int), np.zeros(1))


def moves_that_clear(normals: Floats, spare_mm: Floats) -> Floats:
    """For each row of spare lengths a move m with normals . m + spare >= 0, where one is found.

    Each step goes straight onto the line that is furthest from being met (the relaxation method:
    Agmon 1954, Canadian Journal of Mathematics 6, 382-392).

    >>> moves_that_clear(np.array([(1.0, 0.0)]), np.array([[5.0], [-3.0]])).round(1).tolist()
    [[0.0, 0.0], [3.0, 0.0]]
    """
    moves: Floats = np.zeros((len(spare_mm), 2))
    rows = np.arange(len(spare_mm))
    for _ in range(MOST_MOVES if len(normals) else 0):
        left = spare_mm + moves @ normals.T
        worst = left.argmin(axis=1)
        short = np.maximum(0.0, -left[rows, worst])
        if not short.any():
            break
        moves += np.where(short > 0.0, short + HAIR_MM, 0.0)[:, None] * normals[worst]
    return moves


@dataclass(frozen=True, slots=True)
class _Near:
    points: Whole
    edges: Whole
    shares: Floats
    normals: Floats
    gaps: Floats


def _is_in(points: Floats, ring: Floats) -> Booleans:
    inside: Booleans = contains_xy(Polygon(ring), points[:, 0], points[:, 1])
    return inside


def _near(points: Floats, ring: Floats, reach_mm: float, is_clear: Booleans) -> _Near:
    """The nearest places of points on the edges of a ring that they should be to the right of."""
    run = np.roll(ring, -1, axis=0) - ring
    some = np.flatnonzero(_is_close(points, points, ring, reach_mm) | ~is_clear)
    reached = _is_close(ring, ring + run, points, reach_mm)
    edges = np.flatnonzero(reached | ~is_clear.all())
    (x, y), (dx, dy) = points[some].T[:, :, None], run[edges].T
    x, y = x - ring[edges, 0], y - ring[edges, 1]
    shares = np.clip((x * dx + y * dy) / np.maximum(dx * dx + dy * dy, NO_LENGTH_MM), 0.0, 1.0)
    x, y = x - shares * dx, y - shares * dy
    gaps = np.hypot(x, y)
    is_right = x * dy - y * dx >= 0.0
    clear = is_clear[some]
    is_place = (shares < 1.0) & ((shares == 0.0) | is_right) & clear[:, None]
    is_place |= _deepest(gaps, ~clear)
    rows, columns = np.nonzero(is_place & ((gaps < reach_mm) | ~clear[:, None]))
    before = run[edges[columns] - 1]
    to_corner = points[some[rows]] - ring[edges[columns]]
    is_nearest = (shares[rows, columns] > 0.0) | ((before * to_corner).sum(axis=1) >= 0.0)
    rows, columns = rows[is_nearest | ~clear[rows]], columns[is_nearest | ~clear[rows]]
    vectors = np.stack([x[rows, columns], y[rows, columns]], axis=1)
    right = np.stack([dy[columns], -dx[columns]], axis=1)
    side = np.where(clear[rows], 1.0, -1.0)
    found = gaps[rows, columns]
    is_slight = found <= SLIGHT_MM
    normals = np.where(is_slight[:, None], right, side[:, None] * vectors)
    normals /= np.maximum(np.hypot(normals[:, 0], normals[:, 1]), NO_LENGTH_MM)[:, None]
    return _Near(some[rows], edges[columns], shares[rows, columns], normals, side * found)


def _is_close(low: Floats, high: Floats, others: Floats, reach_mm: float) -> Booleans:
    """Whether what runs from one point to another comes near the box around the others."""
    first, last = others.min(axis=0) - reach_mm, others.max(axis=0) + reach_mm
    close: Booleans = (np.minimum(low, high) <= last).all(axis=1)
    return close & (np.maximum(low, high) >= first).all(axis=1)


def _deepest(gaps: Floats, is_over: Booleans) -> Booleans:
    """For each point that lies over the ring, the one edge it is nearest to."""
    nearest = np.zeros(gaps.shape, dtype=bool)
    if gaps.size:
        nearest[np.arange(len(gaps)), gaps.argmin(axis=1)] = True
    return nearest & is_over[:, None]

"""Whether a piece fits anywhere on a cloth at all: every place is looked at, by halving boxes.

A box of moves and turns is ruled out when, at its middle, one point of the piece lies further
outside the cloth than it could travel anywhere in the box, or one bare spot lies deeper inside the
piece than that. What is ruled out so is ruled out for every place in the box, and that is all a
proof needs; where the boxes get too many, the answer stays open.
"""

import math
from collections.abc import Sequence
from enum import Enum

import numpy as np
from numpy.typing import NDArray
from shapely import Polygon, affinity

from planning.coverage.grain import Turn

type Floats = NDArray[np.float64]
type Booleans = NDArray[np.bool_]

MOST_POINTS = 48
MOST_SPOTS = 24
MOST_WORK = 6e6  # distances from a mark to an edge; about a quarter of a second
SMALLEST_BOX_MM = 0.2
BATCH = 128
TRIED_AT_ONCE = 8
HAIR_MM = 0.05  # a piece must be this much too large before it is called so
X, Y, TURN, HALF_SIDE, HALF_TURN, WORST = range(6)


class Fit(Enum):
    """The answer: a place was seen, no place exists, or neither was settled."""

    SEEN = "seen"
    NOWHERE = "nowhere"
    OPEN = "open"


def fit_of(piece: Polygon, cloth: Polygon, turns: Sequence[Turn]) -> Fit:
    """Whether the piece, turned about the origin, fits on the cloth at one of the turns.

    >>> from shapely import box
    >>> fit_of(box(-5, -5, 5, 5), box(0, 0, 9, 30), [(0, 0)]).value
    'nowhere'
    >>> fit_of(box(-5, -5, 5, 5), box(0, 0, 10, 30), [(0, 0)]).value
    'seen'
    """
    look = _Look(piece, cloth)
    boxes = look.possible(_first_boxes(piece, cloth, turns))
    work = 0.0
    while len(boxes):
        order = np.argsort(boxes[:, WORST], kind="stable")
        best, waiting = boxes[order[:BATCH]], boxes[order[BATCH:]]
        if look.lies_at_one_of(best):
            return Fit.SEEN
        work += len(best) * look.work_per_box
        if work > MOST_WORK or best[0, HALF_SIDE] < SMALLEST_BOX_MM:
            return Fit.OPEN
        boxes = np.concatenate([look.possible(_halved(best, look.reach_mm)), waiting])
    return Fit.NOWHERE


class _Look:
    """A piece and a cloth made ready to be judged at many places at once."""

    def __init__(self, piece: Polygon, cloth: Polygon) -> None:
        self._piece, self._cloth = piece, cloth
        self._marks = _marks_on(piece)
        self._radii = np.hypot(self._marks[:, 0], self._marks[:, 1])
        self._spots = _bare_spots(cloth)
        self._cloth_edges = _edges(cloth)
        self._piece_edges = _edges(piece)
        self.reach_mm = float(self._radii.max())
        self.work_per_box = 4 * len(self._marks) * len(self._cloth_edges)

    def possible(self, boxes: Floats) -> Floats:
        """The boxes that cannot be ruled out, each with its worst distance written in."""
        if not len(boxes):
            return boxes
        slide = math.sqrt(2) * boxes[:, HALF_SIDE, None] + HAIR_MM
        outside = self._outside_mm(boxes)
        ruled_out = (outside > slide + boxes[:, HALF_TURN, None] * self._radii).any(axis=1)
        boxes[:, WORST] = outside.max(axis=1)
        if len(self._spots):
            depth, from_middle = self._depth_mm(boxes)
            ruled_out |= (depth > slide + boxes[:, HALF_TURN, None] * from_middle).any(axis=1)
            boxes[:, WORST] = np.maximum(boxes[:, WORST], depth.max(axis=1))
        return boxes[~ruled_out]

    def lies_at_one_of(self, boxes: Floats) -> bool:
        """Whether the piece truly lies on the cloth at the middle of one of the best boxes."""
        for x, y, turn, *_ in boxes[boxes[:, WORST] <= HAIR_MM][:TRIED_AT_ONCE]:
            laid = affinity.rotate(self._piece, turn, origin=(0, 0), use_radians=True)
            if self._cloth.buffer(HAIR_MM).covers(affinity.translate(laid, x, y)):
                return True
        return False

    def _outside_mm(self, boxes: Floats) -> Floats:
        """How far each mark of the piece lies outside the cloth; 0 inside."""
        cos, sin = np.cos(boxes[:, TURN, None]), np.sin(boxes[:, TURN, None])
        x = cos * self._marks[:, 0] - sin * self._marks[:, 1] + boxes[:, X, None]
        y = sin * self._marks[:, 0] + cos * self._marks[:, 1] + boxes[:, Y, None]
        away, inside = _to_edges(np.stack([x.ravel(), y.ravel()], axis=1), self._cloth_edges)
        return np.where(inside, 0.0, away).reshape(x.shape)

    def _depth_mm(self, boxes: Floats) -> tuple[Floats, Floats]:
        """How deep each bare spot lies inside the piece, and how far from its middle."""
        cos, sin = np.cos(boxes[:, TURN, None]), np.sin(boxes[:, TURN, None])
        dx = self._spots[:, 0] - boxes[:, X, None]
        dy = self._spots[:, 1] - boxes[:, Y, None]
        x, y = cos * dx + sin * dy, cos * dy - sin * dx
        away, inside = _to_edges(np.stack([x.ravel(), y.ravel()], axis=1), self._piece_edges)
        return np.where(inside, away, 0.0).reshape(x.shape), np.hypot(x, y)


def _first_boxes(piece: Polygon, cloth: Polygon, turns: Sequence[Turn]) -> Floats:
    """One box for each range of turns, over every move that keeps the piece's middle in reach."""
    left, low, right, high = cloth.bounds
    half = max(right - left, high - low) / 2
    rows = [
        ((left + right) / 2, (low + high) / 2, (first + last) / 2, half, (last - first) / 2, 0.0)
        for first, last in turns
    ]
    boxes = np.array(rows)
    boxes[:, [TURN, HALF_TURN]] = np.radians(boxes[:, [TURN, HALF_TURN]])
    return boxes


def _halved(boxes: Floats, reach_mm: float) -> Floats:
    """Each box halved along whichever of move and turn carries the piece further."""
    by_turn = boxes[:, HALF_TURN] * reach_mm > math.sqrt(2) * boxes[:, HALF_SIDE]
    turning, moving = boxes[by_turn], boxes[~by_turn]
    halves = []
    for side in (-0.5, 0.5):
        half = turning.copy()
        half[:, TURN] += side * turning[:, HALF_TURN]
        half[:, HALF_TURN] /= 2
        halves.append(half)
    for side_x in (-0.5, 0.5):
        for side_y in (-0.5, 0.5):
            quarter = moving.copy()
            quarter[:, X] += side_x * moving[:, HALF_SIDE]
            quarter[:, Y] += side_y * moving[:, HALF_SIDE]
            quarter[:, HALF_SIDE] /= 2
            halves.append(quarter)
    return np.concatenate(halves)


def _marks_on(piece: Polygon) -> Floats:
    """Points on the piece's edge: its corners, and others between them while there are few."""
    corners: Floats = np.array(piece.exterior.coords[:-1])
    if len(corners) > MOST_POINTS:
        spread: Floats = corners[np.linspace(0, len(corners) - 1, MOST_POINTS).astype(int)]
        return spread
    along = np.linspace(0.0, 1.0, MOST_POINTS - len(corners), endpoint=False)
    between = [piece.exterior.interpolate(share, normalized=True) for share in along]
    return np.concatenate([corners, np.array([(p.x, p.y) for p in between]).reshape(-1, 2)])


def _bare_spots(cloth: Polygon) -> Floats:
    """Points that are not cloth: corners that reach into it, and the insides of its holes."""
    spots = [list(hole.coords[0]) for hole in cloth.interiors]
    spots += [_middle(Polygon(hole)) for hole in cloth.interiors]
    ring = np.array(cloth.exterior.coords[:-1])
    before, after = np.roll(ring, 1, axis=0), np.roll(ring, -1, axis=0)
    into, out = ring - before, after - ring
    bend = into[:, 0] * out[:, 1] - into[:, 1] * out[:, 0]
    inward = bend < 0 if cloth.exterior.is_ccw else bend > 0
    reaching = ring[inward]
    if len(reaching) > MOST_SPOTS:
        reaching = reaching[np.linspace(0, len(reaching) - 1, MOST_SPOTS).astype(int)]
    return np.array([*spots, *reaching.tolist()], dtype=float).reshape(-1, 2)


def _middle(hole: Polygon) -> list[float]:
    point = hole.representative_point()
    return [point.x, point.y]


def _edges(shape: Polygon) -> Floats:
    """Rows of x, y and x, y for every edge of a shape and its holes."""
    rings = [np.array(ring.coords) for ring in (shape.exterior, *shape.interiors)]
    return np.concatenate([np.concatenate([ring[:-1], ring[1:]], axis=1) for ring in rings])


def _to_edges(spots: Floats, edges: Floats) -> tuple[Floats, Booleans]:
    """For each point, its distance to the nearest edge and whether the edges enclose it."""
    x, y = spots[:, 0, None], spots[:, 1, None]
    x1, y1, x2, y2 = edges.T
    dx, dy = x2 - x1, y2 - y1
    length2 = np.maximum(dx * dx + dy * dy, 1e-12)
    along = np.clip(((x - x1) * dx + (y - y1) * dy) / length2, 0.0, 1.0)
    away = np.hypot(x - x1 - along * dx, y - y1 - along * dy).min(axis=1)
    crosses = (y1 <= y) != (y2 <= y)
    rise = np.where(dy == 0.0, 1.0, dy)
    left_of = x < x1 + (y - y1) / rise * dx
    return away, (crosses & left_of).sum(axis=1) % 2 == 1

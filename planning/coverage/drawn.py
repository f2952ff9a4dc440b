"""One panel drawn many times over, each time with its edges, flaws and shrinkage a little off.

An edge runs from one corner of the outline to the next and is off as a whole; the corners follow.
"""

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import MultiPolygon, Polygon

from planning.coverage.contacts import (
    Booleans,
    Floats,
    Whole,
    contacts_of,
    moves_that_clear,
    ring_of,
)
from planning.coverage.laid import Laid
from planning.coverage.placing import cos_sin
from planning.coverage.problem import Problem
from planning.coverage.sheets import MITRE_LIMIT
from planning.coverage.verify import TOLERANCE_MM

CORNER_DEG = 30.0  # where an outline bends by more, one edge ends and the next begins
NO_TURN = 1e-9


class Drawn:
    """The draws of one panel, beside what is laid on it.

    `left` holds a row for each draw: what is left of a length along and across the grain.
    """

    def __init__(
        self,
        problem: Problem,
        laid: Laid,
        dice: np.random.Generator,
        tape_mm: float,
        left: Floats,
        *,
        is_spread_normal: bool,
    ) -> None:
        def errors(*shape: int) -> Floats:
            if is_spread_normal:
                return dice.normal(0.0, tape_mm, shape)
            return dice.uniform(-tape_mm, tape_mm, shape)

        self._laid, self._left = laid, left
        edge, margins = (
            ring_of(laid.panel.outline),
            (problem.edge_margin_mm, problem.flaw_margin_mm),
        )
        self._rings = [edge, *(ring_of(flaw) for flaw in laid.panel.flaws)]
        self._margins = [margins[0], *(margins[1] for _ in laid.panel.flaws)]
        sides = sides_of(edge)
        moves = [corner_moves(edge, sides, errors(len(left), int(sides.max()) + 1))]
        moves += [errors(len(left), 1, 2) for _ in laid.panel.flaws]
        self._drawn = [
            self._shrunk(ring + move) for ring, move in zip(self._rings, moves, strict=True)
        ]

    def _shrunk(self, rings: Floats) -> Floats:
        """The rings shrunk along and across the grain about the panel's middle."""
        middle = np.array(self._laid.cloth.centroid.coords[0])
        cos, sin = cos_sin(self._laid.panel.grain_deg)
        along, across = np.array([cos, sin]), np.array([-sin, cos])
        lengthwise = ((rings - middle) @ along) * self._left[:, :1]
        crosswise = ((rings - middle) @ across) * self._left[:, 1:]
        drawn: Floats = middle + lengthwise[..., None] * along + crosswise[..., None] * across
        return drawn

    def holds(self, may_move: bool) -> Booleans:
        """In which draws the lay keeps its margins, shifted as a whole if it may be."""
        shift = self._shifts()[:, None, :] if may_move else 0.0
        cloth, *flaws = (np.array(shapely.polygons(rings - shift)) for rings in self._drawn)
        held: Booleans = np.array(shapely.is_valid(cloth))
        for shape in self._laid.shapes:
            point = shape.representative_point()
            held &= shapely.contains_xy(cloth, point.x, point.y)
        held &= self._are_clear(np.array(shapely.get_exterior_ring(cloth)), self._margins[0])
        for flaw, margin_mm in zip(flaws, self._margins[1:], strict=True):
            held &= self._are_clear(flaw, margin_mm)
        return held

    def _are_clear(self, others: NDArray[np.object_], margin_mm: float) -> Booleans:
        """Which of the others keep their margin from all that is laid, as the verifier has it."""
        shapes = self._laid.shapes
        if margin_mm <= TOLERANCE_MM:
            pared = [shape.buffer(-TOLERANCE_MM / 2, join_style="mitre") for shape in shapes]
            shapes = tuple(shape for shape in pared if isinstance(shape, Polygon))
        laid = MultiPolygon(shapes)
        shapely.prepare(laid)
        clear: Booleans = ~shapely.dwithin(laid, others, max(0.0, margin_mm - TOLERANCE_MM))
        return clear

    def _shifts(self) -> Floats:
        """For each draw a move of the whole lay that clears the edges and flaws, to first order."""
        furthest = max(
            float(np.abs(drawn - ring).max())
            for drawn, ring in zip(self._drawn, self._rings, strict=True)
        )
        normals, spare = [], []
        rings = zip(self._rings, self._drawn, self._margins, strict=True)
        for number, (ring, drawn, margin_mm) in enumerate(rings):
            moved = drawn - ring
            for shape in self._laid.shapes:
                own = np.array(shape.exterior.coords[:-1])
                found = contacts_of(
                    own, ring, margin_mm + 3 * furthest, inside=number == 0
                ).thinned()
                share, after = found.shares[:, None], (found.edges + 1) % len(ring)
                slide = (1.0 - share) * moved[:, found.edges] + share * moved[:, after]
                normals.append(found.normals)
                spare.append(found.gaps - margin_mm - (slide * found.normals).sum(axis=2))
        return moves_that_clear(np.concatenate(normals), np.concatenate(spare, axis=1))


def sides_of(ring: Floats) -> Whole:
    """For each edge of a ring, from its corner to the next, the number of the side it is part of.

    >>> sides_of(np.array([(0, 0), (5, 0), (9, 0), (9, 9), (0, 9)], dtype=float)).tolist()
    [0, 0, 1, 2, 3]
    """
    run = np.roll(ring, -1, axis=0) - ring
    before = np.roll(run, 1, axis=0)
    turn = np.arctan2(
        before[:, 0] * run[:, 1] - before[:, 1] * run[:, 0], (before * run).sum(axis=1)
    )
    is_corner = np.abs(turn) > np.radians(CORNER_DEG)
    sides: Whole = np.cumsum(is_corner) - 1
    return sides % max(1, int(is_corner.sum()))


def corner_moves(ring: Floats, sides: Whole, off_mm: Floats) -> Floats:
    """How far each corner of an anticlockwise ring moves when its sides are off, outwards.

    `off_mm` has a row for each draw and a column for each side; the answer draws, corners and x, y.
    A corner goes to where its two edges now meet, but no further than 2.5 times the larger error.
    """
    run = np.roll(ring, -1, axis=0) - ring
    out = np.stack([run[:, 1], -run[:, 0]], axis=1) / np.hypot(run[:, 0], run[:, 1])[:, None]
    back = np.roll(out, 1, axis=0)
    here, there = off_mm[:, sides], off_mm[:, np.roll(sides, 1)]
    cross = back[:, 0] * out[:, 1] - back[:, 1] * out[:, 0]
    cross = np.where(np.abs(cross) < NO_TURN, NO_TURN, cross)
    met = there[..., None] * np.stack([out[:, 1], -out[:, 0]], axis=1)
    met = (met - here[..., None] * np.stack([back[:, 1], -back[:, 0]], axis=1)) / cross[:, None]
    smooth = (
        here[..., None]
        * (out + back)
        / np.maximum(1.0 + (out * back).sum(axis=1), NO_TURN)[:, None]
    )
    is_one = (sides == np.roll(sides, 1))[:, None]
    moves = np.where(is_one, smooth, met)
    most = MITRE_LIMIT * np.maximum(np.abs(here), np.abs(there))
    length = np.maximum(np.hypot(moves[..., 0], moves[..., 1]), NO_TURN)
    capped: Floats = moves * np.minimum(1.0, most / length)[..., None]
    return capped

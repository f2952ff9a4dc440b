"""Pieces pushed about on their own panels: further from the edges, or out of small faults.

No piece is turned or changes its panel. Each step is a small linear programme over the contacts of
one panel, with a limit to how far a piece may go, and is kept only if the least gap has grown by
it; where a step overshoots, a shorter one is tried. (Compaction and separation by linear programmes
over local contacts: Li and Milenkovic 1995, European Journal of Operational Research 84, 539-561.)
"""

import math
import time
from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass, replace

import numpy as np
from shapely import LineString, MultiLineString

from planning.coverage.contacts import Contacts, Floats, contacts_of, ring_of
from planning.coverage.problem import Panel, Placement, Problem
from planning.coverage.stripes import Copy, matched_sets

LONGEST_PUSH_MM = 12.0
SHORTEST_PUSH_MM = 0.2
SHORTER, LONGER = 0.2, 1.5
BOTH_WAYS = 3.0  # two pieces that move towards each other do so by at most 2 x 1.42 of a push
LEAST_GAIN_MM = 0.01
CLEAR_MM = 2e-3  # how far clear of its margin a piece is pushed when a fault is mended
GIVEN_MM = 5e-3  # what a gap may fall short by, half of what the verifier forgives
COST_OF_MOVING = 1e-4  # mm of gap that a mm of moving must bring, so that nothing moves idly
MOST_STEPS = 60


def kept_in_place(problem: Problem) -> frozenset[Copy]:
    """The copies that lie where a rule says: locked, pinned, or with stripes that meet."""
    locked = frozenset((lock.piece, lock.copy) for lock in problem.locked)
    pinned = frozenset((pin.piece, pin.copy) for pin in problem.pin)
    return locked.union(pinned, *matched_sets(problem))


def pushed_inward(
    problem: Problem, lay: Sequence[Placement], kept: Collection[Copy], until: float
) -> tuple[Placement, ...]:
    """The lay with its pieces moved away from edges and flaws, as far as its gaps allow.

    On each panel the nearest piece stands at least as far off as before. `kept` copies do not move.
    """
    return _pushed(problem, lay, kept, until, is_mending=False)


def pushed_clear(
    problem: Problem, lay: Sequence[Placement], kept: Collection[Copy], until: float
) -> tuple[Placement, ...]:
    """The lay with pieces that come too close pushed off, others making way; it may still fail."""
    return _pushed(problem, lay, kept, until, is_mending=True)


def _pushed(
    problem: Problem,
    lay: Sequence[Placement],
    kept: Collection[Copy],
    until: float,
    *,
    is_mending: bool,
) -> tuple[Placement, ...]:
    tables = []
    for panel in problem.panels:
        laid = [placement for placement in lay if placement.panel == panel.id]
        is_free = [(each.piece, each.copy) not in kept for each in laid]
        if any(is_free) and time.monotonic() < until:
            tables.append(_Table(problem, panel, laid, is_free, is_mending))
    while tables and time.monotonic() < until:
        worst = min(tables, key=lambda table: table.least_mm)
        if worst.is_settled:
            break
        worst.push()
    moves = {copy: move for table in tables for copy, move in table.moved()}
    return tuple(_moved(p, moves.get((p.piece, p.copy))) for p in lay)


def _moved(placement: Placement, move: Floats | None) -> Placement:
    if move is None or not move.any():
        return placement
    dx, dy = float(move[0]), float(move[1])
    x, y = placement.translation
    outline = tuple((px + dx, py + dy) for px, py in placement.outline)
    return replace(placement, translation=(x + dx, y + dy), outline=outline)


@dataclass(frozen=True, slots=True)
class _Row:
    """The contacts of one ring with an edge (`other` is None) or with another ring."""

    ring: int
    other: int | None
    contacts: Contacts
    spare_mm: Floats


class _Table:
    """One panel and the rings on it; `least_mm` is the gap that pushing is to make larger."""

    def __init__(
        self,
        problem: Problem,
        panel: Panel,
        laid: Sequence[Placement],
        is_free: Sequence[bool],
        is_mending: bool,
    ) -> None:
        self._problem, self._laid, self._is_free = problem, laid, is_free
        self._is_mending = is_mending
        self._rings = [ring_of(placement.outline) for placement in laid]
        self._edge = ring_of(panel.outline)
        self._flaws = [ring_of(flaw) for flaw in panel.flaws]
        self._places = [number for number, free in enumerate(is_free) if free]
        self._moves: Floats = np.zeros((len(laid), 2))
        self._push_mm, self._steps = LONGEST_PUSH_MM, 0
        self._near = list(self._rows(self._moves, self._slack_mm(), self._push_mm))
        self.least_mm = self._least(self._near)

    @property
    def is_settled(self) -> bool:
        """Whether no push helps any more, or none is needed."""
        is_done = self._is_mending and self.least_mm >= -GIVEN_MM
        return is_done or self._push_mm < SHORTEST_PUSH_MM or self._steps >= MOST_STEPS

    def push(self) -> None:
        """Try one step; keep it if it helps, else look nearer next time."""
        moves = self._moves + self._step()
        found = list(self._rows(moves, max(self.least_mm, 0.0), LONGER * self._push_mm))
        least = self._least(found)
        self._steps += 1
        if least > self.least_mm + LEAST_GAIN_MM or (self._is_mending and least >= -GIVEN_MM):
            self._moves, self._near, self.least_mm = moves, found, least
            self._push_mm = min(LONGER * self._push_mm, LONGEST_PUSH_MM)
        else:
            self._push_mm *= SHORTER

    def moved(self) -> Iterator[tuple[Copy, Floats]]:
        """How far each copy has come."""
        for placement, move in zip(self._laid, self._moves, strict=True):
            yield (placement.piece, placement.copy), move

    def _slack_mm(self) -> float:
        """A length than which the nearest free piece stands no further from any edge or flaw."""
        if self._is_mending:
            return 0.0
        free = MultiLineString([LineString(self._rings[number]) for number in self._places])
        edges = MultiLineString(
            [LineString([*ring, ring[0]]) for ring in (self._edge, *self._flaws)]
        )
        return float(free.distance(edges))

    def _rows(self, moves: Floats, least_mm: float, push_mm: float) -> Iterator[_Row]:
        """The places that the next push may bring too close, once the rings have moved so."""
        rule, near = self._problem, BOTH_WAYS * push_mm
        rings = [ring + move for ring, move in zip(self._rings, moves, strict=True)]
        for one, ring in enumerate(rings):
            if self._is_free[one]:
                edges = [(self._edge, rule.edge_margin_mm, True)]
                edges += [(flaw, rule.flaw_margin_mm, False) for flaw in self._flaws]
                for other, need_mm, inside in edges:
                    found = contacts_of(ring, other, need_mm + least_mm + near, inside=inside)
                    yield _Row(one, None, found, found.gaps - need_mm)
            for two in range(one):
                reach = rule.clearance_mm + near
                if (self._is_free[one] or self._is_free[two]) and _are_near(
                    ring, rings[two], reach
                ):
                    found = contacts_of(ring, rings[two], reach)
                    yield _Row(one, two, found, found.gaps - rule.clearance_mm)

    def _least(self, rows: Sequence[_Row]) -> float:
        """The least gap that counts; nothing while pieces come too close to one another."""
        counted = [row for row in rows if row.other is None or self._is_mending]
        between = [row for row in rows if row.other is not None and not self._is_mending]
        if _smallest(between) < -GIVEN_MM:
            return -math.inf
        return _smallest(counted)

    def _step(self) -> Floats:
        """The moves, none of them long, that make the least gap largest."""
        from scipy.optimize import linprog  # slow to load

        push_mm, wide = self._push_mm, 2 * len(self._places)
        most = CLEAR_MM if self._is_mending else max(self.least_mm, 0.0) + 2 * push_mm
        cells, limits = self._inequalities(most)
        both = np.concatenate([cells[:, :-1], -cells[:, :-1], cells[:, -1:]], axis=1)
        cost = np.full(2 * wide + 1, COST_OF_MOVING)
        cost[-1] = -1.0
        bounds = [(0.0, push_mm)] * (2 * wide) + [(None, most)]
        answer = linprog(cost, A_ub=both, b_ub=limits, bounds=bounds)
        step: Floats = np.zeros((len(self._rings), 2))
        if answer.x is not None:
            net = answer.x[:wide] - answer.x[wide : 2 * wide]
            step[self._places] = net.reshape(-1, 2)
        return step

    def _inequalities(self, most_mm: float) -> tuple[Floats, Floats]:
        """Rows over the moves and the least gap, with what each must stay below."""
        matrix, limits = [np.zeros((0, 2 * len(self._places) + 1))], [np.zeros(0)]
        for row in self._near:
            is_counted = row.other is None or self._is_mending
            matters = row.spare_mm < BOTH_WAYS * self._push_mm + (most_mm if is_counted else 0.0)
            normals, spare_mm = row.contacts.normals[matters], row.spare_mm[matters]
            cells = np.zeros((len(normals), matrix[0].shape[1]))
            self._enter(cells, row.ring, -normals)
            if row.other is not None:
                self._enter(cells, row.other, normals)
            cells[:, -1] = 1.0 if is_counted else 0.0
            matrix.append(cells)
            limits.append(spare_mm if is_counted else np.maximum(spare_mm, 0.0))
        return np.concatenate(matrix), np.concatenate(limits)

    def _enter(self, cells: Floats, ring: int, normals: Floats) -> None:
        """Write what moving a ring does to some gaps, if it may move."""
        if self._is_free[ring]:
            column = 2 * self._places.index(ring)
            cells[:, column : column + 2] += normals


def _smallest(rows: Sequence[_Row]) -> float:
    return min((float(row.spare_mm.min()) for row in rows if len(row.contacts)), default=math.inf)


def _are_near(one: Floats, two: Floats, reach_mm: float) -> bool:
    apart = np.maximum(one.min(axis=0) - two.max(axis=0), two.min(axis=0) - one.max(axis=0))
    return bool(apart.max() < reach_mm)

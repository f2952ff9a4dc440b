"""Lines as a file draws them become rings: joined end to end, closed, turned anticlockwise.

Ends nearer than ``SNAP_MM`` are the same place. A ring that misses closing by up to ``GAP_MM`` is
closed and the maker is told. Where three lines meet, nothing is guessed: the line stays open.
"""

import math
from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass

from planning.drafting.rings import Point, Ring, signed_area_mm2

SNAP_MM = 0.1
GAP_MM = 0.5
CROWD = 50  # ends within a hair of each other are no outline
SAME_PLACE_MM = 0.001  # points of a file nearer than this are one

Line = list[Point]
Cell = tuple[int, int]


@dataclass(frozen=True)
class Closed:
    """A ring, how wide its gap was, and whether it was drawn clockwise and turned round."""

    ring: Ring
    gap_mm: float
    was_clockwise: bool


def closed_ring(points: Sequence[Point], is_closed: bool) -> Closed | None:
    """Return the ring through ``points``, or None when it is open or has under three corners.

    >>> closed_ring([(0, 0), (0, 9), (9, 9), (0, 0.3)], is_closed=False).gap_mm
    0.3
    """
    line = _without_repeats(points)
    if len(line) < 3:
        return None
    missing_mm = math.dist(line[0], line[-1])
    if not is_closed and missing_mm > GAP_MM:
        return None
    if missing_mm <= (SAME_PLACE_MM if is_closed else SNAP_MM):
        line.pop()
    if len(line) < 3:
        return None
    ring = tuple(line)
    is_gap = not is_closed and missing_mm > SNAP_MM
    is_clockwise = signed_area_mm2(ring) < 0
    turned = (ring[0], *reversed(ring[1:])) if is_clockwise else ring
    return Closed(turned, missing_mm if is_gap else 0.0, is_clockwise)


def _without_repeats(points: Sequence[Point]) -> Line:
    line: Line = []
    for point in points:
        if not line or math.dist(line[-1], point) > SAME_PLACE_MM:
            line.append(point)
    return line


def heading_deg(start: Point, end: Point) -> float:
    """Return the heading from one point to another, anticlockwise from +x, from 0 to under 360.

    >>> heading_deg((0, 0), (0, -5))
    270.0
    """
    return round(math.degrees(math.atan2(end[1] - start[1], end[0] - start[0])), 3) % 360


def chained(lines: Sequence[Line]) -> list[Line]:
    """Join lines whose ends meet, each used once, either way round.

    >>> chained([[(0, 0), (5, 0)], [(5, 5), (5, 0)], [(9, 9), (8, 8)]])
    [[(0, 0), (5, 0), (5, 5)], [(9, 9), (8, 8)]]
    """
    ends = _Ends(lines)
    chains = []
    for index in range(len(lines)):
        if ends.is_used[index]:
            continue
        ends.is_used[index] = True
        chain = _grown(list(lines[index]), ends)
        chain.reverse()
        chain = _grown(chain, ends)
        chain.reverse()
        chains.append(chain)
    return chains


class _Ends:
    """Where every unused line begins and ends, found by place."""

    def __init__(self, lines: Sequence[Line]) -> None:
        self.lines = lines
        self.is_used = [False] * len(lines)
        self._cells: dict[Cell, list[tuple[int, int]]] = defaultdict(list)
        for index, line in enumerate(lines):
            for end in (0, -1):
                self._cells[_cell(line[end])].append((index, end))

    def next_at(self, place: Point) -> tuple[int, int] | None:
        """Return the one unused end (line, 0 or -1) that meets the line ending at ``place``.

        None when nothing meets it there, or more than one line does.
        """
        column, row = _cell(place)
        near = [
            self._cells.get((column + dx, row + dy), ()) for dx in (-1, 0, 1) for dy in (-1, 0, 1)
        ]
        if sum(len(ends) for ends in near) > CROWD:
            return None
        here = [
            (index, end)
            for ends in near
            for index, end in ends
            if math.dist(self.lines[index][end], place) <= SNAP_MM
        ]
        free = [(index, end) for index, end in here if not self.is_used[index]]
        return free[0] if len(free) == 1 and len(here) == 2 else None


def _grown(chain: Line, ends: _Ends) -> Line:
    while math.dist(chain[0], chain[-1]) > SNAP_MM or len(chain) < 3:
        following = ends.next_at(chain[-1])
        if following is None:
            break
        index, end = following
        ends.is_used[index] = True
        line = ends.lines[index]
        chain += line[1:] if end == 0 else line[-2::-1]
    return chain


def _cell(place: Point) -> Cell:
    return (math.floor(place[0] / SNAP_MM), math.floor(place[1] / SNAP_MM))

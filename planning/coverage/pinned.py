"""Where a pinned copy may be laid: a few places that bring its spot onto the panel's point.

The exact point first, at the middle of each allowed turn, then places around it within the stated
distance. Several pinned copies are tried together. Each place is verified by itself; that a place
also leaves room for the rest is for the search to find out.
"""

import itertools
import math
from collections.abc import Iterator, Sequence

from planning.coverage.grain import turns_of, upright_deg
from planning.coverage.placing import placed, placement_of
from planning.coverage.problem import Pin, Placement, Point, Problem
from planning.coverage.verify import faults_of

MOST_PLACES = 6
MOST_CHOICES = 8
RING_SHARES = (0.5, 0.95)  # of the stated distance
RING_POINTS = 8


def pinned_choices(problem: Problem, laid: Sequence[Placement]) -> Iterator[tuple[Placement, ...]]:
    """Ways to lay all pinned copies with what is `laid`, none of them at fault; at most a few."""
    pinned = dict.fromkeys((pin.piece, pin.copy) for pin in problem.pin)
    done = {(placement.piece, placement.copy) for placement in laid}
    copies = [copy for copy in pinned if copy not in done]
    yield from itertools.islice(_choices(problem, tuple(laid), copies), MOST_CHOICES)


def _choices(
    problem: Problem, laid: tuple[Placement, ...], copies: Sequence[tuple[str, int]]
) -> Iterator[tuple[Placement, ...]]:
    if not copies:
        yield laid
        return
    pin = next(pin for pin in problem.pin if (pin.piece, pin.copy) == copies[0])
    tried = 0
    for placement in _places(problem, pin):
        if tried < MOST_PLACES and not faults_of(problem, (*laid, placement), whole=False):
            tried += 1
            yield from _choices(problem, (*laid, placement), copies[1:])


def _places(problem: Problem, pin: Pin) -> Iterator[Placement]:
    """The places to try for one copy, the nearest to its point first."""
    piece, panel = problem.piece(pin.piece), problem.panel(pin.panel)
    mirrored = piece.is_mirrored(pin.copy)
    turns = [
        (panel.grain_deg + upright_deg(piece, mirrored) + turn) % 360.0
        for first, last in turns_of(piece, panel.one_way)
        for turn in dict.fromkeys(((first + last) / 2, first, last))
    ]
    for dx, dy in _offsets(pin.within_mm):
        for turn in turns:
            ((x, y),) = placed(
                [pin.piece_point], mirrored=mirrored, rotation_deg=turn, translation=(0.0, 0.0)
            )
            move = (pin.panel_point[0] + dx - x, pin.panel_point[1] + dy - y)
            yield placement_of(piece, pin.copy, panel.id, turn, move)


def _offsets(within_mm: float) -> Iterator[Point]:
    yield (0.0, 0.0)
    for share in RING_SHARES:
        for number in range(RING_POINTS):
            angle = 2 * math.pi * number / RING_POINTS
            yield (within_mm * share * math.cos(angle), within_mm * share * math.sin(angle))

"""Laying what is left over around copies that stay where they lie: the one door to the search for
those who already have a lay, or a part of one.
"""

import time
from collections.abc import Callable, Sequence

from planning.coverage.board import Board
from planning.coverage.looking import strategies_for
from planning.coverage.problem import Placement, Problem
from planning.coverage.search import Search
from planning.coverage.task import task_of

LEAST_SECONDS = 0.1
FULLEST = 0.97  # of the cloth that is open; beyond it a search is not worth its time


def relaid(
    problem: Problem,
    fixed: Sequence[Placement],
    until: float,
    seed: int,
    go_on: Callable[[], bool],
    *,
    inset_mm: float = 0.0,
) -> tuple[Placement, ...] | None:
    """A whole verified lay that keeps the `fixed` copies, or None if none was found in time.

    With an inset, the others stand that much further from every edge and flaw than they must.
    `until` is on the monotonic clock; `go_on` is asked several times a second.
    """
    if until - time.monotonic() <= LEAST_SECONDS:
        return None
    board = Board(problem)
    if inset_mm == 0.0:
        board.offer(fixed)
    if board.is_full:  # nothing is left over
        return board.best
    task = task_of(problem, fixed, inset_mm=inset_mm)
    if task.load > FULLEST:
        return None
    with Search(board, strategies_for(board, task, seed), until) as search:
        search.run(go_on)
    return board.best if board.is_full else None

"""A lay that stands further from the edges: the same search on panels taken in all round.

A lay that leans on its edges does not survive a tape measure that errs. From a lay that holds, the
inset is raised step by step; whichever lay was found to stand furthest off is kept.
"""

import time
from collections.abc import Callable, Sequence

from planning.coverage.board import Board
from planning.coverage.looking import strategies_for
from planning.coverage.problem import Placement, Problem
from planning.coverage.search import Search
from planning.coverage.spare import inset_mm
from planning.coverage.task import task_of

FIRST_STEP_MM = 4.0
SMALLEST_STEP_MM = 0.5
STEP_SECONDS = 1.0
LEAST_SECONDS = 0.1
FULLEST = 0.97  # of the cloth left by an inset; beyond it a search is not worth its time


def steadied(
    problem: Problem,
    lay: Sequence[Placement],
    deadline: float,
    seed: int,
    go_on: Callable[[], bool],
) -> tuple[Placement, ...]:
    """A lay that holds to a larger inset than the given one, or that one.

    Copies that are locked or pinned stay where they lie.
    """
    kept = {(lock.piece, lock.copy) for lock in problem.locked}
    kept |= {(pin.piece, pin.copy) for pin in problem.pin}
    fixed = [placement for placement in lay if (placement.piece, placement.copy) in kept]

    def held_mm(laid: Sequence[Placement]) -> float:
        return inset_mm(problem, [p for p in laid if (p.piece, p.copy) not in kept])

    best, step_mm = tuple(lay), FIRST_STEP_MM
    while step_mm >= SMALLEST_STEP_MM and len(fixed) < len(best) and go_on():
        until = min(deadline, time.monotonic() + STEP_SECONDS)
        if until - time.monotonic() <= LEAST_SECONDS:
            break
        board = Board(problem)
        task = task_of(problem, fixed, inset_mm=held_mm(best) + step_mm)
        if task.load <= FULLEST:
            with Search(board, strategies_for(board, task, seed), until) as search:
                search.run(go_on)
        if board.is_full and held_mm(board.best) > held_mm(best):
            best, step_mm = board.best, step_mm * 2
        else:
            step_mm /= 2
    return best

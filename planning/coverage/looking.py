"""Looking for a lay and for a proof that there is none, side by side, until one of them is there.

Locked copies are laid first, pinned ones next, in one of a few ways; the rest is for the search.
"""

import time
from collections.abc import Callable

from planning.coverage.board import Board
from planning.coverage.pinned import pinned_choices
from planning.coverage.placing import placement_of
from planning.coverage.problem import Placement, Problem
from planning.coverage.prove import LIGHT, Prover
from planning.coverage.search import HEAD_START_SECONDS, Search, Strategy
from planning.coverage.task import Task, task_of
from planning.coverage.whole import Whole, direct_jobs, snug_jobs

LAST_SHARE = 0.5  # of the time left, for each way of laying the pinned copies but the last


def look(
    board: Board, prover: Prover, deadline: float, seed: int, go_on: Callable[[], bool]
) -> tuple[str, ...]:
    """Fill the board or find the proof; what went wrong on the way, as notes."""
    problem, notes = board.problem, list[str]()
    choices = list(pinned_choices(problem, locked_lay(problem)))
    for number, fixed in enumerate(choices):
        board.offer(fixed)
        now = time.monotonic()
        share = 1.0 if number == len(choices) - 1 else LAST_SHARE
        strategies = strategies_for(board, task_of(problem, fixed), seed)
        with Search(board, strategies, now + share * (deadline - now)) as search:
            search.run(go_on, prover)
        notes += search.notes
        if board.is_full or prover.proof:
            go_on()  # so that the end is told at once
            return tuple(notes)
    if not choices:
        notes.append("no place was found where every pinned piece lands on its point")
        with Search(board, [], deadline) as search:
            search.run(go_on, prover)
    return tuple(notes)


def locked_lay(problem: Problem) -> tuple[Placement, ...]:
    """The locked copies where they lie."""
    return tuple(
        placement_of(
            problem.piece(lock.piece), lock.copy, lock.panel, lock.rotation_deg, lock.translation
        )
        for lock in problem.locked
    )


def strategies_for(board: Board, task: Task, seed: int) -> list[Strategy]:
    """What to try on a task, the most promising first."""
    if not task.is_mixed:
        wait_s = HEAD_START_SECONDS if task.load < LIGHT else 0.0
        snug = Whole(board, task, snug_jobs(task, seed), wait_s)
        return [Whole(board, task, direct_jobs(task)), snug]
    from planning.coverage.shared_out import SharedOut  # brings scipy, which is slow to load

    return [Whole(board, task, snug_jobs(task, seed)), SharedOut(board, task, seed)]

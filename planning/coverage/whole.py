"""Laying all pieces on all panels as one instance: the plain race.

Direct trigonometry with Feasibility is the fastest by far where a full lay is not too dense;
Knapsack finds some that it misses, and is the one that tells how far a lay came (measured; the
figures are in the benchmark).
"""

from collections.abc import Sequence

from planning.coverage.board import Board
from planning.coverage.engine import Job
from planning.coverage.prepare import Item, Sheet
from planning.coverage.problem import Placement

DIRECT = {"use_local_search_direct_trigonometry": True}
SEQUENTIAL = {"use_sequential_single_knapsack": True}
ALL_THE_TIME = 1e9


class Whole:
    """Jobs over all sheets at once, in the order of their promise."""

    def __init__(self, sheets: Sequence[Sheet], items: Sequence[Item], *, one_way: bool) -> None:
        def job(name: str, objective: str, settings: dict[str, bool | float]) -> Job:
            return Job(name, tuple(sheets), tuple(items), one_way, objective, settings)

        self._jobs = [
            job("feasibility, direct", "Feasibility", {**DIRECT}),
            job("knapsack", "Knapsack", {}),
            job("knapsack, sequential", "Knapsack", {**SEQUENTIAL}),
            job("feasibility", "Feasibility", {}),
        ]

    def next_job(self, board: Board) -> tuple[Job, float] | None:
        """The next kind of search, for all the time there is."""
        return (self._jobs.pop(0), ALL_THE_TIME) if self._jobs else None

    def hear(self, board: Board, job: Job, lay: tuple[Placement, ...]) -> None:
        """Any lay of it is a lay of the whole problem."""
        board.offer(lay)

    def ended(self, board: Board, job: Job) -> None:
        """Nothing follows from an end."""

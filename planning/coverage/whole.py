"""Laying all pieces on all panels as one instance: the plain race.

Direct trigonometry with Feasibility is the fastest by far where a full lay is not too dense; others
find some that it misses, and Knapsack is the one that tells how far a lay came (measured; the
figures are in the benchmark).
"""

from collections.abc import Sequence

from planning.coverage.board import Board
from planning.coverage.engine import Job, Lie
from planning.coverage.task import Task

DIRECT = {"use_local_search_direct_trigonometry": True}
SEQUENTIAL = {"use_sequential_single_knapsack": True}
ALL_THE_TIME = 1e9
KNAPSACK_SECONDS = 2.0


class Whole:
    """Jobs over all sheets at once, in the order of their promise.

    Where some pieces may not come from some sheets, only the sequential search heeds it; where only
    some of the cloth is one-way, every piece is laid as if all were.
    """

    def __init__(self, board: Board, task: Task) -> None:
        self._board, self._task = board, task
        self._jobs: list[tuple[Job, float]] = []
        if not task.bonds:
            self._jobs = self._listed_jobs() if task.is_listed else self._plain_jobs()

    def next_job(self) -> tuple[Job, float] | None:
        """The next kind of search and its share of the time."""
        return self._jobs.pop(0) if self._jobs else None

    def hear(self, job: Job, lies: Sequence[Lie]) -> None:
        """Any lay of it is a lay of the whole task."""
        self._board.offer(self._task.lay_of(job, lies))

    def ended(self, job: Job) -> None:
        """Nothing follows from an end."""

    def _plain_jobs(self) -> list[tuple[Job, float]]:
        return [
            (self._job("feasibility, direct", "Feasibility", DIRECT), ALL_THE_TIME),
            (self._job("knapsack", "Knapsack", {}), KNAPSACK_SECONDS),
            (self._job("feasibility", "Feasibility", {}), ALL_THE_TIME),
        ]

    def _listed_jobs(self) -> list[tuple[Job, float]]:
        return [(self._job("knapsack, sequential", "Knapsack", SEQUENTIAL), ALL_THE_TIME)]

    def _job(self, name: str, objective: str, settings: dict[str, bool]) -> Job:
        task = self._task
        barred = tuple(
            tuple(item for item, sheets in enumerate(task.open_to) if sheet not in sheets)
            for sheet in range(len(task.sheets))
        )
        one_way = any(sheet.panel.one_way for sheet in task.sheets)
        return Job(name, task.sheets, task.items, one_way, objective, settings, barred)

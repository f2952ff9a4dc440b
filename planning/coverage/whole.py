"""Laying all pieces on all panels as one instance, with the solver and edge to edge.

The figures behind the choice are in the benchmark. The solver's direct trigonometry is the fastest
where the cloth is far from full; where pieces fill it, the snug search finds lays that no search of
the solver does, and it is the one that tells how far a lay came.
"""

from collections.abc import Sequence
from dataclasses import replace

from shapely import Polygon

from planning.coverage.board import Board
from planning.coverage.engine import Job, Lie
from planning.coverage.items import Item, plainer
from planning.coverage.task import Task

DIRECT = {"use_local_search_direct_trigonometry": True}
ALL_THE_TIME = 1e9
MANY_POINTS = 40
LEAST_PLAINER_MM, PLAINER_MM = 0.2, 0.5
PLAINER_SHARE = 0.25  # of the way that every edge could move out before the cloth were full


class Whole:
    """One job over all sheets at once, for as long as there is time."""

    def __init__(self, board: Board, task: Task, job: Job) -> None:
        self._board, self._task = board, task
        self._jobs = [(job, ALL_THE_TIME)]

    def next_job(self) -> tuple[Job, float] | None:
        """The job, once."""
        return self._jobs.pop() if self._jobs else None

    def hear(self, job: Job, lies: Sequence[Lie]) -> None:
        """Any lay of it is a lay of the whole task."""
        self._board.offer(self._task.lay_of(job, lies))

    def ended(self, job: Job) -> None:
        """Nothing follows from an end."""


def direct_job(task: Task) -> Job:
    """The solver's own search; where some of the cloth is one-way, it takes all of it for so."""
    one_way = any(sheet.panel.one_way for sheet in task.sheets)
    return Job("direct", task.sheets, task.items, one_way, "Feasibility", DIRECT)


def snug_job(task: Task, seed: int) -> Job:
    """The search that lays pieces edge to edge, with all the task's rules."""
    barred = tuple(
        tuple(item for item, sheets in enumerate(task.open_to) if sheet not in sheets)
        for sheet in range(len(task.sheets))
    )
    bonds = tuple(
        (tuple(sorted(bond.items)), tuple(tuple(sorted(group)) for group in bond.sheets))
        for bond in task.bonds
    )
    job = Job("snug", task.sheets, _plain_items(task), search="snug", seed=seed)
    return replace(job, barred=barred, bonds=bonds)


def _plain_items(task: Task) -> tuple[Item, ...]:
    """The items, with those of many points made plainer as far as the spare cloth allows."""
    around = sum(Polygon(item.outline).length * len(item.copies) for item in task.items)
    spare = sum(sheet.area_mm2 for sheet in task.sheets) * (1.0 - task.load)
    by_mm = min(PLAINER_MM, PLAINER_SHARE * spare / max(around, 1.0))
    return tuple(
        plainer(item, by_mm)
        if by_mm >= LEAST_PLAINER_MM and len(item.outline) > MANY_POINTS
        else item
        for item in task.items
    )

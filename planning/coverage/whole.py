"""Laying all pieces on all panels as one instance, with the solver and edge to edge.

The figures behind the choice are in the benchmark. The solver's direct trigonometry is the fastest
where the cloth is far from full; where pieces fill it, the snug search finds lays that no search of
the solver does, and it is the one that tells how far a lay came.
"""

import time
from collections.abc import Iterator, Sequence
from dataclasses import replace

from shapely import Polygon

from planning.coverage.board import Board
from planning.coverage.engine import Job, Lie
from planning.coverage.items import Item, plainer
from planning.coverage.sheets import Sheet
from planning.coverage.task import Task

DIRECT = {"use_local_search_direct_trigonometry": True}
ALL_THE_TIME = 1e9
ROUGH_LOAD, ROUGH_MM, ROUGH_SECONDS = 0.3, 1.0, 1.0
MANY_POINTS = 40
LEAST_PLAINER_MM, PLAINER_MM = 0.2, 0.5
PLAINER_SHARE = 0.25  # of the way that every edge could move out before the cloth were full


class Whole:
    """Jobs for all the items at once, one after the other, the first after a wait."""

    def __init__(
        self, board: Board, task: Task, jobs: Iterator[tuple[Job, float]], wait_s: float = 0.0
    ) -> None:
        self._board, self._task, self._jobs = board, task, jobs
        self._start = time.monotonic() + wait_s

    def next_job(self) -> tuple[Job, float] | None:
        """The next job and its share of the time."""
        return next(self._jobs, None) if time.monotonic() >= self._start else None

    def hear(self, job: Job, lies: Sequence[Lie]) -> None:
        """Any lay of it is a lay of the whole task."""
        self._board.offer(self._task.lay_of(job, lies))

    def ended(self, job: Job) -> None:
        """Nothing follows from an end."""


def direct_jobs(task: Task) -> Iterator[tuple[Job, float]]:
    """The solver's own search; where there is plenty of cloth, on a few of the sheets first."""
    few = _few_sheets(task)
    if len(few) < len(task.sheets):
        items = tuple(plainer(item, ROUGH_MM) for item in task.items)
        rough = replace(_direct_job(task), name="direct, few panels", sheets=few, items=items)
        yield rough, ROUGH_SECONDS
    yield _direct_job(task), ALL_THE_TIME


def _few_sheets(task: Task) -> tuple[Sheet, ...]:
    """The largest sheets that the items would fill to no more than a small share."""
    largest = sorted(task.sheets, key=lambda sheet: -sheet.area_mm2)
    need = task.load * sum(sheet.area_mm2 for sheet in largest) / ROUGH_LOAD
    kept: list[Sheet] = []
    while largest and sum(sheet.area_mm2 for sheet in kept) < need:
        kept.append(largest.pop(0))
    return tuple(kept)


def _direct_job(task: Task) -> Job:
    """The solver's own search; where some of the cloth is one-way, it takes all of it for so."""
    one_way = any(sheet.panel.one_way for sheet in task.sheets)
    return Job("direct", task.sheets, task.items, one_way, "Feasibility", DIRECT)


def snug_jobs(task: Task, seed: int) -> Iterator[tuple[Job, float]]:
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
    yield replace(job, barred=barred, bonds=bonds), ALL_THE_TIME


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

"""Laying each class of panels by itself, as the pieces were shared out over the classes.

A share that was not laid in its time is forbidden and its class counted fuller; when no share is
left, all are tried again with more time.
"""

from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from planning.coverage.board import Board
from planning.coverage.engine import Job, Lie
from planning.coverage.sharing import Refusal, Share, classes_of, shares_of
from planning.coverage.task import Task
from planning.coverage.whole import DIRECT

TIME_LIMITS = (
    1.2,
    4.0,
    12.0,
)  # seconds for one class (measured: most that can be laid are by then)
FULLER = 1.12

type ShareKey = tuple[int, tuple[tuple[int, int], ...]]


class SharedOut:
    """Jobs for one class at a time, the fullest first."""

    def __init__(self, board: Board, task: Task, seed: int) -> None:
        self._board, self._task = board, task
        self._classes = classes_of(task)
        self._chance = np.random.default_rng(seed)
        self._round = 0
        self._forget()
        self._laid: dict[ShareKey, tuple[Lie, ...]] = {}
        self._running: dict[str, ShareKey] = {}
        self._shares: tuple[Share, ...] | None = None
        self._waiting: list[ShareKey] = []

    def next_job(self) -> tuple[Job, float] | None:
        """A class of the shares at hand, or of new ones."""
        if self._shares is None and not self._running:
            self._share_out()
        if not self._waiting:
            return None
        key = self._waiting.pop(0)
        job = self._job(key)
        self._running[job.name] = key
        return job, TIME_LIMITS[self._round]

    def hear(self, job: Job, lies: Sequence[Lie]) -> None:
        """Note a class that is laid in full, and offer what all laid classes make together."""
        key = self._running[job.name]
        if len(lies) < job.size():
            return
        items, sheets = sorted(dict(key[1])), self._classes[key[0]].sheets
        self._laid[key] = tuple(
            (items[item], sheets[sheet], turn, x, y) for item, sheet, turn, x, y in lies
        )
        self._offer()

    def ended(self, job: Job) -> None:
        """A class that was not laid forbids its share."""
        key = self._running.pop(job.name)
        if key not in self._laid:
            self._refused.append(Refusal(key[0], dict(key[1])))
            self._weights[key[0]] *= FULLER
            self._shares, self._waiting = None, []

    def _share_out(self) -> None:
        while self._round < len(TIME_LIMITS):
            self._shares = shares_of(
                self._task, self._classes, self._refused, self._weights, self._chance
            )
            if self._shares is not None:
                self._waiting = [key for key in self._keys() if key not in self._laid]
                self._offer()
                return
            if not self._refused:
                self._round = len(TIME_LIMITS)
                return
            self._round += 1
            self._forget()

    def _forget(self) -> None:
        self._refused: list[Refusal] = []
        self._weights = [1.0] * len(self._classes)

    def _keys(self) -> list[ShareKey]:
        """The shares at hand that hold any pieces, the fullest class first."""
        keys = [
            (number, tuple(sorted(share.items())))
            for number, share in enumerate(self._shares or ())
            if share
        ]
        return sorted(keys, key=lambda key: -self._load(key))

    def _load(self, key: ShareKey) -> float:
        area = sum(self._task.items[item].area_mm2 * count for item, count in key[1])
        return area / self._classes[key[0]].area_mm2

    def _offer(self) -> None:
        lies = [lie for key in self._keys() for lie in self._laid.get(key, ())]
        whole = Job("shared out", self._task.sheets, self._task.items)
        self._board.offer(self._task.lay_of(whole, lies))

    def _job(self, key: ShareKey) -> Job:
        number, share = key
        one = self._classes[number]
        items = [
            replace(self._task.items[item], copies=self._task.items[item].copies[:count])
            for item, count in share
        ]
        sheets = tuple(self._task.sheets[sheet] for sheet in one.sheets)
        name = f"class {number + 1}, {len(self._laid)}/{len(self._refused)}"
        return Job(name, sheets, tuple(items), one.one_way, "Feasibility", DIRECT)

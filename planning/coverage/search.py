"""The race: a few searches at a time, each in its own process, until a verified lay or time is up.

Knows how many run at once and when to stop; what to search for is told by the strategies.
"""

import queue
import time
from collections.abc import Callable, Sequence
from types import TracebackType
from typing import Protocol, Self

from planning.coverage.board import Board, lay_of
from planning.coverage.engine import Child, Heard, Job
from planning.coverage.problem import Placement
from planning.coverage.prove import Prover

AT_ONCE = 2
POLL_SECONDS = 0.1
LEAST_SECONDS = 0.1


class Strategy(Protocol):
    """One way of looking for a lay: gives jobs, hears what became of them."""

    def next_job(self, board: Board) -> tuple[Job, float] | None:
        """The next job and the most seconds it may take, or None if there is none now."""

    def hear(self, board: Board, job: Job, lay: tuple[Placement, ...]) -> None:
        """A claim of one of its jobs."""

    def ended(self, board: Board, job: Job) -> None:
        """One of its jobs is over."""


class Search:
    """Runs strategies side by side up to a deadline on the monotonic clock."""

    def __init__(self, board: Board, strategies: Sequence[Strategy], deadline: float) -> None:
        self.board = board
        self.notes: list[str] = []
        self._strategies = strategies
        self._deadline = deadline
        self._heard: queue.Queue[Heard] = queue.Queue()
        self._running: dict[Child, Strategy] = {}

    def __enter__(self) -> Self:
        self._fill()
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        for child in self._running:
            child.end()

    def run(self, go_on: Callable[[], bool], prover: Prover) -> None:
        """Search until the board is full or a proof stands, or there is no time, way or will left."""
        while not self.board.is_full and self._left() > 0 and go_on():
            if not prover.is_over:
                prover.step()
            self._fill()
            if prover.proof or (prover.is_over and not self._running):
                return
            wait = min(POLL_SECONDS, self._left()) if prover.is_over else 0.0
            try:
                heard = self._heard.get(timeout=max(0.0, wait))
            except queue.Empty:
                continue
            self._take(heard)

    def _left(self) -> float:
        return self._deadline - time.monotonic()

    def _fill(self) -> None:
        """Start jobs while there is a free place, asking the strategies in their order."""
        for strategy in self._strategies:
            while len(self._running) < AT_ONCE and self._left() > LEAST_SECONDS:
                given = strategy.next_job(self.board)
                if given is None:
                    break
                job, seconds = given
                child = Child(job, min(seconds, self._left()), self._heard)
                self._running[child] = strategy

    def _take(self, heard: Heard) -> None:
        strategy = self._running.get(heard.child)
        if strategy is None:
            return
        job = heard.child.job
        if heard.ended is None:
            strategy.hear(self.board, job, lay_of(job, heard.lies))
            return
        del self._running[heard.child]
        if heard.ended:
            self.notes.append(heard.ended)
        strategy.ended(self.board, job)

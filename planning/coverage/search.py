"""The race: a few searches at a time, each in its own process, until a verified lay or time is up.

Knows how many run at once and when to stop; what to search for is told by the strategies.
"""

import queue
import time
from collections.abc import Callable, Sequence
from types import TracebackType
from typing import Protocol, Self

from planning.coverage.board import Board
from planning.coverage.engine import Child, Heard, Job, Lie
from planning.coverage.prove import Prover

AT_ONCE = 2
POLL_SECONDS, SHORT_POLL_SECONDS = 0.1, 0.02
HEAD_START_SECONDS = 0.3  # that the searches have where proofs can wait
LEAST_SECONDS = 0.1


class Strategy(Protocol):
    """One way of looking for a lay: gives jobs, hears what became of them."""

    def next_job(self) -> tuple[Job, float] | None:
        """The next job and the most seconds it may take, or None if there is none now."""

    def hear(self, job: Job, lies: Sequence[Lie]) -> None:
        """A claim of one of its jobs."""

    def ended(self, job: Job) -> None:
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

    def run(self, go_on: Callable[[], bool], prover: Prover | None = None) -> None:
        """Search until a lay or a proof stands, or there is no time, way or will left."""
        head_start = time.monotonic() + HEAD_START_SECONDS
        while not self.board.is_full and self._left() > 0 and go_on():
            self._fill()
            is_proving = prover is not None and not prover.is_over
            waits = prover is not None and prover.can_wait and time.monotonic() < head_start
            if prover and is_proving and not (waits and self._running):
                prover.step()
                waits = False
            if (prover and prover.proof) or not (is_proving or self._running):
                return
            wait = min(SHORT_POLL_SECONDS if waits else POLL_SECONDS, self._left())
            for heard in self._latest(0.0 if is_proving and not waits else max(0.0, wait)):
                self._take(heard)

    def _latest(self, wait_s: float) -> list[Heard]:
        """What has come in: of each child its best claim, the largest first, then the ends.

        A child's claims only grow, so those that a later one has overtaken need no look.
        """
        claims: dict[Child, Heard] = {}
        ends: list[Heard] = []
        try:
            heard = self._heard.get(timeout=wait_s)
            while True:
                if heard.ended is None:
                    claims[heard.child] = heard
                else:
                    ends.append(heard)
                heard = self._heard.get_nowait()
        except queue.Empty:
            return [*sorted(claims.values(), key=lambda each: -len(each.lies)), *ends]

    def _left(self) -> float:
        return self._deadline - time.monotonic()

    def _fill(self) -> None:
        """Start jobs while there is a free place, first for whom the fewest are running."""
        hungry = list(self._strategies)
        while hungry and len(self._running) < AT_ONCE and self._left() > LEAST_SECONDS:
            running = list(self._running.values())
            strategy = min(hungry, key=running.count)
            given = strategy.next_job()
            if given is None:
                hungry.remove(strategy)
                continue
            job, seconds = given
            child = Child(job, min(seconds, self._left()), self._heard)
            self._running[child] = strategy

    def _take(self, heard: Heard) -> None:
        strategy = self._running.get(heard.child)
        if strategy is None:
            return
        job = heard.child.job
        if heard.ended is None:
            strategy.hear(job, heard.lies)
            return
        del self._running[heard.child]
        if heard.ended:
            self.notes.append(heard.ended)
        strategy.ended(job)

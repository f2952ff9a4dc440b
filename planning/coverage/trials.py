"""Questions of the kind *would it cover if*, asked one after another within a time limit.

Each is a check of its own, and only a verified lay is a yes. Pieces that the others leave over are
counted on the way.
"""

import time
from collections import Counter
from collections.abc import Callable, Sequence

from planning.coverage.check import check
from planning.coverage.problem import Placement, Problem
from planning.coverage.verdict import Progress
from planning.coverage.verify import faults_of

LEAST_SECONDS = 0.3
MOST_SECONDS = 4.0
STAGE = "help"


class Trials:
    """What is left of the time, what was found on the way, and who is told of the progress."""

    def __init__(
        self,
        asked: Problem,
        seconds: float,
        seed: int,
        stop: Callable[[], bool] | None,
        progress: Callable[[Progress], None] | None,
    ) -> None:
        self._asked = asked
        self.found: tuple[Placement, ...] = ()
        self._started = time.monotonic()
        self._until = self._started + seconds
        self._seed, self._stop, self._progress = seed, stop, progress
        self.left_over: Counter[str] = Counter()

    def deadline(self, share: float) -> float:
        """When this share of the time that is left will be over, on the monotonic clock."""
        now = time.monotonic()
        return now + share * max(0.0, self._until - now)

    def seconds_to(self, deadline: float, questions: int = 1) -> float:
        """The time for one of so many questions up to a deadline."""
        return (min(deadline, self._until) - time.monotonic()) / questions

    def lay_of(
        self, problem: Problem, seconds: float, known: Sequence[Placement] | None = None
    ) -> tuple[Placement, ...] | None:
        """A whole verified lay, or None if none was found in this time.

        One that answers the problem as it was asked goes to `found` instead, and ends all further
        questions.
        """
        seconds = min(seconds, MOST_SECONDS)
        if seconds < LEAST_SECONDS or self.found or (self._stop and self._stop()):
            return None

        def tell(progress: Progress) -> None:
            if self._progress:
                elapsed = time.monotonic() - self._started
                self._progress(Progress(progress.placed, progress.of, elapsed, STAGE))

        verdict = check(
            problem,
            seconds=seconds,
            seed=self._seed,
            known_lay=known,
            progress=tell,
            stop=self._stop,
        )
        self.left_over.update({piece for piece, _ in verdict.unplaced})
        if verdict.verdict != "covers":
            return None
        if not faults_of(self._asked, verdict.placements):
            self.found = verdict.placements
            return None
        return verdict.placements

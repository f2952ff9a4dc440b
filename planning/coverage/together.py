"""All sizes of a pattern on the same cloth, each answered as soon as its answer is known.

Proofs come first, being cheap; they say nothing of other sizes, since a smaller piece may have
another shape. Then lays are looked for from the largest size down, and a lay of one size is tried
for the next smaller: the same pieces at the same places most often keep every rule.
"""

import time
from collections.abc import Callable, Iterator, Mapping, Sequence

from planning.coverage.check import check
from planning.coverage.engine import engine_name
from planning.coverage.looking import locked_lay
from planning.coverage.problem import Placement, Problem
from planning.coverage.prove import Prover, locked_proof
from planning.coverage.repair import slid_clear
from planning.coverage.sound import refuse_unsound
from planning.coverage.verdict import Progress, Proof, Verdict
from planning.coverage.verify import faults_of

PROOF_SHARE = 0.3  # of the time, for all proofs together
SLIDE_SECONDS = 1.0
LEAST_SECONDS = 0.2


def check_all(
    problems: Sequence[Problem],
    seconds: float,
    *,
    seed: int = 0,
    known_lays: Mapping[int, Sequence[Placement]] | None = None,
    steady_seconds: float = 0.0,
    progress: Callable[[int, Progress], None] | None = None,
    stop: Callable[[], bool] | None = None,
) -> Iterator[tuple[int, Verdict]]:
    """Number and verdict of each problem, smallest size first in `problems`; each comes up once.

    In at most `seconds` for all together (and half a second). `known_lays` may hold lays of before
    by number. Raises ProblemError before anything is yielded if one of them is not sound.
    """
    for problem in problems:
        refuse_unsound(problem)
    work = _Work(problems, time.monotonic() + seconds, seed, steady_seconds, progress, stop)
    return work.answers(dict(known_lays or {}), time.monotonic() + PROOF_SHARE * seconds)


def shrunk_lay(
    problem_small: Problem, placements_large: Sequence[Placement]
) -> tuple[Placement, ...] | None:
    """A lay of a smaller size after that of a larger one, or None if it does not hold.

    Each piece lies about the same middle and with the same turn; what then comes too close is slid
    a little. Verified.
    """
    lay = slid_clear(problem_small, placements_large, time.monotonic() + SLIDE_SECONDS)
    return None if faults_of(problem_small, lay) else lay


class _Work:
    """The sizes still without an answer, and the time there is for them."""

    def __init__(
        self,
        problems: Sequence[Problem],
        until: float,
        seed: int,
        steady_seconds: float,
        progress: Callable[[int, Progress], None] | None,
        stop: Callable[[], bool] | None,
    ) -> None:
        self._problems, self._until, self._seed = problems, until, seed
        self._steady_seconds, self._progress, self._stop = steady_seconds, progress, stop
        self._started = time.monotonic()

    def answers(
        self, lays: dict[int, Sequence[Placement]], proofs_until: float
    ) -> Iterator[tuple[int, Verdict]]:
        """First what is known or proven, then what is found, at last what stays undecided."""
        waiting = []
        for number, problem in enumerate(self._problems):
            holds = number in lays and not faults_of(problem, lays[number])
            proof = None if holds else self._proof(problem, proofs_until)
            if proof:
                yield number, self._refused(problem, proof)
            else:
                waiting.append(number)
        undecided: dict[int, Verdict] = {}
        for _ in range(2):
            for place, number in enumerate(reversed(waiting)):
                known = self._known(number, lays)
                verdict = self._check(number, known, len(waiting) - place)
                lays[number] = verdict.placements
                undecided[number] = verdict
                if verdict.verdict != "undecided":
                    del undecided[number]
                    yield number, verdict
            waiting = sorted(undecided)
        yield from sorted(undecided.items())

    def _known(
        self, number: int, lays: Mapping[int, Sequence[Placement]]
    ) -> Sequence[Placement] | None:
        """The lay to begin from: its own, or else that of the nearest larger size that helps."""
        own, problem = lays.get(number), self._problems[number]
        if own is not None and not faults_of(problem, own):
            return own
        for larger in range(number + 1, len(self._problems)):
            if larger in lays and not faults_of(self._problems[larger], lays[larger]):
                return shrunk_lay(problem, lays[larger]) or own
        return own

    def _proof(self, problem: Problem, until: float) -> Proof | None:
        locked = locked_lay(problem)
        proof = locked_proof(problem, locked)
        if proof:
            return proof
        prover = Prover(problem, locked)
        while not prover.is_over and time.monotonic() < until and not (self._stop and self._stop()):
            prover.step()
        return prover.proof

    def _check(self, number: int, known: Sequence[Placement] | None, sharing: int) -> Verdict:
        """One size, with its part of the time that is left."""
        left = max(0.0, self._until - time.monotonic())

        def tell(progress: Progress) -> None:
            if self._progress:
                self._progress(number, progress)

        return check(
            self._problems[number],
            seconds=max(LEAST_SECONDS, left / sharing),
            seed=self._seed,
            known_lay=known,
            progress=tell,
            stop=self._stop,
            steady_seconds=min(self._steady_seconds, left / sharing / 2),
        )

    def _refused(self, problem: Problem, proof: Proof) -> Verdict:
        unplaced = tuple((piece.id, copy) for piece, copy in problem.copies())
        seconds = time.monotonic() - self._started
        return Verdict("cannot", (), unplaced, proof, None, seconds, self._seed, engine_name())

"""What would help where the cloth is not enough, or not known to be: more cloth, a looser rule, or
one piece from elsewhere. Every help but one is told only with a verified lay that shows it.
"""

from collections.abc import Callable, Iterator

from planning.coverage.check import check
from planning.coverage.extra import help_by_extra_cloth
from planning.coverage.leaving import help_by_leaving_out
from planning.coverage.loosening import helps_by_loosening
from planning.coverage.problem import Problem
from planning.coverage.sound import refuse_unsound
from planning.coverage.trials import Trials
from planning.coverage.verdict import Help, Progress, Verdict
from planning.coverage.wording import listed

FIRST_SHARE = 0.15  # of the time, for the verdict itself where it is not given
LEAVING_SHARE = 0.25  # of what is left then
EXTRA_SHARE = 0.5  # of what is left after that; the rest goes to looser rules
MOST_NAMED = 3


def helps_for(
    problem: Problem,
    seconds: float,
    *,
    seed: int = 0,
    verdict: Verdict | None = None,
    stop: Callable[[], bool] | None = None,
    progress: Callable[[Progress], None] | None = None,
) -> tuple[Help, ...]:
    """What would let the cloth be enough, in at most `seconds` (and half a second).

    Nothing for a problem that is covered. `verdict` is that of the problem, where it is known. One
    help of the kind *found* comes back where the problem turns out to be covered after all. Raises
    ProblemError for a problem that is not sound.
    """
    refuse_unsound(problem)
    trials = Trials(problem, seconds, seed, stop, progress)
    if verdict is None:
        verdict = check(problem, seconds=FIRST_SHARE * seconds, seed=seed, stop=stop)
    if verdict.verdict == "covers":
        return ()
    trials.left_over.update({piece for piece, _ in verdict.unplaced})
    helps = tuple(_helps(problem, verdict, trials))
    if trials.found:
        text = "A longer look found that the cloth is enough as it is. Check again to keep the lay."
        return (Help("found", text, (), (), {}, trials.found),)
    return helps


def _helps(problem: Problem, verdict: Verdict, trials: Trials) -> Iterator[Help]:
    known, unplaced = verdict.placements, verdict.unplaced
    without = help_by_leaving_out(problem, known, unplaced, trials, LEAVING_SHARE)
    if without:
        yield without
    extra = help_by_extra_cloth(problem, known, unplaced, trials, EXTRA_SHARE)
    if extra:
        yield extra
    yield from helps_by_loosening(problem, known, trials, 1.0)
    if trials.left_over and not without:
        yield _left_over(trials)


def _left_over(trials: Trials) -> Help:
    """The pieces that searches left over most often, as a hint where to look."""
    times = max(trials.left_over.values())
    often = sorted(name for name, count in trials.left_over.items() if count == times)
    names = tuple(often[:MOST_NAMED])
    text = (
        f"The search most often has no place for {listed(names)}. Look for cloth for that first, "
        "or choose a smaller size."
    )
    return Help("left_over", text, names, (), {"times": float(times)})

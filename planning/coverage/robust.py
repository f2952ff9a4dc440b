"""How far from the edge a verdict of *covers* stands: with the lay as it is, and all laid anew.

Every figure is a lower bound that a verified lay stands behind; a longer search may find more.
"""

import time
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from planning.coverage.problem import Placement, Problem
from planning.coverage.shrinking import LARGEST_SHARE, held_shrinkage, shrunk
from planning.coverage.spare import inset_mm
from planning.coverage.steady import steadied
from planning.coverage.verify import faults_of

INSET_SHARE = 0.5  # of the time; the rest goes to shrinkage
ROUND_SHARE = 0.5  # of the time left
NEARLY = 0.999  # of a shrinkage that holds, so that rounding does not end the chain
LEAST_GAIN = 1e-3


@dataclass(frozen=True, slots=True)
class Robustness:
    """What cloth may be lost, in mm all round and in percent both ways.

    `same`: under the lay that was given, moved as a whole for shrinkage. `resolved`: with pieces
    laid anew. `lay` is the one found that stands furthest from the edges.
    """

    same_inset_mm: float
    same_shrink_pct: float
    resolved_inset_mm: float
    resolved_shrink_pct: float
    lay: tuple[Placement, ...]


def robustness(
    problem: Problem,
    lay: Sequence[Placement],
    seconds: float,
    *,
    seed: int = 0,
    stop: Callable[[], bool] | None = None,
) -> Robustness:
    """How far a lay that holds stands from the edge, in at most `seconds` (and half a second)."""
    started = time.monotonic()

    def go_on() -> bool:
        return not (stop and stop())

    share, _ = held_shrinkage(problem, lay)
    best = steadied(problem, lay, started + INSET_SHARE * seconds, seed, go_on)
    resolved = 0.0
    if not (problem.locked or problem.pin):  # a fixed point of a panel is none of a smaller one
        resolved = _furthest_share(problem, best, started + seconds, seed, go_on)
    return Robustness(
        inset_mm(problem, lay),
        100.0 * share,
        inset_mm(problem, best),
        100.0 * max(share, resolved),
        best,
    )


def _furthest_share(
    problem: Problem,
    lay: Sequence[Placement],
    until: float,
    seed: int,
    go_on: Callable[[], bool],
) -> float:
    """The share that may be lost when all may be laid anew, as a chain of lays without a gap.

    Where one lay holds no longer, the next is found on cloth shrunk just less than that.
    """
    lost = 0.0
    while True:
        share, centres = held_shrinkage(problem, lay)
        furthest = 1.0 - (1.0 - lost) * (1.0 - share)
        left_s = until - time.monotonic()
        if share < LEAST_GAIN or furthest >= LARGEST_SHARE or left_s <= 0.0 or not go_on():
            return min(furthest, LARGEST_SHARE)
        problem = shrunk(problem, NEARLY * share, centres)
        if faults_of(problem, lay):
            return furthest
        lost = 1.0 - (1.0 - lost) * (1.0 - NEARLY * share)
        lay = steadied(problem, lay, time.monotonic() + ROUND_SHARE * left_s, seed, go_on)

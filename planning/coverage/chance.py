"""The chance that a lay still holds, given how far the tape may err and how much the cloth shrinks.

Panels are drawn at random with every edge, flaw and shrinkage off by its own amount, and the same
lay is laid on each. A maker who finds an edge short could lay the pieces anew, so the true chance
is larger than this one.
"""

import math
from collections.abc import Callable, Sequence

import numpy as np

from planning.coverage.contacts import Booleans, Floats
from planning.coverage.drawn import Drawn
from planning.coverage.laid import laid_on
from planning.coverage.problem import Placement, Problem
from planning.coverage.pushing import kept_in_place
from planning.coverage.verdict import Chance

type Range4 = tuple[float, float, float, float]

TAPE_MM = 3.0  # common practice, no source: a tape laid by hand on cloth that gives a little
SURE = 0.95
HALVINGS = 40


def chance_it_holds(
    problem: Problem,
    placements: Sequence[Placement],
    tape_mm: float = TAPE_MM,
    shrink_pct: Range4 | None = None,
    *,
    is_spread_normal: bool = False,
    may_move: bool = True,
    samples: int = 200,
    seed: int = 0,
) -> Chance:
    """Between what bounds the chance lies, 95 % sure, that the same lay holds on the true cloth.

    Each edge (from corner to corner) and each flaw, along x and y, is off by up to `tape_mm` either
    way, all amounts alike likely; with `is_spread_normal` by the normal distribution of that
    standard deviation. `shrink_pct` holds the least and most shrinkage along and across the grain
    (along, along, across, across), drawn once for each garment. With `may_move` the lay may be
    shifted as a whole on each panel, unless a rule keeps a piece of it in place.
    """
    dice = np.random.default_rng(seed)
    kept = kept_in_place(problem)
    bound = {place.panel for place in placements if (place.piece, place.copy) in kept}
    shrinkage = {
        garment: _shrinkage(dice, shrink_pct, samples)
        for garment in dict.fromkeys(panel.garment for panel in problem.panels)
    }
    held: Booleans = np.ones(samples, dtype=bool)
    for laid in laid_on(problem, placements):
        left = shrinkage[laid.panel.garment]
        drawn = Drawn(problem, laid, dice, tape_mm, left, is_spread_normal=is_spread_normal)
        held &= drawn.holds(may_move and laid.panel.id not in bound)
    return Chance(*bounds_of(int(held.sum()), samples), samples, tape_mm)


def bounds_of(hits: int, samples: int, sure: float = SURE) -> tuple[float, float]:
    """The exact bounds of a share of which so many of the samples were hits.

    Source: Clopper and Pearson 1934, The use of confidence or fiducial limits, Biometrika 26,
    404-413: a share so small is left out that hits as many came up with a chance of 2.5 %, and one
    so large that they came up as few.

    >>> [round(bound, 3) for bound in bounds_of(200, 200)]
    [0.982, 1.0]
    """
    tail = (1.0 - sure) / 2
    low = _halved(lambda share: _at_least(hits, samples, share) >= tail) if hits else 0.0
    if hits == samples:
        return low, 1.0
    return low, _halved(lambda share: _at_least(hits + 1, samples, share) >= 1.0 - tail)


def _halved(is_enough: Callable[[float], bool]) -> float:
    """The least share that is enough."""
    low, high = 0.0, 1.0
    for _ in range(HALVINGS):
        middle = (low + high) / 2
        low, high = (low, middle) if is_enough(middle) else (middle, high)
    return (low + high) / 2


def _at_least(hits: int, samples: int, share: float) -> float:
    """The chance of so many hits or more when each sample is one with this chance."""
    return math.fsum(
        math.exp(
            _log_ways(hit, samples) + hit * math.log(share) + (samples - hit) * math.log1p(-share)
        )
        for hit in range(hits, samples + 1)
    )


def _log_ways(hits: int, samples: int) -> float:
    return math.lgamma(samples + 1) - math.lgamma(hits + 1) - math.lgamma(samples - hits + 1)


def _shrinkage(dice: np.random.Generator, pct: Range4 | None, samples: int) -> Floats:
    """What is left of a length along and across the grain, for each sample."""
    low_along, high_along, low_across, high_across = pct or (0.0, 0.0, 0.0, 0.0)
    along = dice.uniform(low_along, high_along, samples)
    across = dice.uniform(low_across, high_across, samples)
    return 1.0 - np.stack([along, across], axis=1) / 100.0

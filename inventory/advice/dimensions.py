"""Sums about shrinkage: change of length, loss of area, and what to cut.

Plain arithmetic; what a cloth is expected to shrink is in ``shrink.py``.
"""

import math

from inventory.advice.problems import BadFigure


def change_pct(before_mm: float, after_mm: float) -> float:
    """Dimensional change in per cent: below 0 is shrinkage, above 0 growth.

    >>> change_pct(500, 485)
    -3.0
    """
    if not (before_mm > 0 and after_mm >= 0):
        raise BadFigure("A length before washing is above 0, and one after is not below 0.")
    return 100.0 * (after_mm - before_mm) / before_mm


def area_loss_pct(along_pct: float, across_pct: float) -> float:
    """The area lost when both ways shrink by the given per cents.

    >>> round(area_loss_pct(5, 3), 2)
    7.85
    """
    kept = _kept(along_pct) * _kept(across_pct)
    return 100.0 * (1 - kept)


def cut_length_for(finished_mm: float, shrink_pct: float) -> float:
    """The length to cut so that ``finished_mm`` is left after shrinking.

    >>> round(cut_length_for(240, 3), 1)
    247.4
    """
    if not (math.isfinite(finished_mm) and finished_mm >= 0):
        raise BadFigure("A finished length is a number of 0 or more.")
    return finished_mm / _kept(shrink_pct)


def _kept(shrink_pct: float) -> float:
    if not 0 <= shrink_pct < 100:
        raise BadFigure("Shrinkage is from 0 to under 100 per cent.")
    return 1 - shrink_pct / 100

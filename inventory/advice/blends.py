"""Fibre percentages as a label states them: dry masses with agreed allowances added.

A laboratory weighs fibres bone dry; the stated percentage adds to each the agreed
moisture allowance. The formula is the standard use of the table, from memory.
"""

import math
from collections.abc import Sequence

from inventory.advice.fibres import fibre_named
from inventory.advice.problems import BadFigure, UnknownName


def allowance_pct(fibre: str, form: str = "") -> float:
    """The agreed moisture allowance of ``fibre``, in per cent of its dry mass.

    Without a ``form`` the figure for when the form cannot be told is used. Raises
    :class:`BadFigure` for leather and fur, which have none, and :class:`UnknownName`
    for a form the table does not have.

    >>> allowance_pct("wool"), allowance_pct("wool", "combed")
    (17.0, 18.25)
    """
    found = fibre_named(fibre)
    if not found.allowances:
        raise BadFigure(f"{found.label} is no textile fibre and has no agreed allowance.")
    if not form:
        return found.allowances[0].pct.value
    by_form = {allowance.form: allowance.pct.value for allowance in found.allowances}
    if form not in by_form:
        raise UnknownName(f"form of {found.name}", form, tuple(filter(None, by_form)))
    return by_form[form]


def stated_pct(dry: Sequence[tuple[str, str, float]]) -> tuple[float, ...]:
    """The percentages stated for fibres given as (name, form, dry mass in grams).

    >>> [round(each, 2) for each in stated_pct([("wool", "carded", 60), ("polyester", "", 40)])]
    [63.36, 36.64]
    """
    if not dry or any(not (math.isfinite(mass) and mass > 0) for _, _, mass in dry):
        raise BadFigure("Each dry mass must be a number above 0.")
    conditioned = [mass * (1 + allowance_pct(name, form) / 100) for name, form, mass in dry]
    total = math.fsum(conditioned)
    return tuple(100 * each / total for each in conditioned)

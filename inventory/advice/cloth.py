"""What is known about one cloth, and what cannot be true of it.

``Cloth`` is what pages and the command hand in: everything may be left out, and left
out means not known. ``cloth_problems`` names every mistake before any rule runs.
"""

import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from functools import partial

from inventory.advice.conditions import condition_named
from inventory.advice.constructions import construction_named
from inventory.advice.fibres import fibre_named
from inventory.advice.label import MARKS, CareLabel, read_edition, read_mark
from inventory.advice.problems import AdviceError, BadFigure, BadShares

SHARES_TOLERANCE_PCT = 0.05
MOST_MASS_G_M2 = 5000.0
MOST_STRETCH_PCT = 400.0


@dataclass(frozen=True, slots=True)
class Cloth:
    """One cloth as far as it is known; ``None`` and empty mean not known.

    ``fibres`` pairs a fibre name with its share in per cent. ``keep_scent`` and
    ``may_wash`` are the giver's wish. ``fragility`` and ``fray`` are grades 0 to 4.
    """

    fibres: tuple[tuple[str, float], ...] = ()
    construction: str | None = None
    mass_g_m2: float | None = None
    stretch_along_pct: float | None = None
    stretch_across_pct: float | None = None
    fragility: int | None = None
    fray: int | None = None
    label: CareLabel | None = None
    keep_scent: bool = False
    may_wash: bool | None = None
    conditions: frozenset[str] = field(default_factory=frozenset)


def cloth_problems(cloth: Cloth) -> tuple[AdviceError, ...]:
    """Everything about ``cloth`` that cannot be true, in the order it was asked.

    >>> [str(each) for each in cloth_problems(Cloth(fibres=(("cotton", 60.0),)))]
    ['The fibre shares add up to 60, not 100.']
    """
    return tuple(_problems(cloth))


def check_cloth(cloth: Cloth) -> None:
    """Raise the first of :func:`cloth_problems`, if there is one."""
    for problem in _problems(cloth):
        raise problem


def _problems(cloth: Cloth) -> Iterator[AdviceError]:
    yield from _share_problems(cloth.fibres)
    if cloth.construction is not None:
        yield from _tried(construction_named, cloth.construction)
    yield from _figure_problems(cloth)
    yield from _label_problems(cloth.label)
    for name in sorted(cloth.conditions):
        yield from _tried(condition_named, name)


def _tried[T](read: Callable[[T], object], given: T) -> Iterator[AdviceError]:
    try:
        read(given)
    except AdviceError as problem:
        yield problem


def _share_problems(fibres: tuple[tuple[str, float], ...]) -> Iterator[AdviceError]:
    seen: set[str] = set()
    for name, share in fibres:
        try:
            found = fibre_named(name).name
        except AdviceError as problem:
            yield problem
            continue
        if found in seen:
            yield BadShares(f"The fibre {found} is given twice.")
        seen.add(found)
        if not _is_number(share) or not 0 < share <= 100:
            yield BadShares(f"The share of {found} must be above 0 and at most 100.")
    yield from _total_problems(fibres)


def _total_problems(fibres: tuple[tuple[str, float], ...]) -> Iterator[AdviceError]:
    shares = [share for _, share in fibres if _is_number(share)]
    total = math.fsum(shares)
    if len(shares) == len(fibres) and fibres and abs(total - 100) > SHARES_TOLERANCE_PCT:
        yield BadShares(f"The fibre shares add up to {total:g}, not 100.")


def _figure_problems(cloth: Cloth) -> Iterator[AdviceError]:
    mass_g_m2 = cloth.mass_g_m2
    if mass_g_m2 is not None and not (_is_number(mass_g_m2) and 0 < mass_g_m2 <= MOST_MASS_G_M2):
        yield BadFigure(
            f"The mass must be above 0 and at most {MOST_MASS_G_M2:g} grams per square "
            f"metre, not {mass_g_m2}."
        )
    for name in ("stretch_along_pct", "stretch_across_pct"):
        stretch_pct = getattr(cloth, name)
        if stretch_pct is not None and not (
            _is_number(stretch_pct) and 0 <= stretch_pct <= MOST_STRETCH_PCT
        ):
            yield BadFigure(
                f"The {name.removesuffix('_pct').replace('_', ' ')} must be between 0 and "
                f"{MOST_STRETCH_PCT:g} per cent, not {stretch_pct}."
            )
    for name in ("fragility", "fray"):
        grade = getattr(cloth, name)
        if grade is not None and (
            not isinstance(grade, int) or isinstance(grade, bool) or not 0 <= grade <= 4
        ):
            yield BadFigure(f"The {name} grade is a whole number from 0 to 4, not {grade}.")


def _label_problems(label: CareLabel | None) -> Iterator[AdviceError]:
    if label is None:
        return
    for part in MARKS:
        mark = getattr(label, part)
        if mark is not None:
            yield from _tried(partial(read_mark, part), mark)
    yield from _tried(read_edition, label.edition)


def _is_number(value: object) -> bool:
    return isinstance(value, int | float) and not isinstance(value, bool) and math.isfinite(value)

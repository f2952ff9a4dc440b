"""Grades and classes a maker finds with her hands: fragility, fray, stretch and weight.

Each grade says what it means and the short test that finds it. The grades and the two
outer stretch classes are this workshop's conventions; no standard fixes them.
"""

import math
from dataclasses import dataclass

from inventory.advice.facts import Fact, common, trade
from inventory.advice.problems import BadFigure


@dataclass(frozen=True, slots=True)
class Grade:
    """One grade from 0 to 4: what it means and how it shows in the test."""

    value: int
    words: str
    shows: str
    basis: Fact[int]


def _graded(*rows: tuple[str, str]) -> tuple[Grade, ...]:
    return tuple(
        Grade(value, words, shows, common(value)) for value, (words, shows) in enumerate(rows)
    )


FRAGILITY_TEST: tuple[str, ...] = (
    "Hold the cloth up with a light behind it and look for thin places.",
    "Tug it gently between both hands, along and then across the grain, in a hidden place.",
    "Fold a corner over softly, open it, and look along the fold.",
)

FRAGILITY: tuple[Grade, ...] = _graded(
    ("Sound", "Even against the light; a firm tug and a fold leave no trace."),
    ("Worn but strong", "A little thin in places; a firm tug leaves no trace."),
    ("Thin or tender", "Light shows through worn places; a gentle tug opens the weave."),
    ("Weak", "Threads part or small holes grow under a gentle tug."),
    ("Falling apart", "It splits, cracks or powders along a fold, or when touched."),
)

FRAY_TEST: tuple[str, ...] = (
    "Cut a clean edge 50 mm long, straight with the grain, on a hidden allowance.",
    "Rub the edge ten times between finger and thumb, as firmly as you would handle a seam.",
    "Measure how far the threads have come away.",
)

FRAY: tuple[Grade, ...] = _graded(
    ("Does not fray", "No thread comes loose."),
    ("Hardly frays", "A thread or two, less than 1 mm."),
    ("Frays", "A fringe of about 1 to 2 mm."),
    ("Frays badly", "A fringe of about 2 to 4 mm."),
    ("Unravels", "More than 4 mm, or threads slide out by themselves."),
)


@dataclass(frozen=True, slots=True)
class StretchClass:
    """A band of stretch, from ``from_pct`` up to but not with ``to_pct`` (or no end)."""

    name: str
    label: str
    from_pct: float
    to_pct: float | None
    basis: Fact[float]


STRETCH_CLASSES: tuple[StretchClass, ...] = (
    StretchClass("rigid", "Rigid (under 15 %)", 0, 15, common(15)),
    StretchClass("stable", "Stable knit (15 to 25 %)", 15, 25, trade(25)),
    StretchClass("moderate", "Moderate (25 to 50 %)", 25, 50, trade(50)),
    StretchClass("stretchy", "Stretchy (50 to 75 %)", 50, 75, trade(75)),
    StretchClass("super", "Very stretchy (75 % and more)", 75, None, common(75)),
)


@dataclass(frozen=True, slots=True)
class HandFeel:
    """A weight class told by hand, with the masses it stands for in g/m²."""

    name: str
    label: str
    mass_g_m2: tuple[float, float]
    basis: Fact[tuple[float, float]]


def _feel(name: str, label: str, mass_g_m2: tuple[float, float], *, traded: bool) -> HandFeel:
    fact = trade(mass_g_m2) if traded else common(mass_g_m2)
    return HandFeel(name, label, mass_g_m2, fact)


# Light, medium and heavy part at 150 and 300 g/m² in one trade table; another differs.
HAND_FEELS: dict[str, HandFeel] = {
    each.name: each
    for each in (
        _feel("sheer", "Sheer: print is read through it", (20, 60), traded=False),
        _feel("light", "Light, like a shirt", (60, 150), traded=True),
        _feel("medium", "Medium, like a sweatshirt or chinos", (150, 300), traded=True),
        _feel("heavy", "Heavy, like jeans", (300, 450), traded=True),
        _feel("very-heavy", "Very heavy, like a winter coat", (450, 800), traded=False),
    )
}


def stretch_pct(relaxed_mm: float, stretched_mm: float) -> float:
    """How far a marked length stretches, in per cent of its relaxed length.

    Raises :class:`BadFigure` for a length that is not above 0, or one that shrank.

    >>> stretch_pct(100, 125)
    25.0
    """
    _positive("relaxed length", relaxed_mm)
    _positive("stretched length", stretched_mm)
    if stretched_mm < relaxed_mm:
        raise BadFigure("The stretched length cannot be shorter than the relaxed length.")
    return 100.0 * (stretched_mm - relaxed_mm) / relaxed_mm


def stretch_class(pct: float) -> StretchClass:
    """The class a stretch in per cent falls into.

    >>> stretch_class(25).name
    'moderate'
    """
    if not pct >= 0:
        raise BadFigure("A stretch is 0 per cent or more.")
    return next(each for each in reversed(STRETCH_CLASSES) if pct >= each.from_pct)


def mass_g_m2_from(mass_g: float, area_mm2: float) -> float:
    """The mass per square metre of a weighed piece of measured area.

    >>> mass_g_m2_from(12.0, 300 * 400)
    100.0
    """
    _positive("mass", mass_g)
    _positive("area", area_mm2)
    return mass_g * 1_000_000 / area_mm2


def weight_class(mass_g_m2: float) -> HandFeel:
    """The hand-feel class of a mass in g/m²; lighter than sheer counts as sheer.

    >>> weight_class(150).name
    'medium'
    """
    _positive("mass", mass_g_m2)
    heavier = [each for each in HAND_FEELS.values() if mass_g_m2 >= each.mass_g_m2[0]]
    return heavier[-1] if heavier else HAND_FEELS["sheer"]


def _positive(what: str, value: float) -> None:
    if not (math.isfinite(value) and value > 0):
        raise BadFigure(f"The {what} must be a number above 0.")

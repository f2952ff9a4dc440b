"""A garment's facts in words for a page: the same context for its page and its printed advice."""

from typing import Any

from inventory.advice.constructions import CONSTRUCTIONS
from inventory.advice.grades import FRAGILITY, FRAY, Grade
from inventory.advice.label import MARKS
from inventory.cloth import advice_for, mass_of
from inventory.models import Garment

PARTS = (  # in the order of the work
    ("Washing", "wash"),
    ("Drying", "dry"),
    ("Shrinkage", "shrink"),
    ("Pressing", "press"),
    ("Interfacing", "interfacing"),
    ("Marking", "marking"),
    ("Cutting", "cutting"),
    ("Holding", "holding"),
    ("Needle", "needle"),
    ("Thread", "thread"),
    ("Stitch", "stitch"),
    ("Edges", "edge"),
)


def words_of(garment: Garment) -> dict[str, Any]:
    """The advice with its parts in order, and what is known of the cloth in words."""
    advice = advice_for(garment)
    make = CONSTRUCTIONS.get(garment.construction)
    return {
        "advice": advice,
        "advice_parts": [(name, getattr(advice, part)) for name, part in PARTS],
        "make": make.label if make else "",
        "mass_words": _mass_words(garment),
        "fragility_words": _grade_words(FRAGILITY, garment.fragility),
        "fray_words": _grade_words(FRAY, garment.fray),
        "label_words": [
            dict(MARKS[part]).get(mark, mark) for part, mark in garment.label_marks.items()
        ],
    }


def _grade_words(grades: tuple[Grade, ...], value: int | None) -> str:
    return "" if value is None else grades[value].words


def _mass_words(garment: Garment) -> str:
    mass = mass_of(garment)
    if mass is None:
        return ""
    return f"{mass:.0f} g/m²" + (" by hand" if garment.mass_g_m2 is None else "")

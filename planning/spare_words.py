"""How far a lay stands from the edge, in sentences for the maker."""

import math
from collections.abc import Mapping
from typing import Any

from shared.units import LengthUnit, format_area, format_length

TIGHT_MM = 1.0
LITTLE_MM = 5.0
LEAST_SHRINK_PCT = 0.5


def spare_words(
    spare: Mapping[str, Any], units: LengthUnit, *, is_shrinkage_foretold: bool = False
) -> list[str]:
    """One sentence each: the cloth used, what the same lay still stands, and the chance it holds.

    >>> spare = {"used_mm2": 40_000, "usable_mm2": 100_000, "holds_to_inset_mm": 0.4}
    >>> spare_words({**spare, "holds_to_shrink_pct": 0.1}, "cm")[1]
    'The lay goes right up to its margins: measure again before cutting.'
    """
    used, usable = (format_area(spare[name], units) for name in ("used_mm2", "usable_mm2"))
    words = [f"{used} of {usable} usable cloth is used."]
    inset_mm, shrink_pct = spare["holds_to_inset_mm"], spare["holds_to_shrink_pct"]
    if inset_mm < TIGHT_MM:
        words.append("The lay goes right up to its margins: measure again before cutting.")
    else:
        further = format_length(_floor(inset_mm, 0), units)
        shrunk = f", or the cloth shrink by another {_floor(shrink_pct, 1):g} % both ways"
        words.append(
            f"Every edge may lie {further} further in than measured"
            f"{shrunk if shrink_pct >= LEAST_SHRINK_PCT else ''}, and this same lay still fits."
        )
        if inset_mm < LITTLE_MM:
            words.append("That is little, so measure again before cutting.")
    if anew := spare.get("anew"):
        further = format_length(_floor(anew["inset_mm"], 0), units)
        words.append(
            f"With the pieces laid anew it would still be enough if every edge were {further} "
            f"further in, or if the cloth shrank by {_floor(anew['shrink_pct'], 1):g} % both ways; "
            "a longer search might find more."
        )
    if chance := spare.get("chance"):
        tape = format_length(chance["tape_mm"], units)
        washed = " and the cloth shrinks as foretold" if is_shrinkage_foretold else ""
        words.append(
            f"If every edge is off by up to {tape}{washed}, this lay holds in at least "
            f"{math.floor(100 * chance['low'])} of 100 cases ({chance['samples']} were tried)."
        )
    return words


def _floor(value: float, places: int) -> float:
    """What is said to hold is never rounded up."""
    return math.floor(value * 10**places) / 10**places

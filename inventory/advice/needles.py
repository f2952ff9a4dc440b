"""Needle numbers, and stitches per inch against millimetres.

A needle's Nm is its blade's thickness in hundredths of a millimetre; the US number is
arbitrary and only paired with it. The table rules: the usual sum breaks from 19 on.
"""

import math

from inventory.advice.facts import Fact, memory, published
from inventory.advice.problems import BadFigure
from inventory.advice.sources import NEEDLE_ENTRY, NEEDLE_NUMBERS
from shared.units import MM_PER

MM_PER_INCH = MM_PER["in"]

NM_BY_US: dict[int, Fact[int]] = {
    8: published(60, NEEDLE_NUMBERS),
    9: published(65, NEEDLE_ENTRY),
    10: published(70, NEEDLE_NUMBERS),
    11: published(75, NEEDLE_ENTRY),
    12: published(80, NEEDLE_NUMBERS),
    14: published(90, NEEDLE_NUMBERS),
    16: published(100, NEEDLE_NUMBERS),
    18: published(110, NEEDLE_NUMBERS),
    19: published(120, NEEDLE_NUMBERS),
    20: memory(125),
    21: memory(130),
    22: published(140, NEEDLE_ENTRY),
}

_US_BY_NM: dict[int, int] = {fact.value: us for us, fact in NM_BY_US.items()}


def nm_of_us(us: int) -> int:
    """The Nm size paired with a US needle number.

    Raises :class:`BadFigure` for a number that is not sold.

    >>> nm_of_us(14), nm_of_us(19)
    (90, 120)
    """
    if us not in NM_BY_US:
        raise BadFigure(f"No needle is sold as US {us}.")
    return NM_BY_US[us].value


def us_of_nm(nm: int) -> int:
    """The US number paired with an Nm needle size.

    >>> us_of_nm(80)
    12
    """
    if nm not in _US_BY_NM:
        raise BadFigure(f"No needle is sold as Nm {nm}.")
    return _US_BY_NM[nm]


def stitch_length_mm(stitches_per_inch: float) -> float:
    """The stitch length for so many stitches per inch.

    >>> round(stitch_length_mm(12), 2)
    2.12
    """
    return MM_PER_INCH / _positive("stitches per inch", stitches_per_inch)


def stitches_per_inch(length_mm: float) -> float:
    """How many stitches of ``length_mm`` make an inch.

    >>> round(stitches_per_inch(2.5), 2)
    10.16
    """
    return MM_PER_INCH / _positive("stitch length", length_mm)


def _positive(what: str, value: float) -> float:
    if not (math.isfinite(value) and value > 0):
        raise BadFigure(f"The {what} must be a number above 0.")
    return value

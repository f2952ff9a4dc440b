"""Lengths, areas and masses at the edge of the program: text in, millimetres inside, text out.

Everything inside counts in millimetres, square millimetres and grams per square metre. Only this
module reads or writes centimetres, inches and ounces. Conversions are exact by definition: the
international inch is 25.4 mm and the pound 453.59237 g (agreement of 1959).
"""

import math
import re
from fractions import Fraction
from typing import Literal

from shared.errors import LengthError

LengthUnit = Literal["cm", "in"]

MM_PER: dict[str, float] = {"mm": 1.0, "cm": 10.0, "m": 1000.0, "in": 25.4}
MM2_PER: dict[LengthUnit, float] = {"cm": 100.0, "in": 25.4**2}
G_PER_OZ = 453.59237 / 16
M2_PER_YD2 = 0.9144**2
INCH_STEP = Fraction(1, 8)
LONGEST_MM = 10_000.0  # ten metres: no garment panel is longer

_UNIT_WORDS = {
    "": None,
    "mm": "mm",
    "cm": "cm",
    "m": "m",
    "in": "in",
    "inch": "in",
    "inches": "in",
    '"': "in",
    "″": "in",
    "”": "in",
}
_GLYPHS = {
    "½": "1/2",
    "¼": "1/4",
    "¾": "3/4",
    "⅛": "1/8",
    "⅜": "3/8",
    "⅝": "5/8",
    "⅞": "7/8",
    "⅓": "1/3",
    "⅔": "2/3",
}
_LENGTH = re.compile(
    r"^(?P<whole>\d+(?:[.,]\d+)?)?\s*[- ]?\s*"
    r"(?:(?P<top>\d+)\s*/\s*(?P<bottom>\d+))?\s*(?P<unit>\D*)$"
)


def parse_length(text: str, unit: LengthUnit) -> float:
    """Return the millimetres that ``text`` stands for; ``unit`` is assumed where none is written.

    Reads ``46``, ``46.5``, ``46,5 cm``, ``460 mm``, ``18 3/8``, ``18-3/8 in``, ``18⅜"``.
    Raises LengthError for anything else, for a negative or zero length, and past ten metres.

    >>> parse_length("18 3/8", "in")
    466.725
    >>> parse_length("46,5", "cm")
    465.0
    """
    raw = text.strip().lower()
    for glyph, plain in _GLYPHS.items():
        raw = raw.replace(glyph, f" {plain}")
    if raw.startswith(("-", "\N{MINUS SIGN}")):
        raise LengthError("A length cannot be negative.")
    found = _LENGTH.match(raw.strip())
    if found is None or not (found["whole"] or found["top"]):
        raise LengthError(f"“{text.strip()}” is not a length. Write it like 46.5 cm or 18 3/8 in.")
    unit_word = found["unit"].strip()
    if unit_word not in _UNIT_WORDS:
        raise LengthError(f"“{unit_word}” is not a unit of length. Use mm, cm, m or in.")
    value = _number(found["whole"], found["top"], found["bottom"], text)
    length_mm = value * MM_PER[_UNIT_WORDS[unit_word] or unit]
    if length_mm <= 0:
        raise LengthError("A length must be more than nothing.")
    if not math.isfinite(length_mm) or length_mm > LONGEST_MM:
        raise LengthError("That is longer than ten metres. Check the unit.")
    return round(length_mm, 3)


def _number(whole: str | None, top: str | None, bottom: str | None, text: str) -> float:
    if whole and top and not re.search(r"\d\s*[- ]\s*\d+\s*/", text.translate(_SPACED)):
        # "183/8" would otherwise be read as 18 and 3/8 or 183/8: ask rather than guess
        raise LengthError(f"“{text.strip()}” can be read two ways. Leave a space: 18 3/8.")
    value = float(whole.replace(",", ".")) if whole else 0.0
    if top and bottom:
        if int(bottom) == 0:
            raise LengthError(f"“{text.strip()}” has a fraction over nothing.")
        if whole and (not whole.isdecimal() or int(top) >= int(bottom)):
            raise LengthError(f"“{text.strip()}” mixes up its numbers. Write it like 18 3/8.")
        value += int(top) / int(bottom)
    return value


_SPACED = str.maketrans({glyph: f" {plain}" for glyph, plain in _GLYPHS.items()})


def format_length(length_mm: float, unit: LengthUnit) -> str:
    """Write a length for reading: a tenth of a centimetre, or the nearest eighth of an inch.

    >>> format_length(466.725, "in"), format_length(466.725, "cm")
    ('18 3/8 in', '46.7 cm')
    """
    if unit == "cm":
        return f"{_trim(length_mm / MM_PER['cm'], 1)} cm"
    return f"{inch_fraction(length_mm)} in"


def length_for_field(length_mm: float, unit: LengthUnit) -> str:
    """Write a length so that reading it back gives the same millimetres, to a thousandth.

    >>> length_for_field(466.725, "in"), length_for_field(123.4567, "cm")
    ('18 3/8', '12.3457')
    """
    if unit == "in":
        eighths = Fraction(length_mm / MM_PER["in"]).limit_denominator(64)
        if abs(float(eighths) * MM_PER["in"] - length_mm) < 5e-4:
            return _mixed(eighths)
    return _trim(length_mm / MM_PER[unit], 4)


def inch_fraction(length_mm: float) -> str:
    """Write a length as whole inches and eighths.

    >>> inch_fraction(3.2), inch_fraction(25.4)
    ('1/8', '1')
    """
    return _mixed(round(Fraction(length_mm) / Fraction("25.4") / INCH_STEP) * INCH_STEP)


def _mixed(inches: Fraction) -> str:
    whole, rest = divmod(inches, 1)
    if rest == 0:
        return str(whole)
    return f"{whole} {rest}" if whole else str(rest)


def format_area(area_mm2: float, unit: LengthUnit) -> str:
    """Write an area in whole square centimetres or square inches.

    >>> format_area(255_483.36, "cm"), format_area(255_483.36, "in")
    ('2,555 cm²', '396 in²')
    """
    return f"{area_mm2 / MM2_PER[unit]:,.0f} {unit}²"


def oz_per_yd2(mass_g_m2: float) -> float:
    """Convert grams per square metre to ounces per square yard.

    >>> round(oz_per_yd2(150), 2)
    4.42
    """
    return mass_g_m2 * M2_PER_YD2 / G_PER_OZ


def g_per_m2(mass_oz_yd2: float) -> float:
    """Convert ounces per square yard to grams per square metre.

    >>> round(g_per_m2(8), 1)
    271.2
    """
    return mass_oz_yd2 * G_PER_OZ / M2_PER_YD2


def _trim(value: float, places: int) -> str:
    return f"{value:.{places}f}".rstrip("0").rstrip(".")

"""Lengths as SVG writes them, and the scale of a drawing in millimetres.

Source: W3C CSS Values and Units, absolute lengths: 1 in = 2.54 cm = 25.4 mm = 72 pt = 6 pc = 96 px
and 1 Q = a fortieth of a centimetre. A length without a unit counts user units, 96 to the inch
where the file gives no true size.
"""

import math
import re
from dataclasses import dataclass
from xml.etree.ElementTree import Element

from planning.drafting.exchange.found import PatternFileError

MM_PER: dict[str, float] = {
    "mm": 1.0,
    "cm": 10.0,
    "in": 25.4,
    "pt": 25.4 / 72,
    "pc": 25.4 / 6,
    "px": 25.4 / 96,
    "q": 0.25,
}
MM_PER_PX = MM_PER["px"]
SCALE_TOLERANCE = 0.001  # drawing programs round a page's sizes
ASSUMED_WORDS = "96 to the inch, assumed"

# Possessive, so that a long run of digits is never tried in pieces.
NUMBER = r"[+-]?(?:\d++\.?+\d*+|\.\d++)(?:[eE][+-]?\d++)?+"
_LENGTH = re.compile(rf"\s*({NUMBER})\s*([a-zA-Z]*)\s*", re.ASCII)
_STYLED_SIZE = re.compile(r"(?:^|;)\s*(?:width|height)\s*:", re.IGNORECASE)
_UNIT_WORDS = {
    "mm": "millimetres",
    "cm": "centimetres",
    "in": "inches",
    "pt": "points, 72 to the inch",
    "pc": "picas, 6 to the inch",
    "px": "pixels, 96 to the inch",
    "q": "quarter millimetres",
}


@dataclass(frozen=True)
class Scale:
    """Millimetres to one user unit, how that is known, and whether the file itself says so."""

    mm_per_unit: float
    words: str
    is_sure: bool


def length(text: str, place: str) -> tuple[float, str]:
    """Return a number and its unit, lower case and "" for none; raises PatternFileError.

    >>> length(" 12.5mm", "the page")
    (12.5, 'mm')
    """
    found = _LENGTH.fullmatch(text)
    if found is None or not math.isfinite(float(found[1])):
        raise PatternFileError(f"“{text.strip()[:40]}” at {place} is no length.")
    unit = found[2].lower()
    if unit and unit not in MM_PER:
        raise PatternFileError(
            f"The length “{text.strip()[:40]}” at {place} has no fixed size. "
            "Write it in mm, cm, in, pt, pc, px or Q."
        )
    return float(found[1]), unit


def user_units(text: str, place: str) -> float:
    """Return a length inside the drawing in user units; with a unit, 96 of them to the inch.

    >>> user_units("1in", "the path")
    96.0
    """
    number, unit = length(text, place)
    return number * MM_PER[unit] / MM_PER_PX if unit else number


def scale_of(root: Element) -> Scale:
    """Return the scale that width, height and viewBox of the drawing give.

    Raises PatternFileError when they contradict each other or x and y differ.
    """
    box = view_box(root)
    sides = [_side(root, name) for name in ("width", "height")]
    given = [
        (side, span) for side, span in zip(sides, box[2:] if box else (), strict=False) if side
    ]
    if not given:
        return Scale(MM_PER_PX, ASSUMED_WORDS, False)
    scales = [number * MM_PER[unit or "px"] / span for (number, unit), span in given]
    if max(scales) > min(scales) * (1 + SCALE_TOLERANCE):
        raise PatternFileError(
            f"The drawing is stretched: {scales[0]:.4g} mm to the unit across and "
            f"{scales[1]:.4g} mm down. Set width and height in the same proportion as the viewBox."
        )
    units = {unit for (_, unit), _ in given}
    words = _words(units)
    is_styled = bool(_STYLED_SIZE.search(root.get("style", "")))
    # a viewer takes the smaller of the two, so that the whole drawing is seen
    return Scale(min(scales), words, is_sure=not (units & {"", "px"} or is_styled))


def _words(units: set[str]) -> str:
    if "" in units:
        return ASSUMED_WORDS
    return f"{' and '.join(_UNIT_WORDS[unit] for unit in sorted(units))}, said by the file"


def _side(root: Element, name: str) -> tuple[float, str] | None:
    text = root.get(name, "").strip()
    if not text or text.endswith("%") or text == "auto":
        return None
    number, unit = length(text, f"the drawing's {name}")
    if number <= 0:
        raise PatternFileError(f"The drawing's {name} is “{text}”; it must be more than nothing.")
    return number, unit


def view_box(root: Element) -> tuple[float, float, float, float] | None:
    """Return x, y, width and height of the drawing's frame in user units, or None without one."""
    text = root.get("viewBox", "").strip()
    if not text:
        return None
    parts = re.split(r"[\s,]+", text)
    if len(parts) != 4 or not all(re.fullmatch(NUMBER, part, re.ASCII) for part in parts):
        raise PatternFileError(f"The viewBox “{text[:60]}” is not four numbers.")
    left, top, wide, tall = (float(part) for part in parts)
    if not (0 < wide < math.inf and 0 < tall < math.inf):
        raise PatternFileError(f"The viewBox “{text[:60]}” has no area.")
    return left, top, wide, tall

"""The texts of a DXF pattern: "Key: value" lines, how many to cut, and labels beside marks.

The keys are those of ASTM D6673 as met in public samples. "Notch", "Double notch", "Mark" and
"Line" are labels that this program writes on the layer for annotation.
"""

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from planning.drafting.exchange.checked import clean_name
from planning.drafting.exchange.dxf_lines import Words
from planning.drafting.rings import Point

MOST_COPIES = 999
LABELS = ("notch", "double notch", "mark", "line")
_UNTOLD = (
    "style name",
    "creation date",
    "creation time",
    "author",
    "sample size",
    "grade rule table",
    "units",
    "curve tolerance",
    "piece name",
    "size",
    "quantity",
    "rotation",
    *LABELS,
)
_ESCAPE = re.compile(r"\\U\+([0-9A-Fa-f]{4})")
_GRADE_POINT = re.compile(r"#\s*\d+")


@dataclass(frozen=True)
class Label:
    """The name of a notch, mark or line, written where it is."""

    kind: str
    name: str
    at: Point


def keyed(words: Iterable[Words]) -> dict[str, str]:
    """Return the first value of each key, keys in lower case; a text without a key is passed by."""
    said: dict[str, str] = {}
    for one in words:
        key, value = _split(one.text)
        if key:
            said.setdefault(key, value)
    return said


def labels(words: Iterable[Words]) -> list[Label]:
    """Return the labels beside notches, marks and lines."""
    split = ((*_split(one.text), one.at) for one in words)
    return [Label(key, value, at) for key, value, at in split if key in LABELS and value]


def remarks(words: Iterable[Words]) -> list[str]:
    """Return a sentence for each text that is neither a known key nor a grade point."""
    found = []
    for one in words:
        key, value = _split(one.text)
        is_told = value and key not in _UNTOLD and not _GRADE_POINT.fullmatch(value)
        if is_told:
            found.append(
                f"The file says: “{key}: {value}”." if key else f"The file says: “{value}”."
            )
    return list(dict.fromkeys(found))


def quantity_of(text: str | None) -> tuple[int, int, str]:
    """Return how many to cut, how many of them turned over, and what to ask, or nothing.

    Two numbers are left and right; one number above 1 may be a pair or alike, so it is asked.

    >>> quantity_of("L 1 R 1")
    (2, 1, '')
    >>> quantity_of("1")
    (1, 0, '')
    """
    if not text:
        return 1, 0, "The file does not say how many to cut: one, until you say otherwise."
    numbers = [int(digits) for digits in re.findall(r"\d{1,4}", text)]
    letters = "".join(re.findall(r"[a-z]+", text.lower()))
    if len(numbers) == 1 and letters in ("pair", "pairs"):
        numbers = numbers * 2
    is_plain = letters in ("", "lr", "leftright", "cut", "pair", "pairs")
    total = sum(numbers)
    if not (is_plain and 1 <= len(numbers) <= 2 and 1 <= total <= MOST_COPIES):
        return 1, 0, f"How many to cut was not understood: “{text}”. One, until you say otherwise."
    if len(numbers) == 2:
        return total, numbers[1], ""
    if total == 1:
        return 1, 0, ""
    return total, 0, f"The file says to cut {total}: are they alike, or half of them turned over?"


def size_of(said: dict[str, str], block_name: str) -> str:
    """Return the size a piece's own texts give, or what its block's name adds to the piece's.

    >>> size_of({"piece name": "leg"}, "LEG_38")
    '38'
    """
    if said.get("size"):
        return said["size"]
    name = said.get("piece name", "")
    if name and block_name.lower().startswith(name.lower()):
        return clean_name(block_name[len(name) :].strip(" -_.,"))
    return ""


def _split(text: str) -> tuple[str, str]:
    plain = _ESCAPE.sub(lambda code: chr(int(code[1], 16)), text)
    key, colon, value = plain.partition(":")
    if not colon:
        return "", clean_name(plain)
    return clean_name(key).lower(), clean_name(value)


def nearest(label: Label, places: Sequence[Point], within_mm: float) -> list[int]:
    """Return the numbers of the places within reach of a label, nearest first."""
    gaps = [
        ((x - label.at[0]) ** 2 + (y - label.at[1]) ** 2, number)
        for number, (x, y) in enumerate(places)
    ]
    return [number for gap, number in sorted(gaps) if gap <= within_mm**2]

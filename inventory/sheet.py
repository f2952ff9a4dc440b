"""The advice as one A4 page to lie beside the machine: its sources numbered, its size foreseen.

What to do always fits. The reasons are printed below it where there is room for them; where there
is none the page says so, and they stay on the screen. Sizes are estimated from the length of the
sentences, on the generous side; they were measured on printed pages.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any

from inventory.reading import OtherCloth, Row, Said

PAGE_MM = 279.0  # an A4 page less its margins
LETTERS_A_LINE = {"full": 112, "half": 58, "third": 60}  # at the sizes the print sheet sets
LINE_MM = {"plain": 3.85, "reason": 2.75}
SMALLER = 0.84  # what a crowded page's smaller type saves, letters a line and height together


@dataclass(frozen=True, slots=True)
class Why:
    """The reasons behind one recommendation, each with its source and the source's number."""

    name: str
    certainty: str
    lines: tuple[tuple[str, str, int], ...]


@dataclass(frozen=True, slots=True)
class Sheet:
    """One printed page. ``crowded`` asks for small type, ``has_reasons`` whether they fit."""

    why: tuple[Why, ...]
    must_not: tuple[tuple[Said, int], ...]
    cautions: tuple[tuple[Said, int], ...]
    conflicts: tuple[tuple[Said, int], ...]
    sources: tuple[tuple[int, str], ...]
    crowded: bool
    has_reasons: bool


def sheet_of(words: dict[str, Any]) -> Sheet:
    """The page for what ``reading.words_of`` says of a garment."""
    rows: tuple[Row, ...] = words["rows"]
    said: dict[str, list[Said]] = {k: words[k] for k in ("must_not", "cautions", "conflicts")}
    number = _numbers(rows, said.values(), words["other_cloths"])
    why = tuple(_why(row.name, row, number) for row in rows) + tuple(
        _why(f"{cloth.name}: {row.name.lower()}", row, number)
        for cloth in words["other_cloths"]
        for row in cloth.rows
    )
    numbered = {
        kind: tuple((each, number[each.notice.source]) for each in notices)
        for kind, notices in said.items()
    }
    crowded, has_reasons = _fit(_to_do_mm(words), _reasons_mm(why, number, said["cautions"]))
    return Sheet(
        why=why,
        sources=tuple((count, source) for source, count in number.items()),
        crowded=crowded,
        has_reasons=has_reasons,
        **numbered,
    )


def _fit(to_do_mm: float, reasons_mm: float) -> tuple[bool, bool]:
    """Whether the page is set small, and whether it holds the reasons: the roomiest that fits.

    >>> _fit(180, 80), _fit(220, 80), _fit(250, 90), _fit(310, 90)
    ((False, True), (True, True), (False, False), (True, False))
    """
    if to_do_mm + reasons_mm <= PAGE_MM:
        return False, True
    if to_do_mm * SMALLER + reasons_mm <= PAGE_MM:
        return True, True
    return to_do_mm > PAGE_MM, False


def _numbers(
    rows: Iterable[Row], said: Iterable[list[Said]], others: Iterable[OtherCloth]
) -> dict[str, int]:
    every = [*rows, *(row for cloth in others for row in cloth.rows)]
    sources = [source for row in every for source in row.part.source]
    sources += [each.notice.source for notices in said for each in notices]
    return {source: count for count, source in enumerate(dict.fromkeys(sources), 1)}


def _why(name: str, row: Row, number: dict[str, int]) -> Why:
    reasons = row.part.reasons
    lines = tuple((each.text, each.source, number[each.source]) for each in reasons)
    return Why(name, row.part.certainty, lines)


def _to_do_mm(words: dict[str, Any]) -> float:
    rows: tuple[Row, ...] = words["rows"]
    order = sum(len(step) + 3 for step in words["advice"].order.steps)
    lines = 6.0 + _lines(order, "full")
    for row in rows:
        lines += 0.45 + _lines(len(row.part.text), "full") + 0.9 * _lines(len(row.how), "full")
        if row.own is not None:
            lines += _lines(len(row.own.text) + len(row.own.reason) + 60, "full")
        lines += 1 if row.measured else 0
    for kind in ("must_not", "conflicts", "cautions"):
        lines += _box_lines(words[kind], with_reasons=kind != "cautions")
    for cloth in words["other_cloths"]:
        lines += 3 + sum(_lines(len(row.part.text), "full") for row in cloth.rows)
    return lines * LINE_MM["plain"] + (6 if words["label_marks"] else 0)


def _box_lines(said: list[Said], *, with_reasons: bool) -> float:
    if not said:
        return 0
    letters = [
        len(each.notice.text) + (len(each.notice.because) if with_reasons else 0) for each in said
    ]
    return 2 + sum(_lines(count, "half") for count in letters) / 2


def _reasons_mm(why: Iterable[Why], number: dict[str, int], cautions: list[Said]) -> float:
    lines = sum(
        1.2 + sum(_lines(len(text) + 4, "third") for text, _, _ in each.lines) for each in why
    )
    lines += sum(_lines(len(each.notice.because) + 4, "third") for each in cautions)
    lines += sum(_lines(len(source) + 4, "third") for source in number)
    return 8 + lines / 3 * LINE_MM["reason"]


def _lines(letters: int, width: str) -> int:
    return -(-letters // LETTERS_A_LINE[width])

"""Two cloths line by line, and in words whether a line differs: for comparing and for 'what if'."""

from dataclasses import dataclass
from typing import Any

from inventory.models import Garment
from inventory.reading import Row, Said


@dataclass(frozen=True, slots=True)
class Line:
    """One question with both answers, each as sentences; ``is_list`` where each stands alone."""

    name: str
    first: tuple[str, ...]
    second: tuple[str, ...]
    is_list: bool = False

    @property
    def differs(self) -> bool:
        return self.first != self.second

    @property
    def cells(self) -> tuple[tuple[tuple[str, bool], ...], ...]:
        """Both answers, each sentence with whether it is a list's and only on this side."""
        sides = ((self.first, self.second), (self.second, self.first))
        return tuple(
            tuple((words, self.is_list and words not in others) for words in side)
            for side, others in sides
        )


def advice_lines(first: dict[str, Any], second: dict[str, Any]) -> list[Line]:
    """What two cloths need: must-nots first, then the work in its order, then what to mind.

    Both are what ``reading.words_of`` and ``reading.answer_of`` return.
    """
    lists = [("Must not", "must_not"), ("Does not agree", "conflicts"), ("Take care", "cautions")]
    before = [_said_line(name, first[key], second[key]) for name, key in lists[:2]]
    work = [
        Line(one.name, _row_words(one), _row_words(other))
        for one, other in zip(first["rows"], second["rows"], strict=True)
    ]
    after = [_said_line(name, first[key], second[key]) for name, key in lists[2:]]
    return [line for line in (*before, *work, *after) if line.first or line.second]


def fact_lines(
    pair: tuple[Garment, Garment], words: tuple[dict[str, Any], dict[str, Any]]
) -> list[Line]:
    """What two garments are made of and how they are; ``words`` is what ``words_of`` says."""
    names = {
        "Fibre": [garment.fibre_words for garment in pair],
        "Cloth": [each["make"] for each in words],
        "Weight": [each["mass_words"] for each in words],
        "Stretch": [stretch_words(garment) for garment in pair],
        "Fragility": [each["fragility_words"] for each in words],
        "Fraying": [each["fray_words"] for each in words],
        "Care label": [
            "; ".join(meaning for _, _, meaning in each["label_marks"]) for each in words
        ],
        "Troubles": [", ".join(garment.trouble_words) for garment in pair],
    }
    return [
        Line(name, (one or "Not known",), (other or "Not known",))
        for name, (one, other) in names.items()
        if one or other
    ]


def stretch_words(garment: Garment) -> str:
    """How far a garment's cloth was found to stretch, in words; empty where it was not tried."""
    ways = (("across", garment.stretch_across_pct), ("along", garment.stretch_along_pct))
    return ", ".join(f"{pct:g} % {way}" for way, pct in ways if pct is not None)


def _row_words(row: Row) -> tuple[str, ...]:
    if row.own is None:
        return (row.part.text,)
    return (f"In the words of {row.own.made_by}: {row.own.text}", f"Table: {row.part.text}")


def _said_line(name: str, first: list[Said], second: list[Said]) -> Line:
    return Line(name, _said(first), _said(second), is_list=True)


def _said(said: list[Said]) -> tuple[str, ...]:
    return tuple(
        f"{each.about.capitalize()}: {each.notice.text}" if each.about else each.notice.text
        for each in said
    )

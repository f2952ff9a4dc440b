"""A garment's facts and advice in words for its pages, in the order of the work.

Shows what the advice room says and decides nothing: a maker's own words stand beside the table's,
and of a garment of several cloths the strictest governs how it is washed and dried while whole.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from types import MappingProxyType
from typing import Any

from inventory.advice.advise import Advice
from inventory.advice.cloth import Cloth
from inventory.advice.constructions import CONSTRUCTIONS
from inventory.advice.grades import FRAGILITY, FRAY, Grade
from inventory.advice.label import MARKS
from inventory.advice.makeup import MakeUp, advise_parts
from inventory.advice.parts import Notice, Part
from inventory.choices import ClothPart
from inventory.cloth import make_up_of, mass_of
from inventory.models import AdviceOverride, Garment
from inventory.washing import WAYS, measured_pct, washes_since

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
SHELL = ClothPart.SHELL.value


@dataclass(frozen=True, slots=True)
class Row:
    """One recommendation, whose cloth decided it, and the maker's own words if she has put any."""

    name: str
    key: str
    part: Part
    decided_by: str = ""
    own: AdviceOverride | None = None
    measured: str = ""

    @property
    def how(self) -> str:
        """For interfacing, how it is put on; otherwise empty."""
        is_backed = getattr(self.part, "attach", "none") != "none"
        return str(getattr(self.part, "how", "")) if is_backed else ""

    @property
    def may_be_overridden(self) -> bool:
        return self.key != "shrink"


@dataclass(frozen=True, slots=True)
class Said:
    """A notice, and which cloth it is about where it is not about all of them."""

    notice: Notice
    about: str


@dataclass(frozen=True, slots=True)
class OtherCloth:
    """Lining or trim: what it is and what it needs otherwise than the shell."""

    name: str
    facts: str
    rows: tuple[Row, ...]


def words_of(garment: Garment) -> dict[str, Any]:
    """The advice of every cloth in order, and what is known of the shell in words."""
    make_up = make_up_of(garment)
    own = {row.part: row for row in garment.overrides.all() if row.withdrawn_at is None}
    return {
        "advice": make_up.parts[SHELL],
        "rows": governing_rows(make_up, own, _measured_words(garment)),
        "other_cloths": _other_cloths(garment, make_up),
        **notices_of(make_up),
        "make": make_of(garment.construction),
        "mass_words": _mass_words(garment),
        "fragility_words": _grade_words(FRAGILITY, garment.fragility),
        "fray_words": _grade_words(FRAY, garment.fray),
        "label_marks": [
            (part, garment.label_marks[part], meaning_of(part, garment.label_marks[part]))
            for part in MARKS
            if part in garment.label_marks
        ],
    }


def answer_of(cloth: Cloth) -> dict[str, Any]:
    """The advice for a cloth that belongs to no garment, in the same shape as ``words_of``."""
    make_up = advise_parts({SHELL: cloth})
    return {"rows": governing_rows(make_up), **notices_of(make_up)}


def rows_of(advice: Advice) -> tuple[Row, ...]:
    """The recommendations for one cloth."""
    return tuple(Row(name, key, getattr(advice, key)) for name, key in PARTS)


def governing_rows(
    make_up: MakeUp, own: Mapping[str, AdviceOverride] = MappingProxyType({}), measured: str = ""
) -> tuple[Row, ...]:
    """The shell's recommendations, but washing and drying as the strictest cloth allows them."""
    shell = make_up.parts[SHELL]
    governing = {"wash": (make_up.wash_by, make_up.wash), "dry": (make_up.dry_by, make_up.dry)}
    rows = []
    for name, key in PARTS:
        by, part = governing.get(key, (SHELL, getattr(shell, key)))
        seen = measured if key == "shrink" else ""
        rows.append(Row(name, key, part, "" if by == SHELL else by, own.get(key), seen))
    return tuple(rows)


def notices_of(make_up: MakeUp) -> dict[str, list[Said]]:
    """What must not be done, what to take care of and what does not agree, each said once."""
    return {
        kind: _said_once({name: getattr(each, kind) for name, each in make_up.parts.items()})
        for kind in ("must_not", "cautions", "conflicts")
    }


def _said_once(by_part: dict[str, Sequence[Notice]]) -> list[Said]:
    about: dict[str, list[str]] = {}
    notices: dict[str, Notice] = {}
    for part, said in by_part.items():
        for notice in said:
            notices.setdefault(notice.text, notice)
            about.setdefault(notice.text, []).append(part)
    return [
        Said(notice, "" if len(about[text]) == len(by_part) else " and ".join(about[text]))
        for text, notice in notices.items()
    ]


def _other_cloths(garment: Garment, make_up: MakeUp) -> list[OtherCloth]:
    makes = {"lining": garment.lining_construction, "trim": garment.trim_construction}
    shell = rows_of(make_up.parts[SHELL])
    return [
        OtherCloth(
            ClothPart(name).label,
            _joined([_fibres(garment, name) or "fibre not known", make_of(makes[name])]),
            differing(shell, rows_of(advice)),
        )
        for name, advice in make_up.parts.items()
        if name != SHELL
    ]


def differing(rows: Iterable[Row], others: Iterable[Row]) -> tuple[Row, ...]:
    """Those of ``others`` that say something else than their like in ``rows``."""
    return tuple(
        other for row, other in zip(rows, others, strict=True) if row.part.text != other.part.text
    )


def _measured_words(garment: Garment) -> str:
    washes = washes_since(garment.wash_events.all(), date.min)
    lost = {way: measured_pct(washes, way) for way in WAYS}
    found = [
        f"{pct:.1f}".removesuffix(".0") + f" % {way}"
        for way, pct in lost.items()
        if pct is not None
    ]
    if not found:
        return ""
    return f"it lost {' and '.join(found)} in the wash. That counts in place of the prediction."


def make_of(construction: str) -> str:
    """How a cloth is made, in words; empty where it is not known."""
    make = CONSTRUCTIONS.get(construction)
    return make.label if make else ""


def meaning_of(part: str, mark: str) -> str:
    """What a mark of the care label means, without the name of its sign."""
    words = dict(MARKS[part]).get(mark, mark).replace(" °", "\N{NO-BREAK SPACE}°")
    meaning = words.rpartition(": ")[2]
    return meaning[:1].upper() + meaning[1:]


def _fibres(garment: Garment, part: str) -> str:
    shares = [share for share in garment.fibre_shares.all() if share.part == part]
    return ", ".join(f"{share.percent:g} % {share.fibre}" for share in shares)


def _joined(words: list[str]) -> str:
    return " · ".join(filter(None, words))


def _grade_words(grades: tuple[Grade, ...], value: int | None) -> str:
    return "" if value is None else grades[value].words


def _mass_words(garment: Garment) -> str:
    mass = mass_of(garment)
    if mass is None:
        return ""
    return f"{mass:.0f} g/m²" + (" by hand" if garment.mass_g_m2 is None else "")

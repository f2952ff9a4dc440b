"""The care label: its marks, their words, and the limits they set.

The marks are those of ISO 3758; the words of the US Care Labeling Rule (16 CFR 423)
are understood too. A mark is a ceiling, never a target. The edition of a label is
seldom known, so the lower of two limits is used unless it is.
"""

from dataclasses import dataclass
from typing import Literal

from inventory.advice.label_words import WORDS
from inventory.advice.problems import BadLabel, UnknownName, nearest_names, tidy_name

type Edition = Literal[2012, 2023]
type Mark = tuple[str, str]

WASH_MARKS: tuple[Mark, ...] = (
    ("95", "Tub, 95: wash at up to 95 °C"),
    ("70", "Tub, 70: wash at up to 70 °C"),
    ("60", "Tub, 60: wash at up to 60 °C"),
    ("60-mild", "Tub, 60, one bar: up to 60 °C, mild"),
    ("50", "Tub, 50: wash at up to 50 °C"),
    ("50-mild", "Tub, 50, one bar: up to 50 °C, mild"),
    ("40", "Tub, 40: wash at up to 40 °C"),
    ("40-mild", "Tub, 40, one bar: up to 40 °C, mild"),
    ("40-very-mild", "Tub, 40, two bars: up to 40 °C, very mild"),
    ("30", "Tub, 30: wash at up to 30 °C"),
    ("30-mild", "Tub, 30, one bar: up to 30 °C, mild"),
    ("30-very-mild", "Tub, 30, two bars: up to 30 °C, very mild"),
    ("hand", "Hand in tub: wash by hand only"),
    ("hand-cool", "Hand in tub, cool: wash by hand only, in cool water"),
    ("no", "Tub crossed out: do not wash"),
)

BLEACH_MARKS: tuple[Mark, ...] = (
    ("any", "Empty triangle: any bleach"),
    ("oxygen", "Triangle with two lines: oxygen bleach only"),
    ("no", "Triangle crossed out: do not bleach"),
)

DRY_MARKS: tuple[Mark, ...] = (
    ("tumble", "Circle in square, two dots: tumble dry at up to 80 °C"),
    ("tumble-low", "Circle in square, one dot: tumble dry at up to 60 °C"),
    ("no-tumble", "Circle in square crossed out: do not tumble dry"),
    ("line", "Square, one upright line: dry on a line"),
    ("drip-line", "Square, two upright lines: drip dry on a line"),
    ("flat", "Square, one level line: dry flat"),
    ("drip-flat", "Square, two level lines: drip dry flat"),
    ("line-shade", "Line dry, corner line: dry on a line in the shade"),
    ("drip-line-shade", "Drip line dry, corner line: drip dry on a line in the shade"),
    ("flat-shade", "Flat dry, corner line: dry flat in the shade"),
    ("drip-flat-shade", "Drip flat dry, corner line: drip dry flat in the shade"),
)

IRON_MARKS: tuple[Mark, ...] = (
    ("3", "Iron, three dots: hot"),
    ("2", "Iron, two dots: medium"),
    ("1", "Iron, one dot: cool"),
    ("1-no-steam", "Iron, one dot, steam crossed out: cool and without steam"),
    ("no", "Iron crossed out: do not iron"),
)

PROFESSIONAL_MARKS: tuple[Mark, ...] = (
    ("P", "Circle, P: dry clean"),
    ("P-mild", "Circle, P, one bar: dry clean, mild"),
    ("F", "Circle, F: dry clean in hydrocarbons only"),
    ("F-mild", "Circle, F, one bar: dry clean in hydrocarbons only, mild"),
    ("W", "Circle, W: professional wet clean"),
    ("W-mild", "Circle, W, one bar: professional wet clean, mild"),
    ("W-very-mild", "Circle, W, two bars: professional wet clean, very mild"),
    ("no", "Circle crossed out: do not dry clean"),
    ("no-wet", "Circle, W crossed out: do not wet clean"),
)

MARKS: dict[str, tuple[Mark, ...]] = {
    "wash": WASH_MARKS,
    "bleach": BLEACH_MARKS,
    "dry": DRY_MARKS,
    "iron": IRON_MARKS,
    "professional": PROFESSIONAL_MARKS,
}


@dataclass(frozen=True, slots=True)
class CareLabel:
    """The marks on one label; ``None`` where the label says nothing or cannot be read."""

    wash: str | None = None
    bleach: str | None = None
    dry: str | None = None
    iron: str | None = None
    professional: str | None = None
    edition: Edition | None = None

    @property
    def is_blank(self) -> bool:
        """Whether no mark at all was read."""
        marks = (self.wash, self.bleach, self.dry, self.iron, self.professional)
        return all(mark is None for mark in marks)


def read_mark(part: str, text: str) -> str:
    """The value of one mark from its value or other words for it.

    ``part`` is one of the keys of :data:`MARKS`. Raises :class:`UnknownName`.

    >>> read_mark("wash", "Machine wash cold")
    '30'
    """
    values = [value for value, _ in MARKS[part]]
    by_word = {tidy_name(value): value for value in values} | WORDS[part]
    word = tidy_name(text)
    if word not in by_word:
        raise UnknownName(f"{part} mark", text, nearest_names(word, by_word) or tuple(values))
    return by_word[word]


def parse_label(text: str, edition: int | None = None) -> CareLabel:
    """The label written as ``wash=30-mild,iron=2,bleach=no,tumble=no,professional=P``.

    ``tumble`` is another word for ``dry``. The edition is 2012, 2023 or ``None`` for
    not known. Raises :class:`BadLabel` for text that is not pairs, a part given twice
    or another edition, and :class:`UnknownName` for a part or mark that does not exist.

    >>> parse_label("iron=2,tumble=no").dry
    'no-tumble'
    """
    marks: dict[str, str] = {}
    for pair in filter(None, (each.strip() for each in text.split(","))):
        part, value = _split_pair(pair)
        if part in marks:
            raise BadLabel(f"The label gives the {part} mark twice.")
        marks[part] = read_mark(part, value)
    return CareLabel(**marks, edition=read_edition(edition))


def read_edition(edition: int | None) -> Edition | None:
    """The edition of ISO 3758, or :class:`BadLabel` for a year that is neither."""
    if edition is None:
        return None
    if edition == 2012:
        return 2012
    if edition == 2023:
        return 2023
    raise BadLabel(f"The care-label edition is 2012 or 2023, not {edition}.")


def _split_pair(pair: str) -> tuple[str, str]:
    part, equals, value = pair.partition("=")
    part = tidy_name(part)
    part = "dry" if part in ("tumble", "drying") else part
    if not equals or not value.strip():
        raise BadLabel(f"“{pair}” in the label should read like wash=30-mild.")
    if part not in MARKS:
        raise UnknownName("part of a care label", part, nearest_names(part, MARKS))
    return part, value

"""How much heat and handling each care mark allows, by edition of ISO 3758.

When the edition is not known the lower figure holds, and one dot means no steam.
Figures: GINETEX for 2012; the notices of JIS L 0001:2024 for 2023.
"""

from dataclasses import dataclass

from inventory.advice.facts import Certainty, Fact, published
from inventory.advice.label import Edition
from inventory.advice.methods import DryMethod, WashLimit, WashMethod
from inventory.advice.sources import (
    CARE_CHANGES_2023,
    CARE_SYMBOLS_2012,
    CARE_SYMBOLS_2023,
)

IRON_DOTS_C: dict[Edition, Fact[dict[int, int]]] = {
    2012: published({1: 110, 2: 150, 3: 200}, CARE_SYMBOLS_2012),
    2023: published({1: 120, 2: 160, 3: 210}, CARE_SYMBOLS_2023),
}
NO_STEAM_AT_ONE_DOT = published(True, CARE_SYMBOLS_2012)
HAND_WASH_C = published(40, CARE_SYMBOLS_2012)
COOL_HAND_WASH_C = published(30, CARE_SYMBOLS_2023)
TUMBLE_C: dict[DryMethod, Fact[int]] = {
    DryMethod.TUMBLE: published(80, CARE_SYMBOLS_2012),
    DryMethod.TUMBLE_LOW: published(60, CARE_SYMBOLS_2012),
}
TUB_MARKS = published("the number in the tub is the hottest water", CARE_SYMBOLS_2012)
STEAM_MARK = published("one dot with steam crossed out", CARE_CHANGES_2023)

_MACHINE_BY_BARS = {
    "": WashMethod.MACHINE,
    "mild": WashMethod.MACHINE_MILD,
    "very-mild": WashMethod.MACHINE_VERY_MILD,
}


@dataclass(frozen=True, slots=True)
class IronLimit:
    """What an iron mark allows: dots (0 is do not iron), soleplate in °C, and steam."""

    dots: int
    max_c: int | None
    steam: bool


@dataclass(frozen=True, slots=True)
class DryLimit:
    """What a drying mark allows, and whether it asks for shade or a dripping start."""

    method: DryMethod
    shade: bool = False
    drip: bool = False


def wash_limit(mark: str, edition: Edition | None) -> WashLimit:
    """The roughest wash a wash mark allows.

    Sources print 30 and 40 °C for hand washing; 40 °C is taken only for a known edition.

    >>> wash_limit("30-mild", None).method.value
    'machine-mild'
    """
    if mark == "no":
        return WashLimit(WashMethod.NONE, None, None)
    if mark.startswith("hand"):
        known = mark == "hand" and edition is not None
        max_c = HAND_WASH_C.value if known else COOL_HAND_WASH_C.value
        return WashLimit(WashMethod.HAND, max_c, max_c)
    tub_c, _, bars = mark.partition("-")
    return WashLimit(_MACHINE_BY_BARS[bars], int(tub_c), int(tub_c))


def iron_limit(mark: str, edition: Edition | None) -> IronLimit:
    """The hottest soleplate an iron mark allows, and whether steam is allowed.

    >>> iron_limit("2", None).max_c, iron_limit("2", 2023).max_c
    (150, 160)
    """
    if mark == "no":
        return IronLimit(0, None, False)
    dots = int(mark[0])
    steam = mark != "1-no-steam" and (dots > 1 or edition == 2023)
    return IronLimit(dots, dots_ceiling_c(dots, edition), steam)


def dots_ceiling_c(dots: int, edition: Edition | None = None) -> int:
    """The soleplate ceiling in °C for one, two or three dots."""
    return IRON_DOTS_C[edition or 2012].value[dots]


def dry_limit(mark: str) -> DryLimit:
    """The drying a drying mark allows.

    >>> dry_limit("drip-line-shade").method.value
    'line'
    """
    if mark in ("tumble", "tumble-low"):
        return DryLimit(DryMethod(mark))
    if mark == "no-tumble":
        return DryLimit(DryMethod.LINE)
    method = DryMethod.FLAT if "flat" in mark else DryMethod.LINE
    return DryLimit(method, shade="shade" in mark, drip=mark.startswith("drip"))


def label_source(edition: Edition | None) -> str:
    """How the label is named as a source, with the edition its limits were taken from."""
    if edition is None:
        return "the garment's care label (edition of ISO 3758 not known: lower limits)"
    return f"the garment's care label (ISO 3758:{edition})"


def label_fact[T](value: T, edition: Edition | None) -> Fact[T]:
    """A fact the label itself states."""
    return Fact(value, label_source(edition), Certainty.LABEL)

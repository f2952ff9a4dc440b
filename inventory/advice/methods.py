"""The words for washing and drying, each list in order from the gentlest up.

Rules that meet two limits take the gentler; this is where "gentler" is settled.
"""

from dataclasses import dataclass
from enum import StrEnum


class WashMethod(StrEnum):
    """Ways to wash, gentlest first."""

    NONE = "none"
    PROFESSIONAL = "professional"
    SPOT = "spot"
    HAND = "hand"
    MACHINE_VERY_MILD = "machine-very-mild"
    MACHINE_MILD = "machine-mild"
    MACHINE = "machine"


class DryMethod(StrEnum):
    """Ways to dry, gentlest first; ``NONE`` is for cloth that is never made wet."""

    NONE = "none"
    FLAT = "flat"
    LINE = "line"
    TUMBLE_LOW = "tumble-low"
    TUMBLE = "tumble"


WASH_ORDER: dict[WashMethod, int] = {method: rank for rank, method in enumerate(WashMethod)}
DRY_ORDER: dict[DryMethod, int] = {method: rank for rank, method in enumerate(DryMethod)}


@dataclass(frozen=True, slots=True)
class WashLimit:
    """The most a cloth takes: the roughest method, the usual and the top heat in °C.

    ``top_c`` is for soiling that only heat removes; both are ``None`` for cloth that
    never goes into water.
    """

    method: WashMethod
    max_c: int | None
    top_c: int | None


@dataclass(frozen=True, slots=True)
class Shrink:
    """Expected loss at the first wash, in per cent, from least to most."""

    along_pct: tuple[float, float]
    across_pct: tuple[float, float]


def gentler_wash(one: WashMethod, other: WashMethod) -> WashMethod:
    """The gentler of two ways to wash.

    >>> gentler_wash(WashMethod.MACHINE, WashMethod.HAND).value
    'hand'
    """
    return min(one, other, key=WASH_ORDER.__getitem__)


def gentler_dry(one: DryMethod, other: DryMethod) -> DryMethod:
    """The gentler of two ways to dry."""
    return min(one, other, key=DRY_ORDER.__getitem__)

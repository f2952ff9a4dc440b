"""How a fact is written down: its value, where it comes from, and how sure it is.

Every figure in this package is a :class:`Fact`. There is no way to make one without a
source, so a rule cannot lean on a bare number. The five words for how sure a fact is
are the ones shown to makers.
"""

from dataclasses import dataclass
from enum import StrEnum

TRADE_FIGURE = "trade figure, no published source"
COMMON_PRACTICE = "common practice, no published source"
FROM_MEMORY = "from memory, not confirmed in a source"


class Certainty(StrEnum):
    """How far a fact can be leaned on, surest first."""

    LABEL = "label"
    PUBLISHED = "published"
    TRADE = "trade figure"
    COMMON = "common practice"
    MEMORY = "from memory"


@dataclass(frozen=True, slots=True)
class Fact[T]:
    """One value with its source and how sure it is."""

    value: T
    source: str
    certainty: Certainty

    def __post_init__(self) -> None:
        if not self.source.strip():
            raise ValueError(f"The fact {self.value!r} has no source.")


def published[T](value: T, source: str) -> Fact[T]:
    """A fact read in the named source."""
    return Fact(value, source, Certainty.PUBLISHED)


def trade[T](value: T, source: str = TRADE_FIGURE) -> Fact[T]:
    """A figure the trade repeats, for which no sound source was found."""
    return Fact(value, source, Certainty.TRADE)


def common[T](value: T, source: str = COMMON_PRACTICE) -> Fact[T]:
    """What careful makers do, without a source that states it."""
    return Fact(value, source, Certainty.COMMON)


def memory[T](value: T, source: str = FROM_MEMORY) -> Fact[T]:
    """Something believed true but not confirmed anywhere."""
    return Fact(value, source, Certainty.MEMORY)

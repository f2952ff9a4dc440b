"""The shape of advice: reasons, parts with their own figures, and notices.

A part says one thing to do in one sentence, with the figures behind it. Its first
reason is the one that settled it, and the part is as sure as that reason.
"""

from dataclasses import dataclass, fields
from enum import Enum
from typing import Any

from inventory.advice.facts import Certainty, Fact


@dataclass(frozen=True, slots=True)
class Reason:
    """Why, where that comes from, and how sure it is."""

    text: str
    source: str
    certainty: Certainty


@dataclass(frozen=True, slots=True, kw_only=True)
class Notice:
    """Something not to do, to take care of, or that contradicts itself."""

    text: str
    because: str
    source: str
    certainty: Certainty

    def to_json(self) -> dict[str, str]:
        """The notice as plain values."""
        return {
            "text": self.text,
            "because": self.because,
            "source": self.source,
            "certainty": self.certainty.value,
        }


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """One recommendation: a sentence and its reasons, the deciding reason first."""

    text: str
    reasons: tuple[Reason, ...]

    @property
    def because(self) -> tuple[str, ...]:
        """The reasons in words."""
        return tuple(reason.text for reason in self.reasons)

    @property
    def source(self) -> tuple[str, ...]:
        """The source of each reason, in the same order."""
        return tuple(reason.source for reason in self.reasons)

    @property
    def certainty(self) -> Certainty:
        """How sure the deciding reason is."""
        return self.reasons[0].certainty

    def to_json(self) -> dict[str, Any]:
        """The part's own figures, then its words, reasons, sources and certainty."""
        own = [each.name for each in fields(self) if each.name not in ("text", "reasons")]
        return {name: _plain(getattr(self, name)) for name in own} | {
            "text": self.text,
            "because": list(self.because),
            "source": list(self.source),
            "certainty": self.certainty.value,
        }


@dataclass(frozen=True, slots=True)
class Finding[P: Part]:
    """What one rule found: its part, and the notices that go with it."""

    part: P
    must_not: tuple[Notice, ...] = ()
    cautions: tuple[Notice, ...] = ()
    conflicts: tuple[Notice, ...] = ()


def reason(text: str, fact: Fact[Any]) -> Reason:
    """A reason that leans on ``fact``, with its source and certainty."""
    return Reason(text, fact.source, fact.certainty)


def notice(text: str, because: str, fact: Fact[Any]) -> Notice:
    """A notice that leans on ``fact``, with its source and certainty."""
    return Notice(text=text, because=because, source=fact.source, certainty=fact.certainty)


def _plain(value: object) -> object:
    if isinstance(value, tuple):
        return [_plain(each) for each in value]
    return value.value if isinstance(value, Enum) else value

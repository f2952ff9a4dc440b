"""What differs between two pieces of advice, for comparing garments and asking what if."""

from dataclasses import dataclass

from inventory.advice.advise import Advice
from inventory.advice.parts import Notice


@dataclass(frozen=True, slots=True)
class Change:
    """One part whose sentence differs, as it was and as it becomes."""

    part: str
    before: str
    after: str


@dataclass(frozen=True, slots=True)
class Changes:
    """The parts that differ, and the must-nots that come or go."""

    parts: tuple[Change, ...]
    new_must_not: tuple[Notice, ...]
    gone_must_not: tuple[Notice, ...]


def changes_between(before: Advice, after: Advice) -> Changes:
    """What changes when ``before`` becomes ``after``; empty tuples when nothing does."""
    pairs = zip(before.parts, after.parts, strict=True)
    return Changes(
        parts=tuple(
            Change(name, old.text, new.text)
            for (name, old), (_, new) in pairs
            if old.text != new.text
        ),
        new_must_not=tuple(each for each in after.must_not if each not in before.must_not),
        gone_must_not=tuple(each for each in before.must_not if each not in after.must_not),
    )

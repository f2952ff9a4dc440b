"""Nothing in this room is said without a source."""

import dataclasses
import importlib
import pkgutil
from collections.abc import Iterable, Iterator
from types import ModuleType
from typing import Any

import pytest

import inventory.advice
from inventory.advice import sources
from inventory.advice.facts import (
    COMMON_PRACTICE,
    FROM_MEMORY,
    TRADE_FIGURE,
    Certainty,
    Fact,
    published,
)
from inventory.advice.parts import Notice

MODULES = [
    importlib.import_module(f"inventory.advice.{each.name}")
    for each in pkgutil.iter_modules(inventory.advice.__path__)
]
TABLES = [each for each in MODULES if each.__name__.endswith(("_facts", "constructions"))]


def leaves(value: object, path: str) -> Iterator[tuple[str, Any]]:
    """Every fact, notice and bare number reachable from ``value``, with the way to it."""
    if isinstance(value, Fact | Notice):
        yield path, value
    elif isinstance(value, dict):
        for key, each in value.items():
            yield from leaves(each, f"{path}[{key}]")
    elif isinstance(value, tuple | list | set | frozenset):
        for number, each in enumerate(value):
            yield from leaves(each, f"{path}[{number}]")
    elif dataclasses.is_dataclass(value) and not isinstance(value, type):
        for field in dataclasses.fields(value):
            yield from leaves(getattr(value, field.name), f"{path}.{field.name}")
    elif isinstance(value, int | float) and not isinstance(value, bool):
        yield path, value


def held(modules: Iterable[ModuleType]) -> Iterator[tuple[str, Any]]:
    for module in modules:
        for name, value in vars(module).items():
            if name.isupper() or name in ("_ALL",):
                yield from leaves(value, f"{module.__name__}.{name}")


FACTS = [(path, fact) for path, fact in held(MODULES) if isinstance(fact, Fact | Notice)]


def test_the_walk_finds_the_tables() -> None:
    assert len(FACTS) > 1000


def test_every_fact_names_a_source() -> None:
    assert [path for path, fact in FACTS if not fact.source.strip()] == []


def test_a_published_fact_names_a_source_that_was_read() -> None:
    known = {value for name, value in vars(sources).items() if name.isupper()}
    unread = [
        (path, fact.source)
        for path, fact in FACTS
        if fact.certainty is Certainty.PUBLISHED
        and not all(part in known for part in fact.source.split("; "))
    ]
    assert unread == []


def test_a_weak_fact_never_borrows_a_published_source() -> None:
    weak = {
        Certainty.TRADE: TRADE_FIGURE,
        Certainty.COMMON: COMMON_PRACTICE,
        Certainty.MEMORY: FROM_MEMORY,
    }
    odd = {
        fact.source
        for _, fact in FACTS
        if fact.certainty in weak and fact.source != weak[fact.certainty]
    }
    own = {"the giver's wish", "the maker's own test"}
    assert {source for source in odd if "trade" not in source} <= own


@pytest.mark.parametrize("module", TABLES, ids=lambda module: module.__name__)
def test_no_table_holds_a_bare_figure(module: ModuleType) -> None:
    # frays_by_default repeats the sourced grade beside it, for pages that only need the number.
    bare = [
        path
        for path, value in held([module])
        if isinstance(value, int | float) and not path.endswith("frays_by_default")
    ]
    assert bare == []


def test_a_fact_without_a_source_cannot_be_made() -> None:
    with pytest.raises(ValueError, match="no source"):
        published(40, " ")


def test_no_source_is_named_that_no_fact_uses() -> None:
    used = {part for _, fact in FACTS for part in fact.source.split("; ")}
    named = {name for name, value in vars(sources).items() if name.isupper() and value not in used}
    assert named == set()

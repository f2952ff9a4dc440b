from datetime import date

import pytest

from planning.safety.ages import Market
from planning.safety.laws import DEFER, laws_for
from planning.safety.tools import TOOL_CAUTIONS, ToolCaution


@pytest.mark.parametrize("caution", TOOL_CAUTIONS, ids=lambda caution: caution.tool)
def test_every_tool_has_hazards_rules_in_sentences_and_a_source(caution: ToolCaution) -> None:
    assert caution.hazards
    assert caution.rules
    assert all(rule.endswith(".") for rule in caution.rules)
    assert caution.source


def test_each_tool_is_listed_once() -> None:
    names = [caution.tool for caution in TOOL_CAUTIONS]
    assert len(names) == len(set(names)) == 10


@pytest.mark.parametrize("market", ["us", "eu", "uk"])
def test_every_market_ends_by_sending_the_maker_to_the_law(market: Market) -> None:
    notes = laws_for(market, date(2026, 11, 1))
    assert len(notes) >= 2
    assert notes[-1].text == DEFER
    assert all(note.source for note in notes)


def test_a_state_without_a_law_of_its_own_adds_nothing() -> None:
    assert laws_for("us", date(2026, 11, 1), "CO") == laws_for("us", date(2026, 11, 1))

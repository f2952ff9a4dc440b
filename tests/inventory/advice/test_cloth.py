import math
from typing import Any

import pytest

from inventory.advice.advise import advise
from inventory.advice.cloth import Cloth, check_cloth, cloth_problems
from inventory.advice.label import CareLabel
from inventory.advice.problems import BadFigure, BadLabel, BadShares, UnknownName
from tests.inventory.advice.cloths import cloth


def test_nothing_known_is_no_problem() -> None:
    assert cloth_problems(Cloth()) == ()


def test_shares_of_three_thirds_are_let_pass() -> None:
    assert cloth_problems(cloth("cotton 33.33 wool 33.33 silk 33.33")) == ()


@pytest.mark.parametrize(
    ("fibres", "words"),
    [
        ("cotton 60 polyester 30", "add up to 90"),
        ("cotton 60 polyester 50", "add up to 110"),
        ("flax 50 linen 50", "given twice"),
        ("cotton -5 polyester 105", "above 0"),
        ("cotton 0 polyester 100", "above 0"),
        ("cotton nan", "above 0"),
        ("cotton inf", "above 0"),
    ],
)
def test_impossible_shares_are_named(fibres: str, words: str) -> None:
    problems = cloth_problems(cloth(fibres))
    assert any(isinstance(each, BadShares) and words in str(each) for each in problems)


@pytest.mark.parametrize("name", ["mass_g_m2", "stretch_along_pct", "stretch_across_pct"])
@pytest.mark.parametrize("value", [-1.0, math.nan, math.inf, "12", True])
def test_impossible_figures_are_named(name: Any, value: Any) -> None:
    (problem,) = cloth_problems(Cloth(**{name: value}))
    assert isinstance(problem, BadFigure)


@pytest.mark.parametrize("name", ["fragility", "fray"])
@pytest.mark.parametrize("grade", [-1, 5, 2.5, True])
def test_grades_are_whole_numbers_from_0_to_4(name: Any, grade: Any) -> None:
    (problem,) = cloth_problems(Cloth(**{name: grade}))
    assert isinstance(problem, BadFigure)
    assert "0 to 4" in str(problem)


def test_a_mass_of_nothing_is_refused() -> None:
    assert cloth_problems(Cloth(mass_g_m2=0))
    assert not cloth_problems(Cloth(stretch_across_pct=0))


def test_all_problems_are_told_together() -> None:
    bad = Cloth(
        fibres=(("cottn", 100.0),),
        construction="velvit",
        mass_g_m2=-1,
        label=CareLabel(wash="33", edition=1999),  # type: ignore[arg-type]
        conditions=frozenset({"mouldy"}),
    )
    kinds = [type(each) for each in cloth_problems(bad)]
    assert kinds == [UnknownName, UnknownName, BadFigure, UnknownName, BadLabel, UnknownName]


def test_the_first_problem_is_raised_before_any_rule_runs() -> None:
    with pytest.raises(UnknownName, match="cottn"):
        check_cloth(cloth("cottn 100", mass_g_m2=-1))
    with pytest.raises(BadFigure):
        advise(Cloth(mass_g_m2=-1))

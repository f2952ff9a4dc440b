import pytest
from hypothesis import given
from hypothesis import strategies as st

from inventory.advice.blends import allowance_pct, stated_pct
from inventory.advice.care_water import water_class
from inventory.advice.colour import grey_scale_grade
from inventory.advice.dimensions import area_loss_pct, change_pct, cut_length_for
from inventory.advice.problems import BadFigure, UnknownName


@given(st.floats(1, 5000), st.floats(0, 60))
def test_cutting_for_shrinkage_leaves_what_is_needed(finished_mm: float, shrink_pct: float) -> None:
    cut_mm = cut_length_for(finished_mm, shrink_pct)
    assert cut_mm * (1 - shrink_pct / 100) == pytest.approx(finished_mm)


@pytest.mark.parametrize("pct", [-1, 100, 150, float("nan")])
def test_impossible_shrinkage_is_refused(pct: float) -> None:
    with pytest.raises(BadFigure):
        area_loss_pct(pct, 0)
    with pytest.raises(BadFigure):
        cut_length_for(100, pct)


def test_growth_is_above_nought() -> None:
    assert change_pct(100, 104) == pytest.approx(4)
    with pytest.raises(BadFigure):
        change_pct(0, 10)


def test_a_fibre_without_an_allowance_or_form_is_refused() -> None:
    with pytest.raises(BadFigure):
        allowance_pct("leather")
    with pytest.raises(UnknownName, match="carded"):
        allowance_pct("wool", "crimped")


@pytest.mark.parametrize("mass", [0, -1, float("nan")])
def test_a_dry_mass_is_above_nought(mass: float) -> None:
    with pytest.raises(BadFigure):
        stated_pct([("cotton", "", mass)])


@given(st.lists(st.sampled_from(["wool", "cotton", "silk", "acrylic"]), min_size=1, unique=True))
def test_stated_shares_add_up_to_a_hundred(names: list[str]) -> None:
    assert sum(stated_pct([(name, "", 10.0) for name in names])) == pytest.approx(100)


def test_water_hotter_than_the_rule_names_has_no_class() -> None:
    assert water_class(95) is None


def test_a_colour_difference_is_not_below_nought() -> None:
    with pytest.raises(BadFigure):
        grey_scale_grade(-0.1)

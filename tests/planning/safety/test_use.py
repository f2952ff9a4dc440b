import pytest

from planning.safety.ages import Market
from planning.safety.errors import SafetyError
from planning.safety.fit import Fit, fit_of
from planning.safety.parts import Disc, Eye
from planning.safety.use import HARD, SOFT, Use, is_small_part, use_of

EYE = fit_of(Eye(12, 6, 4, 14))
LARGE = fit_of(Disc(40, 3))


@pytest.mark.parametrize("market", ["us", "eu", "uk", None])
@pytest.mark.parametrize("age", [None, 0, 11, 12, 35])
@pytest.mark.parametrize("fit", [EYE, LARGE])
def test_no_hard_part_is_ever_let_onto_a_toy_for_under_3s(
    market: Market | None, age: int | None, fit: Fit
) -> None:
    assert use_of(fit, "plastic", age, market).use is Use.REFUSED


@pytest.mark.parametrize(
    ("age", "market", "cuddly", "use"),
    [
        (36, "us", False, Use.MUST_TEST),
        (48, "us", True, Use.MUST_TEST),
        (48, "eu", False, Use.MUST_TEST),
        (48, "eu", True, Use.REFUSED),
        (48, "uk", True, Use.REFUSED),
        (48, None, True, Use.REFUSED),
        (95, "us", False, Use.MUST_TEST),
        (96, "us", False, Use.ALLOWED),
        (96, "eu", True, Use.REFUSED),
        (167, "uk", True, Use.REFUSED),
        (168, "uk", True, Use.ALLOWED),
        (480, "us", True, Use.ALLOWED),
    ],
)
def test_age_market_and_cuddliness_decide_together(
    age: int | None, market: Market | None, cuddly: bool, use: Use
) -> None:
    assert use_of(EYE, "plastic", age, market, cuddly).use is use


def test_a_refusal_says_whether_the_law_or_the_house_rule_refuses() -> None:
    assert any("banned" in text for text in use_of(EYE, age_months=30).because)
    assert any("this program refuses" in text for text in use_of(LARGE, age_months=30).because)


def test_the_us_warning_label_is_named_for_small_parts_only() -> None:
    labelled = use_of(EYE, age_months=48, market="us")
    bare = use_of(LARGE, age_months=48, market="us")
    assert any("choking-hazard" in text for text in labelled.because)
    assert not any("choking-hazard" in text for text in bare.because)


@pytest.mark.parametrize("material", SOFT)
def test_soft_materials_are_left_out_in_the_united_states_only(material: str) -> None:
    assert use_of(EYE, material, 20, "us").use is Use.ALLOWED
    assert use_of(EYE, material, 20, "eu").use is Use.MUST_TEST
    assert use_of(LARGE, material, 20, "eu").use is Use.ALLOWED


@pytest.mark.parametrize("material", HARD)
def test_hard_materials_are_small_parts_everywhere(material: str) -> None:
    assert is_small_part(EYE, material, "us")
    assert is_small_part(EYE, material, "uk")


def test_every_answer_names_a_source() -> None:
    for material in (*HARD, *SOFT):
        for age in (None, 6, 30, 48, 120, 400):
            answer = use_of(EYE, material, age)
            assert answer.because
            assert answer.source


def test_an_unknown_material_is_refused_with_the_known_ones() -> None:
    with pytest.raises(SafetyError, match="cheese.*plastic"):
        use_of(EYE, "cheese")


@pytest.mark.parametrize("age", [-1, 100_000])
def test_an_impossible_age_is_refused(age: int | None) -> None:
    with pytest.raises(SafetyError, match="age"):
        use_of(EYE, age_months=age)

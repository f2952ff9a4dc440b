import pytest

from planning.safety.errors import SafetyError
from planning.safety.features import FEATURES, age_gate
from planning.safety.use import Use

STRICTEST_FIRST = [Use.REFUSED, Use.MUST_TEST, Use.ALLOWED]


@pytest.mark.parametrize("name", FEATURES)
def test_no_feature_gets_stricter_with_age(name: str) -> None:
    row = FEATURES[name]
    ranks = [STRICTEST_FIRST.index(use) for use in (row.under_3, row.young, row.older, row.grown)]
    assert ranks == sorted(ranks)


@pytest.mark.parametrize("name", FEATURES)
def test_every_feature_has_a_reason_and_a_source(name: str) -> None:
    assert FEATURES[name].because.endswith(".")
    assert FEATURES[name].source


@pytest.mark.parametrize("name", FEATURES)
def test_a_grown_persons_display_piece_is_free(name: str) -> None:
    assert age_gate([name], 400, "uk", cuddly=False).use is Use.ALLOWED


def test_only_cloth_and_thread_are_let_through_for_a_baby() -> None:
    allowed = [name for name in FEATURES if age_gate([name], 6, "us").use is Use.ALLOWED]
    assert allowed == ["embroidered-face", "sewn-on-cloth", "ribbon"]


def test_the_strictest_feature_decides_and_each_is_explained() -> None:
    answer = age_gate(["embroidered-face", "large-button", "magnet"], 60, "us")
    assert answer.use is Use.REFUSED
    assert [text.split(":")[0] for text in answer.because] == [
        "buttons over 32.75 mm",
        "magnets or magnetic snaps",
    ]


def test_nothing_kept_is_nothing_refused() -> None:
    assert age_gate([], 6, "us") == age_gate(["embroidered-face"], 6, "us")


def test_an_unknown_feature_is_refused_with_the_known_ones() -> None:
    with pytest.raises(SafetyError, match="antlers.*embroidered-face"):
        age_gate(["antlers"])

from typing import Any

import pytest

from inventory.advice.facts import Certainty
from inventory.advice.recommendations import PressAdvice
from tests.inventory.advice.cloths import advice


def press(*words: str | None, **known: Any) -> PressAdvice:
    return advice(*words, **known).press


@pytest.mark.parametrize(
    ("fibre", "max_c"),
    [
        ("cotton", 200),
        ("linen", 200),
        ("viscose", 150),
        ("wool", 148),
        ("silk", 148),
        ("polyester", 148),
        ("nylon", 110),
        ("acrylic", 110),
        ("acetate", 110),
        ("elastane", 110),
        ("polypropylene", 110),
    ],
)
def test_without_a_label_the_lower_of_dots_and_tables_holds(fibre: str, max_c: int) -> None:
    assert press(f"{fibre} 100").max_c == max_c


def test_the_most_delicate_fibre_governs_the_heat() -> None:
    assert press("cotton 95 elastane 5").max_c == 110
    assert press("wool 50 acrylic 50").max_c == 110


def test_silk_and_one_dot_get_no_steam_and_cotton_does() -> None:
    assert not press("silk 100").steam
    assert not press("acrylic 100").steam
    assert press("cotton 100").steam


@pytest.mark.parametrize(
    ("edition", "max_c", "steam"), [(None, 110, False), (2012, 110, False), (2023, 120, True)]
)
def test_one_dot_depends_on_the_edition(edition: int | None, max_c: int, steam: bool) -> None:
    found = press("cotton 100", None, "iron=1", edition=edition)
    assert (found.max_c, found.steam) == (max_c, steam)
    assert found.certainty is Certainty.LABEL


def test_a_crossed_steam_mark_is_obeyed_in_any_edition() -> None:
    assert not press("cotton 100", None, "iron=1-no-steam", edition=2023).steam


def test_a_label_may_be_hotter_than_the_table_where_it_can_be_true() -> None:
    assert press("cotton 95 elastane 5", "jersey", "iron=2").max_c == 150


@pytest.mark.parametrize(
    ("words", "max_c"),
    [
        (("polyester 100", "fleece", "iron=3"), 110),
        (("wool 100", "twill", "iron=3"), 148),
        (("nylon 100", None, "iron=2"), 110),
        (("cotton 100", "sequinned", "iron=2"), 110),
    ],
)
def test_too_many_dots_are_shown_and_the_cooler_side_taken(
    words: tuple[str, ...], max_c: int
) -> None:
    found = advice(*words)
    assert found.press.max_c == max_c
    assert any("dots" in each.text for each in found.conflicts)


def test_do_not_iron_is_obeyed_and_listed() -> None:
    found = advice("cotton 100", None, "iron=no")
    assert found.press.max_c is None
    assert any("iron" in each.text for each in found.must_not)


@pytest.mark.parametrize("construction", ["coated", "leather", "suede", "fur-fabric"])
def test_some_constructions_are_never_ironed(construction: str) -> None:
    assert press("", construction).max_c is None


def test_a_label_on_imitation_suede_is_believed() -> None:
    assert press("polyester 100", "suede", "iron=1").max_c == 110


def test_pile_is_steamed_from_the_back_not_pressed() -> None:
    assert press("cotton 100", "velvet").touch == "hover"
    silk = press("silk 100", "velvet")
    assert (silk.touch, silk.steam) == ("press", False)
    assert "without pressure" in silk.text


@pytest.mark.parametrize("known", [{"fragility": 4}, {"conditions": ["antique"]}])
def test_what_is_frail_or_antique_is_not_ironed(known: dict[str, Any]) -> None:
    assert press("cotton 100", **known).max_c is None


def test_greasy_cloth_is_not_ironed() -> None:
    assert press("cotton 100", conditions=["cream"]).max_c is None


def test_steam_would_drive_a_kept_scent_out() -> None:
    assert not press("cotton 100", keep_scent=True).steam


def test_a_rubbery_print_is_kept_from_the_iron() -> None:
    found = advice("cotton 100", "jersey", conditions=["rubber-print"])
    assert any("print" in each.text for each in found.must_not)

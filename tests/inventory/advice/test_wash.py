from typing import Any

import pytest

from inventory.advice.facts import Certainty
from inventory.advice.recommendations import WashAdvice
from tests.inventory.advice.cloths import advice


def wash(*words: str | None, **known: Any) -> WashAdvice:
    return advice(*words, **known).wash


def test_cotton_goes_in_the_machine_and_silk_does_not() -> None:
    assert (wash("cotton 100").method, wash("cotton 100").max_c) == ("machine", 40)
    assert (wash("silk 100").method, wash("silk 100").max_c) == ("hand", 30)


def test_the_most_delicate_fibre_governs_however_small_its_share() -> None:
    blend = wash("cotton 97 silk 3")
    assert (blend.method, blend.max_c) == ("hand", 30)
    assert "most delicate fibre governs" in " ".join(blend.because)


def test_the_construction_can_be_stricter_than_the_fibre() -> None:
    assert wash("cotton 100", "velvet").method == "spot"
    assert wash("polyester 100", "sequinned").method == "spot"


def test_an_unknown_fibre_is_only_dabbed_after_a_colour_test() -> None:
    unknown = wash()
    assert unknown.method == "spot"
    assert unknown.colour_test
    assert "hidden place" in unknown.text


def test_leather_is_never_washed_by_fibre_or_by_construction() -> None:
    assert wash("leather 100").method == "none"
    assert wash("", "leather").method == "none"


def test_imitation_suede_is_not_taken_for_leather() -> None:
    assert wash("polyester 100", "suede").method == "machine-mild"


def test_the_label_beats_the_table_both_ways() -> None:
    gentler = wash("cotton 100", None, "wash=30-very-mild")
    rougher = wash("wool 100", "sweater-knit", "wash=40-mild")
    assert (gentler.method, gentler.max_c) == ("machine-very-mild", 30)
    assert (rougher.method, rougher.max_c) == ("machine-mild", 40)
    assert gentler.certainty is Certainty.LABEL


def test_a_label_that_cannot_be_true_is_shown_and_the_gentler_side_taken() -> None:
    found = advice("wool 100", "twill", "wash=95")
    assert (found.wash.method, found.wash.max_c) == ("hand", 30)
    assert any("95" in each.text for each in found.conflicts)


def test_do_not_wash_means_a_professional_where_the_label_names_one() -> None:
    assert wash("polyester 100", None, "wash=no,professional=P").method == "professional"
    assert wash("polyester 100", None, "wash=no,professional=no").method == "none"
    assert wash("polyester 100", None, "wash=no").method == "none"


def test_dry_clean_only_is_believed() -> None:
    assert wash("viscose 100", None, "professional=dry clean only").method == "professional"


@pytest.mark.parametrize(
    ("fragility", "method"), [(0, "machine"), (1, "machine"), (2, "machine-very-mild"), (3, "hand")]
)
def test_fragility_beats_the_label(fragility: int, method: str) -> None:
    assert wash("cotton 100", None, "wash=60", fragility=fragility).method == method


def test_cloth_that_falls_apart_is_not_washed_or_sent_to_the_cleaner() -> None:
    assert wash("cotton 100", None, "wash=60", fragility=4).method == "none"
    weak = wash("silk 100", None, "wash=no,professional=P", fragility=3)
    assert weak.method == "none"


@pytest.mark.parametrize("condition", ["antique", "shattered", "bled"])
def test_some_conditions_forbid_washing(condition: str) -> None:
    assert wash("cotton 100", None, "wash=40", conditions=[condition]).method == "none"


def test_the_scent_is_kept_whatever_label_and_condition_say() -> None:
    kept = advice("cotton 100", "interlock", "wash=60", keep_scent=True, conditions=["blood"])
    assert kept.wash.method == "none"
    assert kept.wash.max_c is None
    assert "scent" in kept.wash.because[0]
    assert any("scent" in each.because for each in kept.must_not)
    assert any("chosen" in each.text for each in kept.conflicts)
    assert kept.dry.method == "none"


def test_the_giver_may_forbid_washing_without_a_scent() -> None:
    assert wash("cotton 100", may_wash=False).method == "none"
    assert wash("cotton 100", may_wash=True).method == "machine"


def test_blood_asks_for_the_hottest_wash_the_cloth_allows() -> None:
    assert wash("cotton 100", "flannel", conditions=["blood"]).max_c == 60
    assert wash("wool 100", conditions=["blood"]).max_c == 30
    assert wash("cotton 100", None, "wash=30", conditions=["blood"]).max_c == 30


def test_a_mouldy_piece_that_stays_unwashed_is_not_to_be_brushed() -> None:
    kept = wash("cotton 100", keep_scent=True, conditions=["mould"])
    assert "brush" in kept.text
    assert kept.text.startswith("Do not wash, brush")


def test_a_rubbery_print_is_washed_cool_and_inside_out() -> None:
    printed = wash("cotton 100", "jersey", conditions=["rubber-print"])
    assert (printed.max_c, printed.inside_out) == (30, True)


def test_every_wet_method_asks_for_a_colour_test() -> None:
    assert wash("cotton 100").colour_test
    assert not wash("leather 100").colour_test

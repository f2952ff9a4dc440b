from collections.abc import Iterable

import pytest

from inventory.advice.parts import Notice
from tests.inventory.advice.cloths import advice


def said(notices: Iterable[Notice]) -> str:
    return " ".join(f"{each.text} {each.because}" for each in notices)


def test_every_arrival_is_shaken_out_and_searched_for_patches() -> None:
    cautions = said(advice().cautions)
    assert "tray" in cautions
    assert "medicine patches" in cautions


@pytest.mark.parametrize(
    ("condition", "must_not", "caution"),
    [
        ("mould", "asthma", "respirator"),
        ("mothball", "G6PD", "vapour"),
        ("cream", "child's toy", "grease"),
        ("blood", "gloves", "infection"),
    ],
)
def test_each_trouble_brings_its_warnings(condition: str, must_not: str, caution: str) -> None:
    found = advice("cotton 100", conditions=[condition])
    assert must_not in said(found.must_not)
    assert caution in said(found.cautions)


def test_moth_is_frozen_and_the_freezer_checked() -> None:
    cautions = said(advice("wool 100", conditions=["moth"]).cautions)
    assert "-20 to -25 °C" in cautions
    assert "one week" in cautions
    assert "thermometer" in cautions


def test_mould_is_not_trusted_to_a_freezer() -> None:
    assert "only puts mould to sleep" in said(advice(conditions=["mould"]).cautions)


def test_mothballs_and_a_kept_scent_contradict_each_other() -> None:
    found = advice("wool 100", keep_scent=True, conditions=["mothball"])
    assert "poisonous" in said(found.conflicts)
    assert "Never use it for a baby" in said(found.must_not)


def test_moth_and_a_kept_scent_do_not_because_freezing_keeps_the_scent() -> None:
    assert advice("wool 100", keep_scent=True, conditions=["moth"]).conflicts == ()


def test_blood_below_sixty_degrees_is_called_clean_only() -> None:
    assert "treat it as cleaned" in said(advice("wool 100", conditions=["blood"]).cautions)
    hot = advice("cotton 100", conditions=["blood"])
    assert "treat it as cleaned" not in said(hot.cautions)


def test_unwashed_blood_stays_a_risk() -> None:
    found = advice("leather 100", conditions=["blood"])
    assert "not washed, so treat the blood as a risk" in said(found.cautions)


@pytest.mark.parametrize(
    ("fibre", "words"),
    [
        ("silk", "1850 to 1930"),
        ("nylon", "yellows"),
        ("rubber", "sticky"),
        ("polyurethane", "flake"),
        ("fur", "arsenic"),
    ],
)
def test_age_is_told_of_by_fibre(fibre: str, words: str) -> None:
    assert words in said(advice(f"{fibre} 100").cautions)


def test_wool_is_not_rubbed_when_it_is_washed() -> None:
    assert "rub" in said(advice("wool 100").must_not)
    assert "rub" not in said(advice("wool 100", keep_scent=True).must_not)


def test_shattered_cloth_is_kept_out_of_toys() -> None:
    assert "toy" in said(advice("silk 100", conditions=["shattered"]).must_not)
    assert "toy" in said(advice("cotton 100", fragility=4).must_not)


def test_pile_is_cut_one_way() -> None:
    assert "same way" in said(advice("cotton 100", "velvet").cautions)
    assert "same way" not in said(advice("cotton 100", "plain-weave").cautions)


def test_brushed_cotton_is_kept_from_flame_and_wool_is_not_named() -> None:
    assert "flame" in said(advice("cotton 100", "flannel").cautions)
    assert "flame" not in said(advice("wool 100", "flannel").cautions)


def test_sequins_are_kept_from_the_smallest_children() -> None:
    assert "under three" in said(advice("polyester 100", "sequinned").must_not)


def test_an_unknown_fibre_is_not_burnt_to_find_out() -> None:
    assert "flame" in said(advice().must_not)

from typing import Any

import pytest

from tests.inventory.advice.cloths import advice


def shrink(*words: str | None, **known: Any) -> tuple[tuple[float, float], tuple[float, float]]:
    found = advice(*words, **known).shrink
    return found.along_pct, found.across_pct


def test_unknown_cloth_is_planned_as_a_range() -> None:
    assert shrink("", "twill", "wash=40") == ((0, 5), (0, 5))
    assert shrink("", "jersey", "wash=40") == ((0, 8), (0, 5))


def test_a_blend_shrinks_by_its_shares() -> None:
    assert shrink("cotton 50 polyester 50", "plain-weave") == ((1.0, 4.0), (1.0, 3.0))


def test_polyester_hardly_shrinks_and_viscose_does() -> None:
    assert shrink("polyester 100", "plain-weave") == ((0, 1), (0, 1))
    assert shrink("viscose 100", "plain-weave") == ((5, 10), (5, 10))


def test_a_wool_knit_may_felt_and_its_range_is_wide() -> None:
    along, _ = shrink("wool 100", "sweater-knit")
    assert along == (0, 11)


def test_unwashed_cloth_loses_only_what_pressing_takes() -> None:
    assert shrink("cotton 100", "plain-weave", keep_scent=True) == ((0, 2), (0, 2))


def test_cloth_neither_washed_nor_ironed_loses_nothing() -> None:
    assert shrink("leather 100", "leather") == ((0, 0), (0, 0))
    assert shrink("silk 100", "plain-weave", fragility=4) == ((0, 0), (0, 0))


def test_cleaned_cloth_is_held_to_what_mills_allow() -> None:
    label = "wash=no,professional=P"
    assert shrink("wool 100", "twill", label) == ((0, 3), (0, 3))
    assert shrink("wool 100", "jersey", label) == ((0, 5), (0, 5))


def test_the_largest_loss_of_area_is_given() -> None:
    found = advice("viscose 100", "plain-weave").shrink
    assert found.most_area_loss_pct == pytest.approx(19.0)


def test_many_small_shares_still_have_a_reason() -> None:
    names = "cotton wool silk flax hemp ramie jute viscose modal cupro lyocell acetate acrylic"
    names += " polyester polyamide mohair alpaca llama camel cashmere angora yak vicuna guanaco"
    words = " ".join(f"{name} 4" for name in names.split()) + " triacetate 4"
    assert advice(words, "twill", "wash=30").shrink.because

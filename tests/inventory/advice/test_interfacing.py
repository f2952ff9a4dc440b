from typing import Any

import pytest

from inventory.advice.constructions import CONSTRUCTIONS
from inventory.advice.recommendations import InterfacingAdvice
from tests.inventory.advice.cloths import advice

NEVER_FUSED = [
    "velvet", "corduroy", "towelling", "fleece", "fur-fabric", "brocade", "sequinned",
    "chiffon", "lace", "coated", "pleated", "leather", "suede",
]  # fmt: skip


def interfacing(*words: str | None, **known: Any) -> InterfacingAdvice:
    return advice(*words, **known).interfacing


@pytest.mark.parametrize("construction", NEVER_FUSED)
@pytest.mark.parametrize("fragility", [None, 2])
def test_some_constructions_are_never_fused(construction: str, fragility: int | None) -> None:
    found = advice("cotton 100", construction, fragility=fragility)
    assert found.interfacing.attach != "fusible"
    assert any("fuse" in each.text for each in found.must_not)


@pytest.mark.parametrize("fibre", ["viscose", "acetate", "metallised", "polypropylene"])
def test_some_fibres_are_never_fused(fibre: str) -> None:
    assert interfacing(f"{fibre} 100", "plain-weave").attach == "sew-in"


def test_a_shirt_is_fused_with_something_light_and_woven() -> None:
    shirt = interfacing("cotton 100", "plain-weave", mass_g_m2=115)
    assert (shirt.attach, shirt.structure) == ("fusible", "woven")
    assert shirt.mass_g_m2 == (25, 40)
    assert shirt.test_patch


def test_jersey_is_stopped_by_a_knit_laid_across_its_stretch() -> None:
    jersey = interfacing("cotton 100", "jersey", mass_g_m2=160, stretch_across_pct=40)
    assert (jersey.attach, jersey.structure) == ("fusible", "knit")
    assert "crosswise" in jersey.how
    assert "105 mm" in jersey.how
    assert "before the pieces are cut" in jersey.text


def test_a_knit_that_gives_both_ways_gets_a_second_layer() -> None:
    springy = interfacing(
        "cotton 92 elastane 8", "jersey", stretch_along_pct=40, stretch_across_pct=80
    )
    assert "second" in springy.how
    assert springy.fuse_max_c == 110


def test_silk_is_backed_with_a_sewn_in_layer_and_only_tried_with_glue() -> None:
    silk = interfacing("silk 100", "plain-weave", mass_g_m2=60)
    assert (silk.attach, silk.structure) == ("sew-in", "woven")
    assert "test patch at low heat" in silk.text


def test_silk_velvet_is_not_even_tried() -> None:
    assert "fuse" not in interfacing("silk 100", "velvet").text


def test_heavy_and_firm_cloth_needs_none() -> None:
    assert interfacing("cotton 100", "denim", mass_g_m2=400).attach == "none"
    assert interfacing("wool 100", "felt").attach == "none"
    assert interfacing("leather 100", "leather").attach == "none"


def test_firm_cloth_that_stretches_is_backed_all_the_same() -> None:
    assert interfacing("cotton 98 elastane 2", "denim", stretch_across_pct=20).attach == "fusible"


@pytest.mark.parametrize("known", [{"fragility": 3}, {"conditions": ["antique"]}])
def test_what_is_weak_or_antique_is_supported_not_fused(known: dict[str, Any]) -> None:
    assert interfacing("cotton 100", "plain-weave", **known).attach == "sew-in"


def test_an_unknown_fibre_is_not_fused() -> None:
    assert interfacing("", "plain-weave").attach == "sew-in"
    assert interfacing().attach == "sew-in"
    assert interfacing().mass_g_m2 is None


@pytest.mark.parametrize("mass_g_m2", [8, 20, 45, 60, 149, 150, 299, 300, 900])
@pytest.mark.parametrize("construction", sorted(CONSTRUCTIONS))
def test_the_interfacing_is_never_heavier_than_the_cloth(
    mass_g_m2: float, construction: str
) -> None:
    found = interfacing("cotton 100", construction, mass_g_m2=mass_g_m2)
    if found.mass_g_m2 is not None:
        low, high = found.mass_g_m2
        assert 0 < low <= high <= mass_g_m2


def test_the_fusing_heat_never_passes_the_pressing_heat_or_the_wool_setting() -> None:
    assert interfacing("cotton 100", "plain-weave").fuse_max_c == 150
    assert interfacing("nylon 100", "plain-weave").fuse_max_c == 110
    assert interfacing("cotton 100", "plain-weave", "iron=no").attach == "sew-in"


def test_the_print_is_left_out_of_fusing() -> None:
    found = advice("cotton 100", "jersey", conditions=["rubber-print"])
    assert "stopping short of the rubbery print" in found.interfacing.text
    assert any("behind the rubbery print" in each.text for each in found.must_not)

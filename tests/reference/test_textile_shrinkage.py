"""Shrinkage sums and ranges against worked checks and trade figures."""

import pytest

from inventory.advice.advise import advise
from inventory.advice.cloth import Cloth
from inventory.advice.dimensions import area_loss_pct, change_pct, cut_length_for
from inventory.advice.facts import Certainty
from inventory.advice.fibres import FIBRES
from inventory.advice.grades import STRETCH_CLASSES, stretch_class, stretch_pct
from inventory.advice.interfacing_facts import INTERFACING_CLASSES, NEVER_HEAVIER
from inventory.advice.shrink_facts import UNKNOWN_KNIT, UNKNOWN_WOVEN


def test_a_panel_of_36_by_24_cm_after_5_and_3_per_cent() -> None:
    # source: worked check 1, computed: 796.18 cm2, a loss of 7.85 %
    loss_pct = area_loss_pct(5, 3)
    assert loss_pct == pytest.approx(7.85, abs=0.005)
    assert 36 * 24 * (1 - loss_pct / 100) == pytest.approx(796.18, abs=0.005)


def test_cutting_for_24_cm_at_3_per_cent() -> None:
    # source: worked check 2: 24 / 0.97 = 24.74 cm
    assert cut_length_for(240, 3) == pytest.approx(247.4, abs=0.05)


def test_shrinkage_is_below_nought_and_growth_above() -> None:
    # source: AATCC 135-2018t, excerpt: 100 x (after - before) / before
    assert change_pct(500, 475) == pytest.approx(-5.0)


def test_unknown_cloth_is_planned_at_5_by_5_or_8_by_5() -> None:
    # source: common practice, no published source
    assert UNKNOWN_WOVEN.value.along_pct[1] == UNKNOWN_WOVEN.value.across_pct[1] == 5
    assert (UNKNOWN_KNIT.value.along_pct[1], UNKNOWN_KNIT.value.across_pct[1]) == (8, 5)


@pytest.mark.parametrize(
    ("fibre", "most_along_pct", "most_across_pct"),
    [
        ("cotton", 7, 5),
        ("flax", 7, 7),
        ("viscose", 10, 10),
        ("wool", 4, 3.5),
        ("silk", 10, 3),
        ("polyester", 1, 1),
        ("acrylic", 8, 8),
        ("polyamide", 8, 8),
    ],
)
def test_the_first_wash_of_woven_cloth(
    fibre: str, most_along_pct: float, most_across_pct: float
) -> None:
    # source: trade figures, no published source; one per cent is kept for polyester's nought
    fact = FIBRES[fibre].shrink_woven
    assert fact.certainty is Certainty.TRADE
    assert (fact.value.along_pct[1], fact.value.across_pct[1]) == (
        most_along_pct,
        most_across_pct,
    )


def test_wool_and_hair_felt() -> None:
    # source: trade association note on dimensional change: relaxation, swelling, felting
    assert FIBRES["wool"].felts.value
    assert FIBRES["wool"].felts.certainty is Certainty.PUBLISHED
    assert not FIBRES["silk"].felts.value


@pytest.mark.parametrize(
    ("relaxed", "stretched", "pct"), [(4, 5, 25.0), (10, 15, 50.0), (10, 14, 40.0)]
)
def test_stretch_by_the_stretch_test(relaxed: float, stretched: float, pct: float) -> None:
    # source: worked check 4 and a trade figure: 10 to 14 in is 40 %
    assert stretch_pct(relaxed, stretched) == pytest.approx(pct)


@pytest.mark.parametrize(
    ("pct", "name"), [(20, "stable"), (25, "moderate"), (50, "stretchy"), (90, "super")]
)
def test_stretch_classes(pct: float, name: str) -> None:
    # source: trade figures: fleece 18-25, moderate about 25, stretchy about 50, super 75-100
    assert stretch_class(pct).name == name
    assert [each.from_pct for each in STRETCH_CLASSES] == [0, 15, 25, 50, 75]


def test_interfacing_is_never_heavier_than_the_cloth() -> None:
    # source: Washington State University Extension EM014, Interfacings
    assert NEVER_HEAVIER.certainty is Certainty.PUBLISHED
    cloth = Cloth(fibres=(("cotton", 100.0),), construction="plain-weave", mass_g_m2=30)
    mass_g_m2 = advise(cloth).interfacing.mass_g_m2
    assert mass_g_m2 is not None
    assert mass_g_m2[1] <= 30


def test_interfacing_weight_classes() -> None:
    # source: from memory; no published table found
    bands = [fact.value[1:] for fact in INTERFACING_CLASSES]
    assert bands == [(15, 25), (25, 40), (40, 70), (70, 120)]
    assert {fact.certainty for fact in INTERFACING_CLASSES} == {Certainty.MEMORY}


@pytest.mark.parametrize(
    "construction", ["velvet", "brocade", "coated", "fur-fabric", "sequinned", "chiffon"]
)
def test_cloths_that_are_never_fused(construction: str) -> None:
    # source: trade figures, no published source: pile, brocade, vinyl, fur, beads, sheers
    cloth = Cloth(fibres=(("polyester", 100.0),), construction=construction)
    assert advise(cloth).interfacing.attach != "fusible"


@pytest.mark.parametrize("fibre", ["viscose", "acetate"])
def test_fibres_that_are_never_fused(fibre: str) -> None:
    # source: trade figure, no published source: rayon and acetate, because of the heat
    cloth = Cloth(fibres=((fibre, 100.0),), construction="plain-weave")
    assert advise(cloth).interfacing.attach == "sew-in"

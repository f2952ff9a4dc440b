"""Needle numbers, needle sizes by cloth, stitch lengths and edges against the sources."""

import pytest

from inventory.advice.advise import advise
from inventory.advice.cloth import Cloth
from inventory.advice.edge_facts import ALLOWANCE_BY_FRAY_MM, TOY_ALLOWANCE_MM
from inventory.advice.facts import Certainty
from inventory.advice.needles import NM_BY_US, nm_of_us, stitch_length_mm, stitches_per_inch
from inventory.advice.stitch_facts import TIGHT_CURVE_MM, TOY_SEAM_MM


@pytest.mark.parametrize(
    ("us", "nm"),
    [
        # source: apparel-science note on needle numbers
        (8, 60),
        (10, 70),
        (12, 80),
        (14, 90),
        (16, 100),
        (18, 110),
        (19, 120),
        # source: textile encyclopaedia entry on needles, 2013
        (9, 65),
        (11, 75),
        (22, 140),
    ],
)
def test_needle_numbers(us: int, nm: int) -> None:
    assert nm_of_us(us) == nm
    assert NM_BY_US[us].certainty is Certainty.PUBLISHED


@pytest.mark.parametrize("us", [8, 9, 10, 11, 12, 14, 16, 18])
def test_the_rule_holds_below_19(us: int) -> None:
    # source: apparel-science note on needle numbers: Nm = (US - 8) x 5 + 60
    assert nm_of_us(us) == (us - 8) * 5 + 60


@pytest.mark.parametrize(("us", "by_rule", "sold"), [(19, 115, 120), (22, 130, 140)])
def test_the_rule_breaks_from_19_and_the_table_wins(us: int, by_rule: int, sold: int) -> None:
    # source: worked check 5; apparel-science note (19), encyclopaedia entry (22)
    assert (us - 8) * 5 + 60 == by_rule
    assert nm_of_us(us) == sold


@pytest.mark.parametrize("us", [20, 21])
def test_numbers_that_were_not_read_say_so(us: int) -> None:
    # source: from memory
    assert NM_BY_US[us].certainty is Certainty.MEMORY


def needle(construction: str, mass_g_m2: float, fibre: str) -> tuple[int, int]:
    cloth = Cloth(fibres=((fibre, 100.0),), construction=construction, mass_g_m2=mass_g_m2)
    return advise(cloth).needle.size_nm


@pytest.mark.parametrize(
    ("construction", "mass_g_m2", "sizes"),
    [
        ("plain-weave", 110, (65, 75)),
        ("twill", 230, (80, 90)),
        ("twill", 450, (100, 110)),
        ("denim", 230, (70, 90)),
        ("denim", 340, (100, 110)),
        ("denim", 470, (110, 140)),
    ],
)
def test_needle_sizes_by_cloth(construction: str, mass_g_m2: float, sizes: object) -> None:
    # source: textile encyclopaedia entry on needles, 2013: light 65-75, medium 80-90,
    # heavy 100-110; denim 70-90, 100-110, 110-140
    assert needle(construction, mass_g_m2, "cotton") == sizes


def test_fine_silk_takes_60_to_70() -> None:
    # source: trade figure: silk, chiffon 60/8 or 70/10; encyclopaedia entry: silk 65-70
    assert needle("plain-weave", 60, "silk") == (60, 70)


@pytest.mark.parametrize(
    ("per_inch", "length_mm"),
    [(10, 2.54), (12, 2.12), (14, 1.81), (15, 1.69), (18, 1.41), (20, 1.27)],
)
def test_stitches_per_inch_are_computed_not_copied(per_inch: float, length_mm: float) -> None:
    # source: 25.4 / spi, computed; trade tables round 12 to 2.5 mm and 10 to 3 mm
    assert stitch_length_mm(per_inch) == pytest.approx(length_mm, abs=0.005)


def test_two_and_a_half_millimetres_to_the_inch() -> None:
    # source: worked check 6
    assert stitches_per_inch(2.5) == pytest.approx(10.16)


def test_toy_seams_are_from_memory_and_say_so() -> None:
    # source: from memory: 1.8 to 2.0 mm, 1.5 mm on tight curves, 6 mm allowance
    assert (TOY_SEAM_MM.value, TIGHT_CURVE_MM.value) == ((1.8, 2.0), 1.5)
    assert TOY_ALLOWANCE_MM.value == 6
    for fact in (TOY_SEAM_MM, TIGHT_CURVE_MM, TOY_ALLOWANCE_MM):
        assert fact.certainty is Certainty.MEMORY


def test_badly_fraying_edges_get_10_to_12_mm() -> None:
    # source: from memory: widen to 10 to 12 mm and seal the edge before turning
    assert {grade: fact.value for grade, fact in ALLOWANCE_BY_FRAY_MM.items()} == {3: 10, 4: 12}


@pytest.mark.parametrize("construction", ["jersey", "fleece", "felt", "leather"])
def test_knits_fleece_felt_and_leather_do_not_fray(construction: str) -> None:
    # source: trade figure (knit, fleece), common practice (felt, leather)
    assert advise(Cloth(construction=construction)).edge.finish == "none"


def test_leather_needles_are_for_real_leather_only() -> None:
    # source: trade figure: wedge points for real leather and suede, not woven imitations
    real = Cloth(fibres=(("leather", 100.0),), construction="suede")
    imitation = Cloth(fibres=(("polyester", 100.0),), construction="suede")
    assert advise(real).needle.point == "leather"
    assert advise(imitation).needle.point != "leather"

import pytest

from inventory.advice.needles import (
    NM_BY_US,
    nm_of_us,
    stitch_length_mm,
    stitches_per_inch,
    us_of_nm,
)
from inventory.advice.problems import BadFigure
from tests.inventory.advice.cloths import advice


@pytest.mark.parametrize(
    ("words", "mass_g_m2", "point", "size_nm"),
    [
        (("cotton 100", "plain-weave"), 115, "universal", (65, 75)),
        (("wool 100", "twill"), 250, "universal", (80, 90)),
        (("wool 100", "twill"), 400, "universal", (100, 110)),
        (("silk 100", "plain-weave"), 60, "microtex", (60, 70)),
        (("polyester 100", "satin"), 120, "microtex", (60, 75)),
        (("cotton 100", "jersey"), 140, "ball", (70, 80)),
        (("cotton 100", "jersey"), 180, "ball", (75, 90)),
        (("cotton 95 elastane 5", "jersey"), 200, "stretch", (75, 90)),
        (("cotton 100", "denim"), 220, "jeans", (70, 90)),
        (("cotton 100", "denim"), 340, "jeans", (100, 110)),
        (("cotton 100", "denim"), 450, "jeans", (110, 140)),
        (("leather 100", "leather"), None, "leather", (75, 110)),
        (("polyester 100", "suede"), None, "microtex", (70, 90)),
        (("wool 100", "sweater-knit"), 400, "ball", (90, 100)),
        (("polyester 100", "fleece"), 250, "ball", (75, 90)),
        ((), None, "universal", (70, 80)),
    ],
)
def test_the_cloth_chooses_point_and_size(
    words: tuple[str, ...], mass_g_m2: float | None, point: str, size_nm: tuple[int, int]
) -> None:
    needle = advice(*words, mass_g_m2=mass_g_m2).needle
    assert (needle.point, needle.size_nm) == (point, size_nm)


def test_silk_and_jersey_are_clearly_different() -> None:
    silk, jersey = advice("silk 100", "plain-weave"), advice("cotton 100", "jersey")
    assert silk.needle.point != jersey.needle.point
    assert silk.interfacing.attach != jersey.interfacing.attach
    assert silk.wash.method != jersey.wash.method
    assert silk.press.steam != jersey.press.steam
    assert silk.marking.tool != jersey.marking.tool
    assert silk.holding.tool != jersey.holding.tool


def test_sizes_are_given_in_both_numbers() -> None:
    needle = advice("cotton 100", "plain-weave", mass_g_m2=115).needle
    assert needle.size_us == (9, 11)


def test_both_ways_through_the_needle_table_agree() -> None:
    for us in NM_BY_US:
        assert us_of_nm(nm_of_us(us)) == us


def test_needles_that_are_not_sold_are_refused() -> None:
    with pytest.raises(BadFigure):
        nm_of_us(13)
    with pytest.raises(BadFigure):
        us_of_nm(85)


@pytest.mark.parametrize("bad", [0, -1, float("nan"), float("inf")])
def test_a_stitch_has_a_length(bad: float) -> None:
    with pytest.raises(BadFigure):
        stitch_length_mm(bad)
    with pytest.raises(BadFigure):
        stitches_per_inch(bad)

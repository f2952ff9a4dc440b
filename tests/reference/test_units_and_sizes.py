"""Units against pint and published figures."""

import pint
import pytest

from shared.units import MM_PER, format_area, g_per_m2, oz_per_yd2, parse_length

registry = pint.UnitRegistry()


@pytest.mark.parametrize(
    ("ours", "theirs"), [("mm", "mm"), ("cm", "cm"), ("m", "m"), ("in", "inch")]
)
def test_lengths_agree_with_pint(ours, theirs):
    # source: pint's unit registry; the inch of 25.4 mm is the 1959 agreement
    assert MM_PER[ours] == pytest.approx(registry.Quantity(1, theirs).to("mm").magnitude, rel=1e-12)


def test_mass_per_area_agrees_with_pint():
    # source: pint's unit registry
    pints = registry.Quantity(1, "oz/yard**2").to("g/m**2").magnitude
    assert g_per_m2(1) == pytest.approx(pints, rel=1e-9)


def test_an_ounce_a_square_yard_in_grams():
    # source: 28.349523 g / 0.83612736 m2 = 33.906 g/m2, apparel-science tables
    assert g_per_m2(1) == pytest.approx(33.906, abs=5e-4)


@pytest.mark.parametrize(
    ("oz_yd2", "expected"),
    [(4, 136), (5, 170), (6, 203), (8, 271), (10, 339), (12, 407), (16, 542)],
)
def test_the_trade_table_of_cloth_weights(oz_yd2, expected):
    # source: trade conversion table of cloth weights, recomputed
    assert round(g_per_m2(oz_yd2)) == expected


def test_150_g_per_m2_in_ounces():
    # source: the same table, worked backwards
    assert oz_per_yd2(150) == pytest.approx(4.42, abs=0.005)


def test_a4_is_read_from_centimetres():
    # source: ISO 216, A4 is 210 x 297 mm
    assert (parse_length("21", "cm"), parse_length("29,7 cm", "in")) == (210, 297)


def test_us_letter_is_read_from_inches():
    # source: ANSI Y14.1, Letter is 8.5 x 11 in = 215.9 x 279.4 mm
    assert parse_length("8 1/2", "in") == pytest.approx(215.9)
    assert parse_length("11 in", "cm") == pytest.approx(279.4)


def test_a_fat_quarter():
    # source: trade cut of 18 x 22 in = 396 in2 = 2554.8 cm2
    area_mm2 = parse_length("18", "in") * parse_length("22", "in")
    assert area_mm2 / 100 == pytest.approx(2554.8, abs=0.05)
    assert format_area(area_mm2, "in") == "396 in²"

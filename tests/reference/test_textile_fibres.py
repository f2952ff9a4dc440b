"""Fibre names, agreed allowances and heat limits against the published tables."""

import pytest

from inventory.advice.blends import allowance_pct, stated_pct
from inventory.advice.facts import Certainty
from inventory.advice.fibres import FIBRES, fibre_named


@pytest.mark.parametrize(
    ("fibre", "form", "pct"),
    [
        ("wool", "combed", 18.25),
        ("wool", "carded", 17.00),
        ("cashmere", "combed", 18.25),
        ("mohair", "carded", 17.00),
        ("animal hair", "combed", 18.25),
        ("horsehair", "combed", 16.00),
        ("horsehair", "carded", 15.00),
        ("silk", "", 11.00),
        ("cotton", "", 8.50),
        ("cotton", "mercerised", 10.50),
        ("kapok", "", 10.90),
        ("flax", "", 12.00),
        ("hemp", "", 12.00),
        ("jute", "", 17.00),
        ("ramie", "", 8.50),
        ("abaca", "", 14.00),
        ("sisal", "", 14.00),
        ("acetate", "", 9.00),
        ("triacetate", "", 7.00),
        ("cupro", "", 13.00),
        ("modal", "", 13.00),
        ("viscose", "", 13.00),
        ("lyocell", "", 13.00),
        ("protein", "", 17.00),
        ("acrylic", "", 2.00),
        ("modacrylic", "", 2.00),
        ("chlorofibre", "", 2.00),
        ("polyamide", "staple", 6.25),
        ("polyamide", "filament", 5.75),
        ("polyester", "", 1.50),
        ("polyethylene", "", 1.50),
        ("polypropylene", "", 2.00),
        ("polyurethane", "staple", 3.50),
        ("polyurethane", "filament", 3.00),
        ("elastane", "", 1.50),
        ("elastodiene", "", 1.00),
        ("elastomultiester", "", 1.50),
        ("polylactide", "", 1.50),
        ("metallised", "", 2.00),
        ("paper", "", 13.75),
    ],
)
def test_agreed_allowances(fibre: str, form: str, pct: float) -> None:
    # source: French decree of 24 June 1998 (ECOC9800073A), annex II
    assert allowance_pct(fibre, form) == pct
    facts = {each.form: each.pct for each in FIBRES[fibre].allowances}
    assert facts[form].certainty is Certainty.PUBLISHED


def test_the_carded_figure_holds_when_the_yarn_is_not_known() -> None:
    # source: French decree of 24 June 1998, annex II, note 1
    assert allowance_pct("wool") == 17.00


@pytest.mark.parametrize("fibre", ["elastolefin", "aramid", "vinylal", "fluorofibre"])
def test_allowances_that_were_not_read_say_so(fibre: str) -> None:
    # source: from memory; later EU additions and rows not in the decree that was read
    assert FIBRES[fibre].allowances[0].pct.certainty is Certainty.MEMORY


@pytest.mark.parametrize(
    ("form", "wool_pct", "polyester_pct"),
    [("carded", 63.36, 36.64), ("combed", 63.60, 36.40)],
)
def test_stated_percentages_of_a_dry_weighed_blend(
    form: str, wool_pct: float, polyester_pct: float
) -> None:
    # source: worked check 8: dry 60 g wool and 40 g polyester, allowances of the decree
    stated = stated_pct([("wool", form, 60), ("polyester", "", 40)])
    assert stated == pytest.approx((wool_pct, polyester_pct), abs=0.005)


@pytest.mark.parametrize(
    ("eu", "us"),
    [
        # source: French decree of 1998, row 30, prints both names as one entry
        ("polyamide", "nylon"),
        # source: 68 Federal Register 3813 and 67 Federal Register 70835
        ("elastolefin", "lastol"),
        ("elastomultiester", "elasterell-p"),
        # source: trade figures
        ("elastane", "spandex"),
        ("viscose", "rayon"),
        # source: from memory, 16 CFR 303
        ("flax", "linen"),
        ("polypropylene", "olefin"),
        ("polyethylene", "olefin"),
        ("protein", "azlon"),
    ],
)
def test_us_names(eu: str, us: str) -> None:
    assert FIBRES[eu].us_name == us
    assert fibre_named(us).us_name == us


@pytest.mark.parametrize(
    "name",
    [
        "wool",
        "alpaca",
        "llama",
        "camel",
        "cashmere",
        "mohair",
        "angora",
        "vicuna",
        "yak",
        "guanaco",
        "silk",
        "cotton",
        "kapok",
        "flax",
        "jute",
        "abaca",
        "ramie",
        "sisal",
        "acetate",
    ],
)
def test_names_of_the_eu_list(name: str) -> None:
    # source: Directive 2008/121/EC, annex I
    assert fibre_named(name).name == name


def test_true_hemp_is_the_eu_name_of_hemp() -> None:
    # source: Directive 2008/121/EC, annex I, row 8
    assert fibre_named("true hemp").label == "True hemp"


@pytest.mark.parametrize(
    ("fibre", "degrees_c", "dots"),
    [
        ("flax", 230, 3),
        ("cotton", 204, 3),
        ("viscose", 190, 2),
        ("triacetate", 200, 2),
        ("wool", 148, 2),
        ("silk", 148, 2),
        ("polyester", 148, 2),
        ("polyamide", 135, 1),
        ("acrylic", 135, 1),
        ("acetate", 143, 1),
        ("elastane", 135, 1),
    ],
)
def test_iron_heat_found_in_trade_tables(fibre: str, degrees_c: int, dots: int) -> None:
    # source: trade figures, no published source; the dots are the ceiling whatever the table
    found = FIBRES[fibre].iron_found_c
    assert found is not None
    assert (found.value, found.certainty) == (degrees_c, Certainty.TRADE)
    assert FIBRES[fibre].iron_dots.value == dots


def test_the_ageing_that_was_read_is_published() -> None:
    # source: US National Park Service, Conserve O Gram 16/4, 2002: nylon yellows
    # source: M. T. Horswill, PhD thesis, 1993: silk of 1850 to 1930 was weighted
    for fibre, words in (("polyamide", "yellows"), ("silk", "1850 to 1930")):
        (fact,) = [each for each in FIBRES[fibre].ageing if words in each.value]
        assert fact.certainty is Certainty.PUBLISHED

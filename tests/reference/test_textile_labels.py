"""Care-label limits against the tables of the marks and the US rule."""

import pytest

from inventory.advice.advise import advise
from inventory.advice.care_water import fahrenheit, water_class
from inventory.advice.cloth import Cloth
from inventory.advice.label import (
    BLEACH_MARKS,
    DRY_MARKS,
    PROFESSIONAL_MARKS,
    WASH_MARKS,
    parse_label,
    read_mark,
)
from inventory.advice.label_limits import TUMBLE_C, dots_ceiling_c, iron_limit, wash_limit
from inventory.advice.methods import WASH_ORDER, DryMethod


@pytest.mark.parametrize(
    ("mark", "method", "max_c"),
    [
        ("60", "machine", 60),
        ("60-mild", "machine-mild", 60),
        ("40", "machine", 40),
        ("40-mild", "machine-mild", 40),
        ("40-very-mild", "machine-very-mild", 40),
        ("30", "machine", 30),
        ("30-mild", "machine-mild", 30),
        ("30-very-mild", "machine-very-mild", 30),
        ("no", "none", None),
    ],
)
def test_the_tub_and_its_bars(mark: str, method: str, max_c: int | None) -> None:
    # source: GINETEX, Table of textile care symbols (variants and processes)
    limit = wash_limit(mark, None)
    assert (limit.method, limit.max_c) == (method, max_c)


@pytest.mark.parametrize(("mark", "max_c"), [("95", 95), ("70", 70), ("50-mild", 50)])
def test_the_tubs_that_are_only_trade_figures(mark: str, max_c: int) -> None:
    # source: trade figure; in the tables of the standard, not on the GINETEX short sheet
    assert wash_limit(mark, None).max_c == max_c


def test_the_hand_wash_mark_of_2012_is_forty_degrees() -> None:
    # source: GINETEX, Table of textile care symbols (a trade page prints 30 °C instead)
    assert wash_limit("hand", 2012).max_c == 40


def test_the_cool_hand_wash_mark_of_2023_is_thirty_degrees() -> None:
    # source: BOKEN, 28 May 2024, on JIS L 0001:2024 (ISO 3758:2023 says ambient temperature)
    assert wash_limit("hand-cool", 2023).max_c == 30


def test_fewer_bars_are_never_milder() -> None:
    # source: GINETEX: no bar normal, one mild, two very mild
    ranks = [
        WASH_ORDER[wash_limit(mark, None).method] for mark in ("40-very-mild", "40-mild", "40")
    ]
    assert ranks == sorted(ranks)


@pytest.mark.parametrize(
    ("edition", "dots", "max_c"),
    [
        # source: GINETEX, Table of textile care symbols (ISO 3758:2012)
        (2012, 1, 110),
        (2012, 2, 150),
        (2012, 3, 200),
        # source: BOKEN and the Cabinet Office committee note on JIS L 0001:2024
        (2023, 1, 120),
        (2023, 2, 160),
        (2023, 3, 210),
        # the lower edition holds while the edition is not known
        (None, 1, 110),
        (None, 2, 150),
        (None, 3, 200),
    ],
)
def test_iron_dots_by_edition(edition: int | None, dots: int, max_c: int) -> None:
    label = parse_label(f"iron={dots}", edition)
    assert iron_limit(label.iron or "", label.edition).max_c == max_c


@pytest.mark.parametrize(("dots", "degrees_f"), [(1, 230), (2, 302), (3, 392)])
def test_iron_dots_in_fahrenheit_in_2012(dots: int, degrees_f: float) -> None:
    # source: GINETEX: 110 °C (230 °F), 150 °C (302 °F), 200 °C (392 °F)
    assert fahrenheit(dots_ceiling_c(dots, 2012)) == pytest.approx(degrees_f)


@pytest.mark.parametrize(("dots", "degrees_f"), [(1, 248), (2, 320), (3, 410)])
def test_iron_dots_in_fahrenheit_in_2023(dots: int, degrees_f: float) -> None:
    # source: notes on JIS L 0001:2024: 120 °C (248 °F), 160 °C (320 °F), 210 °C (410 °F)
    assert fahrenheit(dots_ceiling_c(dots, 2023)) == pytest.approx(degrees_f)


def test_one_dot_means_no_steam_in_2012() -> None:
    # source: GINETEX, Table of textile care symbols
    assert not iron_limit("1", 2012).steam
    assert not iron_limit("1", None).steam


def test_one_dot_does_not_forbid_steam_in_2023_unless_it_is_crossed_out() -> None:
    # source: notice of the changes in ISO 3758:2023 (test house, 2024)
    assert iron_limit("1", 2023).steam
    assert not iron_limit("1-no-steam", 2023).steam


@pytest.mark.parametrize(("edition", "max_c"), [(2012, 150), (2023, 160), (None, 150)])
def test_two_dots_all_the_way_through(edition: int | None, max_c: int) -> None:
    # source: worked check 7 on the two editions
    cloth = Cloth(fibres=(("cotton", 100.0),), label=parse_label("iron=2", edition))
    assert advise(cloth).press.max_c == max_c


@pytest.mark.parametrize(("method", "max_c"), [(DryMethod.TUMBLE, 80), (DryMethod.TUMBLE_LOW, 60)])
def test_tumble_dots(method: DryMethod, max_c: int) -> None:
    # source: GINETEX: two dots 80 °C, one dot 60 °C
    assert TUMBLE_C[method].value == max_c


def test_there_are_eight_marks_for_natural_drying() -> None:
    # source: GINETEX: line, drip line, flat, drip flat, each also in the shade
    natural = [value for value, _ in DRY_MARKS if "tumble" not in value]
    assert len(natural) == 8


def test_there_are_three_bleach_marks() -> None:
    # source: GINETEX: any bleach, oxygen bleach only, none
    assert [value for value, _ in BLEACH_MARKS] == ["any", "oxygen", "no"]


@pytest.mark.parametrize("mark", ["P", "F", "W", "P-mild", "F-mild", "W-mild", "W-very-mild"])
def test_the_professional_marks_and_their_bars(mark: str) -> None:
    # source: GINETEX: P and F with at most one bar, W with at most two
    assert mark in dict(PROFESSIONAL_MARKS)
    assert "P-very-mild" not in dict(PROFESSIONAL_MARKS)


def test_every_tub_but_two_has_its_bars_as_published() -> None:
    # source: GINETEX: 60 has one bar at most, 40 and 30 have two at most
    marks = {value for value, _ in WASH_MARKS}
    assert {"60-very-mild", "95-mild", "70-mild"} & marks == set()


@pytest.mark.parametrize(
    ("celsius", "degrees_f", "water"),
    [(30, 86.0, "cold"), (40, 104.0, "warm"), (50, 122.0, "hot"), (60, 140.0, "hot")],
)
def test_us_water_by_temperature(celsius: float, degrees_f: float, water: str) -> None:
    # source: worked check 9; bounds of 16 CFR 423 since 2000 (numbers are trade figures)
    assert fahrenheit(celsius) == pytest.approx(degrees_f)
    assert water_class(celsius) == water


@pytest.mark.parametrize(
    ("degrees_f", "water"),
    [
        (86, "cold"),
        (86.5, "warm"),
        (87, "warm"),
        (111, "warm"),
        (111.5, "hot"),
        (112, "hot"),
        (145, "hot"),
        (146, None),
    ],
)
def test_no_water_falls_through_the_gaps(degrees_f: float, water: str | None) -> None:
    # source: bounds of 16 CFR 423: cold to 86 °F, warm to 111 °F, hot to 145 °F
    assert water_class((degrees_f - 32) * 5 / 9 - 1e-9) == water


@pytest.mark.parametrize(("water", "tub"), [("hot", "50"), ("warm", "40"), ("cold", "30")])
def test_us_words_on_the_plain_language_card(water: str, tub: str) -> None:
    # source: US Federal Trade Commission, care card: hot 50, warm 40, cold 30 °C
    assert read_mark("wash", f"machine wash {water}") == tub

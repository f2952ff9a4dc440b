import pytest

from inventory.advice.label import MARKS, CareLabel, Edition, parse_label, read_mark
from inventory.advice.label_limits import dry_limit, iron_limit, wash_limit
from inventory.advice.label_words import WORDS
from inventory.advice.methods import DryMethod, WashMethod
from inventory.advice.problems import BadLabel, UnknownName


def test_a_label_is_read_from_pairs() -> None:
    label = parse_label("wash=30-mild,iron=2,bleach=no,tumble=no,professional=P")
    assert label == CareLabel("30-mild", "no", "no-tumble", "2", "P", None)


def test_blanks_and_capitals_do_not_matter() -> None:
    assert parse_label(" Wash = 40 , IRON=1 ").wash == "40"


def test_an_empty_text_is_a_blank_label() -> None:
    assert parse_label("").is_blank


def test_words_of_the_us_rule_are_understood() -> None:
    label = parse_label("wash=Machine wash warm,dry=Tumble dry low,iron=cool iron")
    assert (label.wash, label.dry, label.iron) == ("40", "tumble-low", "1")


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("wash", "should read like"),
        ("wash=", "should read like"),
        ("wash=40,wash=30", "twice"),
        ("tumble=no,dry=line", "twice"),
    ],
)
def test_text_that_is_no_label_is_refused(text: str, words: str) -> None:
    with pytest.raises(BadLabel, match=words):
        parse_label(text)


def test_an_unknown_part_or_mark_is_refused_with_names() -> None:
    with pytest.raises(UnknownName, match="iron"):
        parse_label("irn=2")
    with pytest.raises(UnknownName, match="30-mild"):
        parse_label("wash=30-mld")
    with pytest.raises(UnknownName, match="1-no-steam"):
        parse_label("iron=7")


def test_an_edition_that_never_was_is_refused() -> None:
    with pytest.raises(BadLabel, match="2012 or 2023"):
        parse_label("iron=2", 2019)


def test_every_other_word_stands_for_a_mark_that_exists() -> None:
    for part, words in WORDS.items():
        values = {value for value, _ in MARKS[part]}
        assert set(words.values()) <= values


@pytest.mark.parametrize("edition", [None, 2012, 2023])
def test_every_mark_has_a_limit(edition: Edition | None) -> None:
    for part, limit in (("wash", wash_limit), ("iron", iron_limit)):
        for value, _ in MARKS[part]:
            assert limit(read_mark(part, value), edition) is not None
    for value, _ in MARKS["dry"]:
        assert dry_limit(value) is not None


def test_more_bars_are_milder() -> None:
    methods = [wash_limit(mark, None).method for mark in ("40", "40-mild", "40-very-mild")]
    assert methods == [
        WashMethod.MACHINE,
        WashMethod.MACHINE_MILD,
        WashMethod.MACHINE_VERY_MILD,
    ]


def test_hand_washing_is_cooler_while_the_edition_is_not_known() -> None:
    assert wash_limit("hand", None).max_c == 30
    assert wash_limit("hand", 2012).max_c == 40
    assert wash_limit("hand-cool", 2023).max_c == 30


def test_drying_marks_tell_shade_and_dripping() -> None:
    assert dry_limit("drip-flat-shade").method is DryMethod.FLAT
    assert dry_limit("drip-flat-shade").shade
    assert dry_limit("drip-flat-shade").drip
    assert not dry_limit("line").shade

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shared.errors import LengthError
from shared.units import format_length, inch_fraction, length_for_field, parse_length


@pytest.mark.parametrize(
    ("text", "unit", "length_mm"),
    [
        ("46", "cm", 460),
        ("46.5", "cm", 465),
        ("46,5 cm", "cm", 465),
        (" 460 mm ", "in", 460),
        ("1 m", "cm", 1000),
        ("18 3/8", "in", 466.725),
        ("18-3/8 in", "cm", 466.725),
        ("18⅜", "in", 466.725),
        ('18 3/8"', "cm", 466.725),
        ("3/8", "in", 9.525),
        ("½ in", "cm", 12.7),
    ],
)
def test_lengths_are_read_as_people_write_them(text, unit, length_mm):
    assert parse_length(text, unit) == pytest.approx(length_mm)


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("", "not a length"),
        ("wide", "not a length"),
        ("-4", "negative"),
        ("0", "more than nothing"),
        ("5 furlong", "not a unit"),
        ("18 3/0", "over nothing"),
        ("183/8", "two ways"),
        ("99999", "ten metres"),
        ("1e5", "not a length"),
        ("nan", "not a length"),
    ],
)
def test_a_length_that_cannot_be_read_says_what_is_wrong(text, words):
    with pytest.raises(LengthError, match=words):
        parse_length(text, "in")


@given(st.integers(min_value=1, max_value=8 * 390))
def test_eighths_of_an_inch_survive_writing_and_reading(eighths):
    length_mm = eighths * 25.4 / 8
    assert parse_length(inch_fraction(length_mm), "in") == pytest.approx(length_mm, abs=1e-3)


@given(st.floats(min_value=0.5, max_value=9000), st.sampled_from(["cm", "in"]))
def test_what_a_field_shows_reads_back_the_same(length_mm, unit):
    assert parse_length(length_for_field(length_mm, unit), unit) == pytest.approx(
        length_mm, abs=0.002
    )


def test_lengths_are_written_for_reading():
    assert format_length(466.725, "cm") == "46.7 cm"
    assert format_length(466.725, "in") == "18 3/8 in"
    assert format_length(25.4 * 24, "in") == "24 in"


@pytest.mark.parametrize("text", ["18.5 3/8", "18 19/8", "18 8/8"])
def test_a_mixed_up_fraction_is_refused(text: str) -> None:
    with pytest.raises(LengthError, match="mixes up"):
        parse_length(text, "in")

"""The care label by tapping, or by its words."""

import re

import pytest
from django.template.loader import render_to_string

from inventory.advice.label import MARKS
from inventory.advice.problems import BadLabel
from inventory.forms.label_text import marks_in
from tests import builders

EVERY_MARK = [(part, mark) for part, marks in MARKS.items() for mark, _ in marks]


@pytest.fixture
def garment(workshop):
    return builders.garment(builders.collection(workshop), {"polyester": 100})


@pytest.fixture
def facts(garment):
    return {
        "collection": garment.collection_id,
        "kind": "shirt",
        "status": "arrived",
        "surface": "plain",
        "fibre_1": "polyester",
        "construction": "plain-weave",
    }


def describe(maker, garment, facts):
    page = maker.post(f"/garments/{garment.pk}/describe/", facts)
    garment.refresh_from_db()
    return page


def drawn(part, mark):
    return render_to_string("inventory/mark_svg.html", {"part": part, "mark": mark})


def test_every_mark_has_a_drawing_of_its_own():
    drawings = {" ".join(drawn(*each).split()) for each in EVERY_MARK}
    assert len(drawings) == len(EVERY_MARK)
    assert not any("style=" in drawing for drawing in drawings)


@pytest.mark.parametrize("temperature", ["30", "40", "50", "60", "70", "95"])
def test_a_tub_shows_its_number(temperature):
    assert f">{temperature}</text>" in drawn("wash", temperature)


@pytest.mark.parametrize(("mark", "bars"), [("40", 0), ("40-mild", 1), ("40-very-mild", 2)])
def test_a_mild_mark_has_its_bars(mark, bars):
    below = re.findall(r"M11 [34]\d(?:\.5)?h26", drawn("wash", mark))
    assert len(below) == bars


@pytest.mark.parametrize(("mark", "dots"), [("1", 1), ("2", 2), ("3", 3), ("no", 0)])
def test_an_iron_has_its_dots(mark, dots):
    assert drawn("iron", mark).count('class="dot"') == dots


def test_the_describe_page_offers_every_mark_as_a_radio_button_with_words(maker, garment):
    page = maker.get(f"/garments/{garment.pk}/describe/").content.decode()
    for part, mark in EVERY_MARK:
        assert re.search(f'<input type="radio" name="label_{part}" value="{mark}"', page)
    assert page.count('class="care-mark"') == len(EVERY_MARK)
    assert "Up to 40\N{NO-BREAK SPACE}°C, very mild" in page
    assert "style=" not in page


def test_a_mark_that_is_set_stays_set_on_the_page(maker, garment, facts):
    describe(maker, garment, facts | {"label_wash": "40-mild", "label_bleach": "no"})
    assert garment.label_marks == {"wash": "40-mild", "bleach": "no"}
    page = maker.get(f"/garments/{garment.pk}/describe/").content.decode()
    chosen = re.findall(r'name="label_(\w+)" value="([^"]+)"[^>]*checked', page)
    assert chosen == [("wash", "40-mild"), ("bleach", "no")]


def test_the_garment_page_draws_the_label_with_words(maker, garment, facts):
    describe(maker, garment, facts | {"label_wash": "no", "label_professional": "P-mild"})
    page = maker.get(f"/garments/{garment.pk}/").content.decode()
    assert page.count('class="care-mark"') == 2
    assert "Dry clean, mild" in page


def test_a_mark_that_does_not_exist_is_refused(maker, garment, facts):
    page = describe(maker, garment, facts | {"label_wash": "1000"})
    assert "label_wash" in page.context["form"].errors
    assert garment.label_marks == {}


@pytest.mark.parametrize(("edition", "max_c"), [("", 150), ("2012", 150), ("2023", 160)])
def test_the_edition_sets_the_limit_of_two_dots(maker, garment, facts, edition, max_c):
    describe(maker, garment, facts | {"label_iron": "2", "label_edition": edition})
    assert garment.label_edition == (int(edition) if edition else None)
    page = maker.get(f"/garments/{garment.pk}/advice/")
    assert page.context["advice"].press.max_c == max_c


@pytest.mark.parametrize(
    ("words", "marks"),
    [
        (
            "Machine wash warm, gentle cycle. Only non-chlorine bleach when needed. "
            "Tumble dry low. Cool iron.",
            {"wash": "40-very-mild", "bleach": "oxygen", "dry": "tumble-low", "iron": "1"},
        ),
        ("DRY CLEAN ONLY", {"professional": "P"}),
        ("Hand wash cold; dry flat", {"wash": "hand-cool", "dry": "flat"}),
        ("Machine wash cold with like colors. Do not bleach", {"wash": "30", "bleach": "no"}),
        ("Do not tumble dry. Line dry.", {"dry": "line"}),
        ("Line dry; do not tumble dry", {"dry": "line"}),
        ("Do not wash / do not dryclean", {"wash": "no", "professional": "no"}),
        ("", {}),
    ],
)
def test_the_words_of_a_label_are_read_as_marks(words, marks):
    assert marks_in(words) == marks


@pytest.mark.parametrize(
    ("words", "said"),
    [
        ("Machine wsh warm", "Nearest: machine wash warm"),
        ("Do not bleach. Handle with love", "handle with love"),
        ("Do not wash. Hand wash.", "two things"),
        ("Tumble dry low. Do not tumble dry.", "two things"),
        ("warm", "“warm” is not understood"),
    ],
)
def test_words_that_are_not_understood_are_named(words, said):
    with pytest.raises(BadLabel, match=said):
        marks_in(words)


def test_a_label_in_words_is_saved_as_marks(maker, garment, facts):
    describe(maker, garment, facts | {"label_words": "Machine wash warm. Tumble dry low."})
    assert garment.label_marks == {"wash": "40", "dry": "tumble-low"}


def test_words_against_a_mark_are_not_guessed_at(maker, garment, facts):
    page = describe(maker, garment, facts | {"label_wash": "60", "label_words": "Hand wash"})
    assert "Keep one of them" in str(page.context["form"].errors["label_words"])
    assert garment.label_marks == {}


def test_words_that_cannot_be_read_are_kept_for_mending(maker, garment, facts):
    page = describe(maker, garment, facts | {"label_words": "Machine wsh warm"})
    assert "Nearest" in str(page.context["form"].errors["label_words"])
    assert "Machine wsh warm" in page.content.decode()

"""The tests by hand and what they change."""

import pytest

from inventory.models import Garment
from tests import builders


@pytest.fixture
def garment(workshop):
    return builders.garment(builders.collection(workshop), construction="jersey")


def found_by_hand(maker, garment, **found):
    first = {"across_relaxed_mm": "10", "along_relaxed_mm": "10"}
    return maker.post(f"/garments/{garment.pk}/tests/", first | found, follow=True)


def test_the_page_walks_through_each_test(maker, garment):
    page = maker.get(f"/garments/{garment.pk}/tests/").content.decode()
    for words in ("light behind it", "Rub the edge ten times", "damp white cloth", "two pins"):
        assert words in page
    assert "Threads part or small holes grow under a gentle tug." in page


def test_everything_may_be_skipped(maker, garment):
    page = found_by_hand(maker, garment)
    assert "Nothing on the garment is new" in page.content.decode()
    garment.refresh_from_db()
    assert (garment.fragility, garment.fray, garment.mass_g_m2) == (None, None, None)


def test_a_grade_is_written_and_the_change_of_advice_is_said(maker, garment):
    page = found_by_hand(maker, garment, fragility="3", fray="4")
    garment.refresh_from_db()
    assert (garment.fragility, garment.fray) == (3, 4)
    changed = {change.part for change in page.context["changes"].parts}
    assert {"wash", "edge"} <= changed
    words = page.content.decode()
    assert "not tried" in words
    assert "3 of 4" in words
    assert page.context["facts"][0] == ("Fragility", "not tried", "3 of 4")


def test_one_test_leaves_the_others_as_they_were(maker, garment):
    Garment.objects.update(fragility=1, fray=2, stretch_across_pct=30)
    found_by_hand(maker, garment, fray="3")
    garment.refresh_from_db()
    assert (garment.fragility, garment.fray, garment.stretch_across_pct) == (1, 3, 30)


@pytest.mark.parametrize(
    ("relaxed", "stretched", "pct"),
    [("10", "12.5", 25), ("100 mm", "150 mm", 50), ("4 in", "5 in", 25), ("10", "10", 0)],
)
def test_the_stretch_is_worked_out(maker, garment, relaxed, stretched, pct):
    found = {"across_relaxed_mm": relaxed, "across_stretched_mm": stretched}
    found_by_hand(maker, garment, **found)
    garment.refresh_from_db()
    assert garment.stretch_across_pct == pytest.approx(pct)
    assert garment.stretch_along_pct is None


def test_inches_are_read_as_inches(maker, garment, workshop):
    workshop.members.update(units="in")
    found_by_hand(maker, garment, along_relaxed_mm="4", along_stretched_mm="5 1/2")
    garment.refresh_from_db()
    assert garment.stretch_along_pct == pytest.approx(37.5)


def test_the_mass_of_a_measured_panel(maker, garment):
    panel = builders.panel(garment, 500, 600)
    found_by_hand(maker, garment, mass_g="48", weighed=panel.pk)
    garment.refresh_from_db()
    assert garment.mass_g_m2 == pytest.approx(160)


def test_the_mass_of_a_piece_of_a_size(maker, garment):
    found_by_hand(maker, garment, mass_g="12", width_mm="30", length_mm="40")
    garment.refresh_from_db()
    assert garment.mass_g_m2 == pytest.approx(100)


def test_colour_that_runs_forbids_washing(maker, garment):
    page = found_by_hand(maker, garment, colour="bled")
    garment.refresh_from_db()
    assert garment.troubles == ["bled"]
    assert "Must not, from now on" in page.content.decode()
    assert page.context["facts"] == [("Colour", "not known to run", "it runs")]


def test_colour_that_stays_is_no_promise(maker, garment):
    Garment.objects.update(troubles=["bled"])
    found_by_hand(maker, garment, colour="fast")
    garment.refresh_from_db()
    assert garment.troubles == ["bled"]


@pytest.mark.parametrize(
    ("found", "field", "words"),
    [
        ({"across_stretched_mm": "9"}, "across_stretched_mm", "shorter"),
        ({"across_stretched_mm": "60"}, "across_stretched_mm", "four times"),
        ({"across_stretched_mm": "far"}, "across_stretched_mm", "not a length"),
        ({"along_relaxed_mm": "", "along_stretched_mm": "12"}, "along_relaxed_mm", "at rest"),
        ({"mass_g": "12"}, "width_mm", "size is needed"),
        ({"width_mm": "12"}, "mass_g", "scales"),
        ({"mass_g": "12", "width_mm": "1", "length_mm": "1"}, "mass_g", "no cloth weighs"),
        ({"mass_g": "-2", "width_mm": "10", "length_mm": "10"}, "mass_g", "greater"),
        ({"mass_g": "many"}, "mass_g", "number"),
        ({"fragility": "7"}, "fragility", "not one of the available"),
    ],
)
def test_what_cannot_be_is_named_and_nothing_is_written(maker, garment, found, field, words):
    page = found_by_hand(maker, garment, fray="2", **found)
    assert words in str(page.context["form"].errors[field])
    garment.refresh_from_db()
    assert garment.fray is None


def test_a_panel_and_a_size_are_one_too_many(maker, garment):
    panel = builders.panel(garment)
    page = found_by_hand(maker, garment, mass_g="48", weighed=panel.pk, width_mm="10")
    assert "not both" in str(page.context["form"].errors["weighed"])


def test_a_panel_of_another_garment_was_not_weighed(maker, garment):
    other = builders.panel(builders.garment(garment.collection))
    page = found_by_hand(maker, garment, mass_g="48", weighed=other.pk)
    assert "weighed" in page.context["form"].errors


def test_a_knit_without_stretch_is_said_not_to_agree(maker, garment):
    page = found_by_hand(maker, garment, across_stretched_mm="10.1", along_stretched_mm="10")
    assert "called a knit but was measured without stretch" in page.content.decode()


@pytest.mark.parametrize("asked", ["fragility=9", "fray=x", "mass_g_m2=-1"])
def test_nonsense_in_the_address_leads_back_to_the_tests(maker, garment, asked):
    page = maker.get(f"/garments/{garment.pk}/tests/changed/?{asked}")
    assert page.url == f"/garments/{garment.pk}/tests/"


def test_the_tests_stay_inside_their_workshop(maker, stranger, garment):
    address = f"/garments/{garment.pk}/tests/"
    assert stranger.get(address).status_code == 404
    assert stranger.post(address, {"fray": "4"}).status_code == 404
    assert stranger.get(f"{address}changed/").status_code == 404
    assert maker.post(f"{address}changed/").status_code == 405

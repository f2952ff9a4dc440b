"""The page that lies beside the machine."""

import re

import pytest

from inventory.models import Collection
from inventory.reading import words_of
from inventory.sheet import sheet_of
from tests import builders


@pytest.fixture
def shirt(workshop):
    return builders.garment(builders.collection(workshop), mass_g_m2=120, fragility=1, fray=1)


def advice(maker, garment):
    return maker.get(f"/garments/{garment.pk}/advice/")


def test_must_nots_come_before_what_to_do_and_the_reasons_after(maker, workshop):
    silk = builders.garment(builders.collection(workshop), {"silk": 100})
    page = advice(maker, silk).content.decode()
    places = [page.index(words) for words in (">Must not<", "What to do", "Why, how sure")]
    assert places == sorted(places)


def test_the_work_is_in_its_order_a_sentence_each(maker, shirt):
    rows = advice(maker, shirt).context["rows"]
    assert [row.key for row in rows] == [
        "wash", "dry", "shrink", "press", "interfacing", "marking", "cutting", "holding",
        "needle", "thread", "stitch", "edge",
    ]  # fmt: skip
    assert all(row.part.text.endswith(".") for row in rows)


def test_every_recommendation_says_why_how_sure_and_from_where(maker, shirt):
    page = advice(maker, shirt)
    for row in page.context["rows"]:
        assert row.part.certainty
        assert all(why.source for why in row.part.reasons)
        assert row.part.reasons
    assert re.search(r'<details class="why">', page.content.decode())


def test_what_does_not_agree_is_shown_and_the_safer_side_taken(maker, workshop):
    wool = builders.garment(
        builders.collection(workshop),
        {"wool": 100},
        construction="jersey",
        stretch_across_pct=0,
        label_marks={"wash": "95", "bleach": "any"},
    )
    page = advice(maker, wool)
    assert page.context["advice"].wash.method == "hand"
    words = page.content.decode()
    for said in ("These do not agree", "called a knit", "95 °C", "no bleach is used"):
        assert said in words


def test_a_garment_of_which_nothing_is_known_is_treated_most_gently(maker, workshop):
    bare = builders.garment(builders.collection(workshop), {}, construction="")
    page = advice(maker, bare)
    assert page.context["advice"].wash.method == "spot"
    assert page.context["advice"].press.max_c == 110
    assert "Still missing" in page.content.decode()


def test_the_sources_are_numbered_once_each(shirt):
    sheet = sheet_of(words_of(shirt))
    numbers = [number for number, _ in sheet.sources]
    assert numbers == list(range(1, len(numbers) + 1))
    names = dict(sheet.sources)
    assert len({*names.values()}) == len(names)
    for why in sheet.why:
        assert all(names[number] == source for _, source, number in why.lines)


def test_an_ordinary_garment_fits_on_one_page_with_its_reasons(shirt):
    sheet = sheet_of(words_of(shirt))
    assert (sheet.crowded, sheet.has_reasons) == (False, True)


def test_a_garment_in_every_trouble_gives_up_its_reasons_not_its_page(maker, workshop):
    worst = builders.garment(
        builders.collection(workshop),
        {"wool": 40, "cotton": 35, "silk": 20, "elastane": 5},
        construction="jersey",
        fragility=3,
        stretch_across_pct=1,
        label_marks={"wash": "95", "bleach": "any", "iron": "3"},
        troubles=["mould", "moth", "mothball", "blood", "cream", "smoke", "antique", "bled"],
    )
    sheet = sheet_of(words_of(worst))
    assert (sheet.crowded, sheet.has_reasons) == (True, False)
    words = advice(maker, worst).content.decode()
    assert "do not fit on this page" in words
    assert "Why, how sure" in words  # on the screen they are all there


def test_what_is_missing_leads_to_where_it_is_found(maker, workshop):
    bare = builders.garment(builders.collection(workshop), {}, construction="")
    missing = advice(maker, bare).context["missing"]
    addresses = [part.address.removeprefix(f"/garments/{bare.pk}/") for part in missing]
    assert addresses == [
        "describe/#id_fibre_1",
        "describe/#id_construction",
        "tests/#weight",
        "tests/#fragility",
        "tests/#fray",
        "tests/#stretch",
    ]


def test_a_change_of_the_givers_mind_reaches_the_cloth(maker, workshop):
    kept = builders.collection(workshop, keeps_scent=True)
    garment = builders.garment(kept, {"viscose": 100})
    panel = builders.panel(garment, is_measured_after_wash=False)
    facts = {"name": kept.name, "received_on": "2026-02-03"}
    facts |= {"cut_consent": "yes", "wash_consent": "yes"}
    maker.post(f"/collections/{kept.pk}/allows/", facts)
    assert not Collection.objects.get().keeps_scent
    assert garment.panels.get().usable_area_mm2 < panel.usable_area_mm2


def test_the_advice_asks_the_database_no_more_for_more_panels(
    maker, shirt, django_assert_max_num_queries
):
    for number in range(8):
        builders.panel(shirt, name=f"Part {number}", is_measured_after_wash=False)
    with django_assert_max_num_queries(16):
        advice(maker, shirt)

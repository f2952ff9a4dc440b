import pytest

from inventory.models import Collection, ConditionNote, Garment
from tests import builders


@pytest.fixture
def garment(workshop):
    row = builders.garment(builders.collection(workshop))
    builders.panel(row)
    return row


PAGES = ("", "advice/", "describe/", "photos/add/", "notes/add/", "panels/add/")


@pytest.mark.parametrize("page", PAGES)
def test_every_page_of_a_garment_opens_for_its_workshop_only(maker, stranger, garment, page):
    address = f"/garments/{garment.pk}/{page}"
    answer = maker.get(address).content.decode()
    assert answer.count("<h1") == 1
    assert stranger.get(address).status_code == 404


@pytest.mark.parametrize("step", ["status", "remove", "put-back"])
def test_steps_are_posts_of_the_same_workshop(maker, stranger, garment, step):
    assert maker.get(f"/garments/{garment.pk}/{step}/").status_code == 405
    assert stranger.post(f"/garments/{garment.pk}/{step}/").status_code == 404


def test_nobody_sees_anything_without_logging_in(client, garment):
    for address in ("/", "/garments/", f"/garments/{garment.pk}/", "/garments.csv"):
        assert client.get(address).url.startswith("/log-in/")


def test_the_page_says_what_is_missing(maker, workshop):
    bare = builders.garment(builders.collection(workshop), {}, construction="")
    page = maker.get(f"/garments/{bare.pk}/")
    words = [part.words for part in page.context["missing_for_advice"]]
    assert words[:2] == ["the fibre, or that there is no label", "how the cloth is made"]
    assert [p.words for p in page.context["missing_for_size_check"]] == [
        "at least one measured panel"
    ]


def test_silk_and_knit_jersey_are_told_different_things(maker, workshop):
    box = builders.collection(workshop)
    silk = builders.garment(box, {"silk": 100}, mass_g_m2=60)
    jersey = builders.garment(
        box, {"cotton": 100}, construction="jersey", stretch_across_pct=30, mass_g_m2=160
    )
    answers = [maker.get(f"/garments/{g.pk}/").context["advice"] for g in (silk, jersey)]
    assert [a.needle.point for a in answers] == ["microtex", "ball"]
    assert answers[0].interfacing.text != answers[1].interfacing.text


def test_describing_changes_the_advice_and_the_usable_cloth(maker, garment):
    panel = garment.panels.get()
    panel.is_measured_after_wash = False
    panel.save()
    facts = {
        "collection": garment.collection_id,
        "kind": "shirt",
        "name": "Blue",
        "status": "arrived",
        "surface": "plain",
        "fibre_1": "viscose",
        "construction": "plain-weave",
        "label_wash": "40",
        "label_iron": "2",
        "fragility": "2",
        "repeat_along_mm": "4.5",
    }
    maker.post(f"/garments/{garment.pk}/describe/", facts)
    garment.refresh_from_db()
    assert garment.label_marks == {"wash": "40", "iron": "2"}
    assert (garment.fragility, garment.repeat_along_mm) == (2, 45.0)
    before, after = panel.usable_area_mm2, garment.panels.get().usable_area_mm2
    assert after < before  # viscose shrinks, and the panel was measured before washing


def test_two_windows_on_one_garment_do_not_overwrite_each_other(maker, garment):
    address = f"/garments/{garment.pk}/describe/"
    seen = maker.get(address).context["form"]["seen"].value()
    facts = {"collection": garment.collection_id, "kind": "shirt", "status": "arrived"}
    facts |= {"surface": "plain", "name": "First window", "seen": seen}
    maker.post(address, facts)
    page = maker.post(address, {**facts, "name": "Second window"})
    assert "changed elsewhere" in page.content.decode()
    garment.refresh_from_db()
    assert garment.name == "First window"
    again = page.context["form"]["seen"].value()
    maker.post(address, {**facts, "name": "Second window", "seen": again})
    garment.refresh_from_db()
    assert garment.name == "Second window"


def test_a_note_is_added_and_never_rewritten(maker, garment):
    facts = {"noted_on": "2026-03-01", "grade": 2, "text": "Collar worn thin."}
    maker.post(f"/garments/{garment.pk}/notes/add/", facts)
    maker.post(f"/garments/{garment.pk}/notes/add/", {**facts, "text": "Collar torn."})
    assert [n.text for n in ConditionNote.objects.all()] == ["Collar torn.", "Collar worn thin."]


def test_taking_off_and_putting_back_loses_nothing(maker, garment):
    maker.post(f"/garments/{garment.pk}/remove/")
    assert list(maker.get("/garments/").context["page"]) == []
    assert maker.get(f"/garments/{garment.pk}/").context["garment"].removed_at
    maker.post(f"/garments/{garment.pk}/put-back/")
    assert list(maker.get("/garments/").context["page"]) == [garment]


def test_a_garment_that_something_needs_stays_and_says_why(maker, garment, monkeypatch):
    monkeypatch.setattr("inventory.removal.OBJECTIONS", [lambda g: [f"{g.tag} lies in a lay."]])
    page = maker.post(f"/garments/{garment.pk}/remove/", follow=True)
    assert f"{garment.tag} lies in a lay." in page.content.decode()
    assert Garment.objects.here().filter(pk=garment.pk).exists()


def test_a_collection_at_a_glance(maker, workshop):
    keep = builders.collection(workshop, keeps_scent=True)
    measured = builders.garment(keep, name="One")
    builders.panel(measured, 500, 700)
    builders.garment(keep, name="Two")
    glance = maker.get(keep.get_absolute_url()).context["glance"]
    assert glance.usable_mm2 == pytest.approx(490 * 690)
    assert [g.name for g in glance.unmeasured] == ["Two"]
    assert {g.name for g, _ in glance.not_washed} == {"One", "Two"}


def test_what_the_giver_allows_is_written_down(maker, workshop):
    row = builders.collection(workshop, cut_consent="ask")
    facts = {
        "name": "Shirts",
        "received_on": "2026-02-03",
        "cut_consent": "no",
        "wash_consent": "yes",
    }
    maker.post(f"/collections/{row.pk}/allows/", facts)
    assert Collection.objects.get().cut_consent == "no"
    assert "does not allow cutting" in maker.get(row.get_absolute_url()).content.decode()


@pytest.mark.parametrize(
    ("field", "value", "words"),
    [
        ("mass_g_m2", "9000", "3000"),
        ("stretch_across_pct", "-1", "0"),
        ("repeat_along_mm", "300", "2 m"),
        ("repeat_across_mm", "x", "not a length"),
    ],
)
def test_a_figure_that_cannot_be_is_named_when_describing(maker, garment, field, value, words):
    facts = {"collection": garment.collection_id, "kind": "shirt", "status": "arrived"}
    facts |= {"surface": "plain", field: value}
    page = maker.post(f"/garments/{garment.pk}/describe/", facts)
    assert words in str(page.context["form"].errors[field])

"""A maker's own words beside what the table says."""

import pytest
from django.db import IntegrityError, transaction

from inventory.choices import Recommendation
from inventory.models import AdviceOverride, Panel
from shared.errors import ClothError
from shared.models import Member
from tests import builders

OWN = {"part": "needle", "text": "A 90/14 jeans needle.", "reason": "The hem has four layers."}


@pytest.fixture
def garment(workshop):
    return builders.garment(builders.collection(workshop))


def override(maker, garment, **changed):
    return maker.post(f"/garments/{garment.pk}/overrides/add/", OWN | changed)


def test_own_words_are_shown_as_hers_beside_the_table(maker, garment):
    assert override(maker, garment).url == f"/garments/{garment.pk}/advice/"
    page = maker.get(f"/garments/{garment.pk}/advice/")
    (needle,) = [row for row in page.context["rows"] if row.key == "needle"]
    words = page.content.decode()
    assert (needle.own.text, str(needle.own.made_by)) == (OWN["text"], "maker")
    for said in ("In the words of maker", OWN["reason"], needle.part.text):
        assert said in words


def test_the_garment_page_shows_her_words_too(maker, garment):
    override(maker, garment)
    page = maker.get(f"/garments/{garment.pk}/").content.decode()
    assert OWN["text"] in page
    assert "In the words of maker" in page


def test_words_and_a_reason_are_both_needed(maker, garment):
    page = override(maker, garment, reason=" ")
    assert "reason" in page.context["form"].errors
    assert OWN["text"] in page.content.decode()
    assert not AdviceOverride.objects.exists()


def test_what_must_not_be_done_stays(maker, workshop):
    silk = builders.garment(builders.collection(workshop), {"silk": 100})
    before = maker.get(f"/garments/{silk.pk}/advice/").context["must_not"]
    override(maker, silk, part="press", text="Press it hot.")
    assert maker.get(f"/garments/{silk.pk}/advice/").context["must_not"] == before != []


def test_withdrawn_words_stay_in_the_record(maker, garment):
    override(maker, garment)
    maker.post(f"/overrides/{AdviceOverride.objects.get().pk}/withdraw/")
    page = maker.get(f"/garments/{garment.pk}/advice/")
    assert all(row.own is None for row in page.context["rows"])
    (entry,) = [
        each for each in maker.get(f"/garments/{garment.pk}/").context["timeline"] if each.withdrawn
    ]
    assert entry.text == OWN["text"]
    assert "by maker" in entry.withdrawn


def test_withdrawing_twice_changes_nothing(maker, garment):
    override(maker, garment)
    pk = AdviceOverride.objects.get().pk
    maker.post(f"/overrides/{pk}/withdraw/")
    first = AdviceOverride.objects.get().withdrawn_at
    maker.post(f"/overrides/{pk}/withdraw/")
    assert AdviceOverride.objects.get().withdrawn_at == first


def test_new_words_withdraw_the_ones_before(maker, garment):
    override(maker, garment)
    page = maker.get(f"/garments/{garment.pk}/overrides/add/?part=needle")
    assert OWN["text"] in page.content.decode()
    override(maker, garment, text="A 100/16.")
    standing = AdviceOverride.objects.standing()
    assert [own.text for own in standing] == ["A 100/16."]
    assert AdviceOverride.objects.count() == 2


def test_shrinkage_is_measured_and_never_argued_away(maker, garment):
    page = override(maker, garment, part="shrink")
    assert "part" in page.context["form"].errors


@pytest.mark.parametrize("allowed", [{"wash_consent": "no"}, {"keeps_scent": True}])
def test_the_giver_comes_before_the_maker(maker, workshop, allowed):
    kept = builders.garment(builders.collection(workshop, **allowed))
    page = override(maker, kept, part="wash", text="Wash it at 40 °C.")
    assert "giver does not want it washed" in str(page.context["form"].errors["part"])
    assert not AdviceOverride.objects.exists()


def test_washing_against_the_table_counts_as_shrinking(maker, workshop):
    frail = builders.garment(builders.collection(workshop), fragility=4)
    panel = builders.panel(frail, is_measured_after_wash=False)
    override(maker, frail, part="wash", text="A cool bath in a net.")
    washed = Panel.objects.get().usable_area_mm2
    assert washed < panel.usable_area_mm2
    maker.post(f"/overrides/{AdviceOverride.objects.get().pk}/withdraw/")
    assert Panel.objects.get().usable_area_mm2 == pytest.approx(panel.usable_area_mm2)


def test_overrides_stay_inside_their_workshop(maker, stranger, garment):
    override(maker, garment)
    pk = AdviceOverride.objects.get().pk
    address = f"/garments/{garment.pk}/overrides/add/"
    assert stranger.get(address).status_code == 404
    assert stranger.post(address, OWN).status_code == 404
    assert stranger.post(f"/overrides/{pk}/withdraw/").status_code == 404
    assert maker.get(f"/overrides/{pk}/withdraw/").status_code == 405
    assert AdviceOverride.objects.standing().count() == 1


@pytest.fixture
def own(garment, workshop):
    return {
        "workshop": workshop,
        "garment": garment,
        "made_by": builders.member(workshop, "hand"),
        **OWN,
    }


@pytest.mark.parametrize("changed", [{"part": "hope"}, {"text": ""}, {"reason": ""}])
def test_the_database_refuses_words_without_sense(own, changed):
    with pytest.raises(IntegrityError), transaction.atomic():
        AdviceOverride.objects.create(**own | changed)


def test_the_database_lets_one_stand_a_recommendation(own):
    AdviceOverride.objects.create(**own)
    with pytest.raises(IntegrityError), transaction.atomic():
        AdviceOverride.objects.create(**own)
    AdviceOverride.objects.withdraw(Member.objects.get())
    assert AdviceOverride.objects.create(**own).pk


def test_who_withdrew_is_always_known(own):
    row = AdviceOverride.objects.create(**own)
    with pytest.raises(IntegrityError), transaction.atomic():
        AdviceOverride.objects.filter(pk=row.pk).update(withdrawn_at=row.created_at)


def test_words_are_never_rewritten(own):
    row = AdviceOverride.objects.create(**own)
    row.text = "Something else."
    with pytest.raises(ClothError, match="stays as it was written"):
        row.save()


def test_every_recommendation_on_the_page_but_shrinkage_can_be_overridden(maker, garment):
    rows = maker.get(f"/garments/{garment.pk}/advice/").context["rows"]
    assert {row.key for row in rows if row.may_be_overridden} == set(Recommendation.values)

"""The record of a garment: notes with place and pictures, moves, and the timeline."""

from datetime import timedelta

import pytest
from django.db import IntegrityError, transaction
from django.utils import timezone

from inventory.models import ConditionNote, Photo, WashEvent
from shared.errors import ClothError
from tests import builders
from tests.inventory.pictures import upload


@pytest.fixture
def garment(workshop):
    return builders.garment(builders.collection(workshop), {"viscose": 100})


@pytest.fixture
def panel(garment):
    return builders.panel(garment, 500, 700, is_measured_after_wash=False)


NOTE = {"noted_on": "2026-03-01", "grade": 2, "text": "Collar worn thin."}


def wash(maker, garment):
    facts = {"washed_on": timezone.localdate().isoformat(), "way": "hand", "water_c": "30"}
    return maker.post(f"/garments/{garment.pk}/washes/add/", facts)


def test_a_note_has_a_place_on_a_panel(maker, garment, panel):
    address = f"/garments/{garment.pk}/notes/add/?panel={panel.pk}"
    assert "data-place" in maker.get(address).content.decode()
    maker.post(address, NOTE | {"across_mm": "12", "up_mm": "30.5"})
    note = ConditionNote.objects.get()
    assert (note.panel, note.across_mm, note.up_mm) == (panel, 120, 305)
    for page in (f"/garments/{garment.pk}/", f"/panels/{panel.pk}/"):
        assert "On: Back, 12 cm across and 30.5 cm up" in maker.get(page).content.decode()


def test_a_place_needs_both_lengths(maker, garment, panel):
    address = f"/garments/{garment.pk}/notes/add/?panel={panel.pk}"
    page = maker.post(address, NOTE | {"across_mm": "12", "up_mm": ""})
    assert "both lengths" in str(page.context["form"].errors["up_mm"])
    assert not ConditionNote.objects.exists()


@pytest.mark.parametrize("number", ["999999", "x", "-1"])
def test_a_panel_of_another_garment_cannot_be_noted_on(maker, garment, panel, number):
    assert maker.get(f"/garments/{garment.pk}/notes/add/?panel={number}").status_code == 404
    other = builders.garment(garment.collection)
    address = f"/garments/{other.pk}/notes/add/?panel={panel.pk}"
    assert maker.post(address, NOTE).status_code == 404


def test_pictures_belong_to_their_note(maker, garment):
    pictures = [upload(name="a.jpg"), upload(name="b.jpg")]
    facts = NOTE | {"pictures": pictures, "description": "The collar"}
    maker.post(f"/garments/{garment.pk}/notes/add/", facts)
    photos = ConditionNote.objects.get().photos.all()
    assert [photo.description for photo in photos] == ["The collar"] * 2
    page = maker.get(f"/garments/{garment.pk}/")
    assert page.context["pictures"] == []
    assert [len(entry.photos) for entry in page.context["timeline"]][-1] == 2


def test_a_picture_of_a_note_is_not_deleted(maker, garment):
    maker.post(f"/garments/{garment.pk}/notes/add/", NOTE | {"pictures": [upload()]})
    page = maker.post(f"/photos/{Photo.objects.get().pk}/remove/", follow=True)
    assert "stays with it" in page.content.decode()
    assert Photo.objects.exists()


@pytest.mark.parametrize(
    ("pictures", "words"),
    [([upload(b"words")], "no picture"), ([upload() for _ in range(7)], "At most 6")],
)
def test_pictures_that_are_refused_save_no_note(maker, garment, pictures, words):
    page = maker.post(f"/garments/{garment.pk}/notes/add/", NOTE | {"pictures": pictures})
    assert words in str(page.context["form"].errors["pictures"])
    assert not ConditionNote.objects.exists()
    assert not Photo.objects.exists()


def test_a_note_cannot_be_rewritten(workshop, garment):
    note = ConditionNote.objects.create(workshop=workshop, garment=garment, grade=1, text="Sound.")
    note.text = "In rags."
    with pytest.raises(ClothError, match="stays as it was written"):
        note.save()
    assert ConditionNote.objects.get().text == "Sound."


@pytest.mark.parametrize(
    "facts", [{"grade": 5}, {"across_mm": 4.0}, {"across_mm": 4.0, "up_mm": 4.0}]
)
def test_the_database_refuses_a_note_without_sense(workshop, garment, facts):
    facts = {"grade": 1, "text": "Thin.", "workshop": workshop, "garment": garment} | facts
    with pytest.raises(IntegrityError), transaction.atomic():
        ConditionNote.objects.create(**facts)


def test_the_timeline_runs_from_the_newest_to_the_arrival(maker, garment):
    later = (timezone.localdate() + timedelta(days=3)).isoformat()
    maker.post(f"/garments/{garment.pk}/notes/add/", NOTE | {"noted_on": later})
    wash(maker, garment)
    maker.post(f"/garments/{garment.pk}/status/", {"status": "pressed"})
    titles = [entry.title for entry in maker.get(f"/garments/{garment.pk}/").context["timeline"]]
    assert titles[0] == "Condition: Weak in places"
    assert titles[-1] == "Taken in"
    assert set(titles[1:-1]) == {
        "On the bench: Pressed",
        "On the bench: Washed",
        "Washed: by hand at 30 °C",
    }


def test_putting_it_where_it_is_is_no_move(maker, garment):
    maker.post(f"/garments/{garment.pk}/status/", {"status": "arrived"})
    assert not garment.status_changes.exists()


def test_the_record_stays_inside_its_workshop(maker, stranger, garment):
    wash(maker, garment)
    pk = WashEvent.objects.get().pk
    assert stranger.get(f"/garments/{garment.pk}/washes/add/").status_code == 404
    assert stranger.post(f"/washes/{pk}/withdraw/").status_code == 404
    assert maker.get(f"/washes/{pk}/withdraw/").status_code == 405
    assert WashEvent.objects.standing().count() == 1


def test_a_longer_record_asks_the_database_no_more(
    maker, garment, panel, django_assert_max_num_queries
):
    for number in range(4):
        wash(maker, garment)
        maker.post(
            f"/garments/{garment.pk}/notes/add/?panel={panel.pk}",
            NOTE | {"text": f"Look {number}", "pictures": [upload()]},
        )
    for number in range(5):
        builders.panel(garment, name=f"Part {number}", is_measured_after_wash=False)
    with django_assert_max_num_queries(16):
        maker.get(f"/garments/{garment.pk}/")

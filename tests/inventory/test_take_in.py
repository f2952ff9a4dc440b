import pytest

from inventory.models import Collection, Garment
from tests import builders
from tests.inventory.pictures import upload

FACTS = {"kind": "shirt", "fibre_1": "cotton", "percent_1": "", "construction": "plain-weave"}


def test_a_garment_arrives_with_picture_fibre_and_tag(maker, workshop):
    collection = builders.collection(workshop)
    page = maker.post(
        "/garments/take-in/", {**FACTS, "collection": collection.pk, "photo": upload()}
    )
    row = Garment.objects.get()
    assert page.url == row.get_absolute_url()
    assert [(s.fibre, s.percent) for s in row.fibre_shares.all()] == [("cotton", 100.0)]
    assert row.photos.get().width_px == 64
    assert len(row.tag) == 4


def test_the_first_garment_can_bring_its_collection(maker, workshop):
    maker.post("/garments/take-in/", {**FACTS, "new_collection": "Dad’s shirts"})
    collection = Collection.objects.get()
    assert (collection.name, collection.workshop) == ("Dad’s shirts", workshop)
    assert collection.cut_consent == "ask"


def test_no_label_is_an_answer(maker, workshop):
    maker.post(
        "/garments/take-in/", {"kind": "scarf", "new_collection": "Box", "has_no_label": "on"}
    )
    assert Garment.objects.get().has_no_label


@pytest.mark.parametrize(
    ("changed", "field", "words"),
    [
        ({"percent_1": "60", "fibre_2": "silk", "percent_2": "30"}, "percent_2", "add up to 90 %"),
        ({"fibre_2": "silk", "percent_2": "30"}, "percent_1", "How many percent"),
        ({"percent_1": "50", "fibre_2": "cotton", "percent_2": "50"}, "fibre_2", "there already"),
        ({"fibre_1": "", "percent_1": "50"}, "fibre_1", "Which fibre"),
        ({"percent_1": "-5"}, "percent_1", "greater than"),
        ({"percent_1": "many"}, "percent_1", "number"),
        ({"fibre_1": "moonbeam"}, "fibre_1", "not one of the available"),
        ({"has_no_label": "on"}, "has_no_label", "not both"),
        ({"kind": "spaceship"}, "kind", "not one of the available"),
        ({"new_collection": " "}, "collection", "Choose a collection"),
    ],
)
def test_what_is_wrong_is_named_and_what_was_typed_is_kept(maker, changed, field, words):
    page = maker.post(
        "/garments/take-in/", {**FACTS, "new_collection": "Box", "name": "Blue one", **changed}
    )
    assert page.status_code == 200
    assert words in str(page.context["form"].errors[field])
    assert "Blue one" in page.content.decode()
    assert not Garment.objects.exists()
    assert not Collection.objects.exists()


def test_another_workshops_collection_cannot_be_chosen(maker, stranger):
    theirs = builders.collection(builders.workshop("Elsewhere 2"))
    page = maker.post("/garments/take-in/", {**FACTS, "collection": theirs.pk})
    assert "collection" in page.context["form"].errors


def test_a_tag_is_never_given_twice(workshop, monkeypatch):
    taken = builders.garment(builders.collection(workshop))
    offered = iter([taken.tag, taken.tag, "NEW4"])
    monkeypatch.setattr("inventory.forms.garments.new_tag", lambda: next(offered))
    from inventory.forms.garments import free_tag

    assert free_tag(workshop) == "NEW4"

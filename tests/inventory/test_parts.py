"""Garments of more than one cloth: shell, lining and trim."""

import pytest
from django.db import IntegrityError, transaction

from inventory.cloth import advice_for, cloth_of, cloths_of, make_up_of, shrinkage_for
from inventory.forms.fibres import save_shares
from inventory.models import FibreShare, Panel
from tests import builders


@pytest.fixture
def coat(workshop):
    """A cotton coat with a silk lining."""
    row = builders.garment(builders.collection(workshop), {"cotton": 100}, kind="coat")
    save_shares(row, [("silk", 100.0)], "lining")
    return row


@pytest.fixture
def facts(coat):
    return {
        "collection": coat.collection_id,
        "kind": "coat",
        "status": "arrived",
        "surface": "plain",
        "construction": "twill",
        "fibre_1": "wool",
    }


def test_the_shell_is_what_it_was_and_the_lining_stands_beside_it(coat):
    assert cloth_of(coat).fibres == (("cotton", 100.0),)
    assert list(cloths_of(coat)) == ["shell", "lining"]
    assert cloths_of(coat)["lining"].fibres == (("silk", 100.0),)


def test_a_plain_garment_has_one_cloth(workshop):
    assert list(cloths_of(builders.garment(builders.collection(workshop)))) == ["shell"]


def test_what_was_tried_on_the_shell_says_nothing_about_the_lining(coat):
    coat.fragility, coat.mass_g_m2 = 0, 300
    lining = cloths_of(coat)["lining"]
    assert (lining.fragility, lining.mass_g_m2) == (None, None)


def test_the_giver_and_the_troubles_concern_every_cloth(coat):
    coat.collection.keeps_scent = True
    coat.troubles = ["smoke"]
    for cloth in cloths_of(coat).values():
        assert cloth.keep_scent
        assert cloth.conditions == {"smoke"}


def test_the_strictest_cloth_governs_the_washing_of_the_whole(maker, coat):
    assert advice_for(coat).wash.method == "machine"
    assert make_up_of(coat).wash.method == "hand"
    page = maker.get(f"/garments/{coat.pk}/advice/")
    (washing,) = [row for row in page.context["rows"] if row.key == "wash"]
    assert (washing.part.method, washing.decided_by) == ("hand", "lining")
    assert "decided by the lining" in page.content.decode()


def test_a_trim_can_govern_by_how_it_is_made(coat):
    coat.trim_construction = "sequinned"
    assert make_up_of(coat).wash_by == "trim"
    assert make_up_of(coat).wash.method == "spot"


def test_the_advice_page_says_what_the_lining_needs_otherwise(maker, coat):
    page = maker.get(f"/garments/{coat.pk}/advice/")
    (lining,) = page.context["other_cloths"]
    assert lining.name == "Lining"
    assert "needle" in [row.key for row in lining.rows]
    assert "100 % silk" in page.content.decode()


def test_must_nots_name_the_cloth_they_are_about(maker, coat):
    said = maker.get(f"/garments/{coat.pk}/advice/").context["must_not"]
    about = {each.notice.text: each.about for each in said}
    assert about["Do not use chlorine bleach."] == "lining"


def test_shares_are_entered_part_by_part(maker, coat, facts):
    facts |= {"lining_fibre_1": "viscose", "lining_percent_1": "60"}
    facts |= {"lining_fibre_2": "acetate", "lining_percent_2": "40"}
    facts |= {"lining_construction": "satin", "trim_fibre_1": "leather"}
    maker.post(f"/garments/{coat.pk}/describe/", facts)
    shares = {(s.part, s.fibre): s.percent for s in FibreShare.objects.all()}
    assert shares == {
        ("shell", "wool"): 100,
        ("lining", "viscose"): 60,
        ("lining", "acetate"): 40,
        ("trim", "leather"): 100,
    }
    coat.refresh_from_db()
    assert coat.lining_construction == "satin"
    assert coat.fibre_words == "100 % wool; lining 60 % viscose, 40 % acetate; trim 100 % leather"


@pytest.mark.parametrize(
    ("changed", "field", "words"),
    [
        ({"lining_percent_1": "60"}, "lining_percent_1", "add up to 60 %"),
        ({"trim_percent_1": "50"}, "trim_fibre_1", "Which fibre"),
        ({"lining_fibre_2": "silk", "lining_percent_2": "5"}, "lining_fibre_2", "there already"),
    ],
)
def test_a_blend_must_add_up_within_its_part(maker, coat, facts, changed, field, words):
    facts = facts | {"lining_fibre_1": "silk", "lining_percent_1": "95"} | changed
    page = maker.post(f"/garments/{coat.pk}/describe/", facts)
    assert words in str(page.context["form"].errors[field])
    assert cloth_of(coat).fibres == (("cotton", 100.0),)


def test_the_take_in_asks_for_the_shell_alone(maker):
    page = maker.get("/garments/take-in/").content.decode()
    assert 'name="fibre_1"' in page
    assert "lining" not in page


def test_a_fibre_is_named_once_a_part(coat):
    share = {"workshop": coat.workshop, "garment": coat, "percent": 5}
    FibreShare.objects.create(part="lining", fibre="cotton", **share)
    with pytest.raises(IntegrityError), transaction.atomic():
        FibreShare.objects.create(part="lining", fibre="silk", **share)
    with pytest.raises(IntegrityError), transaction.atomic():
        FibreShare.objects.create(part="sleeve", fibre="silk", **share)


def test_a_panel_of_the_lining_shrinks_as_the_lining_does(coat):
    save_shares(coat, [("viscose", 100.0)], "lining")
    shell, lining = (
        shrinkage_for(builders.panel(coat, is_measured_after_wash=False, part=part))
        for part in ("shell", "lining")
    )
    assert lining.along_pct == (5, 10)
    assert shell.along_pct[1] < 10


def test_the_panel_page_asks_for_the_cloth_only_where_there_are_two(maker, coat, workshop):
    address = "/garments/{}/panels/add/?shape=rectangle"
    assert 'name="part"' in maker.get(address.format(coat.pk)).content.decode()
    plain = builders.garment(builders.collection(workshop))
    assert 'name="part"' not in maker.get(address.format(plain.pk)).content.decode()
    facts = {"name": "Back lining", "part": "lining", "grain_deg": "90.0"}
    facts |= {"measure_width": "40", "measure_length": "60"}
    maker.post(address.format(coat.pk), facts)
    assert Panel.objects.get().part == "lining"


def test_the_list_shows_a_garment_once_though_both_cloths_hold_the_fibre(maker, coat):
    save_shares(coat, [("cotton", 100.0)], "lining")
    assert list(maker.get("/garments/?fibre=cotton").context["page"]) == [coat]

"""What a cloth would need, with no garment entered."""

from urllib.parse import urlencode

import pytest

from inventory.models import Garment
from tests import builders


def ask(client, **asked):
    return client.get(f"/advice/?{urlencode(asked, doseq=True)}")


def row(page, key):
    (found,) = [each for each in page.context["answer"]["rows"] if each.key == key]
    return found.part


def line(page, name):
    (found,) = [each for each in page.context["lines"] if each.name == name]
    return found


def test_nothing_known_is_treated_as_gently_as_can_be(maker):
    page = ask(maker)
    assert row(page, "wash").method == "spot"
    assert "hidden place" in row(page, "wash").text
    assert not Garment.objects.exists()


def test_a_question_is_answered_and_stands_in_the_address(maker):
    asked = {"fibre_1": "silk", "construction": "plain-weave", "mass_g_m2": "60"}
    page = ask(maker, **asked)
    assert row(page, "wash").method == "hand"
    words = page.content.decode()
    assert 'value="silk"' in words
    assert 'value="60.0"' in words or 'value="60"' in words
    assert "lines" not in page.context


@pytest.mark.parametrize("name", ["nylon", "Polyamide", "NYLON"])
def test_fibres_go_by_any_of_their_names(maker, name):
    assert "answer" in ask(maker, fibre_1=name).context


def test_an_unknown_fibre_is_answered_with_the_nearest(maker):
    page = ask(maker, fibre_1="cottn")
    assert "Nearest: cotton" in str(page.context["form"].errors["fibre_1"])
    assert "answer" not in page.context
    assert page.content.decode().count("<h1") == 1


@pytest.mark.parametrize(
    ("asked", "field"),
    [
        ({"fibre_1": "wool", "percent_1": "60"}, "percent_1"),
        ({"fibre_1": "wool", "fibre_2": "silk", "percent_2": "40"}, "percent_1"),
        ({"fibre_1": "wool", "percent_1": "50", "fibre_2": "wool", "percent_2": "50"}, "percent_1"),
        ({"percent_1": "60"}, "fibre_1"),
        ({"fibre_1": "wool", "percent_1": "nan"}, "percent_1"),
        ({"fibre_1": "wool", "percent_1": "-10"}, "percent_1"),
        ({"mass_g_m2": "-3"}, "mass_g_m2"),
        ({"mass_g_m2": "1e9"}, "mass_g_m2"),
        ({"stretch_across_pct": "x"}, "stretch_across_pct"),
        ({"construction": "chain mail"}, "construction"),
        ({"label_wash": "1000"}, "label_wash"),
        ({"label_edition": "1999"}, "label_edition"),
        ({"conditions": ["haunted"]}, "conditions"),
        ({"fragility": "9"}, "fragility"),
        ({"fibre_1": "wool", "mass_g_m2": "0"}, None),
    ],
)
def test_what_cannot_be_is_named(maker, asked, field):
    page = ask(maker, **asked)
    assert page.status_code == 200
    errors = page.context["form"].errors
    assert (field or "__all__") in errors
    assert "answer" not in page.context


def test_one_thing_changed_shows_what_differs(maker):
    page = ask(maker, fibre_1="cotton", construction="plain-weave", **{"then-fibre_1": "wool"})
    assert line(page, "Washing").differs
    assert not line(page, "Cutting").differs
    words = page.content.decode()
    assert "differs" in words
    assert "the same" in words


@pytest.mark.parametrize(
    ("first", "change", "name"),
    [
        (
            {"fibre_1": "cotton", "construction": "plain-weave"},
            {"construction": "jersey"},
            "Needle",
        ),
        ({"fibre_1": "cotton"}, {"mass_g_m2": "400"}, "Needle"),
        ({"fibre_1": "cotton"}, {"fragility": "4"}, "Washing"),
        ({"fibre_1": "cotton"}, {"fray": "4"}, "Edges"),
        ({"fibre_1": "cotton"}, {"label_iron": "1"}, "Pressing"),
        ({"fibre_1": "cotton"}, {"keep_scent": "yes"}, "Washing"),
        ({"fibre_1": "cotton", "keep_scent": "on"}, {"keep_scent": "no"}, "Washing"),
        ({"fibre_1": "cotton"}, {"no_wash": "yes"}, "Washing"),
        ({"fibre_1": "cotton"}, {"conditions": "cream"}, "Pressing"),
        ({"fibre_1": "cotton", "conditions": "cream"}, {"conditions": "none"}, "Pressing"),
        (
            {"fibre_1": "polyester", "label_iron": "2"},
            {"label_edition": "2023"},
            "Pressing",
        ),
    ],
)
def test_each_fact_can_be_the_one_that_changes(maker, first, change, name):
    asked = first | {f"then-{key}": value for key, value in change.items()}
    assert line(ask(maker, **asked), name).differs


def test_a_change_that_cannot_be_is_named_in_its_own_column(maker):
    page = ask(maker, fibre_1="cotton", **{"then-fibre_1": "moonbeam"})
    assert "fibre_1" in page.context["then"].errors
    assert "lines" not in page.context
    assert 'href="#id_then-fibre_1"' in page.content.decode()


def test_a_label_that_cannot_be_true_is_said_and_the_safer_side_taken(maker):
    page = ask(maker, fibre_1="wool", label_wash="95")
    assert row(page, "wash").method == "hand"
    assert any("95" in said.notice.text for said in page.context["answer"]["conflicts"])
    assert "These do not agree" in page.content.decode()


def test_a_knit_without_stretch_is_said_not_to_agree(maker):
    page = ask(maker, construction="jersey", stretch_across_pct="0")
    assert "called a knit but was measured without stretch" in page.content.decode()


def test_a_garment_can_be_asked_about(maker, workshop):
    garment = builders.garment(
        builders.collection(workshop, keeps_scent=True),
        {"cotton": 60, "polyester": 40},
        mass_g_m2=120,
        fragility=2,
        label_marks={"iron": "2"},
        label_edition=2023,
        troubles=["smoke"],
    )
    shown = maker.get(f"/garments/{garment.pk}/advice/")
    page = maker.get(f"/advice/?{shown.context['question']}")
    assert [r.part.text for r in page.context["answer"]["rows"]] == [
        r.part.text for r in shown.context["rows"]
    ]


def test_only_asking_is_allowed_and_only_for_members(maker, client):
    assert maker.post("/advice/").status_code == 405
    assert client.get("/advice/").url.startswith("/log-in/")


def test_no_garment_means_no_question_to_the_database(maker, django_assert_max_num_queries):
    with django_assert_max_num_queries(4):  # who asks, and from which workshop
        ask(maker, fibre_1="silk")

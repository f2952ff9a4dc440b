import re
from io import BytesIO

import pandas as pd
import pytest

from tests import builders


@pytest.fixture
def rail(workshop):
    """A few garments that differ in everything the list can ask for."""
    shirts = builders.collection(workshop)
    box = builders.collection(workshop, "Box", giver="Ruth")
    silk = builders.garment(
        box,
        {"silk": 100},
        name="Silk blouse",
        kind="blouse",
        colour="cream",
        fragility=3,
        fray=4,
        construction="satin",
        mass_g_m2=60,
    )
    jersey = builders.garment(
        box,
        {"cotton": 95, "elastane": 5},
        name="Jersey top",
        kind="t-shirt",
        colour="red",
        construction="jersey",
        stretch_across_pct=40,
        fragility=0,
        fray=0,
        status="washed",
    )
    plain = builders.garment(shirts, name="Blue shirt", fragility=1, fray=2, mass_g_m2=120)
    builders.panel(plain, 500, 700)
    builders.panel(jersey, 300, 400)
    return {"silk": silk, "jersey": jersey, "plain": plain}


@pytest.mark.parametrize(
    ("asked", "found"),
    [
        ("", {"silk", "jersey", "plain"}),
        ("fibre=silk", {"silk"}),
        ("fibre=elastane", {"jersey"}),
        ("construction=jersey", {"jersey"}),
        ("stretch=moderate", {"jersey"}),
        ("stretch=rigid", set()),
        ("fragility=1", {"jersey", "plain"}),
        ("fray=2", {"jersey", "plain"}),
        ("colour=cream", {"silk"}),
        ("status=washed", {"jersey"}),
        ("least_area=1500", {"plain"}),
        ("q=ruth", {"silk", "jersey"}),
        ("q=ruth+blouse", {"silk"}),
        ("kind=shirt", {"plain"}),
        ("fibre=cotton&fray=1", {"jersey"}),
    ],
)
def test_the_list_answers_each_question(maker, rail, asked, found):
    page = maker.get(f"/garments/?{asked}")
    assert {g.name for g in page.context["page"]} == {rail[key].name for key in found}


@pytest.mark.parametrize(
    ("order", "first"),
    [("-usable", "plain"), ("usable", "silk"), ("-fragility", "silk"), ("arrived", "silk")],
)
def test_the_list_is_sorted_as_asked(maker, rail, order, first):
    assert maker.get(f"/garments/?order={order}").context["page"][0] == rail[first]


def test_a_tag_finds_its_garment(maker, rail):
    page = maker.get(f"/garments/?q={rail['jersey'].tag.lower()}")
    assert list(page.context["page"]) == [rail["jersey"]]


def test_inches_ask_for_square_inches(maker, rail, workshop):
    workshop.members.update(units="in")
    page = maker.get("/garments/?least_area=300")
    assert list(page.context["page"]) == [rail["plain"]]


def test_nonsense_in_the_address_is_no_crash(maker, rail):
    for asked in ("fibre=moonbeam", "fragility=x", "order=nonsense", "page=999", "least_area=-1"):
        assert maker.get(f"/garments/?{asked}").status_code == 200


def test_files_hold_what_the_list_shows(maker, rail):
    plain = pd.read_csv(BytesIO(maker.get("/garments.csv?fibre=silk").content))
    sheet = pd.read_excel(BytesIO(maker.get("/garments.xlsx").content))
    assert list(plain["Name"]) == ["Silk blouse"]
    assert plain["Fibres"][0] == "100 % silk"
    assert len(sheet) == 3
    assert sheet["Usable cloth cm2"].max() == pytest.approx(490 * 690 / 100)


def test_a_name_is_never_a_formula(maker, workshop):
    builders.garment(builders.collection(workshop), name='=HYPERLINK("x")')
    table = pd.read_csv(BytesIO(maker.get("/garments.csv").content))
    assert table["Name"][0].startswith("'=")


def test_garments_of_another_workshop_are_never_listed(stranger, rail):
    assert list(stranger.get("/garments/").context["page"]) == []
    assert "Silk" not in stranger.get("/garments.csv").content.decode()


def test_the_list_asks_the_database_no_more_for_more_garments(
    maker, rail, django_assert_max_num_queries, workshop
):
    for number in range(20):
        builders.garment(builders.collection(workshop, f"Box {number}"), name=f"Shirt {number}")
    with django_assert_max_num_queries(11):
        page = maker.get("/garments/")
    assert len(re.findall('class="card"', page.content.decode())) == 23

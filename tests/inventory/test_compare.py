"""Two garments side by side."""

import pytest

from tests import builders


@pytest.fixture
def pair(workshop):
    box = builders.collection(workshop)
    shirt = builders.garment(box, {"cotton": 100}, name="Shirt", mass_g_m2=120, fray=1)
    blouse = builders.garment(box, {"silk": 100}, name="Blouse", mass_g_m2=120, fragility=2)
    return shirt, blouse


def lines(page):
    return {line.name: line for line in page.context["lines"]}


def test_both_are_picked_from_lists(maker, pair):
    page = maker.get("/garments/compare/").content.decode()
    for garment in pair:
        assert page.count(f"{garment.name} ({garment.tag})") == 2


def test_facts_and_advice_stand_line_by_line(maker, pair):
    a, b = pair
    page = maker.get(f"/garments/compare/?a={a.pk}&b={b.pk}")
    found = lines(page)
    assert found["Fibre"].first == ("100 % cotton",)
    assert found["Fibre"].second == ("100 % silk",)
    assert found["Washing"].differs
    assert not found["Weight"].differs
    assert found["Fragility"].first == ("Not known",)


def test_differences_are_said_in_words(maker, pair):
    a, b = pair
    page = maker.get(f"/garments/compare/?a={a.pk}&b={b.pk}").content.decode()
    assert page.count(">differs</span>") + page.count(">the same</span>") == page.count(
        'th scope="row"'
    )
    assert ">only here</span>" in page
    assert "lines differ." in page


def test_a_garment_beside_itself_differs_in_nothing(maker, pair):
    page = maker.get(f"/garments/compare/?a={pair[0].pk}&b={pair[0].pk}")
    assert page.context["differing"] == 0
    assert "Nothing differs." in page.content.decode()


def test_own_words_are_part_of_the_comparison(maker, pair):
    a, b = pair
    own = {"part": "thread", "text": "Red silk.", "reason": "It was her colour."}
    maker.post(f"/garments/{a.pk}/overrides/add/", own)
    found = lines(maker.get(f"/garments/compare/?a={a.pk}&b={b.pk}"))
    assert found["Thread"].first[0] == "In the words of maker: Red silk."


@pytest.mark.parametrize("asked", ["a=x&b=1", "a=999999", "b=", "a=&b="])
def test_nonsense_in_the_address_is_no_crash(maker, pair, asked):
    page = maker.get(f"/garments/compare/?{asked}")
    assert page.status_code == 200
    assert "lines" not in page.context


def test_garments_of_another_workshop_cannot_be_compared(stranger, pair):
    a, b = pair
    page = stranger.get(f"/garments/compare/?a={a.pk}&b={b.pk}")
    assert "a" in page.context["form"].errors
    assert "Shirt" not in page.content.decode()


def test_comparing_is_only_looking(maker):
    assert maker.post("/garments/compare/").status_code == 405


def test_more_garments_ask_the_database_no_more(maker, pair, django_assert_max_num_queries):
    a, b = pair
    for number in range(12):
        builders.garment(a.collection, name=f"Shirt {number}")
    with django_assert_max_num_queries(32):
        maker.get(f"/garments/compare/?a={a.pk}&b={b.pk}")

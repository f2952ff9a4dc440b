"""Where stripes start: asked for, drawn, and said to be missing."""

import math

import pytest
from shapely import LineString, Polygon

from inventory.models import Panel
from inventory.stripes import is_unmeasured, repeat_of, stripe_path, stripes_on
from tests import builders

SQUARE = Polygon([(0, 0), (100, 0), (100, 80), (0, 80)])
FACTS = {"name": "Back", "grain_deg": "90.0", "measure_width": "46", "measure_length": "60"}


def lines(path: str) -> list[LineString]:
    parts = [part.split("L") for part in path.split("M")[1:]]
    return [LineString([[float(n) for n in end.split()] for end in ends]) for ends in parts]


@pytest.fixture
def garment(workshop):
    return builders.garment(builders.collection(workshop), surface="stripe", repeat_along_mm=20)


@pytest.mark.parametrize(
    ("grain_deg", "repeat", "count"),
    [(90, (20, None), 4), (0, (20, None), 6), (90, (None, 25), 5), (90, (20, 25), 9)],
)
def test_lines_lie_one_repeat_apart_on_the_panel(grain_deg, repeat, count):
    drawn = lines(stripe_path(SQUARE, grain_deg, repeat, (0, 10)))
    assert len(drawn) == count
    assert all(SQUARE.buffer(0.1).covers(line) for line in drawn)


@pytest.mark.parametrize("grain_deg", [17, 45, 120])
def test_a_line_goes_through_the_place_that_was_measured(grain_deg):
    drawn = lines(stripe_path(SQUARE, grain_deg, (30, None), (41, 33)))
    nearest = min(line.distance(LineString([(41, 33), (41, 33.01)])) for line in drawn)
    assert nearest < 0.1
    start, end = min(drawn, key=lambda line: -line.length).coords
    angle = math.degrees(math.atan2(end[1] - start[1], end[0] - start[0]))
    assert (angle - grain_deg - 90) % 180 == pytest.approx(0, abs=0.5) or (
        angle - grain_deg - 90
    ) % 180 == pytest.approx(180, abs=0.5)


def test_a_repeat_of_a_millimetre_is_thinned_out_for_the_eye():
    assert len(lines(stripe_path(SQUARE, 0, (0.1, None), (0, 0)))) <= 121


def test_the_place_of_a_stripe_is_asked_for_where_the_cloth_repeats(maker, garment):
    address = f"/garments/{garment.pk}/panels/add/?shape=rectangle"
    assert "Where a stripe starts" in maker.get(address).content.decode()
    maker.post(address, {**FACTS, "repeat_x_mm": "0 cm", "repeat_y_mm": "3.5"})
    row = Panel.objects.get()
    assert (row.repeat_x_mm, row.repeat_y_mm) == (0, 35)
    page = maker.get(row.get_absolute_url()).content.decode()
    assert 'class="stripes"' in page
    assert "One place is missing" not in page
    maker.post(f"/panels/{row.pk}/measure/", FACTS)
    row.refresh_from_db()
    assert (row.repeat_x_mm, row.repeat_y_mm) == (None, None)
    page = maker.get(row.get_absolute_url()).content.decode()
    assert "One place is missing" in page
    assert 'class="stripes"' not in page


def test_a_plain_cloth_is_not_asked_for_stripes(maker, workshop):
    plain = builders.garment(builders.collection(workshop))
    page = maker.get(f"/garments/{plain.pk}/panels/add/?shape=rectangle").content.decode()
    assert "Where a stripe starts" not in page


@pytest.mark.parametrize(
    ("place", "field", "words"),
    [
        ({"repeat_x_mm": "3"}, "repeat_y_mm", "both lengths"),
        ({"repeat_y_mm": "3"}, "repeat_x_mm", "both lengths"),
        ({"repeat_x_mm": "47", "repeat_y_mm": "3"}, "repeat_x_mm", "off the panel"),
        ({"repeat_x_mm": "wide", "repeat_y_mm": "3"}, "repeat_x_mm", "not a length"),
    ],
)
def test_a_place_that_cannot_be_is_named(maker, garment, place, field, words):
    page = maker.post(f"/garments/{garment.pk}/panels/add/?shape=rectangle", {**FACTS, **place})
    assert words in str(page.context["form"].errors[field])
    assert not Panel.objects.exists()


def test_the_sketch_draws_the_stripes_as_they_are_typed(maker):
    typed = {"shape": "rectangle", "along": "20", "across": "", **FACTS}
    assert 'class="stripes"' not in maker.get("/panels/sketch/", typed).content.decode()
    typed |= {"repeat_x_mm": "0", "repeat_y_mm": "2"}
    assert 'class="stripes"' in maker.get("/panels/sketch/", typed).content.decode()
    for nonsense in ("nan", "inf", "-3", "x"):
        page = maker.get("/panels/sketch/", typed | {"along": nonsense})
        assert 'class="stripes"' not in page.content.decode()


def test_only_the_shell_carries_the_repeat(garment):
    shell = builders.panel(garment, repeat_x_mm=0, repeat_y_mm=10)
    lining = builders.panel(garment, part="lining", repeat_x_mm=0, repeat_y_mm=10)
    assert repeat_of(shell) == (20, None)
    assert repeat_of(lining) is None
    assert stripes_on(shell)
    assert not stripes_on(lining)


def test_a_striped_cloth_nobody_measured_is_not_taken_for_plain(maker, workshop):
    striped = builders.garment(builders.collection(workshop), surface="check")
    panel = builders.panel(striped)
    assert is_unmeasured(panel)
    page = maker.get(panel.get_absolute_url()).content.decode()
    assert "The repeat is missing" in page

import pytest

from inventory.models import Panel
from planning.models import DetailPin
from tests import builders


@pytest.fixture
def garment(workshop):
    return builders.garment(builders.collection(workshop))


@pytest.fixture
def panel(garment):
    return builders.panel(garment, 500, 700)


FACTS = {"name": "Back", "grain_deg": "90.0", "measure_width": "46", "measure_length": "60.5"}


def test_a_rectangle_is_measured_in_centimetres(maker, garment):
    maker.post(f"/garments/{garment.pk}/panels/add/?shape=rectangle", FACTS)
    row = Panel.objects.get()
    assert row.measures_mm == {"width": 460.0, "length": 605.0}
    assert row.area_mm2 == pytest.approx(460 * 605)
    assert row.usable_area_mm2 < 450 * 595  # the wash to come takes some


def test_inches_with_fractions(maker, garment, workshop):
    workshop.members.update(units="in")
    facts = {**FACTS, "measure_width": "18 3/8", "measure_length": "24 in"}
    maker.post(f"/garments/{garment.pk}/panels/add/?shape=rectangle", facts)
    assert Panel.objects.get().measures_mm == {"width": 466.725, "length": 609.6}


def test_corner_by_corner(maker, garment):
    corners = {}
    for row, (across, up) in enumerate([("0", "0"), ("40", "0"), ("40", "50"), ("0", "60")], 1):
        corners |= {f"corner_{row}_across": across, f"corner_{row}_up": up}
    maker.post(
        f"/garments/{garment.pk}/panels/add/?shape=corners",
        {"name": "Yoke", "grain_deg": "90.0", **corners},
    )
    assert Panel.objects.get().area_mm2 == pytest.approx(400 * 550)


@pytest.mark.parametrize(
    ("changed", "field", "words"),
    [
        ({"measure_width": "-4"}, "measure_width", "negative"),
        ({"measure_width": "4600"}, "measure_width", "ten metres"),
        ({"measure_width": ""}, "measure_width", "required"),
        ({"measure_width": "0.01"}, "measure_width", "no area"),
        ({"name": ""}, "name", "required"),
        ({"grain_deg": "12"}, "grain_deg", "not one of the available"),
    ],
)
def test_a_measure_that_cannot_be_is_named_and_kept(maker, garment, changed, field, words):
    page = maker.post(f"/garments/{garment.pk}/panels/add/?shape=rectangle", FACTS | changed)
    assert words in str(page.context["form"].errors[field])
    assert "60.5" in page.content.decode()
    assert not Panel.objects.exists()


def test_a_panel_is_measured_again_with_its_numbers_filled_in(maker, panel):
    page = maker.get(f"/panels/{panel.pk}/measure/")
    assert 'value="50"' in page.content.decode()
    maker.post(
        f"/panels/{panel.pk}/measure/",
        FACTS | {"measure_width": "40", "is_measured_after_wash": "on"},
    )
    panel.refresh_from_db()
    assert panel.usable_area_mm2 == pytest.approx(390 * 595)


def test_a_flaw_takes_cloth_away_and_gives_it_back(maker, panel):
    before = panel.usable_area_mm2
    facts = {"kind": "stain", "across": "20", "up": "30", "width": "6"}
    maker.post(f"/panels/{panel.pk}/flaw/add/", facts)
    panel.refresh_from_db()
    assert before - panel.usable_area_mm2 == pytest.approx(3.14159 * 33**2, rel=0.02)
    maker.post(f"/flaw/{panel.flaws.get().pk}/remove/")
    panel.refresh_from_db()
    assert panel.usable_area_mm2 == pytest.approx(before)


def test_places_are_measured_from_the_panels_own_lower_left(maker, garment):
    corners = {}
    for row, (across, up) in enumerate([("10", "10"), ("40", "10"), ("40", "50"), ("10", "50")], 1):
        corners |= {f"corner_{row}_across": across, f"corner_{row}_up": up}
    facts = {"name": "Yoke", "grain_deg": "90.0", **corners}
    maker.post(f"/garments/{garment.pk}/panels/add/?shape=corners", facts)
    yoke = Panel.objects.get()
    assert min(yoke.outline_mm) == [0, 0]
    before = yoke.usable_area_mm2
    maker.post(
        f"/panels/{yoke.pk}/flaw/add/", {"kind": "stain", "across": "5", "up": "5", "width": "4"}
    )
    yoke.refresh_from_db()
    assert yoke.usable_area_mm2 < before - 1000


@pytest.mark.parametrize(
    ("across", "width", "field"), [("900", "4", "across"), ("20", "0.01", "width")]
)
def test_a_place_off_the_panel_or_next_to_nothing_is_refused(maker, panel, across, width, field):
    facts = {"kind": "stain", "across": across, "up": "30", "width": width}
    page = maker.post(f"/panels/{panel.pk}/flaw/add/", facts)
    assert field in page.context["form"].errors
    assert not panel.flaws.exists()


def test_a_detail_is_kept_aside_unless_it_may_be_cut_across(maker, panel):
    corners = {}
    for row, (across, up) in enumerate([("10", "10"), ("20", "10"), ("20", "22"), ("10", "22")], 1):
        corners |= {f"corner_{row}_across": across, f"corner_{row}_up": up}
    address = f"/panels/{panel.pk}/detail/add/?drawn=corners"
    maker.post(address, {"kind": "pocket", **corners})
    panel.refresh_from_db()
    free = panel.usable_area_mm2
    maker.post(address, {"kind": "pocket", "is_kept_aside": "on", **corners})
    panel.refresh_from_db()
    assert free - panel.usable_area_mm2 == pytest.approx(100 * 120)


@pytest.mark.parametrize(
    ("facts", "field"),
    [
        ({"kind": "stain", "across": "20", "up": "30", "width": ""}, "width"),
        ({"kind": "stain", "across": "x", "up": "30", "width": "2"}, "across"),
        ({"kind": "ghost", "across": "20", "up": "30", "width": "2"}, "kind"),
    ],
)
def test_a_place_that_cannot_be_is_named(maker, panel, facts, field):
    page = maker.post(f"/panels/{panel.pk}/flaw/add/", facts)
    assert field in page.context["form"].errors
    assert not panel.flaws.exists()


def test_the_sketch_draws_what_is_typed_or_says_what_is_missing(maker):
    drawn = maker.get("/panels/sketch/", {"shape": "rectangle", **FACTS}).content.decode()
    assert "<svg" in drawn
    assert "2,783 cm²" in drawn
    part = maker.get("/panels/sketch/", {"shape": "rectangle", "measure_width": "46"})
    assert "Length is missing" in part.content.decode()
    assert maker.get("/panels/sketch/", {"shape": "cube"}).status_code == 404


def test_panels_stay_inside_their_workshop(stranger, panel):
    for page in ("", "measure/", "flaw/add/", "detail/add/"):
        assert stranger.get(f"/panels/{panel.pk}/{page}").status_code == 404
    for step in ("remove", "put-back"):
        assert stranger.post(f"/panels/{panel.pk}/{step}/").status_code == 404


def test_taking_a_panel_off_and_putting_it_back(maker, panel):
    maker.post(f"/panels/{panel.pk}/remove/")
    assert maker.get(panel.garment.get_absolute_url()).context["panels"] == []
    maker.post(f"/panels/{panel.pk}/put-back/")
    assert len(maker.get(panel.garment.get_absolute_url()).context["panels"]) == 1


def test_a_place_that_was_unmarked_can_be_marked_again(maker, panel):
    detail = builders.detail(panel, [[100, 100], [200, 100], [200, 200]], is_kept_aside=False)
    maker.post(f"/detail/{detail.pk}/remove/")
    assert not panel.details.exists()
    assert "unmarked here" in maker.get(panel.get_absolute_url()).content.decode()
    maker.post(f"/panels/{panel.pk}/put-back-place/")
    again = panel.details.get()
    assert (again.points_mm, again.is_kept_aside) == (detail.points_mm, False)
    maker.post(f"/panels/{panel.pk}/put-back-place/")
    assert panel.details.count() == 1


def test_a_detail_that_a_keepsake_shows_stays(maker, panel):
    detail = builders.detail(panel, [[100, 100], [200, 100], [200, 200]])
    keepsake = builders.keepsake(panel.garment.collection, builders.pattern(panel.workshop))
    DetailPin.objects.create(
        workshop=panel.workshop, keepsake=keepsake, detail=detail, piece_name="side"
    )
    page = maker.post(f"/detail/{detail.pk}/remove/", follow=True)
    assert "Change its rules first" in page.content.decode()
    assert panel.details.get() == detail

"""Washes with lengths before and after, which take the place of the predicted shrinkage."""

from datetime import date, timedelta

import pytest
from django.db import IntegrityError, transaction
from django.utils import timezone

from inventory.cloth import shrinkage_for, usable_of
from inventory.models import Panel, WashEvent
from inventory.washing import MeasuredShrinkage
from tests import builders


@pytest.fixture
def garment(workshop):
    return builders.garment(builders.collection(workshop), {"viscose": 100})


@pytest.fixture
def panel(garment):
    """A panel measured before washing, a fortnight ago."""
    day = timezone.localdate() - timedelta(days=14)
    return builders.panel(garment, 500, 700, is_measured_after_wash=False, measured_on=day)


def wash(maker, garment, **changed):
    facts = {
        "washed_on": timezone.localdate().isoformat(),
        "way": "hand",
        "water_c": "30",
        "along_before_mm": "50",
        "along_after_mm": "48",
        "across_before_mm": "40",
        "across_after_mm": "39.6",
    }
    return maker.post(f"/garments/{garment.pk}/washes/add/", facts | changed)


def test_measured_shrinkage_takes_the_place_of_the_predicted(maker, garment, panel):
    predicted = shrinkage_for(panel)
    assert predicted.along_pct == (5, 10)
    page = wash(maker, garment)
    assert page.url == f"/garments/{garment.pk}/#record"
    panel = Panel.objects.get()
    measured = shrinkage_for(panel)
    assert isinstance(measured, MeasuredShrinkage)
    assert measured.along_pct == pytest.approx((4, 4))
    assert measured.across_pct == pytest.approx((1, 1))
    assert panel.usable_area_mm2 == pytest.approx((500 * 0.99 - 10) * (700 * 0.96 - 10))


def test_the_pages_call_it_measured(maker, garment, panel):
    wash(maker, garment)
    cloth = usable_of(Panel.objects.get(), shrinkage_for(Panel.objects.get()))
    assert not cloth.is_shrinkage_predicted
    assert cloth.taken_off[0].reason == "Shrinkage measured in the wash"
    page = maker.get(f"/garments/{garment.pk}/advice/").content.decode()
    assert "it lost 4 % along and 1 % across in the wash" in page


def test_a_way_that_was_not_measured_stays_predicted(maker, garment, panel):
    wash(maker, garment, across_before_mm="", across_after_mm="")
    shrinkage = shrinkage_for(Panel.objects.get())
    assert not isinstance(shrinkage, MeasuredShrinkage)
    assert shrinkage.along_pct == pytest.approx((4, 4))
    assert shrinkage.across_pct == (5, 10)


def test_a_wash_without_lengths_changes_no_cloth(maker, garment, panel):
    lengths = {f"{w}_{t}_mm": "" for w in ("along", "across") for t in ("before", "after")}
    wash(maker, garment, **lengths)
    assert shrinkage_for(Panel.objects.get()).along_pct == (5, 10)


def test_washes_add_up(maker, garment, panel):
    wash(maker, garment)
    wash(maker, garment, along_before_mm="48", along_after_mm="47.52")
    assert shrinkage_for(Panel.objects.get()).along_pct[0] == pytest.approx(100 * (1 - 0.96 * 0.99))


def test_a_wash_before_the_panel_was_measured_takes_nothing_from_it(maker, garment, panel):
    before = (panel.measured_on - timedelta(days=1)).isoformat()
    wash(maker, garment, washed_on=before)
    assert shrinkage_for(Panel.objects.get()).along_pct == (5, 10)


def test_measuring_again_forgets_the_washes_before_and_renaming_does_not(maker, garment, panel):
    yesterday = timezone.localdate() - timedelta(days=1)
    wash(maker, garment, washed_on=yesterday.isoformat())
    facts = {"name": "Whole back", "grain_deg": "90.0"}
    facts |= {"measure_width": "50", "measure_length": "70"}
    maker.post(f"/panels/{panel.pk}/measure/", facts)
    assert Panel.objects.get().measured_on == panel.measured_on
    assert shrinkage_for(Panel.objects.get()).along_pct == pytest.approx((4, 4))
    maker.post(f"/panels/{panel.pk}/measure/", facts | {"measure_width": "48"})
    assert Panel.objects.get().measured_on == timezone.localdate()
    assert shrinkage_for(Panel.objects.get()).along_pct == (5, 10)


def test_a_panel_measured_after_washing_loses_no_more(maker, garment):
    after = builders.panel(garment, measured_on=date(2026, 1, 1))
    wash(maker, garment)
    assert shrinkage_for(after) is None
    assert Panel.objects.get().usable_area_mm2 == pytest.approx(after.usable_area_mm2)


def test_cloth_that_grew_is_counted_as_unchanged(maker, garment, panel):
    wash(maker, garment, along_after_mm="52", across_after_mm="40")
    assert shrinkage_for(Panel.objects.get()) is None


def test_a_withdrawn_wash_counts_no_longer_and_is_kept(maker, garment, panel):
    predicted = panel.usable_area_mm2
    wash(maker, garment)
    maker.post(f"/washes/{WashEvent.objects.get().pk}/withdraw/")
    assert Panel.objects.get().usable_area_mm2 == pytest.approx(predicted)
    page = maker.get(f"/garments/{garment.pk}/").content.decode()
    assert "Counts no longer" in page
    assert "50 cm became 48 cm, it shrank 4 %" in page


@pytest.mark.parametrize(
    ("changed", "field", "words"),
    [
        ({"along_after_mm": ""}, "along_after_mm", "before and the length after"),
        ({"across_before_mm": ""}, "across_before_mm", "before and the length after"),
        ({"along_after_mm": "480"}, "along_after_mm", "same unit"),
        ({"along_after_mm": "4.8"}, "along_after_mm", "same unit"),
        ({"along_after_mm": "-3"}, "along_after_mm", "negative"),
        ({"water_c": "120"}, "water_c", "95"),
        ({"way": "in the sea"}, "way", "not one of the available"),
        ({"washed_on": "2126-01-01"}, "washed_on", "still to come"),
        ({"washed_on": ""}, "washed_on", "required"),
    ],
)
def test_a_wash_that_cannot_be_is_named_and_kept(maker, garment, changed, field, words):
    page = wash(maker, garment, **changed)
    assert words in str(page.context["form"].errors[field])
    assert 'value="50"' in page.content.decode()
    assert not WashEvent.objects.exists()


def test_a_wash_puts_an_arrived_garment_among_the_washed(maker, garment):
    wash(maker, garment)
    garment.refresh_from_db()
    assert garment.status == "washed"
    garment.status = "ready"
    garment.save()
    wash(maker, garment)
    garment.refresh_from_db()
    assert garment.status == "ready"


def test_a_wash_against_the_givers_wish_is_warned_of(maker, workshop):
    kept = builders.garment(builders.collection(workshop, wash_consent="no"))
    page = maker.get(f"/garments/{kept.pk}/washes/add/").content.decode()
    assert "does not want this washed" in page


@pytest.mark.parametrize(
    "facts",
    [
        {"way": "in the sea"},
        {"water_c": 200},
        {"along_before_mm": 500.0},
        {"along_before_mm": 500.0, "along_after_mm": 50.0},
        {"across_before_mm": 0.0, "across_after_mm": 0.0},
    ],
)
def test_the_database_refuses_a_wash_without_sense(workshop, garment, facts):
    row = {"way": "hand", "workshop": workshop, "garment": garment} | facts
    with pytest.raises(IntegrityError), transaction.atomic():
        WashEvent.objects.create(made_by=builders.member(workshop), **row)

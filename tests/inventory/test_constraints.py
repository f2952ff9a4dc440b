"""The database itself refuses what the forms refuse."""

import pytest
from django.db import IntegrityError, transaction

from inventory.models import FibreShare, Garment, Panel
from tests import builders


@pytest.fixture
def garment(workshop):
    return builders.garment(builders.collection(workshop))


@pytest.mark.parametrize(
    ("field", "value"),
    [
        ("kind", "spaceship"),
        ("status", "lost"),
        ("colour", "octarine"),
        ("surface", "rough"),
        ("fragility", 5),
        ("fray", 9),
        ("mass_g_m2", -1),
        ("stretch_across_pct", 900),
        ("repeat_along_mm", 0),
    ],
)
def test_a_garment_cannot_hold_nonsense(garment, field, value):
    with pytest.raises(IntegrityError), transaction.atomic():
        Garment.objects.filter(pk=garment.pk).update(**{field: value})


def test_a_tag_is_used_once_a_workshop(garment):
    with pytest.raises(IntegrityError), transaction.atomic():
        builders.garment(garment.collection, tag=garment.tag)
    elsewhere = builders.collection(builders.workshop("Elsewhere"))
    assert builders.garment(elsewhere, tag=garment.tag).pk


def test_a_fibre_is_named_once_a_garment(garment):
    with pytest.raises(IntegrityError), transaction.atomic():
        FibreShare.objects.create(
            workshop=garment.workshop, garment=garment, fibre="cotton", percent=1
        )


def test_a_panel_has_area(garment):
    panel = builders.panel(garment)
    with pytest.raises(IntegrityError), transaction.atomic():
        Panel.objects.filter(pk=panel.pk).update(area_mm2=0)

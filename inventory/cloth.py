"""Carries rows across to the pure rooms and back: what the cloth is, what a panel yields.

No rule lives here. A garment's collection, fibre shares and panels are expected to be at hand
(select_related, prefetch_related); nothing else is read.
"""

from dataclasses import dataclass

from django.db import transaction
from django.urls import reverse

from inventory.advice.advise import Advice, advise
from inventory.advice.cloth import Cloth
from inventory.advice.grades import HAND_FEELS
from inventory.advice.label import CareLabel
from inventory.choices import Status, Surface
from inventory.measuring.shapes import outline_from
from inventory.measuring.shrinkage import Shrinkage
from inventory.measuring.usable import Place, UsableCloth, usable_cloth
from inventory.models import Detail, Flaw, Garment, Panel

MOST_FIBRES = 4


def cloth_of(garment: Garment) -> Cloth:
    """What is known of a garment's cloth. Whatever is empty in the row is unknown, not zero."""
    collection = garment.collection
    return Cloth(
        fibres=tuple((share.fibre, share.percent) for share in garment.fibre_shares.all()),
        construction=garment.construction or None,
        mass_g_m2=mass_of(garment),
        stretch_along_pct=garment.stretch_along_pct,
        stretch_across_pct=garment.stretch_across_pct,
        fragility=garment.fragility,
        fray=garment.fray,
        label=CareLabel(**garment.label_marks) if garment.label_marks else None,
        keep_scent=collection.keeps_scent,
        may_wash=collection.may_wash,
        conditions=frozenset(garment.troubles) | _from_surface(garment),
    )


def _from_surface(garment: Garment) -> frozenset[str]:
    return frozenset({"rubber-print"}) if garment.surface == Surface.RUBBERY else frozenset()


def mass_of(garment: Garment) -> float | None:
    """The measured mass in g/m2, else the middle of the hand-feel class, else None."""
    if garment.mass_g_m2 is not None:
        return garment.mass_g_m2
    if garment.hand_feel in HAND_FEELS:
        low, high = HAND_FEELS[garment.hand_feel].mass_g_m2
        return (low + high) / 2
    return None


def advice_for(garment: Garment) -> Advice:
    """What this garment's cloth needs, from what is known of it today."""
    return advise(cloth_of(garment))


def shrinkage_for(panel: Panel) -> Shrinkage | None:
    """The shrinkage still to come in the wash or under the iron, or None where it is measured."""
    if panel.is_measured_after_wash:
        return None
    shrink = advice_for(panel.garment).shrink
    if max(*shrink.along_pct, *shrink.across_pct) == 0:
        return None
    return Shrinkage(shrink.along_pct, shrink.across_pct)


def places_of(rows: list[Flaw] | list[Detail]) -> list[Place]:
    """Flaws or details as places on their panel, each under its own words."""
    return [Place(str(row), tuple((x, y) for x, y in row.points_mm), row.radius_mm) for row in rows]


def usable_of(panel: Panel, shrinkage: Shrinkage | None) -> UsableCloth:
    """What a panel yields once shrinkage, edges, flaws and the details kept aside are off."""
    return usable_cloth(
        tuple((x, y) for x, y in panel.outline_mm),
        places_of(list(panel.flaws.all())),
        places_of([detail for detail in panel.details.all() if detail.is_kept_aside]),
        shrinkage=shrinkage,
        grain_deg=panel.grain_deg,
    )


def measure(panel: Panel) -> UsableCloth:
    """Work out a panel's two areas and put them on the row, which is not saved here.

    Raises OutlineError where the measures draw no outline.
    """
    if panel.measures_mm:
        outline = outline_from(panel.shape, panel.measures_mm)
        panel.outline_mm = [[x, y] for x, y in outline]
    if panel.pk is None:
        cloth = usable_cloth(
            tuple((x, y) for x, y in panel.outline_mm),
            shrinkage=shrinkage_for(panel),
            grain_deg=panel.grain_deg,
        )
    else:
        cloth = usable_of(panel, shrinkage_for(panel))
    panel.area_mm2, panel.usable_area_mm2 = cloth.outline_mm2, cloth.usable_mm2
    return cloth


@transaction.atomic
def measure_again(garment: Garment) -> None:
    """Bring the stored areas up to date after facts that change shrinkage or places."""
    panels = Panel.objects.of(garment.workshop).filter(garment=garment)
    for panel in panels.select_related("garment__collection").prefetch_related(
        "flaws", "details", "garment__fibre_shares"
    ):
        measure(panel)
        panel.save(update_fields=["area_mm2", "usable_area_mm2"])


@dataclass(frozen=True, slots=True)
class Missing:
    """One fact that would make the advice or the size check better, and where to add it."""

    words: str
    address: str


def missing_for_advice(garment: Garment) -> list[Missing]:
    """What the advice still has to guess at, most telling first."""
    describe = reverse("inventory:describe", args=[garment.pk])
    fibres = garment.has_no_label or bool(garment.fibre_shares.all())
    facts = [
        (fibres, "the fibre, or that there is no label", "#id_fibre_1"),
        (bool(garment.construction), "how the cloth is made", "#id_construction"),
        (mass_of(garment) is not None, "its weight", "#id_hand_feel"),
        (garment.fragility is not None, "how fragile it is", "#id_fragility"),
        (garment.fray is not None, "how much it frays", "#id_fray"),
        (garment.stretch_across_pct is not None, "how far it stretches", "#id_stretch_across_pct"),
    ]
    return [Missing(words, describe + place) for known, words, place in facts if not known]


def missing_for_size_check(garment: Garment) -> list[Missing]:
    """What keeps this garment's cloth out of a size check."""
    panels = [panel for panel in garment.panels.all() if panel.removed_at is None]
    missing = []
    if garment.status in (Status.CUT, Status.RETURNED):
        missing.append(Missing("cloth: it is already cut or returned", garment.get_absolute_url()))
    if not panels:
        add = reverse("inventory:add-panel", args=[garment.pk])
        missing.append(Missing("at least one measured panel", add))
    return missing

"""Carries rows across to the pure rooms and back: what the cloth is, what a panel yields.

No rule lives here. A garment's collection, fibre shares, washes and overrides are expected to be at
hand (``Garment.objects.with_cloth()``), and a panel's flaws and details; nothing else is read.
"""

from dataclasses import dataclass, replace

from django.db import transaction
from django.db.models import Prefetch
from django.urls import reverse

from inventory.advice.advise import Advice, advise
from inventory.advice.cloth import Cloth
from inventory.advice.grades import HAND_FEELS
from inventory.advice.known import known_cloth
from inventory.advice.label import CareLabel, read_edition
from inventory.advice.makeup import MakeUp, advise_parts
from inventory.advice.methods import WASH_ORDER, WashMethod
from inventory.advice.shrink import shrink_of
from inventory.choices import ClothPart, Recommendation, Status, Surface
from inventory.measuring.shapes import outline_from
from inventory.measuring.shrinkage import Shrinkage
from inventory.measuring.usable import Place, UsableCloth, usable_cloth
from inventory.models import Detail, Flaw, Garment, Panel
from inventory.washing import MeasuredShrinkage, as_measured, measured_pct, washes_since

MOST_FIBRES = 4


def cloth_of(garment: Garment) -> Cloth:
    """What is known of a garment's shell. Whatever is empty in the row is unknown, not zero."""
    return replace(
        _any_cloth(garment, ClothPart.SHELL),
        construction=garment.construction or None,
        mass_g_m2=mass_of(garment),
        stretch_along_pct=garment.stretch_along_pct,
        stretch_across_pct=garment.stretch_across_pct,
        fragility=garment.fragility,
        fray=garment.fray,
    )


def cloths_of(garment: Garment) -> dict[str, Cloth]:
    """Every cloth of a garment by its part, the shell first.

    The label, the giver's wish and the troubles are those of the whole garment. The tests by hand
    were made on the shell, so nothing is known of the others but their fibres and their make.
    """
    makes = {
        ClothPart.LINING: garment.lining_construction,
        ClothPart.TRIM: garment.trim_construction,
    }
    cloths = {ClothPart.SHELL.value: cloth_of(garment)}
    for part, make in makes.items():
        cloth = replace(_any_cloth(garment, part), construction=make or None)
        if cloth.fibres or cloth.construction:
            cloths[part.value] = cloth
    return cloths


def _any_cloth(garment: Garment, part: ClothPart) -> Cloth:
    collection = garment.collection
    marks = garment.label_marks
    label = CareLabel(**marks, edition=read_edition(garment.label_edition)) if marks else None
    return Cloth(
        fibres=tuple(
            (share.fibre, share.percent)
            for share in garment.fibre_shares.all()
            if share.part == part
        ),
        label=label,
        keep_scent=collection.keeps_scent,
        may_wash=collection.may_wash,
        conditions=frozenset(garment.troubles) | _from_surface(garment, part),
    )


def _from_surface(garment: Garment, part: ClothPart) -> frozenset[str]:
    has_print = part == ClothPart.SHELL and garment.surface == Surface.RUBBERY
    return frozenset({"rubber-print"}) if has_print else frozenset()


def mass_of(garment: Garment) -> float | None:
    """The measured mass in g/m2, else the middle of the hand-feel class, else None."""
    if garment.mass_g_m2 is not None:
        return garment.mass_g_m2
    if garment.hand_feel in HAND_FEELS:
        low, high = HAND_FEELS[garment.hand_feel].mass_g_m2
        return (low + high) / 2
    return None


def advice_for(garment: Garment) -> Advice:
    """What the shell of this garment needs, from what is known of it today."""
    return advise(cloth_of(garment))


def make_up_of(garment: Garment) -> MakeUp:
    """What each cloth of this garment needs, and what governs it while it is whole."""
    return advise_parts(cloths_of(garment))


def shrinkage_for(panel: Panel) -> Shrinkage | None:
    """The shrinkage to take off a panel's measures, or None where there is none.

    Measured always beats predicted: a panel measured after washing loses no more; one measured
    before loses what the washes since then were seen to take, each way for itself. Only a way that
    no wash measured is left to the prediction.
    """
    if panel.is_measured_after_wash:
        return None
    predicted = predicted_shrinkage(panel.garment, panel.part)
    washes = washes_since(panel.garment.wash_events.all(), panel.measured_on)
    along, across = measured_pct(washes, "along"), measured_pct(washes, "across")
    kind = Shrinkage if None in (along, across) else MeasuredShrinkage
    shrinkage = kind(
        predicted.along_pct if along is None else (along, along),
        predicted.across_pct if across is None else (across, across),
    )
    return shrinkage if max(*shrinkage.along_pct, *shrinkage.across_pct) > 0 else None


def predicted_shrinkage(garment: Garment, part: str = ClothPart.SHELL) -> Shrinkage:
    """What the advice expects one of a garment's cloths to lose.

    Where a maker's own words stand in place of washing advice that keeps it dry, the loss of a wash
    is expected, whatever her words are: too little cloth is found in time, too much is not.
    """
    cloths = cloths_of(garment)
    cloth = cloths.get(part) or cloths[ClothPart.SHELL]
    advice = advise(cloth)
    shrink = advice.shrink
    own_way = any(
        row.part == Recommendation.WASH and row.withdrawn_at is None
        for row in garment.overrides.all()
    )
    if own_way and WASH_ORDER[advice.wash.method] < WASH_ORDER[WashMethod.HAND]:
        shrink = shrink_of(known_cloth(cloth), WashMethod.MACHINE, is_pressed=True).part
    return Shrinkage(shrink.along_pct, shrink.across_pct)


def places_of(rows: list[Flaw] | list[Detail]) -> list[Place]:
    """Flaws or details as places on their panel, each under its own words."""
    return [Place(str(row), tuple((x, y) for x, y in row.points_mm), row.radius_mm) for row in rows]


def usable_of(panel: Panel, shrinkage: Shrinkage | None) -> UsableCloth:
    """What a panel yields once shrinkage, edges, flaws and the details kept aside are off."""
    cloth = usable_cloth(
        tuple((x, y) for x, y in panel.outline_mm),
        places_of(list(panel.flaws.all())),
        places_of([detail for detail in panel.details.all() if detail.is_kept_aside]),
        shrinkage=shrinkage,
        grain_deg=panel.grain_deg,
    )
    return as_measured(cloth) if isinstance(shrinkage, MeasuredShrinkage) else cloth


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
    with_cloth = Prefetch("garment", queryset=Garment.objects.with_cloth())
    for panel in panels.prefetch_related("flaws", "details", with_cloth):
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
    test = reverse("inventory:hands-on", args=[garment.pk])
    fibres = garment.has_no_label or bool(cloth_of(garment).fibres)
    facts = [
        (fibres, "the fibre, or that there is no label", f"{describe}#id_fibre_1"),
        (bool(garment.construction), "how the cloth is made", f"{describe}#id_construction"),
        (mass_of(garment) is not None, "its weight", f"{test}#weight"),
        (garment.fragility is not None, "how fragile it is", f"{test}#fragility"),
        (garment.fray is not None, "how much it frays", f"{test}#fray"),
        (garment.stretch_across_pct is not None, "how far it stretches", f"{test}#stretch"),
    ]
    return [Missing(words, address) for known, words, address in facts if not known]


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

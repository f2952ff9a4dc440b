"""One way to each row: through the person's workshop, or not at all."""

from django.db.models import Prefetch
from django.shortcuts import get_object_or_404

from inventory.models import (
    AdviceOverride,
    Collection,
    ConditionNote,
    Garment,
    GarmentQuerySet,
    Panel,
    Photo,
    WashEvent,
)
from shared.models import Workshop

BY_WHOM = ("made_by__user", "withdrawn_by__user")


def collection_for(workshop: Workshop, pk: int) -> Collection:
    return get_object_or_404(Collection.objects.of(workshop), pk=pk)


def _with_record(rows: GarmentQuerySet) -> GarmentQuerySet:
    """With everything that happened to the garments, and who wrote it down."""
    notes = ConditionNote.objects.select_related("panel").prefetch_related("photos")
    washes = WashEvent.objects.select_related(*BY_WHOM)
    overrides = AdviceOverride.objects.select_related(*BY_WHOM)
    rows = rows.prefetch_related("status_changes", Prefetch("condition_notes", queryset=notes))
    rows = rows.prefetch_related(Prefetch("wash_events", queryset=washes))
    return rows.prefetch_related(Prefetch("overrides", queryset=overrides))


def garment_for(workshop: Workshop, pk: int) -> Garment:
    """The garment with everything its pages show, also when it was taken off the list."""
    rows = Garment.objects.of(workshop).select_related("collection", "workshop")
    shown = Panel.objects.filter(removed_at=None).prefetch_related("flaws", "details")
    rows = rows.prefetch_related("fibre_shares", "photos", Prefetch("panels", queryset=shown))
    return get_object_or_404(_with_record(rows), pk=pk)


def panel_for(workshop: Workshop, pk: int) -> Panel:
    rows = Panel.objects.of(workshop).prefetch_related("flaws", "details")
    notes = ConditionNote.objects.order_by("-noted_on", "-pk").prefetch_related("photos")
    rows = rows.prefetch_related(Prefetch("condition_notes", queryset=notes))
    garments = Garment.objects.select_related("workshop").with_cloth()
    return get_object_or_404(rows.prefetch_related(Prefetch("garment", queryset=garments)), pk=pk)


def wash_for(workshop: Workshop, pk: int) -> WashEvent:
    return get_object_or_404(WashEvent.objects.of(workshop).select_related("garment"), pk=pk)


def override_for(workshop: Workshop, pk: int) -> AdviceOverride:
    return get_object_or_404(AdviceOverride.objects.of(workshop).select_related("garment"), pk=pk)


def photo_for(workshop: Workshop, pk: int) -> Photo:
    return get_object_or_404(Photo.objects.of(workshop), pk=pk)

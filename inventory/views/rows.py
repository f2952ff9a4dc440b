"""One way to each row: through the person's workshop, or not at all."""

from django.db.models import Prefetch
from django.shortcuts import get_object_or_404

from inventory.models import (
    AdviceOverride,
    Collection,
    ConditionNote,
    Garment,
    Panel,
    Photo,
    WashEvent,
)
from shared.models import Workshop

BY_WHOM = ("made_by__user", "withdrawn_by__user")


def collection_for(workshop: Workshop, pk: int) -> Collection:
    return get_object_or_404(Collection.objects.of(workshop), pk=pk)


def garment_for(workshop: Workshop, pk: int) -> Garment:
    """The garment with everything its pages show, also when it was taken off the list."""
    rows = Garment.objects.of(workshop).select_related("collection", "workshop")
    shown = Panel.objects.filter(removed_at=None).prefetch_related("flaws", "details")
    notes = ConditionNote.objects.select_related("panel").prefetch_related("photos")
    return get_object_or_404(
        rows.prefetch_related(
            "fibre_shares",
            "photos",
            "status_changes",
            Prefetch("condition_notes", queryset=notes),
            Prefetch("wash_events", queryset=WashEvent.objects.select_related(*BY_WHOM)),
            Prefetch("overrides", queryset=AdviceOverride.objects.select_related(*BY_WHOM)),
            Prefetch("panels", queryset=shown),
        ),
        pk=pk,
    )


def panel_for(workshop: Workshop, pk: int) -> Panel:
    rows = Panel.objects.of(workshop)
    garments = Garment.objects.select_related("workshop").with_cloth()
    notes = ConditionNote.objects.select_related("panel").prefetch_related("photos")
    return get_object_or_404(
        rows.prefetch_related(
            "flaws",
            "details",
            Prefetch("condition_notes", queryset=notes),
            Prefetch("garment", queryset=garments),
        ),
        pk=pk,
    )


def wash_for(workshop: Workshop, pk: int) -> WashEvent:
    return get_object_or_404(WashEvent.objects.of(workshop).select_related("garment"), pk=pk)


def override_for(workshop: Workshop, pk: int) -> AdviceOverride:
    return get_object_or_404(AdviceOverride.objects.of(workshop).select_related("garment"), pk=pk)


def photo_for(workshop: Workshop, pk: int) -> Photo:
    return get_object_or_404(Photo.objects.of(workshop), pk=pk)

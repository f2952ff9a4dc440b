"""One way to each row: through the person's workshop, or not at all."""

from django.db.models import Prefetch
from django.shortcuts import get_object_or_404

from inventory.models import Collection, Garment, Panel, Photo
from shared.models import Workshop


def collection_for(workshop: Workshop, pk: int) -> Collection:
    return get_object_or_404(Collection.objects.of(workshop), pk=pk)


def garment_for(workshop: Workshop, pk: int) -> Garment:
    """The garment with everything its page shows, also when it was taken off the list."""
    rows = Garment.objects.of(workshop).select_related("collection")
    shown = Panel.objects.filter(removed_at=None).prefetch_related("flaws", "details")
    return get_object_or_404(
        rows.prefetch_related(
            "fibre_shares", "photos", "condition_notes", Prefetch("panels", queryset=shown)
        ),
        pk=pk,
    )


def panel_for(workshop: Workshop, pk: int) -> Panel:
    rows = Panel.objects.of(workshop).select_related("garment__collection", "garment__workshop")
    return get_object_or_404(
        rows.prefetch_related("flaws", "details", "garment__fibre_shares"), pk=pk
    )


def photo_for(workshop: Workshop, pk: int) -> Photo:
    return get_object_or_404(Photo.objects.of(workshop), pk=pk)

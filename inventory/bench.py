"""Where a garment is on the bench, and the record of every move."""

from django.db import transaction

from inventory.models import Garment, StatusChange


@transaction.atomic
def move_to(garment: Garment, status: str) -> None:
    """Put a garment somewhere else on the bench, and write it down; no move is no entry."""
    if garment.status == status:
        return
    garment.status = status
    garment.save(update_fields=["status"])
    StatusChange.objects.create(workshop=garment.workshop, garment=garment, status=status)

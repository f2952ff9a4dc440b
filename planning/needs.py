"""What this room asks of the others: a bear for a new workshop, and garments that lie in a lay."""

from typing import Any

from django.apps import AppConfig

from inventory.models import Garment
from planning.library import give_all_built_in
from planning.models import Keepsake
from shared.models import Workshop


def give_patterns(sender: type[Workshop], workshop: Workshop, **signal: Any) -> None:
    give_all_built_in(workshop)


def give_new_patterns(sender: AppConfig, **signal: Any) -> None:
    """After a migration every workshop gets the built-in patterns that are new."""
    for workshop in Workshop.objects.all():
        give_all_built_in(workshop)


def lays_that_need(garment: Garment) -> list[str]:
    """A sentence for each keepsake whose lay is cut partly from this garment."""
    keepsakes = Keepsake.objects.of(garment.workshop).here()
    keepsakes = keepsakes.filter(checks__lay__placements__panel__garment=garment)
    keepsakes = keepsakes.exclude(left_out=garment).distinct()
    return [
        f"{garment} ({garment.tag}) lies in a lay of “{keepsake}”. "
        "Leave it out of that keepsake first."
        for keepsake in keepsakes
    ]

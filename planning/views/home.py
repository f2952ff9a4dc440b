from django.db.models import Prefetch
from django.http import HttpResponse
from django.shortcuts import render
from django.views.decorators.http import require_GET

from inventory.models import Garment
from planning.lay_rules import ROWS
from planning.models import Keepsake, SizeCheck
from planning.problems import cloth_of
from planning.sizes import sizes_of
from planning.views.patterns import figure_of
from shared.middleware import WorkshopRequest

LATELY = 8


@require_GET
def home(request: WorkshopRequest) -> HttpResponse:
    """The bench: what arrived lately, what still waits for her, and what is being made."""
    here = Garment.objects.of(request.workshop).here().with_usable_area()
    here = here.select_related("collection")
    lately = here.prefetch_related("photos", "fibre_shares").order_by("-pk")
    undescribed = here.filter(fibre_shares=None, has_no_label=False)
    keepsakes = (
        Keepsake.objects.of(request.workshop)
        .here()
        .select_related("collection", "pattern", "chosen_size", "workshop")
    )
    checks = SizeCheck.objects.select_related("size")
    keepsakes = keepsakes.prefetch_related(*ROWS, Prefetch("checks", queryset=checks))[:6]
    return render(
        request,
        "planning/home.html",
        {
            "lately": lately[:LATELY],
            "undescribed": undescribed[:LATELY],
            "unmeasured": here.unmeasured()[:LATELY],
            "keepsakes": [
                (row, sizes_of(row, cloth_of(row)), figure_of(row.pattern)) for row in keepsakes
            ],
        },
    )

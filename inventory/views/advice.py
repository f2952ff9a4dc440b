from django.http import HttpResponse
from django.shortcuts import render
from django.views.decorators.http import require_GET

from inventory.cloth import missing_for_advice
from inventory.reading import words_of
from inventory.views.rows import garment_for
from shared.middleware import WorkshopRequest


@require_GET
def advice(request: WorkshopRequest, pk: int) -> HttpResponse:
    row = garment_for(request.workshop, pk)
    return render(
        request,
        "inventory/advice.html",
        {
            "garment": row,
            **words_of(row),
            "missing": missing_for_advice(row),
            "nav": "garments",
        },
    )

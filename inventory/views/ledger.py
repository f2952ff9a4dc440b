from django.contrib import messages
from django.http import Http404, HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse
from django.views.decorators.http import require_POST

from inventory.cloth import measure_again, shrinkage_for, usable_of
from inventory.drawing import panel_drawing
from inventory.forms.ledger import ConditionNoteForm, WashForm
from inventory.models import Garment, Panel, WashEvent
from inventory.reading import words_of
from inventory.timeline import change_words
from inventory.views.rows import garment_for, wash_for
from shared.middleware import WorkshopRequest
from shared.units import MM_PER


def record_of(garment: Garment) -> str:
    """The address of a garment's record on its page."""
    return reverse("inventory:garment", args=[garment.pk]) + "#record"


def add_note(request: WorkshopRequest, pk: int) -> HttpResponse:
    row = garment_for(request.workshop, pk)
    panel = _asked_for(row, request.GET.get("panel", ""))
    form = ConditionNoteForm(
        request.POST or None, request.FILES or None, garment=row, panel=panel, units=request.units
    )
    if request.method == "POST" and form.is_valid():
        form.save()
        messages.success(request, "Noted. It stays as it is written.")
        return redirect(record_of(row))
    drawing = None
    if panel is not None:
        panel.garment = row
        drawing = panel_drawing(panel, usable_of(panel, shrinkage_for(panel)), request.units)
    return render(
        request,
        "inventory/note_form.html",
        {
            "form": form,
            "garment": row,
            "panels": row.panels.all(),
            "panel": panel,
            "drawing": drawing,
            "mm_per_unit": MM_PER[request.units],
            "nav": "garments",
        },
    )


def _asked_for(garment: Garment, number: str) -> Panel | None:
    """The panel named in the address: one of this garment, or none at all."""
    if not number:
        return None
    for panel in garment.panels.all():
        if str(panel.pk) == number:
            return panel
    raise Http404


def add_wash(request: WorkshopRequest, pk: int) -> HttpResponse:
    row = garment_for(request.workshop, pk)
    form = WashForm(request.POST or None, garment=row, member=request.member, units=request.units)
    if request.method == "POST" and form.is_valid():
        messages.success(request, _outcome(form.save()))
        return redirect(record_of(row))
    return render(
        request,
        "inventory/wash_form.html",
        {"form": form, "garment": row, **words_of(row), "nav": "garments"},
    )


def _outcome(wash: WashEvent) -> str:
    changes = [
        f"{change_words(change)} {way}"
        for way, change in (("along", wash.along_change_pct), ("across", wash.across_change_pct))
        if change is not None
    ]
    if not changes:
        return "Written down. No lengths were measured, so the shrinkage stays a prediction."
    found = " and ".join(changes)
    return f"Written down: {found}. That counts from now on, and every size can be checked anew."


@require_POST
def withdraw_wash(request: WorkshopRequest, pk: int) -> HttpResponse:
    row = wash_for(request.workshop, pk)
    WashEvent.objects.of(request.workshop).filter(pk=row.pk).withdraw(request.member)
    measure_again(row.garment)
    messages.success(request, "Withdrawn. It stays in the record and counts no longer.")
    return redirect(record_of(row.garment))

from typing import Any

from django.contrib import messages
from django.core.paginator import Paginator
from django.db import transaction
from django.http import FileResponse, HttpResponse
from django.shortcuts import redirect, render
from django.utils import timezone
from django.views.decorators.http import require_GET, require_POST

from inventory import export
from inventory.bench import move_to
from inventory.choices import Status
from inventory.cloth import (
    missing_for_advice,
    missing_for_size_check,
    shrinkage_for,
    usable_of,
)
from inventory.drawing import panel_drawing
from inventory.filters import GarmentFilter
from inventory.forms.describe import DescribeForm
from inventory.forms.garments import PhotoForm, TakeInForm, save_photo
from inventory.models import Garment
from inventory.reading import words_of
from inventory.removal import objections_to_removing
from inventory.timeline import timeline_of
from inventory.views.rows import garment_for, photo_for
from shared.middleware import WorkshopRequest

ON_A_PAGE = 24


def _found(request: WorkshopRequest) -> GarmentFilter:
    rows = Garment.objects.of(request.workshop).here().with_usable_area()
    return GarmentFilter(request.GET, queryset=rows.select_related("collection"), request=request)


@require_GET
def garments(request: WorkshopRequest) -> HttpResponse:
    found = _found(request)
    rows = found.qs.prefetch_related("fibre_shares", "photos")
    page = Paginator(rows, ON_A_PAGE).get_page(request.GET.get("page"))
    kept = request.GET.copy()
    kept.pop("page", None)
    asked = [name for name, value in kept.items() if value and name != "order"]
    return render(
        request,
        "inventory/garments.html",
        {
            "filter": found,
            "page": page,
            "kept": kept.urlencode(),
            "asked": asked,
            "nav": "garments",
        },
    )


@require_GET
def garments_file(request: WorkshopRequest, kind: str) -> HttpResponse:
    """The list as it is filtered, as a file for a spreadsheet."""
    rows = _found(request).qs.prefetch_related("fibre_shares")
    table = export.table_of(rows, request.units)
    name = f"garments-{timezone.localdate():%Y-%m-%d}.{kind}"
    write = {"csv": export.as_csv, "xlsx": export.as_xlsx}[kind]
    return _attached(write(table), name, export.MEDIA_TYPES[kind])


def _attached(content: bytes, name: str, media_type: str) -> HttpResponse:
    answer = HttpResponse(content, content_type=media_type)
    answer["Content-Disposition"] = f'attachment; filename="{name}"'
    return answer


def take_in(request: WorkshopRequest) -> HttpResponse:
    first: dict[str, Any] = {"collection": request.GET.get("collection")}
    form = TakeInForm(
        request.POST or None, request.FILES or None, workshop=request.workshop, initial=first
    )
    if request.method == "POST" and form.is_valid():
        garment = form.save()
        messages.success(request, f"Taken in. Pin the tag {garment.tag} on it.")
        return redirect(garment)
    return render(request, "inventory/take_in.html", {"form": form, "nav": "garments"})


@require_GET
def garment(request: WorkshopRequest, pk: int) -> HttpResponse:
    row = garment_for(request.workshop, pk)
    panels = []
    for panel in row.panels.all():
        panel.garment = row
        cloth = usable_of(panel, shrinkage_for(panel))
        panels.append((panel, cloth, panel_drawing(panel, cloth, request.units)))
    return render(
        request,
        "inventory/garment.html",
        {
            "garment": row,
            **words_of(row),
            "panels": panels,
            "pictures": [photo for photo in row.photos.all() if photo.note_id is None],
            "timeline": timeline_of(row, request.units),
            "usable_mm2": sum(cloth.usable_mm2 for _, cloth, _ in panels),
            "missing_for_advice": missing_for_advice(row),
            "missing_for_size_check": missing_for_size_check(row),
            "statuses": Status.choices,
            "nav": "garments",
        },
    )


def describe(request: WorkshopRequest, pk: int) -> HttpResponse:
    row = garment_for(request.workshop, pk)
    form = DescribeForm(
        request.POST or None, workshop=request.workshop, units=request.units, instance=row
    )
    if request.method == "POST" and form.is_valid():
        form.save()
        messages.success(request, "Saved. The advice has been brought up to date.")
        return redirect(row)
    return render(
        request, "inventory/describe.html", {"form": form, "garment": row, "nav": "garments"}
    )


@require_POST
def set_status(request: WorkshopRequest, pk: int) -> HttpResponse:
    row = garment_for(request.workshop, pk)
    if request.POST.get("status") in Status.values:
        move_to(row, request.POST["status"])
        messages.success(request, f"{row.tag} is now: {row.get_status_display().lower()}.")
    else:
        messages.error(request, "Choose where the garment is on the bench.")
    return redirect(row)


@require_POST
def remove_garment(request: WorkshopRequest, pk: int) -> HttpResponse:
    row = garment_for(request.workshop, pk)
    if objections := objections_to_removing(row):
        for words in objections:
            messages.error(request, words)
        return redirect(row)
    row.removed_at = timezone.now()
    row.save(update_fields=["removed_at"])
    messages.success(request, f"{row} ({row.tag}) is off the list. Its page can put it back.")
    return redirect(row)


@require_POST
def put_back_garment(request: WorkshopRequest, pk: int) -> HttpResponse:
    row = garment_for(request.workshop, pk)
    row.removed_at = None
    row.save(update_fields=["removed_at"])
    messages.success(request, f"{row} ({row.tag}) is back on the list.")
    return redirect(row)


def add_photo(request: WorkshopRequest, pk: int) -> HttpResponse:
    row = garment_for(request.workshop, pk)
    form = PhotoForm(request.POST or None, request.FILES or None)
    if request.method == "POST" and form.is_valid():
        with transaction.atomic():
            save_photo(row, form.cleaned_data["photo"], form.cleaned_data["description"])
        messages.success(request, "The photograph is kept.")
        return redirect(row)
    return render(
        request,
        "shared/form_page.html",
        {"form": form, "heading": f"A photograph of {row}", "back": row.get_absolute_url()},
    )


@require_GET
def photo(request: WorkshopRequest, pk: int, size: str) -> FileResponse:
    """A picture goes out only to members of its workshop, and stays in their own browser."""
    row = photo_for(request.workshop, pk)
    file = row.image if size == "full" else row.small
    answer = FileResponse(file.open("rb"), content_type="image/jpeg")
    answer["Cache-Control"] = "private, max-age=31536000, immutable"
    return answer


@require_POST
def remove_photo(request: WorkshopRequest, pk: int) -> HttpResponse:
    row = photo_for(request.workshop, pk)
    if row.note_id is not None:
        messages.error(request, "This picture belongs to a note and stays with it.")
        return redirect("inventory:garment", row.garment_id)
    storage, names = row.image.storage, [str(row.image.name), str(row.small.name)]
    row.delete()
    for name in names:  # after the row is gone, so that no row ever lacks its file
        storage.delete(name)
    messages.success(request, "The photograph is gone.")
    return redirect("inventory:garment", row.garment_id)

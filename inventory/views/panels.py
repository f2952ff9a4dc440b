from dataclasses import replace

from django.contrib import messages
from django.db import transaction
from django.db.models import ProtectedError
from django.http import Http404, HttpResponse
from django.shortcuts import get_object_or_404, redirect, render
from django.utils import timezone
from django.views.decorators.http import require_GET, require_POST
from shapely import Polygon

from inventory.choices import PanelShape
from inventory.cloth import measure, shrinkage_for, usable_of
from inventory.drawing import bare_drawing, panel_drawing, shape_picture
from inventory.forms.panels import (
    PART_NAMES,
    PanelForm,
    PlaceForm,
    sketch_measures,
    sketch_place,
)
from inventory.measuring.rings import Ring
from inventory.measuring.shapes import outline_from
from inventory.measuring.usable import usable_cloth
from inventory.models import Detail, Flaw, Panel
from inventory.stripes import is_unmeasured, origin_of, repeat_of, stripe_path
from inventory.timeline import notes_on
from inventory.views.rows import garment_for, panel_for
from shared.errors import ClothError
from shared.middleware import WorkshopRequest
from shared.units import LONGEST_MM, MM_PER, LengthUnit


def add_panel(request: WorkshopRequest, pk: int) -> HttpResponse:
    garment = garment_for(request.workshop, pk)
    shape = request.GET.get("shape", "")
    if shape not in PanelShape.values:
        return render(
            request,
            "inventory/choose_shape.html",
            {
                "garment": garment,
                "shapes": [shape_picture(shape) for shape in PanelShape],
                "nav": "garments",
            },
        )
    return _panel_page(request, Panel(garment=garment, workshop=garment.workshop), shape)


def edit_panel(request: WorkshopRequest, pk: int) -> HttpResponse:
    panel = panel_for(request.workshop, pk)
    return _panel_page(request, panel, panel.shape)


def _panel_page(request: WorkshopRequest, panel: Panel, shape: str) -> HttpResponse:
    garment = panel.garment
    form = PanelForm(
        request.POST or None, instance=panel, garment=garment, shape=shape, units=request.units
    )
    if request.method == "POST" and form.is_valid():
        form.save()
        messages.success(request, f"{panel} is measured. Mark what is stained, worn or precious.")
        return redirect(panel)
    return render(
        request,
        "inventory/panel_form.html",
        {
            "form": form,
            "garment": garment,
            "shape": shape,
            "shape_name": PanelShape(shape).label,
            "example": shape_picture(PanelShape(shape)),
            "part_names": PART_NAMES,
            "nav": "garments",
        },
    )


@require_GET
def sketch(request: WorkshopRequest) -> HttpResponse:
    """The panel as typed so far, drawn to scale, or what keeps it from being drawn."""
    shape = request.GET.get("shape", "")
    if shape not in PanelShape.values:
        raise Http404
    example = shape_picture(PanelShape(shape))
    typed = {name: value for name, value in request.GET.items() if isinstance(value, str)}
    try:
        outline = outline_from(shape, sketch_measures(shape, typed, request.units))
        grain_deg = float(typed.get("grain_deg") or 90)
    except (ClothError, ValueError) as error:
        words = str(error) if isinstance(error, ClothError) else "The grain is no angle."
        part = {"wrong": words, "example": example}
        return render(request, "inventory/panel_form.html#sketch", part)
    cloth = usable_cloth(outline, grain_deg=grain_deg)
    drawing = bare_drawing(outline, cloth, grain_deg, request.units)
    drawing = replace(drawing, stripes=_typed_stripes(typed, outline, grain_deg, request.units))
    return render(request, "inventory/panel_form.html#sketch", {"drawing": drawing, "cloth": cloth})


def _typed_stripes(
    typed: dict[str, str], outline: Ring, grain_deg: float, units: LengthUnit
) -> str:
    """The stripes as typed so far; nothing while they cannot be drawn."""
    try:
        along, across = (float(typed.get(name) or 0) or None for name in ("along", "across"))
        place = sketch_place(typed, units)
    except (ClothError, ValueError):
        return ""
    is_sound = all(each is None or 1 <= each <= LONGEST_MM for each in (along, across))
    if place is None or not is_sound:
        return ""
    return stripe_path(Polygon(outline), grain_deg, (along, across), place)


@require_GET
def panel(request: WorkshopRequest, pk: int) -> HttpResponse:
    row = panel_for(request.workshop, pk)
    cloth = usable_of(row, shrinkage_for(row))
    return render(
        request,
        "inventory/panel.html",
        {
            "panel": row,
            "garment": row.garment,
            "cloth": cloth,
            "drawing": panel_drawing(row, cloth, request.units),
            "repeat": repeat_of(row),
            "needs_stripe": repeat_of(row) is not None and origin_of(row) is None,
            "needs_repeat": is_unmeasured(row),
            "timeline": notes_on(row, request.units),
            "unmarked": (request.session.get("unmarked") or {}).get("panel") == row.pk,
            "nav": "garments",
        },
    )


def add_place(request: WorkshopRequest, pk: int, what: str) -> HttpResponse:
    row = panel_for(request.workshop, pk)
    drawn = "corners" if request.GET.get("drawn") == "corners" else "circle"
    form = PlaceForm(request.POST or None, panel=row, what=what, drawn=drawn, units=request.units)
    if request.method == "POST" and form.is_valid():
        with transaction.atomic():
            form.save()
            _remeasure(request, row)
        messages.success(request, "Marked. The usable cloth has been worked out again.")
        return redirect(row)
    cloth = usable_of(row, shrinkage_for(row))
    return render(
        request,
        "inventory/place_form.html",
        {
            "form": form,
            "panel": row,
            "what": what,
            "drawn": drawn,
            "drawing": panel_drawing(row, cloth, request.units),
            "mm_per_unit": MM_PER[request.units],
            "nav": "garments",
        },
    )


@require_POST
def remove_place(request: WorkshopRequest, what: str, pk: int) -> HttpResponse:
    place: Flaw | Detail
    if what == "flaw":
        place = get_object_or_404(Flaw.objects.of(request.workshop), pk=pk)
    else:
        place = get_object_or_404(Detail.objects.of(request.workshop), pk=pk)
    row = place.panel
    kept = {name: getattr(place, name) for name in _kept_of(what)}
    try:
        with transaction.atomic():
            place.delete()
            _remeasure(request, row)
    except ProtectedError:
        messages.error(request, f"A keepsake is to show {place}. Change its rules first.")
        return redirect(row)
    request.session["unmarked"] = {"panel": row.pk, "what": what, "kept": kept}
    messages.success(request, f"{place} is no longer marked.")
    return redirect(row)


def _kept_of(what: str) -> tuple[str, ...]:
    """What a place is, apart from the panel it lies on."""
    facts = ("kind", "points_mm", "radius_mm", "note")
    return facts if what == "flaw" else (*facts, "is_kept_aside")


@require_POST
def put_back_place(request: WorkshopRequest, pk: int) -> HttpResponse:
    """Mark the place again that was unmarked last."""
    row = panel_for(request.workshop, pk)
    unmarked = request.session.pop("unmarked", None)
    if unmarked and unmarked["panel"] == row.pk:
        model = Flaw if unmarked["what"] == "flaw" else Detail
        with transaction.atomic():
            place = model.objects.create(workshop=request.workshop, panel=row, **unmarked["kept"])
            _remeasure(request, row)
        messages.success(request, f"{place} is marked again.")
    return redirect(row)


@require_POST
def remove_panel(request: WorkshopRequest, pk: int) -> HttpResponse:
    row = panel_for(request.workshop, pk)
    row.removed_at = timezone.now()
    row.save(update_fields=["removed_at"])
    messages.success(request, f"{row} is taken off. Its page can put it back.")
    return redirect(row)


@require_POST
def put_back_panel(request: WorkshopRequest, pk: int) -> HttpResponse:
    row = panel_for(request.workshop, pk)
    row.removed_at = None
    row.save(update_fields=["removed_at"])
    messages.success(request, f"{row} is back.")
    return redirect(row)


def _remeasure(request: WorkshopRequest, row: Panel) -> None:
    fresh = panel_for(request.workshop, row.pk)
    measure(fresh)
    fresh.save(update_fields=["area_mm2", "usable_area_mm2"])

"""Patterns in from files and out to files; nothing is taken in until the maker says so."""

from django.contrib import messages
from django.db import transaction
from django.http import HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse
from django.utils.text import slugify
from django.views.decorators.http import require_GET, require_POST

from planning.drafting.exchange.found import Found, FoundPiece, found_from_json, found_to_json
from planning.drafting.exchange.write import dxf_of, svg_of
from planning.drafting.rings import bounds_mm
from planning.drafting.svg_paths import path_data, view_box
from planning.drafts import add_size, draft_size
from planning.file_forms import FileForm, TakeInForm
from planning.models import Pattern, PatternFile
from planning.views.rows import file_for, size_for
from shared.middleware import WorkshopRequest


def read_file(request: WorkshopRequest) -> HttpResponse:
    """Take a file to look at."""
    form = FileForm(request.POST or None, request.FILES or None)
    if request.method == "POST" and form.is_valid():
        row = PatternFile.objects.create(
            workshop=request.workshop,
            name=(form.cleaned_data["file"].name or "pattern")[:120],
            found=found_to_json(form.found),
        )
        return redirect(row)
    return render(
        request,
        "shared/form_page.html",
        {
            "form": form,
            "heading": "A pattern from a file",
            "note": "The file is read and shown to you first. Nothing is taken in until you have "
            "looked at its pieces and measured one.",
            "save": "Read the file",
            "back": reverse("planning:new-pattern"),
            "nav": "patterns",
        },
    )


def pattern_file(request: WorkshopRequest, pk: int) -> HttpResponse:
    """What was found in a file, and what of it becomes a pattern."""
    row = file_for(request.workshop, pk)
    found = found_from_json(row.found)
    form = TakeInForm(
        request.POST or None,
        found=found,
        units=request.units,
        initial={"name": row.name.rsplit(".", 1)[0][:80]},
    )
    if request.method == "POST" and form.is_valid():
        pattern = _taken_in(row, form)
        messages.success(request, f"{pattern} is taken in. Say which edges are sewn together.")
        return redirect(pattern)
    return render(
        request,
        "planning/pattern_file.html",
        {
            "file": row,
            "found": found,
            "form": form,
            "rows": [(piece, _picture(piece), _span(piece), f) for piece, f in form.rows()],
            "largest": _largest(found),
            "nav": "patterns",
        },
    )


def _picture(piece: FoundPiece) -> tuple[str, str, str]:
    """A box, the outline, and the seam line if the file has one."""
    seam = path_data(piece.seam_line, closed=True) if piece.seam_line else ""
    return view_box(piece.outline, 4.0), path_data(piece.outline, closed=True), seam


def _span(piece: FoundPiece) -> tuple[float, float]:
    left, low, right, high = bounds_mm(piece.outline)
    return right - left, high - low


def _largest(found: Found) -> str:
    """The piece whose width and height the report gives."""

    def misfit(piece: FoundPiece) -> float:
        wide, high = _span(piece)
        return abs(wide - found.width_mm) + abs(high - found.height_mm)

    return min(found.pieces, key=misfit).name


@transaction.atomic
def _taken_in(row: PatternFile, form: TakeInForm) -> Pattern:
    data = form.cleaned_data
    pattern = Pattern.objects.create(
        workshop=row.workshop,
        name=data["name"],
        source=data["source"] or f"The file {row.name}",
        licence=data["licence"],
        seam_allowance_mm=data["seam_allowance"],
    )
    for draft in form.drafts:
        add_size(pattern, draft)
    row.delete()
    return pattern


@require_POST
def drop_file(request: WorkshopRequest, pk: int) -> HttpResponse:
    row = file_for(request.workshop, pk)
    row.delete()
    messages.success(request, f"{row} is dropped. Nothing of it was taken in.")
    return redirect("planning:patterns")


@require_GET
def export(request: WorkshopRequest, pk: int, kind: str) -> HttpResponse:
    """One size as a file, true to scale."""
    row = size_for(request.workshop, pk)
    draft, title = draft_size(row), f"{row.pattern}, {row.height_mm / 10:g} cm"
    if kind == "svg":
        answer = HttpResponse(svg_of(draft, title), content_type="image/svg+xml; charset=utf-8")
    else:
        answer = HttpResponse(dxf_of(draft, title), content_type="image/vnd.dxf")
    answer["Content-Disposition"] = f'attachment; filename="{slugify(title) or "pattern"}.{kind}"'
    return answer

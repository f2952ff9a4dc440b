"""Making and changing patterns: from a built-in, from paper, as a copy, as a new version."""

from django.contrib import messages
from django.db import transaction
from django.http import HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse
from django.utils import timezone
from django.views.decorators.http import require_GET, require_POST

from planning import versions
from planning.drafting.errors import DraftError
from planning.drafting.library import figure_for
from planning.drafts import seams_of
from planning.models import Pattern, PatternFile, PatternSize
from planning.pattern_forms import GradeForm, PartsForm, PatternForm, SeamForm
from planning.seam_rows import seam_at, set_seam
from planning.views.changing import kept_as_it_is
from planning.views.patterns import PICTURE_MM
from planning.views.rows import pattern_for, size_for
from shared.errors import OutlineError
from shared.middleware import WorkshopRequest


@require_GET
def ways(request: WorkshopRequest) -> HttpResponse:
    """How a pattern comes in: drafted here, entered from paper, or read from a file."""
    return render(
        request,
        "planning/pattern_ways.html",
        {
            "figure": figure_for("bear", PICTURE_MM),
            "files": PatternFile.objects.of(request.workshop).defer("found"),
            "nav": "patterns",
        },
    )


def edit_pattern(request: WorkshopRequest, pk: int | None = None) -> HttpResponse:
    """The facts of a pattern; a new one also gets its first size, empty."""
    row = pattern_for(request.workshop, pk) if pk else Pattern(workshop=request.workshop)
    if pk and (kept := kept_as_it_is(request, row)):
        return kept
    form = PatternForm(
        request.POST or None, request.FILES or None, instance=row, units=request.units
    )
    if request.method == "POST" and form.is_valid():
        if (size := _saved(form)) is not None:
            messages.success(request, "Saved. Now add its pieces.")
            return redirect(size)
        if not form.errors:
            messages.success(request, "Saved.")
            return redirect(row)
    back = row.get_absolute_url() if pk else reverse("planning:new-pattern")
    heading = f"Change {row}" if pk else "A pattern of your own"
    return render(
        request,
        "shared/form_page.html",
        {"form": form, "heading": heading, "back": back, "nav": "patterns"},
    )


def _saved(form: PatternForm) -> PatternSize | None:
    """Save all of it; the first size of a new pattern, or an error on the form."""
    data, row = form.cleaned_data, form.instance
    is_new = row.pk is None
    try:
        with transaction.atomic():
            if data["new_picture"]:
                row.picture = data["new_picture"]
            if is_new:
                row.seam_allowance_mm = data["seam_allowance"]
            row.save()
            if is_new:
                return PatternSize.objects.create(
                    workshop=row.workshop, pattern=row, height_mm=data["height"]
                )
            if data["seam_allowance"] != row.seam_allowance_mm:
                versions.set_allowance(row, data["seam_allowance"])
    except (DraftError, OutlineError) as error:
        form.add_error("seam_allowance", str(error))
    return None


@require_POST
def duplicate(request: WorkshopRequest, pk: int) -> HttpResponse:
    copy = versions.duplicate(pattern_for(request.workshop, pk))
    messages.success(request, f"This is your own copy: {copy}. Change it as you like.")
    return redirect(copy)


@require_POST
def new_version(request: WorkshopRequest, pk: int) -> HttpResponse:
    row = pattern_for(request.workshop, pk)
    if row.built_in:
        return duplicate(request, pk)
    if later := Pattern.objects.of(request.workshop).filter(earlier=row).first():
        messages.warning(request, "There is a later version already. This is it.")
        return redirect(later)
    fresh = versions.new_version(row)
    messages.success(request, f"{fresh}. What was planned with the earlier version keeps it.")
    return redirect(fresh)


@require_POST
def put_away(request: WorkshopRequest, pk: int) -> HttpResponse:
    row = pattern_for(request.workshop, pk)
    row.archived_at = timezone.now()
    row.save(update_fields=["archived_at"])
    messages.success(request, f"{row} is put away. Its page can bring it back.")
    return redirect(row)


@require_POST
def bring_back(request: WorkshopRequest, pk: int) -> HttpResponse:
    row = pattern_for(request.workshop, pk)
    row.archived_at = None
    row.save(update_fields=["archived_at"])
    messages.success(request, f"{row} is back among the patterns.")
    return redirect(row)


def grade(request: WorkshopRequest, pk: int) -> HttpResponse:
    """New sizes by finished height."""
    row = pattern_for(request.workshop, pk)
    if kept := kept_as_it_is(request, row):
        return kept
    form = GradeForm(request.POST or None, pattern=row, units=request.units)
    if request.method == "POST" and form.is_valid():
        try:
            with transaction.atomic():
                for height in form.cleaned_data["heights"]:
                    versions.grade(form.cleaned_data["graded_from"], height)
        except (DraftError, OutlineError) as error:
            form.add_error("heights", str(error))
        else:
            messages.success(request, "Graded.")
            return redirect(row)
    return render(
        request,
        "shared/form_page.html",
        {
            "form": form,
            "heading": f"More sizes of {row}",
            "save": "Grade",
            "back": row.get_absolute_url(),
            "nav": "patterns",
        },
    )


@require_POST
def own_size(request: WorkshopRequest, pk: int) -> HttpResponse:
    """Let a graded size go its own way, so that its pieces can be changed by themselves."""
    row = size_for(request.workshop, pk)
    if kept := kept_as_it_is(request, row.pattern):
        return kept
    versions.let_stand(row)
    messages.success(request, "This size now stands by itself.")
    return redirect(row)


def edit_seam(request: WorkshopRequest, pk: int, mark: str = "") -> HttpResponse:
    """Which edges are sewn together; ``mark`` says which seam is changed, a new one has none."""
    row = pattern_for(request.workshop, pk)
    if kept := kept_as_it_is(request, row):
        return kept
    at = seam_at(row, mark) if mark else None
    if mark and at is None:
        return _seam_gone(request, row)
    sizes = list(row.sizes.prefetch_related("pieces"))
    if not any(size.pieces.all() for size in sizes):
        messages.error(request, "Add the pieces first, then sew them together.")
        return redirect(row)
    form = SeamForm(
        request.POST or None, sizes=sizes, seam=None if at is None else seams_of(row)[at]
    )
    if request.method == "POST" and form.is_valid():
        if not set_seam(row, mark, form.seam()):
            return _seam_gone(request, row)
        messages.success(request, "Saved and walked.")
        return redirect(f"{row.get_absolute_url()}#seams")
    return render(
        request,
        "planning/seam_form.html",
        {"form": form, "pattern": row, "is_new": not mark, "nav": "patterns"},
    )


def _seam_gone(request: WorkshopRequest, row: Pattern) -> HttpResponse:
    messages.error(request, "That seam was changed or removed in another window.")
    return redirect(f"{row.get_absolute_url()}#seams")


def edit_parts(request: WorkshopRequest, pk: int) -> HttpResponse:
    """The stuffed parts that the pieces name, for the estimate of stuffing."""
    row = pattern_for(request.workshop, pk)
    if kept := kept_as_it_is(request, row):
        return kept
    form = PartsForm(request.POST or None, pattern=row)
    if not form.names:
        messages.error(request, "No piece names its stuffed part yet. Change a piece to say so.")
        return redirect(row)
    if request.method == "POST" and form.is_valid():
        row.parts = form.parts()
        row.save(update_fields=["parts"])
        messages.success(request, "Saved. The estimates count with it.")
        return redirect(row)
    return render(
        request,
        "shared/form_page.html",
        {
            "form": form,
            "heading": f"Stuffed parts of {row}",
            "back": row.get_absolute_url(),
            "nav": "patterns",
        },
    )

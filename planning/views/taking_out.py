"""Taking pieces, seams and sizes out of a maker's own pattern, and putting them back."""

from django.contrib import messages
from django.http import HttpResponse
from django.shortcuts import redirect
from django.views.decorators.http import require_POST

from planning import taking_out
from planning.models import PatternSize
from planning.views.changing import fixed, kept_as_it_is
from planning.views.rows import pattern_for, piece_for, size_for, taken_out_for
from shared.errors import ClothError
from shared.middleware import WorkshopRequest
from shared.units import format_length


@require_POST
def remove_piece(request: WorkshopRequest, pk: int) -> HttpResponse:
    piece = piece_for(request.workshop, pk)
    if kept := fixed(request, piece.size):
        return kept
    taking_out.take_out_piece(piece)
    messages.success(request, f"The {piece} is taken out of this pattern.")
    return redirect(piece.size)


@require_POST
def remove_seam(request: WorkshopRequest, pk: int, mark: str) -> HttpResponse:
    row = pattern_for(request.workshop, pk)
    if kept := kept_as_it_is(request, row):
        return kept
    gone = taking_out.take_out_seam(row, mark)
    if gone:
        messages.success(request, f"“{gone}” is no longer a seam.")
    else:
        messages.error(request, "That seam was changed or removed before, so nothing was done.")
    return redirect(f"{row.get_absolute_url()}#seams")


@require_POST
def remove_size(request: WorkshopRequest, pk: int) -> HttpResponse:
    row = size_for(request.workshop, pk)
    if kept := kept_as_it_is(request, row.pattern):
        return kept
    if row.pattern.sizes.count() == 1:
        messages.error(request, "This is its only size. Put the whole pattern away instead.")
        return redirect(row)
    if PatternSize.objects.of(request.workshop).filter(graded_from=row).exists():
        messages.error(
            request,
            "Other sizes are graded from this one. Remove them first, or let them stand by "
            "themselves.",
        )
        return redirect(row)
    taking_out.take_out_size(row)
    height = format_length(row.height_mm, request.units)
    messages.success(request, f"The {height} size is taken out of this pattern.")
    return redirect(row.pattern)


@require_POST
def put_back(request: WorkshopRequest, pk: int) -> HttpResponse:
    row = taken_out_for(request.workshop, pk)
    if kept := kept_as_it_is(request, row.pattern):
        return kept
    try:
        taking_out.put_back(row)
    except ClothError as error:
        messages.error(request, f"It was not put back. {error}")
    else:
        messages.success(request, "It is back.")
    return redirect(row.size or row.pattern)

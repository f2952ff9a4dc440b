from django.contrib import messages
from django.http import HttpResponse
from django.shortcuts import redirect
from django.views.decorators.http import require_POST

from planning import cutting_table
from planning.cutting_table import table_of
from planning.move_form import copy_of
from planning.views.rows import check_for
from shared.middleware import WorkshopRequest


@require_POST
def keep_here(request: WorkshopRequest, pk: int) -> HttpResponse:
    """Lock a piece where it lies."""
    table = table_of(check_for(request.workshop, pk))
    copy = copy_of(request.POST.get("piece", ""), table.problem)
    place = table.place_of(copy) if copy else None
    if copy is None or place is None:
        messages.error(request, "That piece does not lie on the cloth.")
        return redirect(table.check)
    cutting_table.lock(table.check, table.cloth, place)
    cutting_table.carry_over(check_for(request.workshop, pk))
    messages.success(request, f"Kept in its place: {table.words_of(copy)}.")
    return redirect(table.check)


@require_POST
def free(request: WorkshopRequest, pk: int) -> HttpResponse:
    """Let a locked piece be laid elsewhere again."""
    table = table_of(check_for(request.workshop, pk))
    copy = copy_of(request.POST.get("piece", ""), table.problem)
    if copy is not None:
        cutting_table.free(table.check, copy)
        cutting_table.carry_over(check_for(request.workshop, pk))
        messages.success(request, f"Free again: {table.words_of(copy)}.")
    return redirect(table.check)

from typing import Any

from django.contrib import messages
from django.http import HttpResponse, JsonResponse
from django.shortcuts import redirect, render
from django.views.decorators.http import require_POST
from django_htmx.http import HttpResponseClientRedirect

from planning import checking
from planning.cutting_table import Copy, Table, lock, table_of
from planning.drawing import laid_panel
from planning.hand_lays import DraftError, Said, draft_text, earlier_of, faults_said, remember
from planning.laid_shapes import LaidPanel
from planning.laying import BusyError, keep_by_hand, known_lay, unplaced
from planning.models import SizeCheck
from planning.move_form import MoveForm, Moving, copy_of, replaced
from planning.rule_choices import copy_value
from planning.shown_lay import facts_of
from planning.views.rows import check_for
from shared.middleware import WorkshopRequest
from shared.units import MM_PER

BUSY_WORDS = "This size is being checked. Wait until that is done, or stop it first."


def _table(request: WorkshopRequest, pk: int, draft: str | None = None) -> Table:
    return table_of(check_for(request.workshop, pk), draft)


def _capital(words: str) -> str:
    return words[:1].upper() + words[1:]


def move(request: WorkshopRequest, pk: int) -> HttpResponse:
    """Move pieces by hand. What a button asks for is done; nothing is saved but by *Save*."""
    is_post = request.method == "POST"
    try:
        table = _table(request, pk, request.POST.get("draft", "") if is_post else None)
    except DraftError as error:
        messages.error(request, f"{error} Nothing was changed.")
        return redirect("planning:move", pk)
    if not is_post:
        chosen = copy_of(request.GET.get("piece", ""), table.problem) or _first(table)
        return _page(request, table, chosen)
    chosen = copy_of(request.POST.get("chosen", ""), table.problem) or _first(table)
    wanted = copy_of(request.POST.get("piece", ""), table.problem) or chosen
    wish = request.POST.get("do", "")
    if wish == "choose" or (not wish and wanted != chosen):
        return _page(request, table, wanted)
    form = _form(request, table, chosen, request.POST)
    if form is not None and not form.is_left_aside:
        if not form.is_valid():
            return _page(request, table, chosen, form)
        table.lay = replaced(table.lay, form.placement)
    steps = {"save": _save, "keep": _keep_and_search}
    return steps.get(wish, _page)(request, table, chosen)


def _first(table: Table) -> Copy | None:
    """A piece to begin with: the first that has no place yet, else the first that lies."""
    copies = [*unplaced(table.problem, table.lay), *((p.piece, p.copy) for p in table.lay)]
    return copies[0] if copies else None


def _form(
    request: WorkshopRequest, table: Table, copy: Copy | None, data: Any = None
) -> MoveForm | None:
    if copy is None:
        return None
    moving = Moving(table.problem, table.cloth, copy, table.place_of(copy))
    return MoveForm(data, moving=moving, units=request.units)


def _page(
    request: WorkshopRequest, table: Table, chosen: Copy | None, form: MoveForm | None = None
) -> HttpResponse:
    template = "planning/lay_move.html" + ("#moving" if request.htmx else "")
    form = form or _form(request, table, chosen)
    faults = table.faults
    return render(
        request,
        template,
        {
            "check": table.check,
            "keepsake": table.check.keepsake,
            "form": form,
            "chosen": copy_value(*chosen) if chosen else "",
            "chosen_words": table.words_of(chosen) if chosen else "",
            "is_laid": chosen is not None and table.place_of(chosen) is not None,
            "choices": _choices(table),
            "panel": _drawn(request, table, chosen, faults),
            "faults": faults,
            "left_over": [table.words_of(copy) for copy in unplaced(table.problem, table.lay)],
            "draft": draft_text(table.lay, table.cloth),
            "mm_per_unit": MM_PER[request.units],
            "nav": "keepsakes",
        },
    )


def _choices(table: Table) -> list[tuple[str, str]]:
    """Every copy, with where it lies."""
    rows = table.cloth.rows
    choices = []
    for piece, copy in table.problem.copies():
        place = table.place_of((piece.id, copy))
        where = f"on {rows[place.panel]} of {rows[place.panel].garment}" if place else "not laid"
        words = table.words_of((piece.id, copy))
        choices.append((copy_value(piece.id, copy), f"{_capital(words)}: {where}"))
    return choices


def _drawn(
    request: WorkshopRequest, table: Table, chosen: Copy | None, faults: list[Said]
) -> LaidPanel | None:
    """The panel of the chosen piece, else the first that anything lies on."""
    place = table.place_of(chosen) if chosen else None
    name = place.panel if place else next((p.panel for p in table.lay), "")
    name = name or next(iter(table.cloth.rows), "")
    if not name:
        return None
    faulty = frozenset(copy for each in faults for copy in each.copies)
    check = table.check
    facts = facts_of(check.keepsake, check.size, table.problem, table.lay, faulty)
    on_it = [each for each in table.lay if each.panel == name]
    return laid_panel(table.cloth.rows[name], name, on_it, facts, request.units)


def _save(request: WorkshopRequest, table: Table, chosen: Copy | None) -> HttpResponse:
    before = draft_text(known_lay(table.check, table.cloth) or [], table.cloth)
    try:
        faults = keep_by_hand(table.check, table.cloth, table.problem, table.lay)
    except BusyError:
        messages.error(request, BUSY_WORDS)
        return _page(request, table, chosen)
    if faults:
        messages.error(request, "Not saved: some pieces do not lie right yet.")
        return _page(request, table, chosen)
    remember(request, table.check, before)
    messages.success(request, "Saved, and every rule was checked once more.")
    return _go(request, table.check)


def _keep_and_search(request: WorkshopRequest, table: Table, chosen: Copy | None) -> HttpResponse:
    """Lock a piece where it was moved to, though others are in its way, and look again."""
    place = table.place_of(chosen) if chosen else None
    if chosen is None or place is None:
        return _page(request, table, chosen)
    if table.check.is_busy:
        messages.error(request, BUSY_WORDS)
        return _page(request, table, chosen)
    locked = {(lock.piece, lock.copy) for lock in table.problem.locked}
    alone = [p for p in table.lay if p is place or (p.piece, p.copy) in locked]
    faults = faults_said(table.problem, alone, table.pieces)
    if faults:
        messages.error(request, f"It cannot be kept here. {faults[0].words}")
        return _page(request, table, chosen)
    lock(table.check, table.cloth, place)
    checking.ask(table.check.keepsake, [table.check.size])
    messages.success(request, f"{_capital(table.words_of(chosen))} stays. The rest is laid anew.")
    return _go(request, table.check)


def _go(request: WorkshopRequest, check: SizeCheck) -> HttpResponse:
    if request.htmx:
        return HttpResponseClientRedirect(check.get_absolute_url())
    return redirect(check)


@require_POST
def faults(request: WorkshopRequest, pk: int) -> JsonResponse:
    """What is wrong with a draft, at once, for the page to show while a piece is moved."""
    try:
        table = _table(request, pk, request.POST.get("draft", ""))
    except DraftError as error:
        return JsonResponse({"error": str(error)}, status=400)
    return JsonResponse(
        {
            "faults": [
                {"words": each.words, "copies": [copy_value(*copy) for copy in each.copies]}
                for each in table.faults
            ]
        }
    )


@require_POST
def undo(request: WorkshopRequest, pk: int) -> HttpResponse:
    """Put the pieces back where they lay before they were last moved by hand."""
    check = check_for(request.workshop, pk)
    before = earlier_of(request, check)
    if not before:
        messages.error(request, "There is nothing to put back.")
        return redirect(check)
    try:
        table = _table(request, pk, before)
        now = draft_text(known_lay(check, table.cloth) or [], table.cloth)
        faults = keep_by_hand(check, table.cloth, table.problem, table.lay)
    except (DraftError, BusyError) as error:
        words = BUSY_WORDS if isinstance(error, BusyError) else f"{error} Nothing was changed."
        messages.error(request, words)
        return redirect(check)
    if faults:
        messages.error(request, "The earlier places no longer keep the rules. Nothing was changed.")
    else:
        remember(request, check, now)
        messages.success(request, "The pieces lie where they lay before.")
    return redirect(check)

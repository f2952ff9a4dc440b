from dataclasses import dataclass
from typing import Any

from django.contrib import messages
from django.http import HttpResponse
from django.shortcuts import redirect, render
from django.views.decorators.http import require_GET, require_POST

from inventory.cloth import shrinkage_for, usable_of
from inventory.drawing import PanelDrawing, panel_drawing, ring_path
from inventory.models import Panel
from planning import checking
from planning.coverage.problem import Problem
from planning.hand_lays import earlier_of
from planning.laying import rows_of
from planning.models import SizeCheck
from planning.nearest import near_miss
from planning.problems import Cloth, cloth_of, problem_of
from planning.shown_lay import ShownLay, shown_lay
from planning.sizes import SizeRow, sizes_of
from planning.spare_words import spare_words
from planning.views.rows import check_for
from shared.middleware import WorkshopRequest
from shared.units import LengthUnit

NOTHING_NEW = 204  # htmx leaves the page as it is


@require_GET
def lay(request: WorkshopRequest, pk: int) -> HttpResponse:
    """One size: its verdict, the lay or the proof, and the same facts in a table."""
    check = check_for(request.workshop, pk)
    if request.htmx and check.is_busy:
        return HttpResponse(status=NOTHING_NEW)
    keepsake = check.keepsake
    cloth = cloth_of(keepsake)
    sizes = sizes_of(keepsake, cloth)
    row = next(row for row in sizes.rows if row.size.pk == check.size_id)
    problem = problem_of(keepsake, check.size, cloth)
    shown = _shown(check, cloth, problem, request.units)
    return render(
        request,
        "planning/lay.html",
        {
            "check": check,
            "keepsake": keepsake,
            "row": row,
            "shown": shown,
            "spare": _spare(check, cloth, request.units),
            "is_whole": row.covers and shown.pieces > 0,
            "can_lock": not check.is_busy,
            "miss": _miss(check, row, cloth, request.units),
            "proof_panels": [
                cloth.rows[name] for name in _named(check.proof) if name in cloth.rows
            ],
            "smaller": _smaller(sizes.rows, row),
            "is_shrinkage_predicted": cloth.is_shrinkage_predicted,
            "kept_here": problem.locked,
            "can_undo": bool(earlier_of(request, check)),
            "nav": "keepsakes",
        },
    )


def _shown(check: SizeCheck, cloth: Cloth, problem: Problem, units: LengthUnit) -> ShownLay:
    rows, placements = rows_of(check, cloth)
    return shown_lay(check.keepsake, check.size, problem, rows, placements, units)


@dataclass(frozen=True, slots=True)
class Miss:
    """The piece of a proof, drawn where it comes nearest."""

    piece: str
    panel: Panel
    drawing: PanelDrawing
    path: str
    outside_mm2: float


def _miss(check: SizeCheck, row: SizeRow, cloth: Cloth, units: LengthUnit) -> Miss | None:
    if row.word != "cannot" or check.proof is None or check.proof["kind"] != "fits_nowhere":
        return None
    problem = problem_of(check.keepsake, check.size, cloth)
    found = near_miss(problem, check.proof["pieces"][0])
    if found is None:
        return None
    panel = cloth.rows[found.panel]
    drawing = panel_drawing(panel, usable_of(panel, shrinkage_for(panel)), units)
    return Miss(found.piece, panel, drawing, ring_path(found.outline), found.outside_mm2)


def _spare(check: SizeCheck, cloth: Cloth, units: LengthUnit) -> list[str]:
    if not check.spare:
        return []
    return spare_words(check.spare, units, is_shrinkage_foretold=cloth.is_shrinkage_predicted)


def _named(proof: dict[str, Any] | None) -> list[str]:
    return proof["panels"] if proof else []


def _smaller(rows: tuple[SizeRow, ...], row: SizeRow) -> SizeRow | None:
    """The largest smaller size that is covered today."""
    covered = [r for r in rows if r.covers and r.size.height_mm < row.size.height_mm]
    return max(covered, key=lambda r: r.size.height_mm) if covered else None


@require_POST
def search_around(request: WorkshopRequest, pk: int) -> HttpResponse:
    """Ask for a check of this size; what is kept in its place stays there."""
    check = check_for(request.workshop, pk)
    checking.ask(check.keepsake, [check.size])
    messages.success(request, "Being searched for. You can leave this page and come back.")
    return redirect(check)


@require_POST
def look_further(request: WorkshopRequest, pk: int, what: str) -> HttpResponse:
    """Ask what would help where this size is no yes, else for a lay that is better in some way."""
    check = check_for(request.workshop, pk)
    cloth = cloth_of(check.keepsake)
    rows = sizes_of(check.keepsake, cloth).rows
    row = next(row for row in rows if row.size.pk == check.size_id)
    wanted = ("cannot", "undecided") if what == SizeCheck.Task.HELPS else ("covers",)
    if row.word not in wanted or check.is_busy:
        messages.error(request, "Check this size first, and wait until that is done.")
        return redirect(check)
    checking.ask(check.keepsake, [check.size], checking.FURTHER_BUDGET_S, what)
    messages.success(request, "Being looked for. You can leave this page and come back.")
    return redirect(check)

from dataclasses import dataclass

from django.db.models import Prefetch
from django.http import HttpResponse
from django.shortcuts import render
from django.views.decorators.http import require_GET

from inventory.cloth import shrinkage_for, usable_of
from inventory.drawing import PanelDrawing, panel_drawing, ring_path
from inventory.models import Garment, Panel
from planning.drawing import laid_panels
from planning.models import Lay, Placement, SizeCheck
from planning.nearest import near_miss
from planning.problems import Cloth, cloth_of, problem_of
from planning.sizes import SizeRow, sizes_of
from planning.views.rows import check_for
from shared.middleware import WorkshopRequest
from shared.units import LengthUnit


@require_GET
def lay(request: WorkshopRequest, pk: int) -> HttpResponse:
    """One size: its verdict, the lay or the proof, and the same facts in a table."""
    check = check_for(request.workshop, pk)
    keepsake = check.keepsake
    cloth = cloth_of(keepsake)
    sizes = sizes_of(keepsake, cloth)
    row = next(row for row in sizes.rows if row.size.pk == check.size_id)
    found = Lay.objects.of(request.workshop).filter(check_row=check).first()
    pieces = list(check.size.pieces.all())
    panels = laid_panels(_placements(found, cloth), pieces, request.units) if found else []
    return render(
        request,
        "planning/lay.html",
        {
            "check": check,
            "keepsake": keepsake,
            "row": row,
            "lay": found,
            "panels": panels,
            "is_whole": bool(found and found.is_whole and row.covers),
            "miss": _miss(check, row, cloth, request.units),
            "proof_panels": [
                cloth.rows[name] for name in _named(check.proof) if name in cloth.rows
            ],
            "smaller": _smaller(sizes.rows, row),
            "is_shrinkage_predicted": cloth.is_shrinkage_predicted,
            "nav": "keepsakes",
        },
    )


def _placements(lay: Lay, cloth: Cloth) -> list[Placement]:
    """The placements with their panels; those of today's cloth are at hand already."""
    found = list(lay.placements.order_by("panel__garment__tag", "panel_id", "piece_name", "copy"))
    panels = {panel.pk: panel for panel in cloth.rows.values()}
    gone = {placement.panel_id for placement in found} - set(panels)
    if gone:
        garments = Prefetch("garment", queryset=Garment.objects.with_cloth())
        rows = Panel.objects.of(lay.workshop).filter(pk__in=gone)
        panels |= rows.prefetch_related("flaws", "details", garments).in_bulk()
    for placement in found:
        placement.panel = panels[placement.panel_id]
    return found


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


def _named(proof: dict[str, list[str]] | None) -> list[str]:
    return proof["panels"] if proof else []


def _smaller(rows: tuple[SizeRow, ...], row: SizeRow) -> SizeRow | None:
    """The largest smaller size that is covered today."""
    covered = [r for r in rows if r.covers and r.size.height_mm < row.size.height_mm]
    return max(covered, key=lambda r: r.size.height_mm) if covered else None

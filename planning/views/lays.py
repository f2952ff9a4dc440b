from django.http import HttpResponse
from django.shortcuts import render
from django.views.decorators.http import require_GET

from inventory.models import Garment
from planning.drawing import laid_panels
from planning.models import Lay, Placement
from planning.problems import cloth_of
from planning.sizes import SizeRow, sizes_of
from planning.views.rows import check_for
from shared.middleware import WorkshopRequest


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
    panels = laid_panels(_placements(found), pieces, request.units) if found else []
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
            "proof_panels": [
                cloth.rows[name] for name in _named(check.proof) if name in cloth.rows
            ],
            "smaller": _smaller(sizes.rows, row),
            "is_shrinkage_predicted": cloth.is_shrinkage_predicted,
            "nav": "keepsakes",
        },
    )


def _placements(lay: Lay) -> list[Placement]:
    garments = Garment.objects.select_related("collection").prefetch_related("fibre_shares")
    rows = lay.placements.select_related("panel").order_by(
        "panel__garment__tag", "panel_id", "piece_name", "copy"
    )
    found = list(rows)
    panels = {row.panel_id: row.panel for row in found}
    by_garment = garments.in_bulk({panel.garment_id for panel in panels.values()})
    for placement in found:
        placement.panel = panels[placement.panel_id]
        placement.panel.garment = by_garment[placement.panel.garment_id]
    return found


def _named(proof: dict[str, list[str]] | None) -> list[str]:
    return proof["panels"] if proof else []


def _smaller(rows: tuple[SizeRow, ...], row: SizeRow) -> SizeRow | None:
    """The largest smaller size that is covered today."""
    covered = [r for r in rows if r.covers and r.size.height_mm < row.size.height_mm]
    return max(covered, key=lambda r: r.size.height_mm) if covered else None

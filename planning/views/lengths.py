"""How much interfacing, lining or bought cloth a size needs, by a lay that was verified."""

from collections.abc import Mapping
from typing import Any

from django.http import HttpResponse
from django.shortcuts import render
from django.views.decorators.http import require_GET

from planning.bolt_form import BoltForm
from planning.coverage.problem import Piece, ProblemError
from planning.coverage.strip import StripLay, strip_lay
from planning.drafting.svg_paths import path_data
from planning.models import PatternPiece, PatternSize
from planning.views.rows import size_for
from shared.middleware import WorkshopRequest

SEARCH_S = 2.0
CLEARANCE_MM, MARGIN_MM = 2.0, 5.0
ROOM_MM = 8.0


@require_GET
def length(request: WorkshopRequest, pk: int) -> HttpResponse:
    """A width asked for and a length answered; without a width, the question alone."""
    row = size_for(request.workshop, pk)
    form = BoltForm(request.GET if "width" in request.GET else None, size=row, units=request.units)
    found: StripLay | None = None
    if form.is_valid():
        try:
            found = _laid(row, form.cleaned_data)
        except ProblemError:
            form.add_error("width", "A piece is wider than this bolt between its edges.")
    return render(
        request,
        "planning/length.html",
        {
            "size": row,
            "form": form,
            "found": found,
            "bolt": _drawn(found) if found else None,
            "wide_mm": form.cleaned_data["width"] if found else None,
            "clearance_mm": CLEARANCE_MM,
            "margin_mm": MARGIN_MM,
            "nav": "patterns",
        },
    )


def _laid(size: PatternSize, asked: Mapping[str, Any]) -> StripLay:
    pieces = [
        _piece(piece, asked["line"]) for piece in size.pieces.all() if piece.name in asked["pieces"]
    ]
    return strip_lay(
        pieces, asked["width"], CLEARANCE_MM, MARGIN_MM, asked["one_way"], seconds=SEARCH_S
    )


def _piece(row: PatternPiece, line: str) -> Piece:
    ring = row.cut_line_mm if line == "cut" else row.seam_line_mm
    return Piece(
        id=row.name,
        outline=tuple((x, y) for x, y in ring),
        grain_deg=row.grain_deg,
        count=row.count,
        mirrored=row.mirrored,
        bias=row.is_bias,
    )


def _drawn(found: StripLay) -> dict[str, Any]:
    """The bolt on its side, so that a long one fits a page: its length runs to the right."""
    wide = max(x for x, _ in found.panel.outline)
    lying = [
        (place.piece, place.mirrored, path_data([(y, x) for x, y in place.outline], closed=True))
        for place in found.placements
    ]
    edge = [(0.0, 0.0), (found.length_mm, 0.0), (found.length_mm, wide), (0.0, wide)]
    long = found.length_mm + 2 * ROOM_MM
    return {
        "view_box": f"{-ROOM_MM} {-wide - ROOM_MM} {long:.1f} {wide + 2 * ROOM_MM:.1f}",
        "edge": path_data(edge, closed=True),
        "pieces": lying,
    }

from django.http import HttpResponse
from django.shortcuts import render
from django.views.decorators.http import require_GET
from shapely import Polygon

from planning.drafting.drawing import drawing_of
from planning.drafting.figure import figure
from planning.drafting.library import built_in_pattern
from planning.drafting.practice import too_few_kinds
from planning.models import Pattern, PatternSize
from planning.views.rows import pattern_for, size_for
from shared.middleware import WorkshopRequest

PICTURE_MM = 300.0


@require_GET
def patterns(request: WorkshopRequest) -> HttpResponse:
    rows = Pattern.objects.of(request.workshop).prefetch_related("sizes")
    pictures = {row.pk: figure(PICTURE_MM) for row in rows if row.built_in}
    shown = [(row, pictures.get(row.pk)) for row in rows]
    return render(request, "planning/patterns.html", {"patterns": shown, "nav": "patterns"})


@require_GET
def pattern(request: WorkshopRequest, pk: int) -> HttpResponse:
    row = pattern_for(request.workshop, pk)
    sizes = [
        (size, sum(p.count for p in size.pieces.all()), cloth_mm2(size))
        for size in row.sizes.prefetch_related("pieces")
    ]
    views = [figure(PICTURE_MM), figure(PICTURE_MM, view="side")] if row.built_in else []
    return render(
        request,
        "planning/pattern.html",
        {"pattern": row, "sizes": sizes, "figures": views, "nav": "patterns"},
    )


@require_GET
def size(request: WorkshopRequest, pk: int) -> HttpResponse:
    row = size_for(request.workshop, pk)
    drafts = {draft.height_mm: draft for draft in built_in_pattern().sizes if row.pattern.built_in}
    draft = drafts.get(row.height_mm)
    drawings = {piece.name: drawing_of(piece) for piece in draft.pieces} if draft else {}
    pieces = [
        (piece, drawings.get(piece.name), Polygon(piece.cut_line_mm).area)
        for piece in row.pieces.all()
    ]
    return render(
        request,
        "planning/size.html",
        {
            "size": row,
            "pieces": pieces,
            "draft": draft,
            "is_too_few": too_few_kinds(piece.name for piece in row.pieces.all()),
            "cloth_mm2": cloth_mm2(row),
            "nav": "patterns",
        },
    )


def cloth_mm2(size: PatternSize) -> float:
    """The area of all copies of all pieces at their cutting lines."""
    return sum(piece.count * Polygon(piece.cut_line_mm).area for piece in size.pieces.all())

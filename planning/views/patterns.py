"""The library of patterns: to look at, never to change."""

from typing import Any

from django.http import FileResponse, Http404, HttpResponse
from django.shortcuts import render
from django.views.decorators.http import require_GET
from shapely import Polygon

from planning.drafting.clips import clips_of_piece
from planning.drafting.drawing import PieceDrawing, drawing_of
from planning.drafting.estimates import Estimate, estimates_of
from planning.drafting.figure import Figure
from planning.drafting.hands import HandFault, hand_picture
from planning.drafting.library import KINDS, figure_for
from planning.drafting.stuffing import FIRMNESS_KG_M3
from planning.drafting.svg_paths import path_data, view_box
from planning.drafts import draft_piece, draft_size, parts_of, seams_of
from planning.models import Pattern, PatternPiece, PatternSize
from planning.pattern_checks import Findings, findings_of
from planning.views.rows import pattern_for, piece_for, size_for
from shared.middleware import WorkshopRequest
from shared.units import LengthUnit, format_area, format_length

PICTURE_MM = 300.0
STITCHES_MM = (1.5, 1.8, 2.0, 2.2, 2.5, 3.0)


@require_GET
def patterns(request: WorkshopRequest) -> HttpResponse:
    everything = Pattern.objects.of(request.workshop)
    is_away = request.GET.get("show") == "away"
    rows = everything.exclude(archived_at=None) if is_away else everything.current()
    words = request.GET.get("find", "").strip()
    if words:
        rows = rows.filter(name__icontains=words)
    rows = rows.prefetch_related("sizes__pieces")
    return render(
        request,
        "planning/patterns.html",
        {
            "patterns": [(row, figure_of(row), largest_pieces(row)) for row in rows],
            "is_away": is_away,
            "away": everything.exclude(archived_at=None).count(),
            "words": words,
            "nav": "patterns",
        },
    )


def figure_of(row: Pattern, height_mm: float = PICTURE_MM, view: Any = "front") -> Figure | None:
    """The finished thing, where the program drew its pattern."""
    if not row.kind:
        return None
    kind = KINDS[row.kind]
    within_mm = min(max(height_mm, kind.least_mm), kind.most_mm)
    return figure_for(row.kind, within_mm, view, pose=row.pose, face=row.face)


def largest_pieces(row: Pattern, most: int = 4) -> list[PieceDrawing]:
    """The largest pieces of the first size, to know a pattern by that has no picture."""
    size = next(iter(row.sizes.all()), None)
    if size is None or row.kind or row.picture:
        return []
    pieces = sorted(size.pieces.all(), key=lambda piece: -Polygon(piece.cut_line_mm).area)
    return [drawing_of(draft_piece(piece)) for piece in pieces[:most]]


@require_GET
def pattern(request: WorkshopRequest, pk: int) -> HttpResponse:
    row = pattern_for(request.workshop, pk)
    sizes = list(row.sizes.select_related("graded_from").prefetch_related("pieces"))
    walked = {size.pk: findings_of(size, row) for size in sizes}
    wanted = request.GET.get("size", "")
    # the size that was entered is shown first, for its lengths are those on her own paper
    sizes_first = sorted(sizes, key=lambda size: (str(size.pk) != wanted, bool(size.graded_from)))
    shown = next(iter(sizes_first), None)
    findings = walked[shown.pk] if shown else None
    others = [found for pk_, found in walked.items() if shown and pk_ != shown.pk]
    tall = sizes[len(sizes) // 2].height_mm if sizes else PICTURE_MM
    views = [figure_of(row, tall, view) for view in ("front", "side")]
    return render(
        request,
        "planning/pattern.html",
        {
            "pattern": row,
            "later": Pattern.objects.of(request.workshop).filter(earlier=row).first(),
            "sizes": [(size, _copies(size), cloth_mm2(size), walked[size.pk]) for size in sizes],
            "figures": [view for view in views if view],
            "shown": shown,
            "findings": findings,
            "mistakes": [_mistake(findings, fault) for fault in findings.hands] if findings else [],
            "others_flawed": [found.size for found in others if found.is_flawed],
            "taken_out": row.taken_out.select_related("size"),
            "keepsakes": row.keepsakes.all(),
            "has_pieces": any(size.pieces.all() for size in sizes),
            "nav": "patterns",
        },
    )


def _mistake(findings: Findings, fault: HandFault) -> tuple[object, ...]:
    """A hand fault, its piece, and a picture: as it would be cut, and as it should be."""
    wrong, right = hand_picture(findings.draft.piece(fault.piece))
    box = view_box([point for ring in (*wrong, *right) for point in ring], 4.0)
    paths = [tuple(path_data(ring, closed=True) for ring in rings) for rings in (wrong, right)]
    row = next(piece for piece in findings.size.pieces.all() if piece.name == fault.piece)
    return fault, row, box, paths[0], paths[1]


def _copies(size: PatternSize) -> int:
    return sum(piece.count for piece in size.pieces.all())


@require_GET
def size(request: WorkshopRequest, pk: int) -> HttpResponse:
    row = size_for(request.workshop, pk)
    draft = draft_size(row)
    firmness = request.GET.get("stuffing", "medium")
    stitch_mm = _stitch_mm(request.GET.get("stitch", ""))
    firmness = firmness if firmness in FIRMNESS_KG_M3 else "medium"
    pieces = [
        (piece, drawing_of(draft.piece(piece.name)), Polygon(piece.cut_line_mm).area)
        for piece in row.pieces.all()
    ]
    findings = findings_of(row, row.pattern)
    estimates = (
        estimates_of(draft, findings.sound_seams, parts_of(row), firmness, stitch_mm=stitch_mm)
        if pieces
        else ()
    )
    return render(
        request,
        "planning/size.html",
        {
            "size": row,
            "pieces": pieces,
            "findings": findings,
            "cloth_mm2": cloth_mm2(row),
            "estimates": [(each, *_worded(each, request.units)) for each in estimates],
            "firmness": firmness,
            "firmnesses": FIRMNESS_KG_M3,
            "stitch_mm": stitch_mm,
            "stitches": STITCHES_MM,
            "nav": "patterns",
        },
    )


def _worded(each: Estimate, units: LengthUnit) -> list[str]:
    """The likely, lowest and highest figure of an estimate in the maker's units."""
    write = {
        "mm": lambda mm: format_length(mm, units),
        "cm²": lambda cm2: format_area(cm2 * 100, units),
    }.get(each.unit, lambda value: f"{value:.1f} {each.unit}")
    return [write(value) for value in (each.likely, each.low, each.high)]


def _stitch_mm(text: str) -> float:
    return next((each for each in STITCHES_MM if f"{each:g}" == text), 2.0)


def cloth_mm2(size: PatternSize) -> float:
    """The area of all copies of all pieces at their cutting lines."""
    return sum(piece.count * Polygon(piece.cut_line_mm).area for piece in size.pieces.all())


@require_GET
def piece(request: WorkshopRequest, pk: int) -> HttpResponse:
    row = piece_for(request.workshop, pk)
    draft = draft_piece(row)
    clips = clips_of_piece(draft)
    shape = Polygon(draft.cut_line)
    left, low, right, high = shape.bounds
    sewn = [
        (seam, side)
        for seam in seams_of(row.size.pattern)
        for side in (*seam.a, *seam.b)
        if side.piece == row.name
    ]
    by_edge: dict[str, list[str]] = {}
    for seam, side in sewn:
        names = by_edge.setdefault(side.name, [])
        if seam.name not in names:
            names.append(seam.name)
    curves = {edge.name: [each for each in clips if each.edge == edge.name] for edge in draft.edges}
    edges = [
        (edge, draft.stretch_mm(edge.name), by_edge.get(edge.name, []), curves[edge.name])
        for edge in draft.edges
    ]
    return render(
        request,
        "planning/piece.html",
        {
            "piece": row,
            "size": row.size,
            "drawing": drawing_of(draft),
            "edges": edges,
            "clip_spots": [(x, -y) for each in clips for x, y in each.spots],
            "wide_mm": right - left,
            "tall_mm": high - low,
            "area_mm2": shape.area,
            "lines": [(line.name, draft.stretch_mm(line.name)) for line in draft.lines],
            "neighbours": _neighbours(row),
            "nav": "patterns",
        },
    )


def _neighbours(row: PatternPiece) -> tuple[PatternPiece | None, PatternPiece | None]:
    pieces = list(row.size.pieces.all())
    at = pieces.index(row)
    return pieces[at - 1] if at else None, pieces[at + 1] if at + 1 < len(pieces) else None


@require_GET
def picture(request: WorkshopRequest, pk: int) -> FileResponse:
    row = pattern_for(request.workshop, pk)
    if not row.picture:
        raise Http404
    answer = FileResponse(row.picture.open("rb"), content_type="image/jpeg")
    answer["Cache-Control"] = "private, max-age=3600"
    return answer

"""The pieces of a maker's own pattern: entered and changed."""

from django.contrib import messages
from django.db import transaction
from django.http import Http404, HttpResponse
from django.shortcuts import redirect, render
from django.views.decorators.http import require_GET

from planning import versions
from planning.drafting.basic_shapes import BASIC_SHAPES, entry_of_shape
from planning.drafting.entering import entered_piece
from planning.drafting.entry import EntryError
from planning.drafting.errors import DraftError
from planning.drafting.rings import bounds_mm, perimeter_mm, signed_area_mm2
from planning.drafting.svg_paths import path_data, view_box
from planning.entry_form import PieceForm
from planning.models import PatternPiece
from planning.paper import paper_of
from planning.piece_form import PieceFactsForm
from planning.seam_rows import rename
from planning.views.changing import fixed
from planning.views.rows import piece_for, size_for
from shared.errors import OutlineError
from shared.middleware import WorkshopRequest
from shared.units import MM_PER

MORE_ROWS = 8


def add_piece(request: WorkshopRequest, pk: int) -> HttpResponse:
    """Choose how: corner by corner, or by the measures of a basic shape."""
    size = size_for(request.workshop, pk)
    if kept := fixed(request, size):
        return kept
    how = request.GET.get("how", "")
    if how != "corners" and how not in BASIC_SHAPES:
        return render(
            request,
            "planning/piece_ways.html",
            {"size": size, "shapes": [_picture(key) for key in BASIC_SHAPES], "nav": "patterns"},
        )
    piece = PatternPiece(
        workshop=request.workshop, size=size, position=versions.next_position(size)
    )
    return _piece_page(request, piece, "" if how == "corners" else how)


EXAMPLE_MM = {
    "width": 100.0,
    "height": 130.0,
    "bottom_width": 120.0,
    "top_width": 80.0,
    "diameter": 100.0,
    "foot": 70.0,
    "length": 180.0,
    "widest": 150.0,
    "widest_at": 90.0,
}
EXAMPLES_MM = {
    "ear": {"foot": 60.0, "width": 85.0, "height": 75.0},
    "limb": {"length": 180.0, "width": 60.0, "foot": 85.0},
    "wedge": {"length": 220.0, "bottom_width": 25.0, "widest": 80.0, "top_width": 45.0},
}


def _picture(key: str) -> tuple[str, str, str, str, str]:
    """One basic shape: its key, name, words, a path and the box that holds it."""
    shape = BASIC_SHAPES[key]
    entry = entry_of_shape(key, EXAMPLE_MM | EXAMPLES_MM.get(key, {}), 0)
    ring = entered_piece(entry, shape.name, 1, 0).seam_line
    return key, shape.name, shape.description, path_data(ring, closed=True), view_box(ring, 10)


def edit_piece(request: WorkshopRequest, pk: int) -> HttpResponse:
    """Change a piece; one that came from a file or a draft has facts to change, no typed points."""
    piece = piece_for(request.workshop, pk)
    if kept := fixed(request, piece.size):
        return kept
    if piece.entry is not None:
        return _piece_page(request, piece, "")
    form = PieceFactsForm(request.POST or None, instance=piece)
    if request.method == "POST" and form.is_valid():
        with transaction.atomic():
            form.save()
            rename(piece, form.initial["name"])
            versions.regrade(piece.size)
        messages.success(request, "Saved.")
        return redirect(piece)
    return render(
        request,
        "shared/form_page.html",
        {
            "form": form,
            "heading": f"Change the {piece}",
            "note": "Its outline was drafted, graded or read and stays. To redraw it, take it out "
            "and enter it anew.",
            "back": piece.get_absolute_url(),
            "nav": "patterns",
        },
    )


def _piece_page(request: WorkshopRequest, piece: PatternPiece, shape: str) -> HttpResponse:
    wants_rows = "more_rows" in request.POST
    rows = _rows_wanted(request) + (MORE_ROWS if wants_rows else 0)
    old, old_edges = piece.name, [edge["name"] for edge in piece.edges]
    form = PieceForm(
        request.POST or None, instance=piece, units=request.units, shape=shape, rows=rows
    )
    if request.method == "POST" and not wants_rows and form.is_valid() and form.entry:
        try:
            with transaction.atomic():
                versions.save_entered(form.instance, form.entry)
                rename(form.instance, old, old_edges)
        except (DraftError, OutlineError) as error:
            form.add_error(None, f"A size graded from this one cannot follow: {error}")
        else:
            messages.success(request, f"The {form.instance} is saved.")
            return redirect(form.instance)
    return render(
        request,
        "planning/piece_form.html",
        {
            "form": form,
            **_sketch_of(form),
            "piece": piece,
            "size": piece.size,
            "shape": BASIC_SHAPES[shape] if shape else None,
            "shape_key": shape,
            "rows": form.rows,
            "hides_errors": wants_rows,
            "mm_per_unit": MM_PER[request.units],
            "nav": "patterns",
        },
    )


def _rows_wanted(request: WorkshopRequest) -> int:
    asked = request.POST.get("rows") or request.GET.get("rows") or ""
    return int(asked) if asked.isdecimal() and len(asked) < 4 else 0


@require_GET
def sketch(request: WorkshopRequest, pk: int) -> HttpResponse:
    """The piece as typed so far on squared paper, or what keeps it from being a piece."""
    size = size_for(request.workshop, pk)
    shape = request.GET.get("shape", "")
    if shape and shape not in BASIC_SHAPES:
        raise Http404
    piece = PatternPiece(workshop=request.workshop, size=size, position=0)
    form = PieceForm(
        request.GET, instance=piece, units=request.units, shape=shape, rows=_rows_wanted(request)
    )
    form.is_valid()
    return render(request, "planning/piece_form.html#sketch", {"form": form, **_sketch_of(form)})


def _sketch_of(form: PieceForm) -> dict[str, object]:
    """What a form draws: its points on the paper, and the piece they make or what is wrong."""
    drawn = form.piece
    sketch: dict[str, object] = {
        "paper": paper_of(form.spots, drawn, form.units),
        "wrong": form.trouble_words,
        "drawn": drawn,
    }
    if isinstance(form.trouble, EntryError) and form.trouble.field == "points":
        sketch["wrong_row"] = form.row_of(form.trouble)
    if drawn is None:
        return sketch
    left, low, right, high = bounds_mm(drawn.cut_line)
    return sketch | {
        "area_mm2": signed_area_mm2(drawn.cut_line),
        "round_mm": perimeter_mm(drawn.seam_line),
        "wide_mm": right - left,
        "tall_mm": high - low,
        "edges": [(edge.name, drawn.stretch_mm(edge.name)) for edge in drawn.edges],
    }

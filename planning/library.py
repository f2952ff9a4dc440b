"""Puts the built-in patterns among a workshop's own."""

from django.db import transaction

from planning.drafting.library import built_in_pattern
from planning.drafting.pieces import DraftPattern
from planning.drafts import add_size, piece_fields, seams_json
from planning.models import Pattern, PatternPiece
from shared.models import Workshop


@transaction.atomic
def give_built_in(workshop: Workshop) -> Pattern:
    """Return the workshop's own copy of the built-in bear, made now if it has none."""
    return _given(workshop, built_in_pattern())


def _given(workshop: Workshop, draft: DraftPattern) -> Pattern:
    pattern, is_new = Pattern.objects.get_or_create(
        workshop=workshop,
        built_in=draft.key,
        defaults={
            "name": draft.name,
            "description": draft.description,
            "seam_allowance_mm": draft.sizes[0].seam_allowance_mm,
            "source": "Comes with the program",
            "licence": "Yours to sew, give and sell",
        },
    )
    if is_new:
        for size in draft.sizes:
            add_size(pattern, size)
    if is_new or not pattern.seams:
        _bring_up_to_date(pattern, draft)
    return pattern


def _bring_up_to_date(pattern: Pattern, draft: DraftPattern) -> None:
    """Add what an older copy does not know yet: names of edges, marks and seams. No line moves."""
    pattern.seams = seams_json(draft.seams)
    pattern.save(update_fields=["seams"])
    drafts = {(size.height_mm, piece.name): piece for size in draft.sizes for piece in size}
    for row in PatternPiece.objects.filter(size__pattern=pattern).select_related("size"):
        piece = drafts.get((row.size.height_mm, row.name))
        if piece and not row.edges:
            fields = piece_fields(piece)
            for name in ("notches", "marks", "lines", "edges", "opening"):
                setattr(row, name, fields[name])
            row.save()

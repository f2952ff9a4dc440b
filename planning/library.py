"""Puts the built-in patterns among a workshop's own."""

from django.db import transaction

from planning.drafting.library import KINDS, Kind, built_in_pattern
from planning.drafting.pieces import DraftPattern
from planning.drafts import add_size, parts_json, piece_fields, seams_json
from planning.models import Pattern, PatternPiece
from shared.models import Workshop


@transaction.atomic
def give_built_in(workshop: Workshop) -> Pattern:
    """Return the workshop's own copy of the classic bear, made now if it has none."""
    return _given(workshop, KINDS["bear"], built_in_pattern("bear"))


@transaction.atomic
def give_all_built_in(workshop: Workshop) -> None:
    """Give a workshop every built-in pattern that it has not got yet."""
    for key, kind in KINDS.items():
        _given(workshop, kind, built_in_pattern(key))


def _given(workshop: Workshop, kind: Kind, draft: DraftPattern) -> Pattern:
    pattern, is_new = Pattern.objects.get_or_create(
        workshop=workshop,
        built_in=draft.key,
        defaults={
            "name": draft.name,
            "description": draft.description,
            "seam_allowance_mm": draft.sizes[0].seam_allowance_mm,
            "source": "Comes with the program",
            "licence": "Yours to sew, give and sell",
            "kind": kind.key,
            "pose": kind.poses[0] if kind.poses else "",
            "face": kind.faces[0] if kind.faces else "",
            "parts": parts_json(draft.parts),
        },
    )
    if is_new:
        for size in draft.sizes:
            add_size(pattern, size)
    if is_new or not pattern.seams:
        _bring_up_to_date(pattern, kind, draft)
    return pattern


def _bring_up_to_date(pattern: Pattern, kind: Kind, draft: DraftPattern) -> None:
    """Add what an older copy does not know yet: names of edges, marks and seams. No line moves."""
    pattern.seams = seams_json(draft.seams)
    pattern.parts, pattern.kind = parts_json(draft.parts), kind.key
    pattern.pose = kind.poses[0] if kind.poses else ""
    pattern.face = kind.faces[0] if kind.faces else ""
    pattern.save()
    for size in draft.sizes:
        pattern.sizes.filter(height_mm=size.height_mm).update(width_mm=size.width_mm)
    drafts = {(size.height_mm, piece.name): piece for size in draft.sizes for piece in size}
    for row in PatternPiece.objects.filter(size__pattern=pattern).select_related("size"):
        piece = drafts.get((row.size.height_mm, row.name))
        if piece and not row.edges:
            fields = piece_fields(piece)
            for name in ("notches", "marks", "lines", "edges", "opening"):
                setattr(row, name, fields[name])
            row.save()

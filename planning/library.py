"""Puts the built-in bear among a workshop's patterns."""

from typing import Any

from django.db import transaction

from planning.drafting.library import built_in_pattern
from planning.drafting.pieces import DraftPiece, DraftSize
from planning.models import Pattern, PatternPiece, PatternSize
from shared.models import Workshop


@transaction.atomic
def give_built_in(workshop: Workshop) -> Pattern:
    """Return the workshop's own copy of the built-in bear, made now if it has none."""
    draft = built_in_pattern()
    pattern, is_new = Pattern.objects.get_or_create(
        workshop=workshop,
        built_in=draft.key,
        defaults={
            "name": draft.name,
            "description": draft.description,
            "seam_allowance_mm": draft.sizes[0].seam_allowance_mm,
        },
    )
    if is_new:
        for size in draft.sizes:
            _add_size(pattern, size)
    return pattern


def _add_size(pattern: Pattern, draft: DraftSize) -> None:
    size = PatternSize.objects.create(
        workshop=pattern.workshop, pattern=pattern, height_mm=draft.height_mm
    )
    PatternPiece.objects.bulk_create(
        PatternPiece(workshop=pattern.workshop, size=size, position=position, **_fields(piece))
        for position, piece in enumerate(draft.pieces)
    )


def _fields(piece: DraftPiece) -> dict[str, Any]:
    return {
        "name": piece.name,
        "count": piece.count,
        "mirrored": piece.mirrored,
        "cut_line_mm": [list(point) for point in piece.cut_line],
        "seam_line_mm": [list(point) for point in piece.seam_line],
        "notches_mm": [list(notch.at) for notch in piece.notches],
        "grain_deg": piece.grain_deg,
    }

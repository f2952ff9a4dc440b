"""One way to each row: through the person's workshop, or not at all."""

from django.shortcuts import get_object_or_404

from planning.lay_rules import ROWS
from planning.models import (
    Keepsake,
    Pattern,
    PatternFile,
    PatternPiece,
    PatternSize,
    SizeCheck,
    TakenOut,
)
from shared.models import Workshop


def pattern_for(workshop: Workshop, pk: int) -> Pattern:
    return get_object_or_404(Pattern.objects.of(workshop).select_related("workshop"), pk=pk)


def size_for(workshop: Workshop, pk: int) -> PatternSize:
    rows = PatternSize.objects.of(workshop).select_related("pattern").prefetch_related("pieces")
    return get_object_or_404(rows, pk=pk)


def piece_for(workshop: Workshop, pk: int) -> PatternPiece:
    rows = PatternPiece.objects.of(workshop).select_related("size__pattern", "workshop")
    return get_object_or_404(rows.prefetch_related("size__pieces"), pk=pk)


def file_for(workshop: Workshop, pk: int) -> PatternFile:
    return get_object_or_404(PatternFile.objects.of(workshop).select_related("workshop"), pk=pk)


def taken_out_for(workshop: Workshop, pk: int) -> TakenOut:
    rows = TakenOut.objects.of(workshop).select_related("pattern", "size", "workshop")
    return get_object_or_404(rows, pk=pk)


def keepsake_for(workshop: Workshop, pk: int) -> Keepsake:
    rows = Keepsake.objects.of(workshop).select_related(
        "collection", "pattern", "chosen_size", "workshop"
    )
    return get_object_or_404(rows.prefetch_related("checks__size", *ROWS), pk=pk)


def check_for(workshop: Workshop, pk: int) -> SizeCheck:
    rows = SizeCheck.objects.of(workshop).select_related(
        "keepsake__collection", "keepsake__pattern", "keepsake__workshop", "size__pattern"
    )
    rules = (f"keepsake__{name}" for name in ROWS)
    return get_object_or_404(rows.prefetch_related("size__pieces", *rules), pk=pk)

"""New versions, copies and grades of a pattern, each saved whole or not at all.

A pattern that a keepsake was planned with never changes under it: whoever wants to change it makes
a new version, and the keepsake keeps the one it has.
"""

from dataclasses import replace
from typing import Any

from django.db import transaction

from planning.drafting.allowance import cut_line_of
from planning.drafting.entering import entered_piece
from planning.drafting.entry import Entry, entry_from_json, entry_to_json
from planning.drafting.grading import graded
from planning.drafting.pieces import DraftPiece
from planning.drafts import add_size, draft_piece, draft_size, piece_fields
from planning.models import Pattern, PatternPiece, PatternSize

_OWN = ("id", "workshop", "pattern", "size", "graded_from", "earlier")


@transaction.atomic
def new_version(pattern: Pattern) -> Pattern:
    """Copy a pattern into its next version, to be changed."""
    return _copied(
        pattern,
        name=pattern.name,
        earlier=pattern,
        version=pattern.version + 1,
    )


@transaction.atomic
def duplicate(pattern: Pattern) -> Pattern:
    """Copy a pattern into one of the maker's own, with a name of its own."""
    return _copied(pattern, name=_free_name(pattern), version=1)


def _copied(pattern: Pattern, **changes: Any) -> Pattern:
    facts = {**_facts(pattern), **changes}
    copy = Pattern.objects.create(workshop=pattern.workshop, **facts)
    sizes: dict[int, PatternSize] = {}
    for size in pattern.sizes.prefetch_related("pieces"):
        sizes[size.pk] = PatternSize.objects.create(
            workshop=pattern.workshop, pattern=copy, **_facts(size)
        )
        PatternPiece.objects.bulk_create(
            PatternPiece(workshop=pattern.workshop, size=sizes[size.pk], **_facts(piece))
            for piece in size.pieces.all()
        )
    for size in pattern.sizes.exclude(graded_from=None):
        sizes[size.pk].graded_from = sizes.get(size.graded_from_id or 0)
        sizes[size.pk].save(update_fields=["graded_from"])
    return copy


def _facts(row: Pattern | PatternSize | PatternPiece) -> dict[str, Any]:
    """All that a copy takes over; not whose it is, which came before, nor the program's mark."""
    fields = [field.name for field in row._meta.concrete_fields if field.name not in _OWN]
    facts = {name: getattr(row, name) for name in fields if name != "created_at"}
    for name in ("built_in", "version", "archived_at"):
        facts.pop(name, None)
    return facts


def _free_name(pattern: Pattern) -> str:
    taken = set(Pattern.objects.of(pattern.workshop).values_list("name", flat=True))
    stem = f"{pattern.name[:66]}, my own"
    numbered = (f"{stem} {number}" for number in range(2, 10_000))
    return stem if stem not in taken else next(name for name in numbered if name not in taken)


@transaction.atomic
def grade(size: PatternSize, height_mm: float) -> PatternSize:
    """Add a size graded from another. Raises DraftError where it cannot be drawn."""
    return add_size(size.pattern, graded(draft_size(size), height_mm), graded_from=size)


@transaction.atomic
def regrade(size: PatternSize) -> None:
    """Draw every size anew that was graded from this one. Raises DraftError; then none is."""
    fresh = PatternSize.objects.prefetch_related("pieces").get(pk=size.pk)
    for other in PatternSize.objects.filter(graded_from=size):
        height_mm = other.height_mm
        other.delete()
        grade(fresh, height_mm)


@transaction.atomic
def set_allowance(pattern: Pattern, allowance_mm: float) -> None:
    """Give every piece another seam allowance, from its seam line or from what was entered.

    Raises DraftError or OutlineError where a piece cannot have it; then no piece has.
    """
    pattern.seam_allowance_mm = allowance_mm
    pattern.save(update_fields=["seam_allowance_mm"])
    for row in PatternPiece.objects.filter(size__pattern=pattern):
        piece = _with_allowance(row, allowance_mm)
        row.cut_line_mm = [list(point) for point in piece.cut_line]
        if row.entry is not None:
            for name, value in piece_fields(piece).items():
                setattr(row, name, value)
            row.entry = {**row.entry, "allowance_mm": allowance_mm}
        row.save()


def _with_allowance(row: PatternPiece, allowance_mm: float) -> DraftPiece:
    if row.entry is None:
        piece = draft_piece(row)
        return replace(piece, cut_line=cut_line_of(piece.seam_line, allowance_mm))
    entry = replace(entry_from_json(row.entry), allowance_mm=allowance_mm)
    return entered_piece(entry, row.name, row.count, row.mirrored, row.grain_deg)


@transaction.atomic
def save_entered(row: PatternPiece, entry: Entry) -> PatternPiece:
    """Save a piece as it was entered, and draw the sizes graded from its size anew.

    Raises EntryError for an entry that is no piece, DraftError where a grade cannot be drawn.
    """
    piece = entered_piece(entry, row.name, row.count, row.mirrored, row.grain_deg)
    for name, value in piece_fields(piece).items():
        setattr(row, name, value)
    row.entry = entry_to_json(entry)
    row.save()
    regrade(row.size)
    return row


@transaction.atomic
def remove_piece(row: PatternPiece) -> dict[str, Any]:
    """Take a piece out of its size and the grades of it; returns what `put_back` needs."""
    kept = {**_facts(row), "size": row.size_id}
    row.delete()
    regrade(row.size)
    return kept


@transaction.atomic
def put_back(size: PatternSize, kept: dict[str, Any]) -> PatternPiece:
    """Put a removed piece back where it was."""
    facts = {name: value for name, value in kept.items() if name != "size"}
    row = PatternPiece.objects.create(workshop=size.workshop, size=size, **facts)
    regrade(size)
    return row


def next_position(size: PatternSize) -> int:
    last = size.pieces.order_by("position").last()
    return last.position + 1 if last else 0

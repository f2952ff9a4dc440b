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
from planning.drafting.errors import DraftError
from planning.drafting.grading import graded, graded_entry
from planning.drafting.pieces import DraftPiece
from planning.drafts import add_size, draft_piece, draft_size, fill_size, piece_fields
from planning.models import Pattern, PatternPiece, PatternSize
from shared.errors import OutlineError

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
    facts = {**facts_of(pattern), **changes}
    copy = Pattern.objects.create(workshop=pattern.workshop, **facts)
    sizes = {
        size.pk: size_from(copy, *facts_of_size(size))
        for size in pattern.sizes.prefetch_related("pieces")
    }
    for size in pattern.sizes.exclude(graded_from=None):
        sizes[size.pk].graded_from = sizes.get(size.graded_from_id or 0)
        sizes[size.pk].save(update_fields=["graded_from"])
    return copy


def facts_of_size(size: PatternSize) -> tuple[dict[str, Any], list[dict[str, Any]]]:
    """What a size is and what each of its pieces is, for `size_from`."""
    return facts_of(size), [facts_of(piece) for piece in size.pieces.all()]


def size_from(pattern: Pattern, facts: dict[str, Any], pieces: list[dict[str, Any]]) -> PatternSize:
    """Save a size with its pieces under a pattern, as `facts_of_size` gave it."""
    size = PatternSize.objects.create(workshop=pattern.workshop, pattern=pattern, **facts)
    PatternPiece.objects.bulk_create(
        PatternPiece(workshop=pattern.workshop, size=size, **each) for each in pieces
    )
    return size


def facts_of(row: Pattern | PatternSize | PatternPiece) -> dict[str, Any]:
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
        draft = graded(draft_size(fresh), other.height_mm)
        other.width_mm, other.notes = draft.width_mm, list(draft.notes)
        other.save(update_fields=["width_mm", "notes"])
        other.pieces.all().delete()
        fill_size(other, draft, fresh)


@transaction.atomic
def let_stand(size: PatternSize) -> None:
    """Let a graded size go its own way; pieces entered on the stitching line keep their points."""
    origin = size.graded_from
    if origin is None:
        return
    factor = size.height_mm / origin.height_mm
    entries = {piece.name: piece.entry for piece in origin.pieces.all() if piece.entry}
    for piece in size.pieces.all():
        if piece.name in entries:
            entry = graded_entry(entry_from_json(entries[piece.name]), factor)
            piece.entry = entry_to_json(entry) if entry and _is_drawable(entry, piece) else None
            piece.save(update_fields=["entry"])
    size.graded_from = None
    size.save(update_fields=["graded_from"])


def _is_drawable(entry: Entry, piece: PatternPiece) -> bool:
    """Whether points that were graded, small ones perhaps, still make a piece."""
    try:
        entered_piece(entry, piece.name, piece.count, piece.mirrored, piece.grain_deg)
    except (DraftError, OutlineError):
        return False
    return True


@transaction.atomic
def set_allowance(pattern: Pattern, allowance_mm: float) -> None:
    """Give every piece another seam allowance, from its seam line or from what was entered.

    Raises DraftError or OutlineError where a piece cannot have it; then no piece has.
    """
    pattern.seam_allowance_mm = allowance_mm
    pattern.save(update_fields=["seam_allowance_mm"])
    for size in pattern.sizes.filter(graded_from=None):
        size.pattern = pattern
        for row in size.pieces.all():
            give_allowance(row, allowance_mm)
        regrade(size)


def give_allowance(row: PatternPiece, allowance_mm: float) -> None:
    """Draw one piece anew with another allowance and save it.

    Raises DraftError naming a piece that cannot have it.
    """
    try:
        piece = _with_allowance(row, allowance_mm)
    except (DraftError, OutlineError) as error:
        raise DraftError(f"The piece “{row.name}”: {error}") from error
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


def next_position(size: PatternSize) -> int:
    last = size.pieces.order_by("position").last()
    return last.position + 1 if last else 0

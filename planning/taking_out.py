"""Takes pieces, seams and sizes out of a pattern, whole, and puts them back.

What is taken out is kept as a row of its own until it is put back. A pattern that is settled must
not be asked; the views see to that.
"""

from typing import Any

from django.db import transaction

from planning import versions
from planning.models import Pattern, PatternPiece, PatternSize, TakenOut
from planning.seam_rows import seam_at
from shared.errors import ClothError


class PutBackError(ClothError):
    """Something that cannot be put back because its place is taken or gone."""


@transaction.atomic
def take_out_piece(row: PatternPiece) -> TakenOut:
    """Take a piece out of its size and of the grades of it."""
    pattern = row.size.pattern
    kept = {"facts": versions.facts_of(row), "allowance_mm": pattern.seam_allowance_mm}
    row.delete()
    versions.regrade(row.size)
    return _keep(pattern, TakenOut.Kind.PIECE, row.name, kept, row.size)


@transaction.atomic
def take_out_seam(pattern: Pattern, mark: str) -> TakenOut | None:
    """Take out the seam that has this mark; None where it was changed or taken out before."""
    fresh = Pattern.objects.select_for_update().get(pk=pattern.pk)
    at = seam_at(fresh, mark)
    if at is None:
        return None
    seam = fresh.seams.pop(at)
    fresh.save(update_fields=["seams"])
    return _keep(fresh, TakenOut.Kind.SEAM, seam["name"], {"seam": seam, "at": at})


@transaction.atomic
def take_out_size(size: PatternSize) -> TakenOut:
    """Take a size out of its pattern. Sizes graded from it must be gone or stand by themselves."""
    facts, pieces = versions.facts_of_size(size)
    kept = {"facts": facts, "pieces": pieces, "allowance_mm": size.pattern.seam_allowance_mm}
    size.delete()
    return _keep(size.pattern, TakenOut.Kind.SIZE, f"{facts['height_mm']:g}", kept)


def _keep(
    pattern: Pattern, kind: str, name: str, kept: dict[str, Any], size: PatternSize | None = None
) -> TakenOut:
    return TakenOut.objects.create(
        workshop=pattern.workshop, pattern=pattern, size=size, kind=kind, name=name, kept=kept
    )


@transaction.atomic
def put_back(row: TakenOut) -> None:
    """Put what was taken out back where it was.

    Raises PutBackError where its name or height is taken, DraftError or OutlineError where it, or
    a size graded from its size, cannot be drawn any more. Then it stays taken out.
    """
    ways = {
        TakenOut.Kind.PIECE: _put_back_piece,
        TakenOut.Kind.SEAM: _put_back_seam,
        TakenOut.Kind.SIZE: _put_back_size,
    }
    ways[TakenOut.Kind(row.kind)](row)
    row.delete()


def _put_back_piece(row: TakenOut) -> None:
    size = row.size
    if size is None or size.graded_from_id:
        raise PutBackError("Its size is graded from another now. Put it into that one.")
    names = size.pieces.values_list("name", flat=True)
    if row.name.casefold() in {name.casefold() for name in names}:
        raise PutBackError("There is a piece of that name again. Rename that one first.")
    piece = PatternPiece.objects.create(workshop=row.workshop, size=size, **row.kept["facts"])
    _fit_allowance(row, piece)
    versions.regrade(size)


def _put_back_seam(row: TakenOut) -> None:
    fresh = Pattern.objects.select_for_update().get(pk=row.pattern_id)
    fresh.seams.insert(row.kept["at"], row.kept["seam"])
    fresh.save(update_fields=["seams"])


def _put_back_size(row: TakenOut) -> None:
    if row.pattern.sizes.filter(height_mm=row.kept["facts"]["height_mm"]).exists():
        raise PutBackError("There is a size of that height again.")
    size = versions.size_from(row.pattern, row.kept["facts"], row.kept["pieces"])
    for piece in size.pieces.all():
        _fit_allowance(row, piece)


def _fit_allowance(row: TakenOut, piece: PatternPiece) -> None:
    """Give a piece the allowance that its pattern has by now."""
    if row.kept["allowance_mm"] != row.pattern.seam_allowance_mm:
        versions.give_allowance(piece, row.pattern.seam_allowance_mm)

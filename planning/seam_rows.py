"""The seams of a pattern as its row keeps them, each known by a mark of all that it says.

Two windows may be open on one pattern: a seam is found by its mark and never by its place, so that
neither window changes a seam it does not show.
"""

from collections.abc import Sequence

from django.db import transaction

from planning.drafting.sewing import Seam
from planning.drafts import mark_of, seams_json
from planning.models import Pattern, PatternPiece


def seam_at(pattern: Pattern, mark: str) -> int | None:
    """The place of the seam that has this mark, counted from 0."""
    return next((at for at, seam in enumerate(pattern.seams) if mark_of(seam) == mark), None)


@transaction.atomic
def set_seam(pattern: Pattern, mark: str, seam: Seam) -> bool:
    """Put a seam in the place of the marked one, or last where no mark is given.

    False, and nothing is saved, where the marked seam is not there any more.
    """
    fresh = Pattern.objects.select_for_update().get(pk=pattern.pk)
    at = seam_at(fresh, mark) if mark else len(fresh.seams)
    if at is None:
        return False
    fresh.seams[at : at + 1] = seams_json((seam,))
    fresh.save(update_fields=["seams"])
    return True


@transaction.atomic
def rename(piece: PatternPiece, old: str, old_edges: Sequence[str] = ()) -> None:
    """Let seams, stuffed parts and the other sizes follow a saved piece to its new names.

    ``old`` is the name it had, and ``old_edges`` are those of its edges, in the same order.
    """
    names = {old: piece.name}
    edges = _renamed_edges(old_edges, [edge["name"] for edge in piece.edges])
    if not old or (piece.name == old and not edges):
        return
    pattern = Pattern.objects.select_for_update().get(pk=piece.size.pattern_id)
    others = PatternPiece.objects.of(pattern.workshop).filter(size__pattern=pattern, name=old)
    others.exclude(size__pieces__name=piece.name).update(name=piece.name)
    for seam in pattern.seams:
        for side in (*seam["a"], *seam["b"]):
            if side[0] == old:
                side[:2] = [piece.name, edges.get(side[1], side[1])]
    for part in pattern.parts:
        for each in part.get("pieces", ()):
            each[0] = names.get(each[0], each[0])
    pattern.save(update_fields=["seams", "parts"])


def _renamed_edges(old: Sequence[str], new: Sequence[str]) -> dict[str, str]:
    """The edges that kept their place and changed their name."""
    if len(old) != len(new):
        return {}
    return {
        was: now for was, now in zip(old, new, strict=True) if was not in new and now not in old
    }

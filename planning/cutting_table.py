"""One size on the cutting table: what is asked, what cloth there is, and how the pieces lie.

The pieces lie as they were kept, or as a draft has them; what is locked stays where it was put.
"""

from dataclasses import dataclass

from planning.coverage.problem import Placement, Problem
from planning.hand_lays import Said, faults_said, read_draft
from planning.laying import hold_on, known_lay
from planning.models import LockedPiece, PatternPiece, SizeCheck
from planning.problems import Cloth, cloth_of, problem_of
from planning.shown_lay import named_in

type Copy = tuple[str, int]


@dataclass(slots=True)
class Table:
    """A size check with the question of today and a lay that may still change."""

    check: SizeCheck
    cloth: Cloth
    problem: Problem
    pieces: dict[str, PatternPiece]
    lay: list[Placement]

    def place_of(self, copy: Copy) -> Placement | None:
        return next((each for each in self.lay if (each.piece, each.copy) == copy), None)

    def words_of(self, copy: Copy) -> str:
        return named_in(self.pieces, *copy)

    @property
    def faults(self) -> list[Said]:
        return faults_said(self.problem, self.lay, self.pieces)


def table_of(check: SizeCheck, draft: str | None = None) -> Table:
    """The lay as it is kept, or as a draft has it. Raises DraftError."""
    cloth = cloth_of(check.keepsake)
    problem = problem_of(check.keepsake, check.size, cloth)
    if draft is None:
        copies = {(piece.id, copy) for piece, copy in problem.copies()}
        kept = known_lay(check, cloth) or []
        lay = [place for place in kept if (place.piece, place.copy) in copies]
    else:
        lay = read_draft(draft, problem, cloth)
    pieces = {piece.name: piece for piece in check.size.pieces.all()}
    return Table(check, cloth, problem, pieces, lay)


def lock(check: SizeCheck, cloth: Cloth, place: Placement) -> None:
    """Keep one copy where it lies, in this size."""
    LockedPiece.objects.update_or_create(
        workshop=check.workshop,
        keepsake=check.keepsake,
        size=check.size,
        piece_name=place.piece,
        copy=place.copy,
        defaults={
            "panel": cloth.rows[place.panel],
            "rotation_deg": place.rotation_deg,
            "x_mm": place.translation[0],
            "y_mm": place.translation[1],
        },
    )


def free(check: SizeCheck, copy: Copy) -> None:
    """Let one copy of this size be laid elsewhere again."""
    locks = LockedPiece.objects.of(check.workshop).filter(keepsake=check.keepsake)
    locks.filter(size=check.size, piece_name=copy[0], copy=copy[1]).delete()


def carry_over(check: SizeCheck) -> bool:
    """A lay that keeps the changed rules as it lies stays a yes; whether it did."""
    table = table_of(check)
    return hold_on(table.check, table.cloth, table.problem)

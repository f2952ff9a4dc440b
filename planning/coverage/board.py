"""The best lay so far: claims of the search come in, are verified, and the better one stays.

Nothing reaches a verdict but through here, and nothing stays here that `verify` finds fault with.
"""

from collections.abc import Sequence
from dataclasses import dataclass, field

from planning.coverage.engine import Job, Lie
from planning.coverage.placing import placement_of
from planning.coverage.prepare import lies_at
from planning.coverage.problem import Placement, Problem
from planning.coverage.verify import faults_of


@dataclass(slots=True)
class Board:
    """The best verified lay of one check, whole or in part."""

    problem: Problem
    best: tuple[Placement, ...] = ()
    refused: int = 0
    fixed: tuple[Placement, ...] = ()
    _area: float = field(default=-1.0)

    @property
    def is_full(self) -> bool:
        """Whether every copy asked for is laid."""
        return len(self.best) == len(self.problem.copies())

    def offer(self, placements: Sequence[Placement]) -> bool:
        """Keep the lay if it is better than the best and without fault; copies at fault are left out."""
        if len(placements) + len(self.fixed) < len(self.best):
            return False
        lay = (*self.fixed, *placements)
        faults = faults_of(self.problem, lay, whole=False)
        if faults:
            self.refused += 1
            bad = {(fault.piece, fault.copy) for fault in faults}
            lay = tuple(place for place in lay if (place.piece, place.copy) not in bad)
        if len(lay) > len(self.best):
            self.best = lay
        return not faults

    def unplaced(self) -> tuple[tuple[str, int], ...]:
        """The copies that the best lay leaves over."""
        laid = {(placement.piece, placement.copy) for placement in self.best}
        return tuple(
            (piece.id, copy)
            for piece, copy in self.problem.copies()
            if (piece.id, copy) not in laid
        )


def lay_of(job: Job, lies: Sequence[Lie]) -> tuple[Placement, ...]:
    """The placements a claim speaks of, each copy taken in turn."""
    left = [list(item.copies) for item in job.items]
    placements = []
    for number, sheet_number, turn_deg, x, y in lies:
        item, sheet = job.items[number], job.sheets[sheet_number]
        rotation_deg, translation = lies_at(item, sheet, turn_deg, (x, y))
        copy = left[number].pop(0)
        placements.append(placement_of(item.piece, copy, sheet.panel, rotation_deg, translation))
    return tuple(placements)

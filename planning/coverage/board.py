"""The best lay so far: claims of the search come in, are verified, and the better one stays.

Nothing reaches a verdict but through here, and nothing stays here that `verify` finds fault with.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from planning.coverage.problem import Placement, Problem
from planning.coverage.verify import faults_of


@dataclass(slots=True)
class Board:
    """The best verified lay of one check, whole or in part."""

    problem: Problem
    best: tuple[Placement, ...] = ()
    refused: int = 0

    @property
    def is_full(self) -> bool:
        """Whether every copy asked for is laid."""
        return len(self.best) == len(self.problem.copies())

    def offer(self, lay: Sequence[Placement]) -> bool:
        """Keep the lay if it is better than the best; whether it was without fault.

        Copies at fault are left out, and the rest counts as a part of a lay.
        """
        if len(lay) <= len(self.best):
            return True
        faults = faults_of(self.problem, lay, whole=False)
        sound = tuple(lay)
        if faults:
            self.refused += 1
            bad = {(fault.piece, fault.copy) for fault in faults}
            sound = tuple(place for place in lay if (place.piece, place.copy) not in bad)
        if len(sound) > len(self.best) and not (
            faults and faults_of(self.problem, sound, whole=False)
        ):
            self.best = sound
        return not faults

    def unplaced(self) -> tuple[tuple[str, int], ...]:
        """The copies that the best lay leaves over."""
        laid = {(placement.piece, placement.copy) for placement in self.best}
        return tuple(
            (piece.id, copy)
            for piece, copy in self.problem.copies()
            if (piece.id, copy) not in laid
        )

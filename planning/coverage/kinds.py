"""The pieces as the proofs count them: all copies of one piece and one side are of one kind."""

from collections.abc import Sequence
from dataclasses import dataclass

from shapely import Polygon

from planning.coverage.grain import Turn, turns_of
from planning.coverage.problem import Panel, Piece, Placement, Problem
from planning.coverage.room import least_area_mm2, least_shape


@dataclass(frozen=True, slots=True)
class Kind:
    """Copies that differ in nothing: what they are, how many, and the least cloth each takes."""

    piece: Piece
    mirrored: bool
    copies: int
    shape: Polygon
    area_mm2: float

    @property
    def need_mm2(self) -> float:
        """The least cloth that all its copies take."""
        return self.copies * self.area_mm2

    @property
    def piece_area_mm2(self) -> float:
        """The area of one copy at its cut line."""
        return float(self.shape.area)

    def turns_on(self, panel: Panel) -> tuple[Turn, ...]:
        """The turns allowed on a panel, both with their grain along +x."""
        return turns_of(self.piece, panel.one_way)


def kinds_of(problem: Problem, laid: Sequence[Placement] = ()) -> tuple[Kind, ...]:
    """Every kind asked for and not yet laid, in the order of the pieces."""
    kinds = []
    gone = {(placement.piece, placement.copy) for placement in laid}
    for piece in problem.pieces:
        area = least_area_mm2(problem, piece)
        for mirrored in (False, True):
            copies = sum(
                piece.is_mirrored(copy) == mirrored and (piece.id, copy) not in gone
                for copy in range(piece.count)
            )
            if copies:
                kinds.append(Kind(piece, mirrored, copies, least_shape(piece, mirrored), area))
    return tuple(kinds)

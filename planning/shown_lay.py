"""A lay as a page shows it: panels drawn, pieces numbered, rules with what they miss."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from inventory.cloth import places_of
from inventory.drawing import path_of
from inventory.models import Panel
from planning.coverage.problem import Placement, Problem
from planning.drawing import LayFacts, laid_panels
from planning.kept import KeptRule, kept_rules, marks_of, targets_of
from planning.laid_shapes import LaidPanel, ShownDetail
from planning.models import Keepsake, PatternPiece, PatternSize
from planning.spots import copy_words
from shared.units import LengthUnit

type Copy = tuple[str, int]


@dataclass(frozen=True, slots=True)
class ShownLay:
    """The panels that something lies on, and the rules that name places."""

    panels: list[LaidPanel]
    rules: list[KeptRule]

    @property
    def pieces(self) -> int:
        return sum(len(panel.pieces) for panel in self.panels)

    @property
    def has_stripes(self) -> bool:
        return any(panel.drawing.stripes for panel in self.panels)


def named_in(pieces: Mapping[str, PatternPiece], piece: str, copy: int) -> str:
    """A copy in words, also where the pattern no longer has such a piece."""
    row = pieces.get(piece)
    return copy_words(row, copy) if row else f"{piece} {copy + 1}"


def facts_of(
    keepsake: Keepsake,
    size: PatternSize,
    problem: Problem,
    lay: Sequence[Placement],
    faulty: frozenset[Copy] = frozenset(),
) -> LayFacts:
    """What the drawing of a lay is to show beside the pieces."""
    return LayFacts(
        problem=problem,
        pieces={piece.name: piece for piece in size.pieces.all()},
        marks=marks_of(problem, lay),
        locked=frozenset((lock.piece, lock.copy) for lock in problem.locked),
        faulty=faulty,
        targets=_details_on(keepsake, problem),
    )


def _details_on(keepsake: Keepsake, problem: Problem) -> dict[str, list[ShownDetail]]:
    """The details that shall show, with their outlines, panel by panel."""
    details = {(pin.piece_name, pin.copy): pin.detail for pin in keepsake.pins.all()}
    return {
        panel: [
            ShownDetail(
                target.letter, *target.at, path_of(places_of([details[target.copy]])[0].shape)
            )
            for target in targets
        ]
        for panel, targets in targets_of(problem).items()
    }


def shown_lay(
    keepsake: Keepsake,
    size: PatternSize,
    problem: Problem,
    rows: Mapping[str, Panel],
    lay: Sequence[Placement],
    units: LengthUnit,
) -> ShownLay:
    facts = facts_of(keepsake, size, problem, lay)
    details = {(pin.piece_name, pin.copy): str(pin.detail) for pin in keepsake.pins.all()}
    rules = kept_rules(problem, lay, lambda p, copy: named_in(facts.pieces, p, copy), details)
    return ShownLay(laid_panels(rows, lay, facts, units), rules)

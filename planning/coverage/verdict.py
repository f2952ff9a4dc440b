"""What is answered: *covers*, *cannot* or *undecided*, with the lay, the proof and the spare cloth.

A verdict of *covers* carries a lay that `verify` found without fault; *cannot* carries a proof;
*undecided* carries the best part of a lay, verified too, and what was left over.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal

from planning.coverage.problem import Placement

type Word = Literal["covers", "cannot", "undecided"]
type ProofKind = Literal["fits_nowhere", "area", "rivals", "locked", "same_garment"]


@dataclass(frozen=True, slots=True)
class Proof:
    """Why no lay exists, in a sentence that can be checked with a tape measure."""

    kind: ProofKind
    pieces: tuple[str, ...]
    panels: tuple[str, ...]
    need_mm2: float | None
    have_mm2: float | None
    text: str


@dataclass(frozen=True, slots=True)
class Chance:
    """The bounds between which a chance lies, 95 % sure, from so many samples.

    `tape_mm` is how far each edge was taken to be off, either way.
    """

    low: float
    high: float
    samples: int
    tape_mm: float


@dataclass(frozen=True, slots=True)
class Spare:
    """How far a lay stands from the edge.

    `holds_to_inset_mm`: every panel edge may lie this much further in, and every flaw reach this
    much further out, and the same lay still keeps its margins. `holds_to_shrink_pct`: the panels
    may shrink by this much both ways, flaws with them, and the same lay, moved as a whole on each
    panel, still keeps them. `chance` is that of the same lay, so moved, on the true cloth; None
    where there was no time for it.
    """

    used_mm2: float
    usable_mm2: float
    holds_to_inset_mm: float
    holds_to_shrink_pct: float
    chance: Chance | None = None


@dataclass(frozen=True, slots=True)
class Verdict:
    """The answer to one problem. `unplaced` names copies as (piece, copy)."""

    verdict: Word
    placements: tuple[Placement, ...]
    unplaced: tuple[tuple[str, int], ...]
    proof: Proof | None
    spare: Spare | None
    seconds: float
    seed: int
    engine: str
    notes: tuple[str, ...] = ()


type HelpKind = Literal[
    "found",
    "leave_out",
    "left_over",
    "half_turns",
    "list",
    "same_garment",
    "clearance",
    "edge_margin",
    "flaw_margin",
    "grain_tolerance",
    "extra_cloth",
]


@dataclass(frozen=True, slots=True)
class Help:
    """What would let the cloth be enough, in a sentence, with the verified lay that shows it.

    `figures` are lengths, angles and numbers by name. *Found* says that the cloth is enough as it
    is; *left over* has no lay and names the pieces that a search most often cannot place.
    """

    kind: HelpKind
    text: str
    pieces: tuple[str, ...]
    panels: tuple[str, ...]
    figures: Mapping[str, float] = field(default_factory=dict)
    lay: tuple[Placement, ...] = ()


@dataclass(frozen=True, slots=True)
class Progress:
    """How far a check has come: copies placed in the best lay so far, of all that are asked."""

    placed: int
    of: int
    seconds: float
    stage: str

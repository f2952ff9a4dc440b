"""What is asked: panels of cloth, pieces to cut from them, and the rules a lay must keep.

Plain values in millimetres and degrees (anticlockwise from +x). Nothing here measures or decides;
`cover_file` says whether a problem is sound, `verify` whether a lay keeps its rules.
"""

from dataclasses import dataclass
from typing import Literal

type Point = tuple[float, float]
type Outline = tuple[Point, ...]
type Direction = Literal["along", "across", "both"]


class ProblemError(ValueError):
    """A problem that cannot be read: one line that names the place, for the maker to mend."""


@dataclass(frozen=True, slots=True)
class Repeat:
    """A stripe or check: its repeat along and across the grain, and a point where it starts.

    A length of None means that the cloth does not repeat in that direction (a plain stripe).
    """

    along_mm: float | None
    across_mm: float | None
    origin: Point


@dataclass(frozen=True, slots=True)
class Panel:
    """One flat part of a garment, with the areas of it that cannot be used."""

    id: str
    garment: str
    outline: Outline
    flaws: tuple[Outline, ...] = ()
    grain_deg: float = 90.0
    one_way: bool = False
    repeat: Repeat | None = None


@dataclass(frozen=True, slots=True)
class Piece:
    """One pattern piece at its cut line; the last `mirrored` of `count` copies are mirror images.

    `panels` and `garments` are the names it may be cut from; None means any. A piece on the bias
    carries its grain line at 45 degrees to the panel's grain, leaning either way.
    """

    id: str
    outline: Outline
    grain_deg: float = 90.0
    count: int = 1
    mirrored: int = 0
    grain_tolerance_deg: float = 0.0
    bias: bool = False
    panels: tuple[str, ...] | None = None
    garments: tuple[str, ...] | None = None

    def is_mirrored(self, copy: int) -> bool:
        """Whether this copy, counted from 0, is cut as a mirror image."""
        return copy >= self.count - self.mirrored


@dataclass(frozen=True, slots=True)
class Spot:
    """A point on one copy of a piece, in the coordinates of the piece's own outline."""

    piece: str
    copy: int
    at: Point


@dataclass(frozen=True, slots=True)
class Match:
    """Two spots that lie at the same place of the stripe or check, within a distance."""

    a: Spot
    b: Spot
    direction: Direction = "along"
    within_mm: float = 3.0


@dataclass(frozen=True, slots=True)
class Pin:
    """A spot of a copy that lands on a point of a panel (a pocket on the chest)."""

    piece: str
    copy: int
    panel: str
    piece_point: Point
    panel_point: Point
    within_mm: float = 5.0


@dataclass(frozen=True, slots=True)
class Locked:
    """A copy that already lies where it will be cut, or has been cut."""

    piece: str
    copy: int
    panel: str
    mirrored: bool
    rotation_deg: float
    translation: Point


@dataclass(frozen=True, slots=True)
class Placement:
    """Where one copy lies: its outline mirrored (x to -x), turned about the origin, then moved."""

    piece: str
    copy: int
    panel: str
    mirrored: bool
    rotation_deg: float
    translation: Point
    outline: Outline


@dataclass(frozen=True, slots=True)
class Problem:
    """All that a verdict depends on. Two equal problems have the same fingerprint."""

    panels: tuple[Panel, ...]
    pieces: tuple[Piece, ...]
    clearance_mm: float = 2.0
    edge_margin_mm: float = 5.0
    flaw_margin_mm: float = 3.0
    same_garment: tuple[tuple[str, ...], ...] = ()
    match: tuple[Match, ...] = ()
    pin: tuple[Pin, ...] = ()
    locked: tuple[Locked, ...] = ()

    def panel(self, panel_id: str) -> Panel:
        """The panel of that name; KeyError if there is none."""
        return {panel.id: panel for panel in self.panels}[panel_id]

    def piece(self, piece_id: str) -> Piece:
        """The piece of that name; KeyError if there is none."""
        return {piece.id: piece for piece in self.pieces}[piece_id]

    def copies(self) -> tuple[tuple[Piece, int], ...]:
        """Every copy that must be cut, in the order of the pieces."""
        return tuple((piece, copy) for piece in self.pieces for copy in range(piece.count))

    def may_come_from(self, piece: Piece, panel: Panel) -> bool:
        """Whether the piece's own lists of panels and garments let it be cut from this panel."""
        in_panels = piece.panels is None or panel.id in piece.panels
        return in_panels and (piece.garments is None or panel.garment in piece.garments)

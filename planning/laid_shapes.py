"""What a drawn lay is made of: pieces, letters of rules, details and the panels that hold them.

Only numbers, words and path strings in the panel's own frame; the template owns the elements.
"""

import json
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from inventory.drawing import PanelDrawing
from inventory.models import Panel
from planning.coverage.problem import Placement
from planning.labels import Label

MARK = 0.62  # the radius of a rule's letter, as a share of the letters' height


@dataclass(frozen=True, slots=True)
class PlacedMark:
    """The letter of a rule at its place on a laid piece, with the stripe that shall run on."""

    letter: str
    x: float
    y: float
    stripe: str


@dataclass(frozen=True, slots=True)
class LaidPiece:
    """One placed copy: its paths in the panel's frame, its words, and where these stand."""

    key: int
    name: str
    number: int
    hand: str
    is_mirrored: bool
    is_single: bool
    placement: Placement
    path: str
    halo: str
    grain: str
    label: Label
    marks: tuple[PlacedMark, ...]
    across_mm: float
    up_mm: float
    is_locked: bool = False
    is_faulty: bool = False
    turns: str = "[]"

    @property
    def words(self) -> str:
        """The copy's own name; a piece that is cut once has no number."""
        return self.name if self.is_single else f"{self.name} {self.number}"

    @property
    def whole_words(self) -> str:
        return f"{self.words}, {self.hand}" if self.hand else self.words

    @property
    def turned_deg(self) -> float:
        return self.placement.rotation_deg % 360

    @property
    def value(self) -> str:
        """The copy as a form names it."""
        return json.dumps([self.name, self.number - 1])

    @property
    def lock_scale(self) -> float:
        """How large the lock is drawn, of the twelve millimetres it is given in the page."""
        return 0.075 * self.label.size_mm


@dataclass(frozen=True, slots=True)
class ShownDetail:
    """A detail that shall show, over the pieces: its rule's letter, its middle and its outline."""

    letter: str
    x: float
    y: float
    path: str


@dataclass(frozen=True, slots=True)
class LaidPanel:
    """One panel with the pieces that lie on it and the details that shall show."""

    row: Panel
    drawing: PanelDrawing
    pieces: tuple[LaidPiece, ...]
    targets: tuple[ShownDetail, ...]
    size_mm: float

    @property
    def mark_mm(self) -> float:
        return MARK * self.size_mm

    @property
    def letter_mm(self) -> float:
        return 0.85 * self.size_mm

    @property
    def letter_drop_mm(self) -> float:
        """How far the foot of a letter lies below its middle."""
        return 0.31 * self.size_mm

    @property
    def cross(self) -> str:
        """A cross with an open middle, where the letter of its rule may stand."""
        far, near = 1.3 * self.size_mm, MARK * self.size_mm
        arms = [(1, 0), (-1, 0), (0, 1), (0, -1)]
        return "".join(line_path([(x * near, y * near), (x * far, y * far)]) for x, y in arms)


def line_path(points: Iterable[Sequence[float]]) -> str:
    """SVG path data of an open line."""
    return "M" + "L".join(f"{x:.1f} {y:.1f}" for x, y in points)

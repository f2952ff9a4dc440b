"""A lay as drawings for a page: one a panel, to scale, with the pieces where they lie."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from shapely import Polygon

from inventory.cloth import shrinkage_for, usable_of
from inventory.drawing import PanelDrawing, panel_drawing, ring_path
from inventory.models import Panel
from planning.models import PatternPiece, Placement
from shared.units import LengthUnit

LEFT, RIGHT = "left", "right"


@dataclass(frozen=True, slots=True)
class LaidPiece:
    """One placed copy: its path in the panel's frame, its words, and where its label stands."""

    name: str
    number: int
    hand: str
    is_mirrored: bool
    path: str
    grain_path: str
    label_x: float
    label_y: float
    label_mm: float
    turned_deg: float
    across_mm: float
    up_mm: float

    @property
    def short(self) -> str:
        """The label on the drawing: the name, and L or R for a piece that has a hand."""
        return f"{self.name} {self.hand[:1].upper()}" if self.hand else self.name


@dataclass(frozen=True, slots=True)
class LaidPanel:
    """One panel with the pieces that lie on it."""

    row: Panel
    drawing: PanelDrawing
    pieces: tuple[LaidPiece, ...]


def hand_of(piece: PatternPiece | None, is_mirrored: bool) -> str:
    """Left as drawn, right turned over; nothing for a piece that is cut one way only."""
    if piece is None or not piece.mirrored:
        return ""
    return RIGHT if is_mirrored else LEFT


def laid_panels(
    placements: Iterable[Placement], pieces: Sequence[PatternPiece], units: LengthUnit
) -> list[LaidPanel]:
    """Group placements by panel, in the order of the panels."""
    by_name = {piece.name: piece for piece in pieces}
    panels: dict[int, tuple[Panel, list[LaidPiece]]] = {}
    for placement in placements:
        _, laid = panels.setdefault(placement.panel_id, (placement.panel, []))
        laid.append(_laid(placement, by_name.get(placement.piece_name)))
    return [
        LaidPanel(row, panel_drawing(row, usable_of(row, shrinkage_for(row)), units), tuple(laid))
        for row, laid in panels.values()
    ]


def _laid(placement: Placement, piece: PatternPiece | None) -> LaidPiece:
    shape = Polygon(placement.outline_mm)
    left, bottom, right, top = shape.bounds
    middle = shape.representative_point()
    panel = placement.panel
    origin_x = min(x for x, _ in panel.outline_mm)
    origin_y = min(y for _, y in panel.outline_mm)
    hand = hand_of(piece, placement.is_mirrored)
    words = len(placement.piece_name) + (2 if hand else 0)
    return LaidPiece(
        name=placement.piece_name,
        number=placement.copy + 1,
        hand=hand,
        is_mirrored=placement.is_mirrored,
        path=ring_path(placement.outline_mm),
        grain_path=_grain(min(right - left, top - bottom)),
        label_x=middle.x,
        label_y=middle.y,
        label_mm=max(5.0, min(16.0, 1.5 * (right - left) / max(words, 1))),
        turned_deg=placement.rotation_deg % 360,
        across_mm=left - origin_x,
        up_mm=bottom - origin_y,
    )


def _grain(room_mm: float) -> str:
    half = room_mm * 0.3
    return f"M{-half:.1f} 0L{half:.1f} 0"

"""Laying pieces side by side on one sheet, for a file that people look at. It saves no cloth."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from planning.drafting.pieces import DraftPiece
from planning.drafting.rings import Point, bounds_mm

GAP_MM = 10.0
HEAD_MM = 40.0  # at the top, for the title and the check line
WORDS_MM = 16.0  # under each piece
COLUMN_MM = 75.0  # the words under a narrow piece are wider than it
CHECK_MM = 100.0


@dataclass(frozen=True)
class Sheet:
    """Where each piece's own origin comes to lie, y upwards from the sheet's upper left corner."""

    width_mm: float
    height_mm: float
    origins: tuple[Point, ...]


def sheet_of(pieces: Sequence[DraftPiece]) -> Sheet:
    """Return places for the pieces, in rows in their own order, apart by ``GAP_MM`` at least."""
    boxes = [bounds_mm(piece.cut_line) for piece in pieces]
    wides = [max(right - left, COLUMN_MM) for left, _, right, _ in boxes]
    widest = max(wides, default=0.0)
    area = sum(
        (wide + GAP_MM) * (box[3] - box[1] + WORDS_MM + GAP_MM)
        for wide, box in zip(wides, boxes, strict=True)
    )
    row_mm = max(widest, 1.4 * math.sqrt(area), 2 * CHECK_MM)
    origins: list[Point] = []
    x, top, deepest = GAP_MM, -HEAD_MM, 0.0
    for wide, (left, low, _, high) in zip(wides, boxes, strict=True):
        if x > GAP_MM and x + wide > row_mm + GAP_MM:
            x, top, deepest = GAP_MM, top - deepest - WORDS_MM - GAP_MM, 0.0
        origins.append((round(x - left, 1), round(top - high, 1)))
        x += math.ceil(wide) + GAP_MM
        deepest = max(deepest, math.ceil(high - low))
    height = -top + deepest + WORDS_MM + GAP_MM
    return Sheet(math.ceil(row_mm + 2 * GAP_MM), math.ceil(height), tuple(origins))

"""Entries in few words: corners and curve points as tuples."""

import math
from typing import Any

from planning.drafting.entering import entered_piece
from planning.drafting.entry import EnteredPoint, Entry
from planning.drafting.pieces import DraftPiece

Typed = tuple[float, float] | tuple[float, float, bool] | tuple[float, float, bool, str]

SQUARE_CORNERS = ((0.0, 0.0), (100.0, 0.0), (100.0, 100.0), (0.0, 100.0))
NAMED_SQUARE = (
    (0.0, 0.0, False, "foot"),
    (100.0, 0.0, False, "right"),
    (100.0, 100.0, False, "head"),
    (0.0, 100.0, False, "left"),
)
# The right half of an egg on a straight foot; its left edge, from (0, 100) down, lies on the fold.
HALF_EGG = (
    (0.0, 0.0, False, "foot"),
    (30.0, 0.0, False, "side"),
    (50.0, 40.0, True),
    (35.0, 85.0, True),
    (0.0, 100.0, False, "fold"),
)


def entry_of(points: Any, **facts: Any) -> Entry:
    """An entry on the seam line with an allowance of 6 mm unless told otherwise."""
    facts = {"is_cut_line": False, "allowance_mm": 6.0} | facts
    return Entry(tuple(EnteredPoint(*point) for point in points), **facts)


def piece_of(points: Any, **facts: Any) -> DraftPiece:
    return entered_piece(entry_of(points, **facts), "piece", 2, 1)


def round_points(radius_mm: float, how_many: int = 16) -> list[Typed]:
    turns = [2 * math.pi * step / how_many for step in range(how_many)]
    return [(radius_mm * math.cos(t), radius_mm * math.sin(t), True) for t in turns]

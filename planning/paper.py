"""A piece on squared paper, for drawing it point by point: numbers and paths, y downwards.

The paper begins at the lower left corner that all lengths are measured from. Every point typed so
far is a spot on it, also while they do not make an outline yet.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from planning.drafting.pieces import DraftPiece
from planning.drafting.rings import Point, bounds_mm
from planning.drafting.svg_paths import path_data
from shared.units import MM_PER, LengthUnit

LEAST_PAPER_MM = 200.0
ROOM_MM = 30.0
SQUARES: dict[LengthUnit, tuple[float, int]] = {"cm": (10.0, 5), "in": (12.7, 2)}


@dataclass(frozen=True, slots=True)
class Spot:
    """A point of the outline: the row it was typed in, and where it lies, y downwards."""

    row: int
    x: float
    y: float
    is_curve: bool


@dataclass(frozen=True, slots=True)
class Paper:
    """Squared paper with what is drawn on it; the numbers of ``view_box`` are millimetres."""

    view_box: str
    fine: str
    bold: str
    cut_path: str
    seam_path: str
    loose_path: str
    spots: tuple[Spot, ...]
    spot_mm: float
    per_unit_mm: float

    @property
    def text_mm(self) -> float:
        """The height of a point's number."""
        return 2 * self.spot_mm


def paper_of(
    points: Sequence[tuple[int, Point, bool]], piece: DraftPiece | None, unit: LengthUnit
) -> Paper:
    """Draw rows of points (row, place, on a curve), and the piece they make if they make one."""
    places = [place for _, place, _ in points]
    everywhere = [(0.0, 0.0), *places, *(piece.cut_line if piece else ())]
    left, low, right, high = bounds_mm(everywhere)
    left, low = min(left - 5, -5.0), min(low - 5, -5.0)
    right, high = max(right + ROOM_MM, LEAST_PAPER_MM), max(high + ROOM_MM, LEAST_PAPER_MM)
    step_mm, bold_every = SQUARES[unit]
    return Paper(
        view_box=f"{left:.1f} {-high:.1f} {right - left:.1f} {high - low:.1f}",
        fine=_grid(left, low, right, high, step_mm),
        bold=_grid(left, low, right, high, step_mm * bold_every),
        cut_path=path_data(piece.cut_line, closed=True) if piece else "",
        seam_path=path_data(piece.seam_line, closed=True) if piece else "",
        loose_path=path_data(places) if len(places) > 1 and not piece else "",
        spots=tuple(Spot(row, x, -y, is_curve) for row, (x, y), is_curve in points),
        spot_mm=max(right - left, high - low) / 60,
        per_unit_mm=MM_PER[unit],
    )


def _grid(left: float, low: float, right: float, high: float, step_mm: float) -> str:
    across = _marks(left, right, step_mm)
    up = _marks(low, high, step_mm)
    return "".join(
        [
            *(f"M{x:.1f} {-low:.1f}V{-high:.1f}" for x in across),
            *(f"M{left:.1f} {-y:.1f}H{right:.1f}" for y in up),
        ]
    )


def _marks(start: float, end: float, step_mm: float) -> Iterable[float]:
    first = -int(-start // step_mm) if start < 0 else int(start // step_mm) + 1
    return [number * step_mm for number in range(first, int(end // step_mm) + 1)]

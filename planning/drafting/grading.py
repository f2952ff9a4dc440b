"""Grading: another finished height of the same pattern, scaled at the stitching line.

Seam lines, notches, places and lines inside a piece grow in proportion; the seam allowance is then
added at its constant width. Scaling a cutting line would scale the allowance with it.
"""

from dataclasses import replace

from planning.drafting.allowance import cut_line_of
from planning.drafting.errors import DraftError
from planning.drafting.outline import ROUNDED
from planning.drafting.pieces import DraftPiece, DraftSize
from planning.drafting.rings import Point

SMALLEST_MM, LARGEST_MM = 30.0, 2000.0


def graded(size: DraftSize, height_mm: float) -> DraftSize:
    """Return ``size`` at another finished height.

    Raises DraftError for a height outside 30 to 2000 mm, CutLineCrosses when the allowance is too
    wide for a piece that has become small.
    """
    if not SMALLEST_MM <= height_mm <= LARGEST_MM:
        raise DraftError(
            f"A keepsake can be {SMALLEST_MM / 10:g} to {LARGEST_MM / 10:g} cm tall, "
            f"not {height_mm / 10:g} cm."
        )
    by = height_mm / size.height_mm
    pieces = tuple(graded_piece(piece, by, size.seam_allowance_mm) for piece in size)
    return replace(size, name=f"{height_mm / 10:g} cm", height_mm=height_mm, pieces=pieces)


def graded_piece(piece: DraftPiece, by: float, allowance_mm: float) -> DraftPiece:
    """Return one piece ``by`` times as long and as wide at the seam line."""
    seam_line = tuple(_scaled(point, by) for point in piece.seam_line)
    cut_line = cut_line_of(seam_line, allowance_mm)
    return replace(
        piece,
        seam_line=seam_line,
        cut_line=tuple((round(x, ROUNDED), round(y, ROUNDED)) for x, y in cut_line),
        notches=tuple(replace(notch, at=_scaled(notch.at, by)) for notch in piece.notches),
        marks=tuple(replace(mark, at=_scaled(mark.at, by)) for mark in piece.marks),
        lines=tuple(
            replace(line, points=tuple(_scaled(point, by) for point in line.points))
            for line in piece.lines
        ),
    )


def _scaled(point: Point, by: float) -> Point:
    return (round(point[0] * by, ROUNDED), round(point[1] * by, ROUNDED))

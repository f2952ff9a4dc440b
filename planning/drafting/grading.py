"""Other sizes of a pattern: the seam line in proportion to the height, the allowance as it was.

Everything drawn on the piece moves with the seam line. The cutting line is never scaled: it is
drawn anew round the larger or smaller seam line.
"""

from dataclasses import replace

from planning.drafting.allowance import cut_line_of
from planning.drafting.entry import Entry
from planning.drafting.errors import CutLineCrosses, DraftError
from planning.drafting.pieces import DraftPiece, DraftSize
from planning.drafting.practice import turning_notes
from planning.drafting.rings import Point

LEAST_HEIGHT_MM = 30.0
MOST_HEIGHT_MM = 2000.0


def graded(size: DraftSize, height_mm: float) -> DraftSize:
    """Return the size at another height; at its own height, the size as it is.

    Raises DraftError for a height outside 30 to 2000 mm, CutLineCrosses naming a piece whose
    allowance runs into itself at that height.
    """
    for height in (size.height_mm, height_mm):
        if not LEAST_HEIGHT_MM <= height <= MOST_HEIGHT_MM:
            raise DraftError(
                f"A size is between {LEAST_HEIGHT_MM:.0f} and {MOST_HEIGHT_MM:.0f} mm high."
            )
    if height_mm == size.height_mm:
        return size
    factor = height_mm / size.height_mm
    pieces = tuple(graded_piece(piece, factor, size.seam_allowance_mm) for piece in size)
    return replace(
        size,
        name=f"{height_mm / 10:g} cm",
        height_mm=height_mm,
        pieces=pieces,
        width_mm=None if size.width_mm is None else factor * size.width_mm,
        notes=turning_notes(pieces),
    )


def graded_piece(piece: DraftPiece, factor: float, allowance_mm: float) -> DraftPiece:
    """Return the piece ``factor`` times as large, cut ``allowance_mm`` outside its seam line.

    Raises DraftError for a factor that is no size, CutLineCrosses naming the piece when the
    allowance runs into itself, OutlineError for a negative allowance.
    """
    if not 0 < factor < float("inf"):
        raise DraftError("A piece can only be made larger or smaller by a factor above 0.")
    seam_line = tuple(_scaled(point, factor) for point in piece.seam_line)
    try:
        cut_line = cut_line_of(seam_line, allowance_mm)
    except CutLineCrosses as error:
        raise CutLineCrosses(f"The piece “{piece.name}”: {error}") from error
    return replace(
        piece,
        seam_line=seam_line,
        cut_line=cut_line,
        notches=tuple(replace(each, at=_scaled(each.at, factor)) for each in piece.notches),
        marks=tuple(replace(each, at=_scaled(each.at, factor)) for each in piece.marks),
        lines=tuple(
            replace(each, points=tuple(_scaled(point, factor) for point in each.points))
            for each in piece.lines
        ),
    )


def graded_entry(entry: Entry, factor: float) -> Entry | None:
    """Return the entry that draws the graded piece, or None where no points of it do.

    A line that was set in from what was drawn, by an allowance or a pen's width, does not grow in
    proportion to it.
    """
    if entry.is_cut_line or entry.outside_mm:
        return None
    return replace(
        entry,
        points=tuple(
            replace(each, x_mm=each.x_mm * factor, y_mm=each.y_mm * factor) for each in entry.points
        ),
        notches=tuple(replace(each, at_mm=each.at_mm * factor) for each in entry.notches),
        marks=tuple(replace(each, at=_scaled(each.at, factor)) for each in entry.marks),
    )


def _scaled(point: Point, factor: float) -> Point:
    return (point[0] * factor, point[1] * factor)

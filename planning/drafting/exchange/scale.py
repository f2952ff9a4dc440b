"""A file's pieces made larger or smaller, for a file whose unit was read wrongly."""

from dataclasses import replace

from planning.drafting.exchange.found import Found, FoundPiece
from planning.drafting.pieces import PlacementLine
from planning.drafting.rings import Point, Ring


def scaled(found: Found, factor: float) -> Found:
    """Return all that was found, every length times ``factor``."""
    return replace(
        found,
        pieces=tuple(_scaled(piece, factor) for piece in found.pieces),
        width_mm=found.width_mm * factor,
        height_mm=found.height_mm * factor,
    )


def _scaled(piece: FoundPiece, factor: float) -> FoundPiece:
    def point(at: Point) -> Point:
        return (at[0] * factor, at[1] * factor)

    def ring(points: Ring) -> Ring:
        return tuple(point(at) for at in points)

    return replace(
        piece,
        outline=ring(piece.outline),
        seam_line=ring(piece.seam_line) if piece.seam_line else None,
        notches=tuple(replace(notch, at=point(notch.at)) for notch in piece.notches),
        marks=tuple(replace(mark, at=point(mark.at)) for mark in piece.marks),
        lines=tuple(PlacementLine(line.name, ring(line.points)) for line in piece.lines),
    )

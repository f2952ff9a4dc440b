"""The named places of a pattern piece, and which copies of it there are.

A spot is a mark, a notch or the middle of a named edge; an empty name is the piece's own middle.
Points are in the piece's own frame, in millimetres.
"""

from collections.abc import Iterator

from shapely import Polygon
from shapely.geometry.base import BaseGeometry

from planning.drafting.rings import Point, length_mm, point_along
from planning.drafts import draft_piece
from planning.models import PatternPiece

MIDDLE = ""
LEFT, RIGHT = "left", "right"


def spots_of(piece: PatternPiece) -> dict[str, Point]:
    """Every named place of a piece, its middle first. A name met again gets a number."""
    spots: dict[str, Point] = {MIDDLE: middle_of(Polygon(piece.cut_line_mm))}
    for name, point in _named(piece):
        free, number = name, 2
        while free in spots:
            free, number = f"{name} ({number})", number + 1
        spots[free] = point
    return spots


def _named(piece: PatternPiece) -> Iterator[tuple[str, Point]]:
    draft = draft_piece(piece)
    for mark in draft.marks:
        yield mark.name, mark.at
    for notch in draft.notches:
        yield notch.name, notch.at
    for edge in draft.edges:
        points = draft.points_of(edge)
        yield edge.name, point_along(points, length_mm(points) / 2)


def middle_of(shape: BaseGeometry) -> Point:
    """The centre of a shape, or a point well inside where the centre lies outside of it."""
    centre = shape.centroid
    if not shape.covers(centre):
        centre = shape.representative_point()
    return (centre.x, centre.y)


def hand_of(piece: PatternPiece | None, is_mirrored: bool) -> str:
    """Left as drawn, right turned over; nothing for a piece that is cut one way only."""
    if piece is None or not piece.mirrored:
        return ""
    return RIGHT if is_mirrored else LEFT


def copy_words(piece: PatternPiece, copy: int) -> str:
    """A copy as the pages name it; copies count from 0 here and from 1 in words.

    A piece that is cut once needs no number.
    """
    if piece.count == 1:
        return piece.name
    hand = hand_of(piece, copy >= piece.count_as_drawn)
    return f"{piece.name} {copy + 1}, {hand}" if hand else f"{piece.name} {copy + 1}"

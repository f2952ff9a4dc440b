"""Where an outline lies once it is mirrored, turned and moved, and how to undo a change of frame.

The order is fixed by the cover-1 format: x to -x, then the turn about the origin, then the move.
"""

import math
from collections.abc import Iterable

from planning.coverage.problem import Outline, Piece, Placement, Point

_QUARTERS = {0.0: (1.0, 0.0), 90.0: (0.0, 1.0), 180.0: (-1.0, 0.0), 270.0: (0.0, -1.0)}


def cos_sin(angle_deg: float) -> Point:
    """Cosine and sine, exact at quarter turns so that square pieces stay square.

    >>> cos_sin(-90)
    (0.0, -1.0)
    """
    turn = angle_deg % 360.0
    if turn in _QUARTERS:
        return _QUARTERS[turn]
    return math.cos(math.radians(turn)), math.sin(math.radians(turn))


def turned(point: Point, angle_deg: float) -> Point:
    """The point turned anticlockwise about the origin."""
    cos, sin = cos_sin(angle_deg)
    return cos * point[0] - sin * point[1], sin * point[0] + cos * point[1]


def placed(
    points: Iterable[Point], *, mirrored: bool, rotation_deg: float, translation: Point
) -> Outline:
    """The points mirrored, turned and moved.

    >>> placed([(1.0, 0.0)], mirrored=True, rotation_deg=90, translation=(5.0, 5.0))
    ((5.0, 4.0),)
    """
    cos, sin = cos_sin(rotation_deg)
    side = -1.0 if mirrored else 1.0
    dx, dy = translation
    return tuple((cos * side * x - sin * y + dx, sin * side * x + cos * y + dy) for x, y in points)


def placement_of(
    piece: Piece, copy: int, panel_id: str, rotation_deg: float, translation: Point
) -> Placement:
    """A copy of the piece laid down; left or right follows from which copy it is."""
    mirrored = piece.is_mirrored(copy)
    outline = placed(
        piece.outline, mirrored=mirrored, rotation_deg=rotation_deg, translation=translation
    )
    return Placement(piece.id, copy, panel_id, mirrored, rotation_deg, translation, outline)

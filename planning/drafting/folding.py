"""A half pattern cut on the fold: mirrored across its fold edge to the whole piece.

The fold edge itself disappears. Every other edge comes twice, the second time called 'other half'.
A fold edge that bends by more than half a millimetre is refused: cloth folds straight.
"""

import math
from collections.abc import Sequence

from planning.drafting.rings import Point
from planning.drafting.tracing import Side
from shared.errors import OutlineError

STRAIGHT_MM = 0.5
OTHER_HALF = ", other half"


def unfolded(sides: Sequence[Side], fold: int) -> tuple[Side, ...]:
    """Return the whole outline of a half whose edge number ``fold`` (from 0) lies on the fold.

    The edges run on from one another and close; they may run either way round.

    >>> half = (Side("fold", ((0, 0), (0, 9))), Side("rim", ((0, 9), (-5, 5), (0, 0))))
    >>> [side.name for side in unfolded(half, 0)]
    ['rim', 'rim, other half']
    """
    line = sides[fold].line
    _refuse_bent(line)
    rest = [*sides[fold + 1 :], *sides[:fold]]
    if not rest:
        raise OutlineError("An outline without corners has no edge to lie on a fold.")
    other = [
        Side(side.name + OTHER_HALF, tuple(across(p, line[0], line[-1]) for p in side.line[::-1]))
        for side in reversed(rest)
    ]
    return (*rest, *other)


def across(point: Point, a: Point, b: Point) -> Point:
    """Return the point mirrored across the straight line from a to b.

    >>> across((3.0, 1.0), (0.0, 0.0), (0.0, 5.0))
    (-3.0, 1.0)
    """
    ux, uy = b[0] - a[0], b[1] - a[1]
    share = ((point[0] - a[0]) * ux + (point[1] - a[1]) * uy) / (ux * ux + uy * uy)
    foot = (a[0] + share * ux, a[1] + share * uy)
    return (2 * foot[0] - point[0], 2 * foot[1] - point[1])


def _refuse_bent(line: Sequence[Point]) -> None:
    a, b = line[0], line[-1]
    long = math.dist(a, b)
    if long < STRAIGHT_MM:
        raise OutlineError("The fold edge ends where it begins, so it is no straight line.")
    off_mm = max(math.dist(point, across(point, a, b)) / 2 for point in line)
    if off_mm > STRAIGHT_MM:
        raise OutlineError(
            f"The fold edge is not straight: it leaves the line between its ends by {off_mm:.1f} mm."
        )

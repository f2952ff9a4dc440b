"""Half a piece with its mirror line becomes the whole piece.

A mirror line along the edge is a fold: the other half is the reflection. A mirror line through the
inside belongs to a piece that is drawn whole.
"""

import math
from collections.abc import Sequence

from planning.drafting.rings import Point, Ring

FOLD_MM = 0.5  # how near to the mirror line an edge lies on it

Fold = tuple[Point, Point]


def unfolded(points: Sequence[Point], is_closed: bool, fold: Fold) -> Ring | None:
    """Return the whole ring, anticlockwise where the half was, or None when no edge is a fold.

    ``points`` is half an outline, or the part of it that runs from the fold to the fold.

    >>> unfolded([(0, 0), (5, 0), (5, 9), (0, 9)], True, ((0, 0), (0, 9)))
    ((0.0, 0.0), (5, 0), (5, 9), (0.0, 9.0), (-5.0, 9.0), (-5.0, 0.0))
    """
    aside = [_aside_mm(point, fold) for point in points]
    side = math.copysign(1.0, max(aside, key=abs))
    if max(aside, key=abs) == 0 or any(gap * side < -FOLD_MM for gap in aside):
        return None
    half = _opened(points, [abs(gap) <= FOLD_MM for gap in aside]) if is_closed else list(points)
    if len(half) < 3 or max(abs(_aside_mm(end, fold)) for end in (half[0], half[-1])) > FOLD_MM:
        return None
    half = [_foot(half[0], fold), *half[1:-1], _foot(half[-1], fold)]
    return (*half, *(reflected(point, fold) for point in reversed(half[1:-1])))


def reflected(point: Point, fold: Fold) -> Point:
    """Return the point on the other side of the mirror line."""
    x, y = _foot(point, fold)
    return (2 * x - point[0], 2 * y - point[1])


def is_on(point: Point, fold: Fold) -> bool:
    """Say whether a point lies on the mirror line, so that its reflection is itself."""
    return abs(_aside_mm(point, fold)) <= FOLD_MM


def _opened(points: Sequence[Point], on_fold: Sequence[bool]) -> list[Point]:
    """The ring without its longest edge on the fold, from one end of that edge round to the other.

    Empty when no edge lies on the fold.
    """
    count = len(points)
    best_mm, best = 0.0, (0, 0)
    for start in range(count):
        if not on_fold[start] or on_fold[start - 1]:
            continue
        end = start
        while on_fold[(end + 1) % count]:
            end += 1
        long_mm = math.dist(points[start], points[end % count])
        if long_mm > best_mm:
            best_mm, best = long_mm, (start, end)
    start, end = best
    return [points[step % count] for step in range(end, start + count + 1)] if best_mm else []


def _aside_mm(point: Point, fold: Fold) -> float:
    (ax, ay), (bx, by) = fold
    across = (bx - ax) * (point[1] - ay) - (by - ay) * (point[0] - ax)
    return across / math.dist(*fold)


def _foot(point: Point, fold: Fold) -> Point:
    (ax, ay), (bx, by) = fold
    along = (bx - ax) * (point[0] - ax) + (by - ay) * (point[1] - ay)
    share = along / math.dist(*fold) ** 2
    return (ax + share * (bx - ax), ay + share * (by - ay))

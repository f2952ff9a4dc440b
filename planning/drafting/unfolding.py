"""Opening out a half piece whose straight edge lies on the fold."""

import math
from collections.abc import Sequence

from planning.drafting.curves import Line
from planning.drafting.entry import TWIN, EntryError
from planning.drafting.entry_lines import ring_of
from planning.drafting.outline import Drawn
from planning.drafting.rings import Point, is_simple

FLAT_MM = 0.1  # how far an edge may stray from straight and still lie on a fold
CLEAR_MM = 0.01


def fold_of(drawn: Sequence[Drawn], name: str) -> tuple[Point, Point]:
    """Return the two ends of the fold, the piece to the left of the line from first to second.

    Raises EntryError when no edge has that name, or it is bent, or the piece lies on both sides.
    """
    edge = next((edge for edge in drawn if edge.name == name), None)
    if edge is None:
        raise EntryError(f"No edge in the table is called “{name}”.", "fold_edge")
    start, end = edge.line[0], edge.line[-1]
    if start == end or any(abs(_left_of((start, end), p)) > FLAT_MM for p in edge.line):
        raise EntryError(f"The edge “{name}” is bent; only a straight edge folds.", "fold_edge")
    others = [point for other in drawn if other is not edge for point in other.line]
    if any(_left_of((start, end), point) < -CLEAR_MM for point in others):
        text = f"The outline lies on both sides of the edge “{name}”, so that is no fold."
        raise EntryError(text, "fold_edge")
    return start, end


def unfolded(drawn: Sequence[Drawn], name: str) -> list[Drawn]:
    """Return the edges of the whole piece: the half's without the fold, then their mirror images.

    Both halves run anticlockwise. Raises EntryError as ``fold_of`` does, or when the whole would
    touch itself.
    """
    fold = fold_of(drawn, name)
    at = [edge.name for edge in drawn].index(name)
    half = [*drawn[at + 1 :], *drawn[:at]]
    other = [Drawn(TWIN.format(edge.name), _mirrored(edge.line, fold)) for edge in reversed(half)]
    whole = [*half, *other]
    if not is_simple(ring_of(whole)):
        text = f"The outline touches the fold “{name}” once more beside the edge."
        raise EntryError(text, "fold_edge")
    return whole


def mirror_image(point: Point, fold: tuple[Point, Point]) -> Point:
    """Return the point across the fold.

    >>> mirror_image((3.0, 5.0), ((1.0, 0.0), (1.0, 9.0)))
    (-1.0, 5.0)
    """
    (ax, ay), (bx, by) = fold
    dx, dy = bx - ax, by - ay
    share = ((point[0] - ax) * dx + (point[1] - ay) * dy) / (dx * dx + dy * dy)
    return (2 * (ax + share * dx) - point[0], 2 * (ay + share * dy) - point[1])


def off_fold_mm(point: Point, fold: tuple[Point, Point]) -> float:
    """Return how far a point lies from the line of the fold."""
    return abs(_left_of(fold, point))


def _mirrored(line: Line, fold: tuple[Point, Point]) -> Line:
    """The line across the fold, walked back; its ends on the fold stay exactly where they are."""
    return [p if p in fold else mirror_image(p, fold) for p in reversed(line)]


def _left_of(fold: tuple[Point, Point], point: Point) -> float:
    (ax, ay), (bx, by) = fold
    cross = (bx - ax) * (point[1] - ay) - (by - ay) * (point[0] - ax)
    return cross / math.dist(*fold)

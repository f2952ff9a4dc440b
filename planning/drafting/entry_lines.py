"""From entered points to named edges: straight between corners, smooth through curve points."""

from collections.abc import Sequence
from itertools import pairwise

from shapely import LineString, STRtree
from shapely import Point as Place

from planning.drafting.curves import STEPS, Line, smooth, smooth_loop
from planning.drafting.entry import EnteredPoint, EntryError, edge_names
from planning.drafting.outline import Drawn
from planning.drafting.rings import SAME_PLACE_MM, Point, Ring, signed_area_mm2


def outline_of(points: Sequence[EnteredPoint]) -> tuple[list[Drawn], bool]:
    """Return the edges, anticlockwise one after another, and whether the table ran clockwise.

    Raises EntryError naming two lines that cross.
    """
    spans = _spans(points)
    _refuse_crossing(spans)
    corners = _corners(points)
    ends = [*corners[1:], corners[0] + len(points)]
    drawn = [
        Drawn(name, _joined(spans, start, end))
        for name, start, end in zip(edge_names(points), corners, ends, strict=True)
    ]
    if signed_area_mm2(ring_of(drawn)) > 0:
        return drawn, False
    return [Drawn(edge.name, edge.line[::-1]) for edge in reversed(drawn)], True


def ring_of(drawn: Sequence[Drawn]) -> Ring:
    """Return the closed ring of edges drawn one after another."""
    return tuple(point for edge in drawn for point in edge.line[:-1])


def _corners(points: Sequence[EnteredPoint]) -> list[int]:
    """The rows at which edges start; a loop without corners starts at its first point."""
    return [row for row, point in enumerate(points) if not point.is_curve] or [0]


def _joined(spans: list[Line], start: int, end: int) -> Line:
    line = [spans[start][0]]
    for row in range(start, end):
        line += spans[row % len(spans)][1:]
    return line


def _spans(points: Sequence[EnteredPoint]) -> list[Line]:
    """The line after each point, up to the next, in the order of the table."""
    places: list[Point] = [(point.x_mm, point.y_mm) for point in points]
    if all(point.is_curve for point in points):
        return _cut_at_points(smooth_loop(places), [*places, places[0]])
    corners = _corners(points)
    spans: list[Line] = []
    for start, end in zip(corners, [*corners[1:], corners[0] + len(points)], strict=True):
        run = [places[row % len(places)] for row in range(start, end + 1)]
        spans += [run] if len(run) == 2 else _cut_at_points(smooth(run), run)
    first = corners[0]
    return spans[len(spans) - first :] + spans[: len(spans) - first]


def _cut_at_points(line: Line, places: list[Point]) -> list[Line]:
    """The parts of a smooth line from place to place, which it meets but for the last decimals."""
    return [
        [here, *line[STEPS * at + 1 : STEPS * (at + 1)], there]
        for at, (here, there) in enumerate(pairwise(places))
    ]


def _refuse_crossing(spans: list[Line]) -> None:
    lines = [LineString(span) for span in spans]
    for row, line in enumerate(lines):
        if not line.is_simple:
            text = f"The curve after point {row + 1} crosses itself. Move its points or add one."
            raise EntryError(text, "points", row)
    firsts, seconds = STRtree(lines).query(lines, predicate="intersects")
    pairs = sorted((int(a), int(b)) for a, b in zip(firsts, seconds, strict=True) if a < b)
    for first, second in pairs:
        if not _only_join(lines, first, second):
            text = f"The line after point {first + 1} crosses the line after point {second + 1}."
            raise EntryError(text, "points", first)


def _only_join(lines: list[LineString], first: int, second: int) -> bool:
    """Say whether two lines that meet are neighbours and meet in their common point alone."""
    if second == first + 1:
        joint = lines[second].coords[0]
    elif first == 0 and second == len(lines) - 1:
        joint = lines[first].coords[0]
    else:
        return False
    met = lines[first].intersection(lines[second])
    return bool(met.geom_type == "Point" and met.distance(Place(joint)) < SAME_PLACE_MM)

"""Pieces that are in each other's way wherever they lie: where they have too few places, no lay is.

Two pieces cannot share a place when every difference between where the one and where the other may
lie is inside their no-fit polygon: the Minkowski sum of the one and the other turned about, grown
by the gap. Where each may lie is read generously, as a rectangle, and the polygon sparingly, so the
claim is sound. Any two of a set of such rivals exclude each other, so each place holds one of them.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cache, lru_cache

from shapely import Polygon, affinity, box
from shapely.geometry.base import BaseGeometry

from planning.coverage.convex_parts import convex_parts, sum_of_shapes
from planning.coverage.kinds import Kind
from planning.coverage.problem import Problem
from planning.coverage.room import SPARING_MM, Room

FULLER_BY = 1.001  # two areas must exceed a place by this much, far above any rounding
HAIR_MM = 0.05  # each place may lie this much further than its rectangle says
MOST_KINDS = 24  # the largest ones; small pieces are nobody's rivals
LOOKS = 12  # steps to a side, of the grid on which a claim is looked at a second time

type Span = tuple[float, float, float, float]


@dataclass(frozen=True, slots=True)
class Rivals:
    """Kinds of which no two copies can share a place, and the numbers of the places they have."""

    kinds: tuple[int, ...]
    rooms: frozenset[int]
    copies: int


def rivals_of(
    problem: Problem, kinds: Sequence[Kind], rooms: Sequence[Room], open_to: Sequence[set[int]]
) -> Iterator[Rivals | None]:
    """Sets of rivals with more copies than places; None now and then, to let others go on."""
    large = sorted(range(len(kinds)), key=lambda n: -kinds[n].area_mm2)[:MOST_KINDS]
    large = [number for number in large if open_to[number]]

    @cache
    def are_rivals(i: int, j: int) -> bool:
        shared = open_to[i] & open_to[j]
        return all(cannot_share(problem, kinds[i], kinds[j], rooms[room]) for room in shared)

    for places in _sets_of_places(large, open_to):
        within = [n for n in large if open_to[n] <= places]
        if sum(kinds[n].copies for n in within) <= len(places):
            continue
        found: list[int] = []
        for number in within:
            yield None
            is_one = kinds[number].copies == 1 or are_rivals(number, number)
            if is_one and all(are_rivals(*sorted((number, other))) for other in found):
                found.append(number)
        copies = sum(kinds[n].copies for n in found)
        if copies > len(places):
            yield Rivals(tuple(found), frozenset(places), copies)


def _sets_of_places(large: Sequence[int], open_to: Sequence[set[int]]) -> list[frozenset[int]]:
    unions = {frozenset(open_to[i] | open_to[j]) for i in large for j in large}
    return sorted(unions, key=lambda places: (len(places), sorted(places)))


def cannot_share(problem: Problem, one: Kind, other: Kind, room: Room) -> bool:
    """Whether no copy of each can lie in this room together, whichever way they are turned."""
    if one.piece_area_mm2 + other.piece_area_mm2 > FULLER_BY * room.cloth.area:
        return True
    if not _is_exact(one, room) or not _is_exact(other, room):
        return False
    gap_mm = max(0.0, problem.clearance_mm - 2 * SPARING_MM) or -2 * SPARING_MM
    for a in _turned(one, room):
        for b in _turned(other, room):
            differences = _differences(a, b, room)
            if differences is None:
                continue
            if not _no_fit(a, b, gap_mm).covers(box(*differences)):
                return False
    return True


@lru_cache(maxsize=256)  # the same pair is asked about on every panel
def _no_fit(a: Polygon, b: Polygon, gap_mm: float) -> BaseGeometry:
    """The moves of `b` that bring it nearer to `a` than the gap."""
    about = affinity.scale(b, -1.0, -1.0, origin=(0, 0))
    return sum_of_shapes(convex_parts(a), convex_parts(about)).buffer(gap_mm)


def looks_apart(problem: Problem, one: Kind, other: Kind, room: Room) -> bool:
    """Whether a pair was seen to be apart at one of many differences tried: the second look."""
    if one.piece_area_mm2 + other.piece_area_mm2 > FULLER_BY * room.cloth.area:
        return False
    gap_mm = problem.clearance_mm + HAIR_MM
    for a in _turned(one, room):
        for b in _turned(other, room):
            span = _differences(a, b, room)
            if span is None:
                continue
            left, low, right, high = span
            for column in range(LOOKS + 1):
                for row in range(LOOKS + 1):
                    dx = left + (right - left) * column / LOOKS
                    dy = low + (high - low) * row / LOOKS
                    if a.distance(affinity.translate(b, dx, dy)) >= gap_mm:
                        return True
    return False


def _is_exact(kind: Kind, room: Room) -> bool:
    return all(low == high for low, high in kind.turns_on(room.panel))


def _turned(kind: Kind, room: Room) -> list[Polygon]:
    return [affinity.rotate(kind.shape, low, origin=(0, 0)) for low, _ in kind.turns_on(room.panel)]


def _differences(a: Polygon, b: Polygon, room: Room) -> Span | None:
    """The rectangle that holds every difference of their places; None if one has no place."""
    first, second = _places(a, room), _places(b, room)
    if first is None or second is None:
        return None
    return (
        second[0] - first[2] - HAIR_MM,
        second[1] - first[3] - HAIR_MM,
        second[2] - first[0] + HAIR_MM,
        second[3] - first[1] + HAIR_MM,
    )


def _places(shape: Polygon, room: Room) -> Span | None:
    """The rectangle of moves that keep the shape's box inside the room's box."""
    left, low, right, high = shape.bounds
    x0, y0, x1, y1 = room.cloth.bounds
    span = (x0 - left, y0 - low, x1 - right, y1 - high)
    if span[2] < span[0] - HAIR_MM or span[3] < span[1] - HAIR_MM:
        return None
    return span

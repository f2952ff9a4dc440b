"""Whether some of the pieces need more cloth than all the places they may come from.

A flow of area from kinds of pieces to rooms: what cannot flow points at the pieces and the rooms
that are short (the condition of Hall, in its form for flows: Ford and Fulkerson 1956). It knows
areas only, no shapes.
"""

from collections import deque
from collections.abc import Mapping, Sequence, Set
from dataclasses import dataclass

type Node = tuple[str, int]

NOTHING_MM2 = 1e-3


@dataclass(frozen=True, slots=True)
class Shortage:
    """Numbers of the kinds that need more than the numbers of all the rooms open to them."""

    kinds: tuple[int, ...]
    rooms: tuple[int, ...]
    need_mm2: float
    have_mm2: float


def shortage_of(
    needs_mm2: Sequence[float], rooms_mm2: Sequence[float], open_to: Sequence[Set[int]]
) -> Shortage | None:
    """The shortage, if not all needs can be met; `open_to` holds the rooms of each kind.

    >>> shortage_of([5.0, 4.0], [6.0, 9.0], [{0}, {0}])
    Shortage(kinds=(0, 1), rooms=(0,), need_mm2=9.0, have_mm2=6.0)
    >>> shortage_of([5.0, 4.0], [6.0, 9.0], [{0}, {0, 1}]) is None
    True
    """
    left = _network(needs_mm2, rooms_mm2, open_to)
    while (path := _path(left)) is not None:
        amount = min(left[here][there] for here, there in path)
        for here, there in path:
            left[here][there] -= amount
            left[there][here] = left[there].get(here, 0.0) + amount
    reached = _reached(left)
    kinds = tuple(number for side, number in sorted(reached) if side == "kind")
    rooms = tuple(sorted({room for kind in kinds for room in open_to[kind]}))
    need = sum(needs_mm2[kind] for kind in kinds)
    have = sum(rooms_mm2[room] for room in rooms)
    return Shortage(kinds, rooms, need, have) if need > have + NOTHING_MM2 else None


SOURCE: Node = ("source", 0)
SINK: Node = ("sink", 0)


def _network(
    needs_mm2: Sequence[float], rooms_mm2: Sequence[float], open_to: Sequence[Set[int]]
) -> dict[Node, dict[Node, float]]:
    left: dict[Node, dict[Node, float]] = {SOURCE: {}, SINK: {}}
    for number, area in enumerate(rooms_mm2):
        left["room", number] = {SINK: area}
    for number, need in enumerate(needs_mm2):
        left[SOURCE]["kind", number] = need
        left["kind", number] = {("room", room): need for room in sorted(open_to[number])}
    return left


def _path(left: Mapping[Node, Mapping[Node, float]]) -> list[tuple[Node, Node]] | None:
    """A shortest way for more cloth to flow, as its steps."""
    came = _walk(left)
    if SINK not in came:
        return None
    steps, here = [], SINK
    while here != SOURCE:
        steps.append((came[here], here))
        here = came[here]
    return steps


def _reached(left: Mapping[Node, Mapping[Node, float]]) -> set[Node]:
    return set(_walk(left))


def _walk(left: Mapping[Node, Mapping[Node, float]]) -> dict[Node, Node]:
    """Every node that more could flow to, with the one before it."""
    came = {SOURCE: SOURCE}
    waiting = deque([SOURCE])
    while waiting:
        here = waiting.popleft()
        for there, amount in left[here].items():
            if amount > NOTHING_MM2 and there not in came:
                came[there] = here
                waiting.append(there)
    return came

"""Laying pieces edge to edge: a search that builds a lay piece by piece, and tears parts out again.

Where the cloth is nearly filled, pieces lie flush along their edges. The search keeps the few most
promising parts of a lay and lets each grow where the contact is longest, or where another piece
would be in the way of that (a beam search). What it ends with it mends: pieces with little contact
and their neighbours are taken out and laid anew (ruin and recreate: Schrimpf and others, Journal of
Computational Physics 159, 2000; from memory). Same puzzle, same seed, same way; only the clock cuts
it short.
"""

import math
import time
from collections.abc import Callable, Iterator, Sequence

import numpy as np

from planning.coverage.snug_edges import Edges
from planning.coverage.snug_lay import CONTACT, NUMBER, SHEET, Grower, Laid, Part, X, Y
from planning.coverage.snug_room import Room
from planning.coverage.snug_shapes import Floats, Puzzle, Shapes

type Lie = tuple[int, int, float, float, float]

FIRST_WIDTH, FIRST_BRANCHES = 8, 6
MEND_WIDTH, MEND_BRANCHES = 3, 4
TRIED_PER_PLACE = 3  # parts grown, at most, for each place in the beam
CHANCE = 0.1  # how far chance may sway the choice among spots while mending
FORGIVEN = 0.1  # share of contact that a mended lay may lose and still be gone on from
FEWEST_TORN, MOST_TORN = 3, 12
FEW_LEFT, ROOM_SHARE = 4, 0.25  # room is made for the last few pieces, this often


def search(puzzle: Puzzle, seconds: float, seed: int, tell: Callable[[list[Lie]], None]) -> None:
    """Look for a lay until all is laid or time is up; each better one is told."""
    look = _Look(puzzle, time.monotonic() + seconds, seed)
    best: Part | None = None
    for part in look.parts():
        if best is None or _worth(part) > _worth(best):
            if best is None or len(part.laid) > len(best.laid):
                tell(look.lies(part))
            best = part
        if not part.left.any():
            return


def _worth(part: Part) -> tuple[float, float]:
    return part.area_mm2, part.contact


class _Look:
    """One search: the tables of a puzzle, the chance and the clock."""

    def __init__(self, puzzle: Puzzle, deadline: float, seed: int) -> None:
        self._shapes = Shapes(puzzle)
        self._grower = Grower(puzzle, self._shapes, Edges(self._shapes))
        self._deadline = deadline
        self._chance = np.random.default_rng(seed)
        self._room = Room(self._grower, self._chance)

    def lies(self, part: Part) -> list[Lie]:
        """What is laid, as (item, sheet, turn, x, y)."""
        variants = self._shapes.variants
        return [
            (variants[one.number].item, one.sheet, variants[one.number].turn_deg, one.x, one.y)
            for one in part.laid
        ]

    def parts(self) -> Iterator[Part]:
        """Parts of a lay, until one is whole or time is up."""
        now = self._grown_from(self._grower.part_of(()), FIRST_WIDTH, FIRST_BRANCHES, sway=0.0)
        yield now
        while now.laid and time.monotonic() < self._deadline:
            if now.left.sum() <= FEW_LEFT and self._chance.random() < ROOM_SHARE:
                now = self._with_room(now)
                yield now
            start = self._grower.part_of(self._torn(now))
            new = self._grown_from(start, MEND_WIDTH, MEND_BRANCHES, CHANCE)
            yield new
            if self._may_go_on_from(new, now):
                now = new

    def _may_go_on_from(self, new: Part, now: Part) -> bool:
        """Whether the new part is better, or not so much worse that chance may not prefer it."""
        gain = new.area_mm2 - now.area_mm2
        if abs(gain) <= 1e-6:
            return new.contact >= now.contact * (1 - FORGIVEN * self._chance.random())
        return gain > -self._chance.random() * float(self._shapes.area.mean())

    def _with_room(self, part: Part) -> Part:
        """The part with one more piece, where room can be made for it."""
        numbers = np.nonzero(part.left[self._shapes.item])[0].tolist()
        laid = self._room.with_one_more(part.laid, numbers)
        return self._grower.part_of(laid) if laid else part

    def _grown_from(self, start: Part, width: int, branches: int, sway: float) -> Part:
        """The best part that a beam of so many parts comes to."""
        beam, best = [start], start
        while beam and time.monotonic() < self._deadline:
            beam = self._next(beam, width, branches, sway)
            best = max([best, *beam], key=_worth)
            if not best.left.any():
                break
        return best

    def _next(self, beam: Sequence[Part], width: int, branches: int, sway: float) -> list[Part]:
        """The most promising parts with one piece more."""
        steps = [
            (part.dead_mm2, -self._snugness(part, spot), part, spot)
            for part in beam
            for spot in self._choices(part, branches, sway)
        ]
        steps.sort(key=lambda step: step[:2])
        seen, grown, alive = set(), list[Part](), 0
        for _, _, part, spot in steps:
            key = frozenset([*map(self._place, part.laid), self._place(_laid_at(spot))])
            if key in seen:
                continue
            seen.add(key)
            grown.append(self._grower.grown(part, spot))
            alive += not grown[-1].dead
            if alive >= width or len(grown) >= TRIED_PER_PLACE * width:
                break
            if time.monotonic() >= self._deadline:
                break
        return sorted(grown, key=lambda part: part.rank)[:width]

    def _choices(self, part: Part, branches: int, sway: float) -> Floats:
        """The spot with the most contact, and the best of those that it would be in the way of."""
        spots = part.spots
        if not len(spots):
            return spots
        share = spots[:, CONTACT] / self._shapes.perimeter[spots[:, NUMBER].astype(int)]
        if sway:
            share = share * (1 + sway * self._chance.standard_normal(len(share)))
        first = int(share.argmax())
        rivals = self._grower.in_the_way(spots, spots[first])
        rivals[first] = True
        numbers = np.nonzero(rivals)[0]
        chosen: Floats = spots[numbers[np.argsort(-share[numbers], kind="stable")][:branches]]
        return chosen

    def _snugness(self, part: Part, spot: Floats) -> float:
        perimeter = part.perimeter + float(self._shapes.perimeter[int(spot[NUMBER])])
        return (part.contact + float(spot[CONTACT])) / perimeter

    def _place(self, one: Laid) -> tuple[int, int, int, int]:
        """Where it lies, to the millimetre: two parts with the same places are one."""
        return int(self._shapes.item[one.number]), one.sheet, round(one.x), round(one.y)

    def _torn(self, part: Part) -> list[Laid]:
        """What is left laid when one or two clusters are torn out, likeliest where it is loose."""
        laid = part.laid
        loose = np.array([self._looseness(laid, number) for number in range(len(laid))])
        torn: set[int] = set()
        for _ in range(self._chance.choice([1, 1, 2])):
            first = int(self._chance.choice(len(laid), p=loose / loose.sum()))
            near = [n for n, one in enumerate(laid) if one.sheet == laid[first].sheet]
            middle = self._middle(laid[first])
            near.sort(key=lambda n: math.dist(self._middle(laid[n]), middle))
            most = min(MOST_TORN, max(FEWEST_TORN + 1, len(near)))
            torn.update(near[: self._chance.integers(FEWEST_TORN, most + 1)])
        return [one for number, one in enumerate(laid) if number not in torn]

    def _looseness(self, laid: Sequence[Laid], number: int) -> float:
        others = [*laid[:number], *laid[number + 1 :]]
        contact = self._grower.contact_at(others, laid[number])
        return max(0.02, 1.05 - contact / float(self._shapes.perimeter[laid[number].number]))

    def _middle(self, one: Laid) -> tuple[float, float]:
        x, y = self._shapes.middle[one.number]
        return one.x + x, one.y + y


def _laid_at(spot: Floats) -> Laid:
    return Laid(int(spot[NUMBER]), int(spot[SHEET]), float(spot[X]), float(spot[Y]))

"""Choosing well among lays: few garments cut, some kept whole, useful cloth left over.

Any lay that holds is enough to cut by; which of them is best is the maker's wish. From a lay that
holds, garments and panels are left out one at a time; what is not cheaper is forgotten.
"""

import time
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, replace

from planning.coverage.check import check
from planning.coverage.leftover import leftover_share
from planning.coverage.problem import Placement, Problem, ProblemError
from planning.coverage.relaying import relaid
from planning.coverage.verdict import Progress
from planning.coverage.verify import faults_of

KEPT_WHOLE = 10.0  # what cutting into a garment that is to stay whole weighs
LEAST_GAIN = 1e-6
ROUNDS_S = (2.0, 6.0, 18.0)  # for one attempt; the same however much time there is in all
AROUND_SHARE = 0.3  # of an attempt, for laying only what has lost its place
STAGE = "choosing"

type Lay = tuple[Placement, ...]


@dataclass(frozen=True, slots=True)
class Wishes:
    """What the maker would like, and how much: each weight is the cost of one thing against it."""

    few_garments: float = 1.0
    keep_whole: tuple[str, ...] = ()
    leftover: float = 0.5
    same_cloth: float = 0.5


def cost_of(problem: Problem, placements: Sequence[Placement], wishes: Wishes) -> float:
    """How far a lay is from what is wished, from 0 up; less is better.

    So much for each garment that is cut, much more for each that is to stay whole, so much for all
    cloth that is left in no useful part, and for each further garment that copies of one piece come
    from. Raises ProblemError for a garment that is not there.
    """
    _refuse_unknown(problem, wishes)
    garment_of = {panel.id: panel.garment for panel in problem.panels}
    cut = {garment_of[place.panel] for place in placements}
    sources: dict[str, set[str]] = {}
    for place in placements:
        sources.setdefault(place.piece, set()).add(garment_of[place.panel])
    cost = wishes.few_garments * len(cut)
    cost += KEPT_WHOLE * len(cut & set(wishes.keep_whole))
    cost += wishes.same_cloth * sum(len(garments) - 1 for garments in sources.values())
    if wishes.leftover:
        cost += wishes.leftover * (1.0 - leftover_share(problem, placements))
    return cost


def better_lay(
    problem: Problem,
    placements: Sequence[Placement],
    wishes: Wishes,
    seconds: float,
    *,
    seed: int = 0,
    stop: Callable[[], bool] | None = None,
    progress: Callable[[Progress], None] | None = None,
) -> Lay:
    """A verified lay that costs less than the given one, or that one, in at most `seconds`.

    The longer it looks the better the lay, never worse. The lay given must hold.
    """
    _refuse_unknown(problem, wishes)
    chooser = _Chooser(problem, wishes, time.monotonic() + seconds, seed, stop, progress)
    return chooser.bettered(tuple(placements))


def on_panels(problem: Problem, panels: Iterable[str]) -> Problem | None:
    """The problem with these panels alone; None if a rule or a piece then has nowhere to go."""
    kept = set(panels)
    named = {lock.panel for lock in problem.locked} | {pin.panel for pin in problem.pin}
    left = tuple(panel for panel in problem.panels if panel.id in kept)
    if not named <= kept or not left:
        return None
    pieces = []
    for piece in problem.pieces:
        open_to = tuple(panel.id for panel in left if problem.may_come_from(piece, panel))
        if not open_to:
            return None
        is_bound = piece.panels is not None or piece.garments is not None
        pieces.append(replace(piece, panels=open_to, garments=None) if is_bound else piece)
    return replace(problem, panels=left, pieces=tuple(pieces))


def _refuse_unknown(problem: Problem, wishes: Wishes) -> None:
    garments = {panel.garment for panel in problem.panels}
    for name in wishes.keep_whole:
        if name not in garments:
            raise ProblemError(f"keep_whole: there is no garment '{name}'")


class _Chooser:
    """The best lay so far and the time there is to better it."""

    def __init__(
        self,
        problem: Problem,
        wishes: Wishes,
        until: float,
        seed: int,
        stop: Callable[[], bool] | None,
        progress: Callable[[Progress], None] | None,
    ) -> None:
        self._problem, self._wishes, self._until, self._seed = problem, wishes, until, seed
        self._stop, self._progress = stop, progress
        self._started = time.monotonic()

    def bettered(self, lay: Lay) -> Lay:
        """Attempts of growing length, each kind of them from the best lay so far."""
        cost = cost_of(self._problem, lay, self._wishes)
        for seconds in ROUNDS_S:
            tried: set[Problem] = set()
            while (asked := self._next(lay, tried)) is not None:
                if not self._go_on():
                    return lay
                tried.add(asked)
                found = self._attempt(asked, lay, seconds)
                if found and not faults_of(self._problem, found):
                    new = cost_of(self._problem, found, self._wishes)
                    if new < cost - LEAST_GAIN:
                        lay, cost = found, new
        return lay

    def _next(self, lay: Lay, tried: set[Problem]) -> Problem | None:
        return next((asked for asked in self._narrower(lay) if asked not in tried), None)

    def _narrower(self, lay: Lay) -> Iterator[Problem]:
        """The problem with something forbidden that the lay does against the wishes."""
        problem, wishes = self._problem, self._wishes
        garments = self._garments_by_use(lay)
        cut = {panel.id for panel in problem.panels if panel.garment in garments}
        choices: list[Iterable[str]] = []
        if set(wishes.keep_whole) & set(garments):
            choices.append(
                panel.id for panel in problem.panels if panel.garment not in wishes.keep_whole
            )
        for name in garments if wishes.few_garments or wishes.keep_whole else ():
            choices.append(cut - {p.id for p in problem.panels if p.garment == name})
        for panels in choices:
            yield from filter(None, [on_panels(problem, panels)])
        yield from self._in_one_cloth(lay)
        if wishes.leftover:
            used = self._panels_by_use(lay)
            for name in used:
                yield from filter(None, [on_panels(problem, set(used) - {name})])

    def _in_one_cloth(self, lay: Lay) -> Iterator[Problem]:
        """Each piece that comes from several garments, bound to one."""
        problem = self._problem
        for piece in problem.pieces if self._wishes.same_cloth else ():
            panels = {place.panel for place in lay if place.piece == piece.id}
            if len({problem.panel(panel).garment for panel in panels}) > 1:
                yield replace(problem, same_garment=(*problem.same_garment, (piece.id,)))

    def _garments_by_use(self, lay: Lay) -> list[str]:
        """The garments that are cut, those to be kept whole first, then those used least."""
        count: dict[str, int] = {}
        for place in lay:
            garment = self._problem.panel(place.panel).garment
            count[garment] = count.get(garment, 0) + 1
        return sorted(count, key=lambda name: (name not in self._wishes.keep_whole, count[name]))

    def _panels_by_use(self, lay: Lay) -> list[str]:
        count: dict[str, int] = {}
        for place in lay:
            count[place.panel] = count.get(place.panel, 0) + 1
        return sorted(count, key=lambda name: count[name])

    def _attempt(self, asked: Problem, lay: Lay, seconds: float) -> Lay | None:
        """A lay of the narrower problem: around what may stay, or else all anew."""
        until = min(self._until, time.monotonic() + seconds)
        panels = {panel.id for panel in asked.panels}
        bound = {name for group in asked.same_garment for name in group}
        staying = [p for p in lay if p.panel in panels and p.piece not in bound]
        if 0 < len(staying) < len(lay):
            around = time.monotonic() + AROUND_SHARE * (until - time.monotonic())
            found = relaid(asked, staying, around, self._seed, self._go_on)
            if found:
                return found
        left = until - time.monotonic()
        if left <= 0:
            return None
        verdict = check(asked, seconds=left, seed=self._seed, stop=lambda: not self._go_on())
        return verdict.placements if verdict.verdict == "covers" else None

    def _go_on(self) -> bool:
        now, of = time.monotonic(), len(self._problem.copies())
        if self._progress:
            self._progress(Progress(of, of, now - self._started, STAGE))
        return now < self._until and not (self._stop and self._stop())

"""A lay kept through a change: what still holds stays, small faults are slid away, the rest is laid
anew around it.

A panel measured again, a piece with another seam allowance: most of the lay is still right, and the
maker has it before her eyes. Whatever is changed is verified; where no lay is found this way, that
says nothing of others.
"""

import time
from collections.abc import Callable, Iterator, Sequence

from planning.coverage.looking import locked_lay
from planning.coverage.pinned import pinned_choices
from planning.coverage.placing import placement_of
from planning.coverage.problem import Placement, Problem
from planning.coverage.pushing import kept_in_place, pushed_clear
from planning.coverage.relaying import relaid
from planning.coverage.verify import faults_of

SAME_MM = 1e-6
REST_SHARE = 0.5  # of the time left, for laying only what does not hold


def repaired(
    problem: Problem,
    placements: Sequence[Placement],
    seconds: float,
    *,
    seed: int = 0,
    stop: Callable[[], bool] | None = None,
) -> tuple[Placement, ...] | None:
    """A whole verified lay as near to the given one as can be, or None if none was found in time.

    Tried in turn: the lay as it is, its pieces slid on their panels, the faulty ones laid anew, and
    at last all that lies on the panels of those.
    """
    until = time.monotonic() + seconds
    lay = slid_clear(problem, placements, until)
    if not faults_of(problem, lay):
        return lay
    sound = _sound_part(problem, lay)
    for fixed in _ever_less(problem, lay, sound):
        start = next(pinned_choices(problem, fixed), None)
        if start is not None:
            now = time.monotonic()
            share = now + REST_SHARE * (until - now)
            found = relaid(problem, start, share, seed, lambda: not (stop and stop()))
            if found:
                return found
    return None


def slid_clear(
    problem: Problem, placements: Sequence[Placement], until: float
) -> tuple[Placement, ...]:
    """The lay of today's pieces at the same places, slid where a slide may help; not yet judged.

    Copies and panels that are no more are left out.
    """
    lay = tuple(_of_today(problem, placements))
    if not faults_of(problem, lay, whole=False):
        return lay
    slid = pushed_clear(problem, lay, kept_in_place(problem), until)
    before, after = (len(faults_of(problem, each, whole=False)) for each in (lay, slid))
    return slid if after < before else lay


def _of_today(problem: Problem, placements: Sequence[Placement]) -> Iterator[Placement]:
    """Each copy once, with its piece's outline of today about the same middle."""
    pieces = {piece.id: piece for piece in problem.pieces}
    panels = {panel.id for panel in problem.panels}
    seen: set[tuple[str, int]] = set()
    for place in placements:
        piece, copy = pieces.get(place.piece), (place.piece, place.copy)
        if piece is None or place.panel not in panels or copy in seen:
            continue
        if not 0 <= place.copy < piece.count:
            continue
        seen.add(copy)
        today = placement_of(piece, place.copy, place.panel, place.rotation_deg, place.translation)
        x, y = _middle(place)
        now_x, now_y = _middle(today)
        if abs(x - now_x) <= SAME_MM and abs(y - now_y) <= SAME_MM:
            yield place if place.outline == today.outline else today
        else:
            move = (place.translation[0] + x - now_x, place.translation[1] + y - now_y)
            yield placement_of(piece, place.copy, place.panel, place.rotation_deg, move)


def _middle(placement: Placement) -> tuple[float, float]:
    xs, ys = zip(*placement.outline, strict=True)
    return (min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2


def _sound_part(problem: Problem, lay: Sequence[Placement]) -> tuple[Placement, ...]:
    """The locked copies in their places, and of the others those that keep every rule with them."""
    locked = locked_lay(problem)
    copies = {(place.piece, place.copy) for place in locked}
    # of two that come too close the earlier one is at fault, so the locked ones stand last
    sound = (*(place for place in lay if (place.piece, place.copy) not in copies), *locked)
    while True:
        faults = faults_of(problem, sound, whole=False)
        bad = {(fault.piece, fault.copy) for fault in faults} - copies
        if not bad:
            return sound
        sound = tuple(place for place in sound if (place.piece, place.copy) not in bad)


def _ever_less(
    problem: Problem, lay: Sequence[Placement], sound: tuple[Placement, ...]
) -> Iterator[tuple[Placement, ...]]:
    """What to leave in place: all that holds, then only what lies on panels without fault."""
    yield sound
    held = {(place.piece, place.copy) for place in sound}
    faulty = {place.panel for place in lay if (place.piece, place.copy) not in held}
    locked = {(lock.piece, lock.copy) for lock in problem.locked}
    less = tuple(
        place for place in sound if place.panel not in faulty or (place.piece, place.copy) in locked
    )
    if len(less) < len(sound):
        yield less

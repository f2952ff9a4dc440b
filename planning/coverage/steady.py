"""A lay that stands further from the edges: pieces pushed in, then laid anew on smaller panels.

A lay that leans on its edges does not survive a tape measure that errs. Pushing costs a fraction of
a second and does most of it; then the inset is raised step by step and all is laid again. Whichever
lay was found to stand furthest off is kept.
"""

import time
from collections.abc import Callable, Sequence

from planning.coverage.problem import Placement, Problem
from planning.coverage.pushing import kept_in_place, pushed_inward
from planning.coverage.relaying import LEAST_SECONDS, relaid
from planning.coverage.spare import inset_mm
from planning.coverage.verify import faults_of

FIRST_STEP_MM = 4.0
SMALLEST_STEP_MM = 0.5
STEP_SECONDS = 1.0
PUSH_SHARE = 0.4  # of the time left


def steadied(
    problem: Problem,
    lay: Sequence[Placement],
    deadline: float,
    seed: int,
    go_on: Callable[[], bool],
) -> tuple[Placement, ...]:
    """A lay that holds to a larger inset than the given one, or that one.

    Copies that are locked or pinned stay where they lie. `deadline` is on the monotonic clock.
    """
    kept = {(lock.piece, lock.copy) for lock in problem.locked}
    kept |= {(pin.piece, pin.copy) for pin in problem.pin}
    fixed = [placement for placement in lay if (placement.piece, placement.copy) in kept]
    if len(fixed) == len(lay):
        return tuple(lay)

    def held_mm(laid: Sequence[Placement]) -> float:
        return inset_mm(problem, [p for p in laid if (p.piece, p.copy) not in kept])

    def pushed(laid: Sequence[Placement]) -> tuple[Placement, ...]:
        now = time.monotonic()
        until = now + PUSH_SHARE * (deadline - now)
        moved = pushed_inward(problem, laid, kept_in_place(problem), until)
        better = held_mm(moved) > held_mm(laid) and not faults_of(problem, moved)
        return moved if better else tuple(laid)

    best, step_mm = pushed(lay), FIRST_STEP_MM
    while step_mm >= SMALLEST_STEP_MM and go_on():
        until = min(deadline, time.monotonic() + STEP_SECONDS)
        if until - time.monotonic() <= LEAST_SECONDS:
            break
        found = relaid(problem, fixed, until, seed, go_on, inset_mm=held_mm(best) + step_mm)
        if found and held_mm(found) > held_mm(best):
            best, step_mm = pushed(found), step_mm * 2
        else:
            step_mm /= 2
    return best

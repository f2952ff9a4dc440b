"""The smallest square of further cloth with which all pieces can be laid, found by search.

Never by area alone: a square is told only with a lay on it. A smaller one may do, if the search
missed its lay.
"""

import itertools
from collections.abc import Sequence
from dataclasses import replace

from planning.coverage.problem import Outline, Panel, Placement, Problem, ProblemError
from planning.coverage.strip import strip_lay
from planning.coverage.stripes import Copy
from planning.coverage.trials import Trials
from planning.coverage.verdict import Help
from planning.coverage.verify import faults_of
from planning.coverage.wording import listed

EXTRA = "extra cloth"
STEP_MM = 10.0
LARGEST_STEPS = 150
FIRST_STEPS = (20, 40, 80, LARGEST_STEPS)


def help_by_extra_cloth(
    problem: Problem,
    known: Sequence[Placement],
    unplaced: Sequence[Copy],
    trials: Trials,
    share: float,
) -> Help | None:
    """A square, in whole centimetres, that was found to be enough; None if none was found in time.

    `known` is the best part of a lay and `unplaced` what it leaves over.
    """
    until = trials.deadline(share)
    found = _in_rows(problem, known, unplaced) or _at_first(problem, trials, until)
    if not found:
        return None
    (high, lay), low = found, 0
    while high - low > 1:
        middle = (low + high) // 2
        questions = (high - low - 1).bit_length()
        asked = with_square(problem, STEP_MM * middle)
        smaller = trials.lay_of(asked, trials.seconds_to(until, questions))
        if smaller:
            high, lay = middle, smaller
        else:
            low = middle
    return _help(problem, STEP_MM * high, lay)


def with_square(problem: Problem, side_mm: float) -> Problem:
    """The problem with a square of cloth more, its grain along two sides, open to every piece."""
    name = _free_name({panel.id for panel in problem.panels})
    garment = _free_name({panel.garment for panel in problem.panels})
    one_way = any(panel.one_way for panel in problem.panels)
    square = Panel(name, garment, _square(side_mm), one_way=one_way)
    pieces = tuple(
        replace(
            piece,
            panels=None if piece.panels is None else (*piece.panels, name),
            garments=None if piece.garments is None else (*piece.garments, garment),
        )
        for piece in problem.pieces
    )
    return replace(problem, panels=(*problem.panels, square), pieces=pieces)


def _square(side_mm: float) -> Outline:
    return ((0.0, 0.0), (side_mm, 0.0), (side_mm, side_mm), (0.0, side_mm))


def _free_name(taken: set[str]) -> str:
    names = (EXTRA if number == 1 else f"{EXTRA} {number}" for number in itertools.count(1))
    return next(name for name in names if name not in taken)


def _in_rows(
    problem: Problem, known: Sequence[Placement], unplaced: Sequence[Copy]
) -> tuple[int, tuple[Placement, ...]] | None:
    """The smallest square that holds in rows what a part of a lay leaves over; and the lay."""
    low, best = 0, None
    high = LARGEST_STEPS + 1
    while high - low > 1:
        middle = (low + high) // 2
        asked = with_square(problem, STEP_MM * middle)
        rows = _rows(asked, unplaced, STEP_MM * middle)
        if rows is not None and not faults_of(asked, (*known, *rows)):
            high, best = middle, (*known, *rows)
        else:
            low = middle
    return (high, best) if best else None


def _rows(asked: Problem, unplaced: Sequence[Copy], side_mm: float) -> tuple[Placement, ...] | None:
    """The copies laid in rows on the square, which is the last panel; None if it is too small."""
    square = asked.panels[-1]
    left = {piece: sorted(c for name, c in unplaced if name == piece.id) for piece in asked.pieces}
    pieces = [
        replace(piece, count=len(copies), mirrored=sum(map(piece.is_mirrored, copies)))
        for piece, copies in left.items()
        if copies
    ]
    try:
        rows = strip_lay(
            pieces,
            side_mm,
            asked.clearance_mm,
            asked.edge_margin_mm,
            square.one_way,
            seconds=0.0,
        )
    except ProblemError:
        return None
    if rows.length_mm > side_mm:
        return None
    copy_of = {(p.id, n): copy for p, copies in left.items() for n, copy in enumerate(copies)}
    return tuple(
        replace(place, panel=square.id, copy=copy_of[place.piece, place.copy])
        for place in rows.placements
    )


def _at_first(
    problem: Problem, trials: Trials, until: float
) -> tuple[int, tuple[Placement, ...]] | None:
    """A square that is enough, large as it may be, with its lay."""
    for number, steps in enumerate(FIRST_STEPS):
        seconds = trials.seconds_to(until, len(FIRST_STEPS) - number + 1)
        lay = trials.lay_of(with_square(problem, STEP_MM * steps), seconds)
        if lay:
            return steps, lay
    return None


def _help(problem: Problem, side_mm: float, lay: tuple[Placement, ...]) -> Help:
    known = {panel.id for panel in problem.panels}
    on_it = tuple(dict.fromkeys(place.piece for place in lay if place.panel not in known))
    text = (
        f"One more piece of cloth, {side_mm / 10:g} by {side_mm / 10:g} cm with its grain along a "
        f"side, would be enough: {listed(on_it)} can be cut from it and all else from what there "
        "is. No smaller square was found to do."
    )
    return Help("extra_cloth", text, on_it, (), {"side_mm": side_mm}, lay)

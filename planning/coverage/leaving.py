"""Which piece stands in the way: one copy left out, and all others can be laid.

The smallest piece first, since the less is missing the easier it is to find elsewhere.
"""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from shapely import Polygon

from planning.coverage.problem import Piece, Placement, Problem
from planning.coverage.rings import mended
from planning.coverage.stripes import Copy
from planning.coverage.trials import Trials
from planning.coverage.verdict import Help


def help_by_leaving_out(
    problem: Problem,
    known: Sequence[Placement],
    unplaced: Sequence[Copy],
    trials: Trials,
    share: float,
) -> Help | None:
    """The smallest piece of which one copy may be left out so that the rest covers; None if none
    was found in this share of the time.

    `known` is the best part of a lay and `unplaced` what it leaves over. Pieces that a rule names
    by copy are not tried.
    """
    lone = problem.piece(unplaced[0][0]) if len(unplaced) == 1 else None
    waiting, until = list(_removable(problem)), trials.deadline(share)
    while waiting:
        piece = waiting.pop(0)
        if lone and piece.id == lone.id:
            return _help(piece, tuple(known))
        part = without_one(problem, piece)
        if part:
            seconds = trials.seconds_to(until, len(waiting) + 1)
            lay = trials.lay_of(part, seconds)
            if lay:
                return _help(piece, lay)
    return _help(lone, tuple(known)) if lone else None


def without_one(problem: Problem, piece: Piece) -> Problem | None:
    """The problem with one copy of a piece less, an unmirrored one if there is; None if it was all.

    What else the rules say of the piece stays: they may not name its copies.
    """
    mirrored = min(piece.mirrored, piece.count - 1)
    fewer = replace(piece, count=piece.count - 1, mirrored=mirrored)
    pieces = tuple(fewer if each is piece else each for each in problem.pieces)
    pieces = tuple(each for each in pieces if each.count)
    groups = [tuple(n for n in g if n != piece.id or fewer.count) for g in problem.same_garment]
    same_garment = tuple(group for group in groups if len(group) > 1)
    return replace(problem, pieces=pieces, same_garment=same_garment) if pieces else None


def _removable(problem: Problem) -> Iterator[Piece]:
    """The pieces no rule names by copy, the smallest first."""
    named = {lock.piece for lock in problem.locked} | {pin.piece for pin in problem.pin}
    named |= {spot.piece for match in problem.match for spot in (match.a, match.b)}
    free = [piece for piece in problem.pieces if piece.id not in named]
    yield from sorted(free, key=lambda piece: Polygon(mended(piece.outline)).area)


def _help(piece: Piece, lay: tuple[Placement, ...]) -> Help:
    area = float(Polygon(mended(piece.outline)).area)
    text = (
        f"Without one {piece.id} all other pieces can be laid. Cut that one from other cloth, or "
        "in two parts with a seam."
    )
    return Help("leave_out", text, (piece.id,), (), {"area_mm2": area}, lay)

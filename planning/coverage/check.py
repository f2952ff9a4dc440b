"""Is the cloth enough? The one question of this room, answered within a time limit.

A lay that is already known is looked at first, then the proofs that no lay can exist run beside the
race. Only a verified lay is *covers*, only a proof is *cannot*; all else is *undecided*.
"""

import time
from collections.abc import Callable, Sequence
from dataclasses import replace

from planning.coverage.board import Board
from planning.coverage.chance import chance_it_holds
from planning.coverage.engine import engine_name
from planning.coverage.looking import locked_lay, look
from planning.coverage.problem import Placement, Problem
from planning.coverage.prove import Prover, locked_proof
from planning.coverage.repair import repaired
from planning.coverage.sound import refuse_unsound
from planning.coverage.spare import spare_of
from planning.coverage.steady import steadied
from planning.coverage.verdict import Progress, Proof, Spare, Verdict, Word

RESERVE_SECONDS = 0.1  # for the last verification and the spare
CHANCE_SECONDS = 0.5  # left over, or the chance is not asked for
SAMPLES = 100
REPAIR_SHARE = 0.25  # of the time, for a known lay that no longer holds
REPAIR_SECONDS = 3.0


def check(
    problem: Problem,
    *,
    seconds: float = 10.0,
    seed: int = 0,
    known_lay: Sequence[Placement] | None = None,
    progress: Callable[[Progress], None] | None = None,
    stop: Callable[[], bool] | None = None,
    steady_seconds: float = 0.0,
) -> Verdict:
    """The verdict on a problem, in at most `seconds` (and half a second).

    Raises ProblemError for a problem that is not sound. A `known_lay` that still holds is kept; a
    whole one that does not is repaired before a search anew.
    `progress` is told how far the best lay has come; `stop` is asked several times a second, and
    ends the check when it answers true. With `steady_seconds` a lay that was found is followed by
    a look for one that stands further from the edges, within the same time limit.
    """
    started = time.monotonic()
    refuse_unsound(problem)
    board = Board(problem)
    deadline = started + seconds - RESERVE_SECONDS

    def going_on(stage: str) -> bool:
        if progress:
            at = time.monotonic() - started
            progress(Progress(len(board.best), len(problem.copies()), at, stage))
        return not (stop and stop())

    proof: Proof | None = None
    notes: tuple[str, ...] = ()
    if known_lay is not None:
        _take_up(board, known_lay, seconds, seed, lambda: not going_on("lay"))
    if not board.is_full:
        proof = locked_proof(problem, locked_lay(problem))
    if not board.is_full and not proof:
        prover = Prover(problem, locked_lay(problem))
        notes = look(board, prover, deadline, seed, lambda: going_on("lay"))
        proof = prover.proof
    if board.is_full and steady_seconds > 0:
        until = min(deadline, time.monotonic() + steady_seconds)
        board.best = steadied(problem, board.best, until, seed, lambda: going_on("steady"))
    word: Word = "covers" if board.is_full else "cannot" if proof else "undecided"
    return Verdict(
        verdict=word,
        placements=board.best,
        unplaced=board.unplaced(),
        proof=proof if word == "cannot" else None,
        spare=_spare(problem, board.best, deadline) if board.is_full else None,
        seconds=time.monotonic() - started,
        seed=seed,
        engine=engine_name(),
        notes=notes,
    )


def _take_up(
    board: Board,
    known_lay: Sequence[Placement],
    seconds: float,
    seed: int,
    is_over: Callable[[], bool],
) -> None:
    """Offer a lay that is known, repaired if it was whole and holds no more."""
    board.offer(known_lay)
    if not board.is_full and len(known_lay) >= len(board.problem.copies()):
        share = min(REPAIR_SHARE * seconds, REPAIR_SECONDS)
        board.offer(repaired(board.problem, known_lay, share, seed=seed, stop=is_over) or ())


def _spare(problem: Problem, lay: Sequence[Placement], deadline: float) -> Spare:
    """What the lay would still stand, with the chance that it holds where there is time for it."""
    spare = spare_of(problem, lay)
    if deadline - time.monotonic() < CHANCE_SECONDS:
        return spare
    return replace(spare, chance=chance_it_holds(problem, lay, samples=SAMPLES))

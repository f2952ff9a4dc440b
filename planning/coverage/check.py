"""Is the cloth enough? The one question of this room, answered within a time limit.

A lay that is already known is looked at first, then the proofs that no lay can exist, then the
race. Only a verified lay is *covers*, only a proof is *cannot*; all else is *undecided*.
"""

import time
from collections.abc import Callable, Sequence

from planning.coverage.board import Board
from planning.coverage.engine import engine_name
from planning.coverage.prepare import items_of, sheets_of
from planning.coverage.problem import Placement, Problem, ProblemError
from planning.coverage.prove import Prover
from planning.coverage.search import Search
from planning.coverage.sound import refuse_unsound
from planning.coverage.spare import spare_of
from planning.coverage.verdict import Progress, Proof, Verdict, Word
from planning.coverage.verify import faults_of
from planning.coverage.whole import Whole

RESERVE_SECONDS = 0.1  # for the last verification and the spare


def check(
    problem: Problem,
    *,
    seconds: float = 10.0,
    seed: int = 0,
    known_lay: Sequence[Placement] | None = None,
    progress: Callable[[Progress], None] | None = None,
    stop: Callable[[], bool] | None = None,
) -> Verdict:
    """The verdict on a problem, in at most `seconds` (and half a second).

    Raises ProblemError for a problem that is not sound. A `known_lay` that still holds is kept.
    `progress` is told how far the best lay has come; `stop` is asked several times a second, and
    ends the check as undecided when it answers true.
    """
    started = time.monotonic()
    refuse_unsound(problem)
    refuse_not_understood(problem)
    board = Board(problem)
    if known_lay is not None and not faults_of(problem, known_lay):
        board.offer(known_lay)
    proof: Proof | None = None
    notes: tuple[str, ...] = ()
    if not board.is_full:
        sheets = [sheet for panel in problem.panels for sheet in sheets_of(problem, panel)]
        items = items_of(problem, [(piece, range(piece.count)) for piece in problem.pieces])

        def go_on() -> bool:
            if progress:
                at = time.monotonic() - started
                progress(Progress(len(board.best), len(problem.copies()), at, "lay"))
            return not (stop and stop())

        deadline = started + seconds - RESERVE_SECONDS
        with Search(board, [Whole(sheets, items, one_way=False)], deadline) as search:
            prover = Prover(problem)
            search.run(go_on, prover)
            proof = prover.proof
        notes = tuple(search.notes)
    word: Word = "covers" if board.is_full else "cannot" if proof else "undecided"
    return Verdict(
        verdict=word,
        placements=board.best,
        unplaced=board.unplaced(),
        proof=proof,
        spare=spare_of(problem, board.best) if board.is_full else None,
        seconds=time.monotonic() - started,
        seed=seed,
        engine=engine_name(),
        notes=notes,
    )


def refuse_not_understood(problem: Problem) -> None:
    """Raise ProblemError for a rule that the search cannot keep yet."""
    for name in ("same_garment", "match", "pin", "locked"):
        if getattr(problem, name):
            raise ProblemError(f"{name}: this rule is not understood yet")

"""Which rule, loosened, would let the cloth be enough: each is tried alone, never two at once.

No gap or margin is made smaller than a millimetre. What is told is what the lay that was found
needs, not what was tried.
"""

import time
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from functools import partial

from planning.coverage.problem import Piece, Placement, Problem
from planning.coverage.repair import slid_clear
from planning.coverage.trials import Trials
from planning.coverage.verdict import Help
from planning.coverage.verify import faults_of
from planning.coverage.wording import listed

LEAST_MM = 1.0
STEP_MM = 0.5
TOLERANCE_DEG = 3.0
LEANS_DEG = (1.5, -1.5, 3.0, -3.0)
SLIDE_SECONDS = 0.3

type Lay = tuple[Placement, ...]


@dataclass(frozen=True, slots=True)
class _Looser:
    """A problem with one rule loosened, and what to say if a lay of it is found."""

    problem: Problem
    told: Callable[[Lay], Help]


def helps_by_loosening(
    problem: Problem, known: Sequence[Placement], trials: Trials, share: float
) -> Iterator[Help]:
    """What each rule would do if it were loosened, so far as a lay was found in this share of the
    time."""
    waiting, until = list(_looser(problem)), trials.deadline(share)
    told: set[str] = set()
    while waiting:
        looser = waiting.pop(0)
        lay = trials.lay_of(looser.problem, trials.seconds_to(until, len(waiting) + 1), known)
        if lay:
            found = looser.told(lay)
            if found.text not in told:
                told.add(found.text)
                yield found


def _looser(problem: Problem) -> Iterator[_Looser]:
    yield from _half_turns(problem)
    yield from _lists(problem)
    yield from _one_garment(problem)
    yield from _lengths(problem)
    yield from _grain(problem)


def _half_turns(problem: Problem) -> Iterator[_Looser]:
    if any(panel.one_way for panel in problem.panels):
        panels = tuple(replace(panel, one_way=False) for panel in problem.panels)
        yield _Looser(replace(problem, panels=panels), partial(_half_turns_help, problem))


def _half_turns_help(problem: Problem, lay: Lay) -> Help:
    faults = faults_of(problem, lay)
    pieces, panels = _named(f.piece for f in faults), _named(f.panel for f in faults)
    text = (
        f"All pieces can be laid if {listed(pieces)} may lie upside down on {listed(panels)}. Look "
        "at that cloth both ways up, and stroke it, before you allow it."
    )
    return Help("half_turns", text, pieces, panels, {}, lay)


def _lists(problem: Problem) -> Iterator[_Looser]:
    """Every piece that is bound to some cloth may come from any: all of them, then one by one.

    The lay of all may turn out to need the freedom of one piece only.
    """
    bound = [p.id for p in problem.pieces if p.panels is not None or p.garments is not None]
    freed = [bound, *([name] for name in bound if len(bound) > 1)]
    for names in freed if bound else ():
        pieces = tuple(_free(piece) if piece.id in names else piece for piece in problem.pieces)
        yield _Looser(replace(problem, pieces=pieces), partial(_list_help, problem))


def _free(piece: Piece) -> Piece:
    return replace(piece, panels=None, garments=None)


def _list_help(problem: Problem, lay: Lay) -> Help:
    strays = [
        place
        for place in lay
        if not problem.may_come_from(problem.piece(place.piece), problem.panel(place.panel))
    ]
    pieces, panels = _named(p.piece for p in strays), _named(p.panel for p in strays)
    text = (
        f"All pieces can be laid if {listed(pieces)} may be cut from other cloth than you have "
        f"named, that is from {listed(panels)}."
    )
    return Help("list", text, pieces, panels, {}, lay)


def _one_garment(problem: Problem) -> Iterator[_Looser]:
    for number, group in enumerate(problem.same_garment):
        kept = (*problem.same_garment[:number], *problem.same_garment[number + 1 :])
        yield _Looser(replace(problem, same_garment=kept), partial(_one_garment_help, group))


def _one_garment_help(group: tuple[str, ...], lay: Lay) -> Help:
    text = f"All pieces can be laid if {listed(group)} need not come from one garment."
    return Help("same_garment", text, group, (), {}, lay)


def _lengths(problem: Problem) -> Iterator[_Looser]:
    """The gap between pieces and the margins, each as small as may be."""
    has_flaws = any(panel.flaws for panel in problem.panels)
    if problem.clearance_mm > LEAST_MM:
        yield _Looser(_with_clearance(problem, LEAST_MM), partial(_clearance_help, problem))
    if problem.edge_margin_mm > LEAST_MM:
        yield _Looser(_with_edge_margin(problem, LEAST_MM), partial(_edge_margin_help, problem))
    if problem.flaw_margin_mm > LEAST_MM and has_flaws:
        yield _Looser(_with_flaw_margin(problem, LEAST_MM), partial(_flaw_margin_help, problem))


def _with_clearance(problem: Problem, mm: float) -> Problem:
    return replace(problem, clearance_mm=mm)


def _with_edge_margin(problem: Problem, mm: float) -> Problem:
    return replace(problem, edge_margin_mm=mm)


def _with_flaw_margin(problem: Problem, mm: float) -> Problem:
    return replace(problem, flaw_margin_mm=mm)


def _clearance_help(problem: Problem, lay: Lay) -> Help:
    was = problem.clearance_mm
    mm, lay = _kept(was, partial(_with_clearance, problem), lay)
    text = f"All pieces can be laid with {mm:g} mm instead of {was:g} mm between them."
    return Help("clearance", text, (), (), {"clearance_mm": mm}, lay)


def _edge_margin_help(problem: Problem, lay: Lay) -> Help:
    was = problem.edge_margin_mm
    mm, lay = _kept(was, partial(_with_edge_margin, problem), lay)
    text = f"All pieces can be laid with {mm:g} mm instead of {was:g} mm kept from the edges."
    return Help("edge_margin", text, (), (), {"edge_margin_mm": mm}, lay)


def _flaw_margin_help(problem: Problem, lay: Lay) -> Help:
    was = problem.flaw_margin_mm
    mm, lay = _kept(was, partial(_with_flaw_margin, problem), lay)
    text = f"All pieces can be laid with {mm:g} mm instead of {was:g} mm kept from flaws."
    return Help("flaw_margin", text, (), (), {"flaw_margin_mm": mm}, lay)


def _kept(was: float, with_mm: Callable[[float], Problem], lay: Lay) -> tuple[float, Lay]:
    """The largest length below the old one, in halves of a millimetre, that the lay keeps once
    its pieces are slid; with the lay."""
    best, mm = lay, LEAST_MM
    while mm + STEP_MM < was:
        until = time.monotonic() + SLIDE_SECONDS
        slid = slid_clear(with_mm(mm + STEP_MM), best, until)
        if faults_of(with_mm(mm + STEP_MM), slid):
            break
        best, mm = slid, mm + STEP_MM
    return mm, best


def _grain(problem: Problem) -> Iterator[_Looser]:
    """Pieces a little off the grain: as the search likes, then all leaning alike.

    The search seldom turns a piece by a degree or two of its own accord; leaning all pieces at once
    finds the panel that leans itself.
    """
    strict = {p.id for p in problem.pieces if p.grain_tolerance_deg < TOLERANCE_DEG}
    if not strict:
        return
    told = partial(_grain_help, problem)
    looser = [
        replace(piece, grain_tolerance_deg=max(piece.grain_tolerance_deg, TOLERANCE_DEG))
        for piece in problem.pieces
    ]
    yield _Looser(replace(problem, pieces=tuple(looser)), told)
    for lean_deg in LEANS_DEG:
        leaning = [
            replace(piece, grain_deg=piece.grain_deg + lean_deg) if piece.id in strict else piece
            for piece in problem.pieces
        ]
        yield _Looser(replace(problem, pieces=tuple(leaning)), told)


def _grain_help(problem: Problem, lay: Lay) -> Help:
    off = _named(fault.piece for fault in faults_of(problem, lay))
    text = (
        f"All pieces can be laid if {listed(off)} may lie up to {TOLERANCE_DEG:g} degrees off the "
        "grain."
    )
    return Help("grain_tolerance", text, off, (), {"grain_tolerance_deg": TOLERANCE_DEG}, lay)


def _named(names: Iterable[str]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(names))

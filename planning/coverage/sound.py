"""Whether a problem can be worked on at all: sound rings, known names, counts that add up.

Each refusal is one line that names the place as it stands in a cover-1 file, so that it serves a
file's author and a page alike. Whether the cloth is enough is not asked here.
"""

from collections.abc import Iterable

from planning.coverage.problem import Panel, Piece, Problem, ProblemError
from planning.coverage.rings import fault_of_ring

MOST_PANELS = 200
MOST_COPIES = 500
MOST_FLAWS = 500
LARGEST_MARGIN_MM = 1000.0


def refuse_unsound(problem: Problem) -> None:
    """Raise ProblemError at the first thing that cannot be worked with."""
    _check_numbers(problem)
    _check_panels(problem)
    _check_pieces(problem)
    _check_rules(problem)


def _check_numbers(problem: Problem) -> None:
    if not problem.panels:
        raise ProblemError("panels: there is no panel to cut from")
    if not problem.pieces:
        raise ProblemError("pieces: there is no piece to cut")
    if len(problem.panels) > MOST_PANELS:
        raise ProblemError(f"panels: {len(problem.panels)} are given; at most {MOST_PANELS}")
    copies = sum(piece.count for piece in problem.pieces)
    if copies > MOST_COPIES:
        raise ProblemError(f"pieces: {copies} copies are asked for; at most {MOST_COPIES}")
    for name in ("clearance_mm", "edge_margin_mm", "flaw_margin_mm"):
        if not 0 <= getattr(problem, name) <= LARGEST_MARGIN_MM:
            raise ProblemError(f"{name}: it must lie between 0 and {LARGEST_MARGIN_MM:g}")


def _check_panels(problem: Problem) -> None:
    _refuse_twice((panel.id for panel in problem.panels), "panels")
    for index, panel in enumerate(problem.panels):
        _check_panel(panel, f"panels[{index}]")


def _check_panel(panel: Panel, place: str) -> None:
    _refuse_ring(panel.outline, f"{place}.outline")
    if len(panel.flaws) > MOST_FLAWS:
        raise ProblemError(f"{place}.flaws: {len(panel.flaws)} are given; at most {MOST_FLAWS}")
    for number, flaw in enumerate(panel.flaws):
        _refuse_ring(flaw, f"{place}.flaws[{number}]")


def _check_pieces(problem: Problem) -> None:
    _refuse_twice((piece.id for piece in problem.pieces), "pieces")
    panels = {panel.id for panel in problem.panels}
    garments = {panel.garment for panel in problem.panels}
    for index, piece in enumerate(problem.pieces):
        place = f"pieces[{index}]"
        _check_piece(piece, place)
        _refuse_unknown(piece.panels or (), panels, f"{place}.panels", "panel")
        _refuse_unknown(piece.garments or (), garments, f"{place}.garments", "garment")


def _check_piece(piece: Piece, place: str) -> None:
    _refuse_ring(piece.outline, f"{place}.outline")
    if piece.count < 1:
        raise ProblemError(f"{place}.count: at least one copy is needed")
    if not 0 <= piece.mirrored <= piece.count:
        raise ProblemError(
            f"{place}.mirrored: {piece.mirrored} mirrored copies of {piece.count} cannot be"
        )
    if not 0 <= piece.grain_tolerance_deg <= 180:
        raise ProblemError(f"{place}.grain_tolerance_deg: it must lie between 0 and 180")


def _check_rules(problem: Problem) -> None:
    pieces = {piece.id for piece in problem.pieces}
    for index, group in enumerate(problem.same_garment):
        _refuse_unknown(group, pieces, f"same_garment[{index}]", "piece")
    for index, match in enumerate(problem.match):
        for side, spot in (("a", match.a), ("b", match.b)):
            _refuse_no_copy(problem, spot.piece, spot.copy, f"match[{index}].{side}")
        if (match.a.piece, match.a.copy) == (match.b.piece, match.b.copy):
            raise ProblemError(f"match[{index}]: a copy cannot be matched with itself")
    for index, pin in enumerate(problem.pin):
        _refuse_no_copy(problem, pin.piece, pin.copy, f"pin[{index}]")
        _refuse_no_panel(problem, pin.piece, pin.panel, f"pin[{index}].panel")
    _check_locked(problem)


def _check_locked(problem: Problem) -> None:
    _refuse_twice(((lock.piece, lock.copy) for lock in problem.locked), "locked")
    for index, lock in enumerate(problem.locked):
        place = f"locked[{index}]"
        _refuse_no_copy(problem, lock.piece, lock.copy, place)
        _refuse_no_panel(problem, lock.piece, lock.panel, f"{place}.panel")
        if lock.mirrored != problem.piece(lock.piece).is_mirrored(lock.copy):
            side = "is" if not lock.mirrored else "is not"
            raise ProblemError(f"{place}.mirrored: copy {lock.copy} {side} a mirror image")


def _refuse_ring(outline: tuple[tuple[float, float], ...], place: str) -> None:
    fault = fault_of_ring(outline)
    if fault:
        raise ProblemError(f"{place}: {fault}")


def _refuse_twice(names: Iterable[object], place: str) -> None:
    seen: set[object] = set()
    for index, name in enumerate(names):
        if name in seen:
            shown = name if isinstance(name, str) else " copy ".join(map(str, name))  # type: ignore[call-overload]
            raise ProblemError(f"{place}[{index}]: '{shown}' stands here twice")
        seen.add(name)


def _refuse_unknown(names: Iterable[str], known: set[str], place: str, what: str) -> None:
    for name in names:
        if name not in known:
            raise ProblemError(f"{place}: there is no {what} '{name}'")


def _refuse_no_copy(problem: Problem, piece_id: str, copy: int, place: str) -> None:
    _refuse_unknown((piece_id,), {piece.id for piece in problem.pieces}, place, "piece")
    count = problem.piece(piece_id).count
    if not 0 <= copy < count:
        raise ProblemError(
            f"{place}: there is no copy {copy} of '{piece_id}' (copies 0-{count - 1})"
        )


def _refuse_no_panel(problem: Problem, piece_id: str, panel_id: str, place: str) -> None:
    _refuse_unknown((panel_id,), {panel.id for panel in problem.panels}, place, "panel")
    if not problem.may_come_from(problem.piece(piece_id), problem.panel(panel_id)):
        raise ProblemError(f"{place}: '{piece_id}' may not be cut from '{panel_id}'")

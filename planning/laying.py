"""Lays as rows, and back: what was found, what was laid by hand, what the next search begins from.

*Covers* is stored only beside a whole lay that was found without fault here, whoever laid it. A
part of a lay is never replaced by a lesser one.
"""

from collections.abc import Sequence
from dataclasses import replace
from typing import Any

from django.db import transaction
from django.db.models import Prefetch
from django.utils import timezone

from inventory.models import Garment, Panel
from planning.coverage.cover_file import verdict_to_json
from planning.coverage.fingerprint import fingerprint
from planning.coverage.problem import Placement as CoverPlacement
from planning.coverage.problem import Problem
from planning.coverage.spare import spare_of
from planning.coverage.together import shrunk_lay
from planning.coverage.verdict import Verdict
from planning.coverage.verify import Fault, faults_of
from planning.models import Lay, Placement, SizeCheck
from planning.problems import Cloth

BUSY = (SizeCheck.State.WAITING, SizeCheck.State.RUNNING)
type Spare = dict[str, Any]


class BusyError(Exception):
    """The size is being checked, and two hands may not lay the same cloth."""


def rows_of(row: SizeCheck, cloth: Cloth) -> tuple[dict[str, Panel], list[CoverPlacement]]:
    """The lay as it was kept, with the panels it needs by name, those that are gone included."""
    lay = Lay.objects.filter(check_row=row).first()
    placements = list(lay.placements.all()) if lay else []
    panels, names = dict(cloth.rows), {panel.pk: name for name, panel in cloth.rows.items()}
    gone = {placement.panel_id for placement in placements} - set(names)
    if gone:
        garments = Prefetch("garment", queryset=Garment.objects.with_cloth())
        known = Panel.objects.of(row.workshop).filter(pk__in=gone)
        for panel in known.prefetch_related("flaws", "details", garments):
            names[panel.pk] = f"{panel.garment.tag} {panel.name}, no longer in the cloth"
            panels[names[panel.pk]] = panel
    return panels, [_placement(each, names[each.panel_id]) for each in placements]


def known_lay(row: SizeCheck, cloth: Cloth) -> list[CoverPlacement] | None:
    """The lay found before, whole or in part, for the engine to begin from; None if there is none.

    What lies on a panel that is no longer in the cloth is left out. What else no longer holds, the
    engine leaves out; so a part of a lay never gets worse.
    """
    lay = Lay.objects.filter(check_row=row).first()
    if lay is None:
        return None
    laid = [(cloth.name_of(placement.panel_id), placement) for placement in lay.placements.all()]
    return [_placement(placement, panel) for panel, placement in laid if panel]


def lay_after_larger(
    row: SizeCheck, cloth: Cloth, problem: Problem
) -> tuple[CoverPlacement, ...] | None:
    """A whole lay of this size after that of the next larger size that has one; verified."""
    larger = SizeCheck.objects.filter(
        keepsake=row.keepsake,
        size__pattern=row.size.pattern_id,
        size__height_mm__gt=row.size.height_mm,
        lay__is_whole=True,
    )
    nearest = larger.order_by("size__height_mm").first()
    return shrunk_lay(problem, known_lay(nearest, cloth) or []) if nearest else None


def _placement(row: Placement, panel: str) -> CoverPlacement:
    return CoverPlacement(
        piece=row.piece_name,
        copy=row.copy,
        panel=panel,
        mirrored=row.is_mirrored,
        rotation_deg=row.rotation_deg,
        translation=(row.x_mm, row.y_mm),
        outline=tuple((x, y) for x, y in row.outline_mm),
    )


def better_of(problem: Problem, verdict: Verdict, kept: Sequence[CoverPlacement] | None) -> Verdict:
    """The verdict, with the earlier part of a lay where a search that broke off placed fewer."""
    if verdict.verdict == "covers" or len(kept or ()) <= len(verdict.placements):
        return verdict
    if not kept or faults_of(problem, kept, whole=False):
        return verdict
    return replace(verdict, placements=tuple(kept), unplaced=unplaced(problem, kept))


def unplaced(problem: Problem, lay: Sequence[CoverPlacement]) -> tuple[tuple[str, int], ...]:
    """The copies that a lay leaves over."""
    laid = {(placement.piece, placement.copy) for placement in lay}
    return tuple(
        (piece.id, copy) for piece, copy in problem.copies() if (piece.id, copy) not in laid
    )


@transaction.atomic
def keep_verdict(
    row: SizeCheck, cloth: Cloth, problem: Problem, verdict: Verdict, *, message: str, waits: bool
) -> None:
    """Save the outcome and its lay together, unless a newer run has begun.

    Where panels wait for their stripes, nothing is proven impossible.
    """
    outcome = verdict.verdict
    if outcome == "covers" and faults_of(problem, verdict.placements):
        outcome = "undecided"  # a lay that fails here is no lay, whatever the engine said
    if outcome == "cannot" and waits:
        outcome = "undecided"
    answer = verdict_to_json(verdict)
    saved = SizeCheck.objects.filter(pk=row.pk, run=row.run, state=SizeCheck.State.RUNNING).update(
        state=SizeCheck.State.DONE,
        finished_at=timezone.now(),
        outcome=outcome,
        fingerprint=fingerprint(problem),
        proof=answer["proof"] if outcome == "cannot" else None,
        unplaced=answer["unplaced"],
        spare=answer["spare"],
        helps=[],
        placed=len(verdict.placements),
        seconds=verdict.seconds,
        engine=verdict.engine,
        message=message[:300],
    )
    if saved:
        keep_lay(row, cloth, problem, verdict.placements, is_whole=outcome == "covers")


def keep_lay(
    row: SizeCheck,
    cloth: Cloth,
    problem: Problem,
    placements: Sequence[CoverPlacement],
    *,
    is_whole: bool,
) -> None:
    """Put a lay in the place of the one before. Call it where the row's outcome is saved too."""
    Lay.objects.filter(check_row=row).delete()
    if not placements:
        return
    lay = Lay.objects.create(
        workshop=row.workshop,
        check_row=row,
        fingerprint=fingerprint(problem),
        is_whole=is_whole,
    )
    Placement.objects.bulk_create(
        Placement(
            workshop=row.workshop,
            lay=lay,
            panel=cloth.rows[placement.panel],
            **_fields(placement),
        )
        for placement in placements
    )


def _fields(placement: CoverPlacement) -> dict[str, Any]:
    return {
        "piece_name": placement.piece,
        "copy": placement.copy,
        "is_mirrored": placement.mirrored,
        "rotation_deg": placement.rotation_deg,
        "x_mm": placement.translation[0],
        "y_mm": placement.translation[1],
        "outline_mm": [list(point) for point in placement.outline],
    }


@transaction.atomic
def keep_by_hand(
    row: SizeCheck, cloth: Cloth, problem: Problem, placements: Sequence[CoverPlacement]
) -> list[Fault]:
    """Save a lay made by hand if it keeps every rule; what is wrong with it if it does not.

    A whole lay makes the size covered, whatever was known before. A part of one changes no verdict
    that is of today. Raises BusyError while the size is being checked.
    """
    faults = faults_of(problem, placements, whole=False)
    if faults:
        return faults
    left_over = unplaced(problem, placements)
    saved = SizeCheck.objects.filter(pk=row.pk, run=row.run).exclude(state__in=BUSY)
    if not saved.update(
        state=SizeCheck.State.DONE,
        finished_at=timezone.now(),
        unplaced=[{"piece": piece, "copy": copy} for piece, copy in left_over],
        placed=len(placements),
        pieces=len(problem.copies()),
        message="",
        **_outcome_by_hand(row, problem, placements, is_whole=not left_over),
    ):
        raise BusyError
    keep_lay(row, cloth, problem, placements, is_whole=not left_over)
    return []


def _outcome_by_hand(
    row: SizeCheck, problem: Problem, placements: Sequence[CoverPlacement], *, is_whole: bool
) -> dict[str, Any]:
    today = fingerprint(problem)
    fields: dict[str, Any] = {"fingerprint": today, "engine": "", "seconds": None}
    if is_whole:
        spare = spare_json(problem, placements)
        return {**fields, "outcome": "covers", "proof": None, "spare": spare, "helps": []}
    if row.fingerprint == today and row.outcome in ("cannot", "undecided"):
        return {}
    return {**fields, "outcome": "undecided", "proof": None, "spare": None, "helps": []}


def spare_json(problem: Problem, placements: Sequence[CoverPlacement]) -> Spare:
    """What a whole lay uses and still stands, as a row keeps it."""
    verdict = Verdict(
        "covers", tuple(placements), (), None, spare_of(problem, placements), 0.0, 0, ""
    )
    spare: Spare = verdict_to_json(verdict)["spare"]  # type: ignore[assignment]  # a whole lay's
    return spare


@transaction.atomic
def hold_on(row: SizeCheck, cloth: Cloth, problem: Problem) -> bool:
    """Carry a yes over to changed rules that its lay keeps as it lies; whether it is carried."""
    kept = known_lay(row, cloth)
    if row.outcome != SizeCheck.Outcome.COVERS or not kept or faults_of(problem, kept):
        return False
    today = fingerprint(problem)
    rows = SizeCheck.objects.filter(pk=row.pk, run=row.run).exclude(state__in=BUSY)
    if not rows.update(fingerprint=today, spare=spare_json(problem, kept)):
        return False
    Lay.objects.filter(check_row=row).update(fingerprint=today)
    return True

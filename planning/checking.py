"""Runs a size check and keeps what it finds.

The check's own row is the truth about its state. A run is named by its number: a newer run, a stop
or a crash makes the older one give up, and nothing of it is saved. A lay that was found is kept
while it still holds, and *covers* is stored only with a lay that was verified here once more.
"""

import logging
import time
from collections.abc import Sequence
from datetime import datetime, timedelta
from functools import partial
from typing import Any

from django.db import transaction
from django.db.models import F, Q
from django.utils import timezone

from planning.coverage.check import check
from planning.coverage.cover_file import verdict_to_json
from planning.coverage.fingerprint import fingerprint
from planning.coverage.problem import Placement as CoverPlacement
from planning.coverage.problem import Problem, ProblemError
from planning.coverage.verdict import Progress, Verdict
from planning.coverage.verify import faults_of
from planning.models import (
    SILENT_AFTER,
    Keepsake,
    Lay,
    PatternSize,
    Placement,
    SizeCheck,
)
from planning.problems import Cloth, cloth_of, problem_of

log = logging.getLogger(__name__)
BUDGET_S = 20.0
LONG_BUDGET_S = 120.0
TELL_EVERY_S = 0.5
STEADY_S = 3.0  # spent on a lay that stands further from the edges
FORGOTTEN_AFTER = timedelta(minutes=5)
BUSY = (SizeCheck.State.WAITING, SizeCheck.State.RUNNING)


@transaction.atomic
def ask(keepsake: Keepsake, sizes: Sequence[PatternSize], budget_s: float = BUDGET_S) -> None:
    """Ask for the sizes to be checked, smallest first. A check that is under way starts again."""
    for size in sorted(sizes, key=lambda size: size.height_mm):
        row, _ = SizeCheck.objects.get_or_create(
            workshop=keepsake.workshop,
            keepsake=keepsake,
            size=size,
            defaults={"asked_at": timezone.now()},
        )
        _queue(row, budget_s)


def _queue(row: SizeCheck, budget_s: float) -> None:
    """Give the row a new run and hand it to the worker once that is saved."""
    SizeCheck.objects.filter(pk=row.pk).update(
        state=SizeCheck.State.WAITING,
        run=F("run") + 1,
        asked_at=timezone.now(),
        started_at=None,
        heard_at=None,
        budget_s=budget_s,
        placed=0,
        message="",
    )
    row.refresh_from_db(fields=["run"])
    _enqueue(row)


def _enqueue(row: SizeCheck) -> None:
    from planning.tasks import run_check  # the task imports this module

    transaction.on_commit(partial(run_check.enqueue, row.pk, row.run))


def take_up_again(now: datetime) -> int:
    """Queue every check whose worker died. Safe to call at any time; says how many it took up.

    A running check that has been silent starts afresh under a new number. One that has waited very
    long is offered again under its own number, in case the worker that took it never began.
    """
    count = 0
    silent = Q(state=SizeCheck.State.RUNNING, heard_at__lt=now - SILENT_AFTER)
    for row in SizeCheck.objects.filter(silent):
        with transaction.atomic():
            # only one of several callers wins the row
            won = SizeCheck.objects.filter(silent, pk=row.pk, run=row.run)
            if won.update(state=SizeCheck.State.WAITING):
                _queue(row, row.budget_s)
                count += 1
    forgotten = Q(state=SizeCheck.State.WAITING, asked_at__lt=now - FORGOTTEN_AFTER)
    for row in SizeCheck.objects.filter(forgotten):
        with transaction.atomic():
            if SizeCheck.objects.filter(forgotten, pk=row.pk, run=row.run).update(asked_at=now):
                _enqueue(row)
                count += 1
    return count


def stop(keepsake: Keepsake) -> int:
    """Stop every check of a keepsake that is waiting or running; what was found before stays."""
    return (
        SizeCheck.objects.of(keepsake.workshop)
        .filter(keepsake=keepsake, state__in=BUSY)
        .update(
            state=SizeCheck.State.STOPPED,
            run=F("run") + 1,
            finished_at=timezone.now(),
            message="Stopped by hand.",
        )
    )


def run(pk: int, number: int) -> None:
    """Do one run of one check, if it is still wanted."""
    claimed = SizeCheck.objects.filter(pk=pk, run=number, state=SizeCheck.State.WAITING).update(
        state=SizeCheck.State.RUNNING, started_at=timezone.now(), heard_at=timezone.now()
    )
    if not claimed:
        return
    row = SizeCheck.objects.select_related(
        "keepsake__workshop", "keepsake__collection", "size"
    ).get(pk=pk)
    try:
        _run(row)
    except ProblemError as error:
        _give_up(row, f"This cannot be checked as it is: {error}")
    except Exception:
        log.exception("check %s failed", pk)
        _give_up(row, "The check broke off through a fault of the program. Try again.")


def _run(row: SizeCheck) -> None:
    cloth = cloth_of(row.keepsake)
    if not cloth.panels:
        _give_up(row, "No panel is measured yet, so there is nothing to check.")
        return
    problem = problem_of(row.keepsake, row.size, cloth)
    SizeCheck.objects.filter(pk=row.pk, run=row.run).update(pieces=len(problem.copies()))
    listener = _Listener(row)
    kept = known_lay(row, cloth)
    holds = kept is not None and not faults_of(problem, kept)
    verdict = check(
        problem,
        seconds=row.budget_s,
        known_lay=kept,
        progress=listener.progress,
        stop=listener.is_over,
        steady_seconds=0 if holds else STEADY_S,  # a lay she may cut by is not moved
    )
    _keep(row, cloth, problem, verdict)


class _Listener:
    """Tells the row how far the search has come, and the search whether it is still wanted."""

    def __init__(self, row: SizeCheck) -> None:
        self.rows = SizeCheck.objects.filter(pk=row.pk, run=row.run, state=SizeCheck.State.RUNNING)
        self.told = self.asked = 0.0
        self.over = False

    def progress(self, progress: Progress) -> None:
        now = time.monotonic()
        if now - self.told >= TELL_EVERY_S:
            self.told = now
            self.over = not self.rows.update(placed=progress.placed, heard_at=timezone.now())

    def is_over(self) -> bool:
        return self.over


def known_lay(row: SizeCheck, cloth: Cloth) -> list[CoverPlacement] | None:
    """The lay found before, whole or in part, for the engine to begin from; None if there is none.

    What of it no longer holds, the engine leaves out; so a part of a lay never gets worse.
    """
    lay = Lay.objects.filter(check_row=row).first()
    if lay is None:
        return None
    return [
        CoverPlacement(
            piece=p.piece_name,
            copy=p.copy,
            panel=cloth.name_of(p.panel_id),
            mirrored=p.is_mirrored,
            rotation_deg=p.rotation_deg,
            translation=(p.x_mm, p.y_mm),
            outline=tuple((x, y) for x, y in p.outline_mm),
        )
        for p in lay.placements.all()
    ]


@transaction.atomic
def _keep(row: SizeCheck, cloth: Cloth, problem: Problem, verdict: Verdict) -> None:
    """Save the outcome and its lay together, unless a newer run has begun."""
    outcome = verdict.verdict
    if outcome == "covers" and faults_of(problem, verdict.placements):
        outcome = "undecided"  # a lay that fails here is no lay, whatever the engine said
    answer = verdict_to_json(verdict)
    saved = SizeCheck.objects.filter(pk=row.pk, run=row.run, state=SizeCheck.State.RUNNING).update(
        state=SizeCheck.State.DONE,
        finished_at=timezone.now(),
        outcome=outcome,
        fingerprint=fingerprint(problem),
        proof=answer["proof"],
        unplaced=answer["unplaced"],
        spare=answer["spare"],
        placed=len(verdict.placements),
        seconds=verdict.seconds,
        engine=verdict.engine,
        message=" ".join(verdict.notes)[:300],
    )
    if saved:
        _keep_lay(row, cloth, problem, verdict, is_whole=outcome == "covers")


def _keep_lay(
    row: SizeCheck, cloth: Cloth, problem: Problem, verdict: Verdict, *, is_whole: bool
) -> None:
    Lay.objects.filter(check_row=row).delete()
    if not verdict.placements:
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
        for placement in verdict.placements
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


def _give_up(row: SizeCheck, words: str) -> None:
    SizeCheck.objects.filter(pk=row.pk, run=row.run).update(
        state=SizeCheck.State.STOPPED, finished_at=timezone.now(), message=words[:300]
    )


def is_current(row: SizeCheck, problem: Problem) -> bool:
    """Whether the verdict is about the cloth, pattern and rules as they are now."""
    return row.fingerprint == fingerprint(problem)

"""Asks for size checks and runs them, one at a time, until each has its answer.

The check's own row is the truth about its state. A run is named by its number: a newer run, a stop
or a crash makes the older one give up, and nothing of it is saved. What is found is kept by
``planning.laying``.
"""

import logging
from collections.abc import Callable, Sequence
from datetime import datetime, timedelta
from functools import partial

from django.db import transaction
from django.db.models import F, Q
from django.utils import timezone

from planning.coverage.check import check
from planning.coverage.fingerprint import fingerprint
from planning.coverage.problem import Problem, ProblemError
from planning.coverage.verify import faults_of
from planning.further import find_better, find_edges, find_helps
from planning.lay_rules import rules_for
from planning.laying import BUSY, better_of, keep_verdict, known_lay, lay_after_larger
from planning.listening import Listener
from planning.models import SILENT_AFTER, Keepsake, PatternSize, SizeCheck
from planning.problems import Cloth, cloth_of, nothing_to_cut, problem_of, too_much

log = logging.getLogger(__name__)
BUDGET_S = 20.0
LONG_BUDGET_S = 120.0
FURTHER_BUDGET_S = 60.0  # for what would help, or a lay nearer to her wishes
STEADY_S = 3.0  # spent on a lay that stands further from the edges
FORGOTTEN_AFTER = timedelta(minutes=5)
FURTHER: dict[str, Callable[[SizeCheck, Cloth, Problem, Listener], None]] = {
    SizeCheck.Task.HELPS: find_helps,
    SizeCheck.Task.BETTER: find_better,
    SizeCheck.Task.EDGES: find_edges,
}
BROKE_OFF = "ended early"  # how the coverage room says that a search did not use its time


@transaction.atomic
def ask(
    keepsake: Keepsake,
    sizes: Sequence[PatternSize],
    budget_s: float = BUDGET_S,
    task: str = SizeCheck.Task.VERDICT,
) -> None:
    """Ask for the sizes to be checked, largest first: its lay is a start for the next smaller.

    A check that is under way starts again.
    """
    for size in sorted(sizes, key=lambda size: -size.height_mm):
        row, _ = SizeCheck.objects.get_or_create(
            workshop=keepsake.workshop,
            keepsake=keepsake,
            size=size,
            defaults={"asked_at": timezone.now()},
        )
        _queue(row, budget_s, task)


def _queue(row: SizeCheck, budget_s: float, task: str) -> None:
    """Give the row a new run and hand it to the worker once that is saved."""
    SizeCheck.objects.filter(pk=row.pk).update(
        state=SizeCheck.State.WAITING,
        run=F("run") + 1,
        asked_at=timezone.now(),
        started_at=None,
        heard_at=None,
        budget_s=budget_s,
        task=task,
        placed=F("placed") if task != SizeCheck.Task.VERDICT else 0,
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
                _queue(row, row.budget_s, row.task)
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
        _give_up(row, nothing_to_cut(row.keepsake))
        return
    rules = rules_for(row.keepsake, row.size, cloth.rows)
    too_large = too_much(row.keepsake, row.size, cloth)
    for remark in [too_large, *rules.stops] if too_large else rules.stops:
        _give_up(row, remark.words)
        return
    problem = problem_of(row.keepsake, row.size, cloth, rules)
    if row.task == SizeCheck.Task.VERDICT:
        _check(row, cloth, problem, waits=rules.waits)
    elif is_current(row, problem):
        listener = Listener(row, tells_placed=False)
        FURTHER[row.task](row, cloth, problem, listener)
    else:
        _give_up(row, "The cloth, the pattern or the rules have changed. Check the size again.")


def _check(row: SizeCheck, cloth: Cloth, problem: Problem, *, waits: bool) -> None:
    SizeCheck.objects.filter(pk=row.pk, run=row.run).update(pieces=len(problem.copies()))
    listener = Listener(row)
    kept = known_lay(row, cloth)
    holds = kept is not None and not faults_of(problem, kept)
    verdict = check(
        problem,
        seconds=row.budget_s,
        known_lay=kept if holds else lay_after_larger(row, cloth, problem) or kept,
        progress=listener.progress,
        stop=listener.is_over,
        steady_seconds=0 if holds else STEADY_S,  # a lay she may cut by is not moved
    )
    verdict = better_of(problem, verdict, kept)
    message = _sentences(verdict.notes, is_waiting=waits and verdict.verdict != "covers")
    keep_verdict(row, cloth, problem, verdict, message=message, waits=waits)


def _sentences(notes: Sequence[str], *, is_waiting: bool) -> str:
    """What went wrong on the way, in words for the maker."""
    words = []
    if is_waiting:
        words.append("Some panels wait for their stripes to be measured, and were not counted.")
    if any(BROKE_OFF in note for note in notes):
        words.append(
            "A search broke off before its time, so less was tried than there was time for. "
            "Check again."
        )
    rest = [note for note in dict.fromkeys(notes) if BROKE_OFF not in note]
    words += [f"{note[:1].upper()}{note[1:].rstrip('.')}." for note in rest]
    return " ".join(words)


def _give_up(row: SizeCheck, words: str) -> None:
    SizeCheck.objects.filter(pk=row.pk, run=row.run).update(
        state=SizeCheck.State.STOPPED, finished_at=timezone.now(), message=words[:300]
    )


def is_current(row: SizeCheck, problem: Problem) -> bool:
    """Whether the verdict is about the cloth, pattern and rules as they are now."""
    return row.fingerprint == fingerprint(problem)

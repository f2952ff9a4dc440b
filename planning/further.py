"""Looks further than the verdict: what would help where it is no yes, a nearer lay where it is.

Neither changes a verdict but to make it better, and then only by a lay that was verified here.
"""

import time
from typing import Any

from django.db import transaction

from planning.coverage.check import check
from planning.coverage.choosing import LEAST_GAIN, Wishes, better_lay, cost_of, on_panels
from planning.coverage.cover_file import verdict_to_json
from planning.coverage.helps import helps_for
from planning.coverage.problem import Placement, Problem
from planning.coverage.robust import robustness
from planning.coverage.steady import steadied
from planning.coverage.verdict import Help, Verdict, Word
from planning.coverage.verify import faults_of
from planning.laying import keep_by_hand, keep_lay, known_lay, unplaced
from planning.listening import Listener
from planning.models import Keepsake, SizeCheck
from planning.problems import Cloth

WORDS: dict[str, Word] = {"cannot": "cannot", "undecided": "undecided"}
NOTHING_HELPS = (
    "Nothing was found that would be enough by itself: no looser rule, no piece from elsewhere, "
    "no extra cloth. Try a smaller size, or measure more of the clothes."
)
NO_NEARER = "No lay nearer to your wishes was found in the time there was. This one stays."
FURTHER = "A lay that stands further from the edges was found."
NO_FURTHER = "No lay that stands further from the edges was found. This one stays."
LEAST_GAIN_MM = 0.1
FULL, HALF = 1.0, 0.5
STEADY_S = 3.0  # for a lay found, to stand further from the edges; and to measure how far


def find_helps(row: SizeCheck, cloth: Cloth, problem: Problem, listener: Listener) -> None:
    """Keep what would let the cloth be enough, in sentences."""
    kept = known_lay(row, cloth) or []
    word = WORDS.get(row.outcome)
    known = word and Verdict(
        word, tuple(kept), unplaced(problem, kept), None, None, 0.0, row.run, row.engine
    )
    helps = helps_for(
        problem,
        row.budget_s,
        verdict=known or None,
        stop=listener.is_over,
        progress=listener.progress,
    )
    if _keep_found(row, cloth, problem, helps):
        return
    told = [_help_json(each) for each in helps] or [{"kind": "none", "text": NOTHING_HELPS}]
    listener.rows.update(state=SizeCheck.State.DONE, helps=told, message="")


def _help_json(each: Help) -> dict[str, Any]:
    return {
        "kind": each.kind,
        "text": each.text,
        "pieces": list(each.pieces),
        "panels": list(each.panels),
        "figures": dict(each.figures),
    }


@transaction.atomic
def _keep_found(row: SizeCheck, cloth: Cloth, problem: Problem, helps: tuple[Help, ...]) -> bool:
    """Where the longer look found a lay of the size as it is, that lay is the answer."""
    lays = [each.lay for each in helps if each.kind == "found" and each.lay]
    if not lays or faults_of(problem, lays[0]):
        return False
    running = SizeCheck.objects.filter(pk=row.pk, run=row.run, state=SizeCheck.State.RUNNING)
    if running.update(state=SizeCheck.State.DONE):
        keep_by_hand(row, cloth, problem, lays[0])
        SizeCheck.objects.filter(pk=row.pk).update(engine=row.engine, seconds=row.budget_s)
    return True


def wishes_of(keepsake: Keepsake, problem: Problem) -> Wishes:
    """What the maker ticked, as weights; garments without cloth need no keeping."""
    here = {panel.garment for panel in problem.panels}
    return Wishes(
        few_garments=FULL if keepsake.wants_few_garments else 0.0,
        keep_whole=tuple(g.tag for g in keepsake.kept_whole.all() if g.tag in here),
        leftover=HALF if keepsake.wants_leftover else 0.0,
        same_cloth=HALF if keepsake.wants_same_cloth else 0.0,
    )


def find_better(row: SizeCheck, cloth: Cloth, problem: Problem, listener: Listener) -> None:
    """Keep a lay that is nearer to the maker's wishes, if one is found; else the one there was."""
    kept = known_lay(row, cloth) or []
    if unplaced(problem, kept) or faults_of(problem, kept):
        listener.rows.update(state=SizeCheck.State.DONE, message="")
        return
    wishes = wishes_of(row.keepsake, problem)
    lay = better_lay(
        problem,
        kept,
        wishes,
        row.budget_s,
        stop=listener.is_over,
        progress=listener.progress,
    )
    if list(lay) == kept or faults_of(problem, lay):
        listener.rows.update(state=SizeCheck.State.DONE, message=NO_NEARER)
        return
    lay = _steadier(problem, lay, wishes, listener)
    # a check that begins from a lay that holds only measures how far it stands from the edge
    verdict = check(problem, seconds=STEADY_S, known_lay=lay)
    with transaction.atomic():
        words = "A lay nearer to your wishes was found."
        spare = verdict_to_json(verdict)["spare"]
        if listener.rows.update(state=SizeCheck.State.DONE, spare=spare, message=words):
            keep_lay(row, cloth, problem, lay, is_whole=True)


def find_edges(row: SizeCheck, cloth: Cloth, problem: Problem, listener: Listener) -> None:
    """Say how far the cloth could be off with all laid anew; keep the lay that stands furthest."""
    kept = known_lay(row, cloth) or []
    if unplaced(problem, kept) or faults_of(problem, kept):
        listener.rows.update(state=SizeCheck.State.DONE, message="")
        return

    def is_over() -> bool:
        listener.tell()
        return listener.is_over()

    found = robustness(problem, kept, row.budget_s, stop=is_over)
    is_further = found.resolved_inset_mm > found.same_inset_mm + LEAST_GAIN_MM
    lay = found.lay if is_further and not faults_of(problem, found.lay) else tuple(kept)
    spare = verdict_to_json(check(problem, seconds=STEADY_S, known_lay=lay))["spare"]
    anew = {"inset_mm": found.resolved_inset_mm, "shrink_pct": found.resolved_shrink_pct}
    words = FURTHER if lay is found.lay and is_further else NO_FURTHER
    with transaction.atomic():
        fields = {"spare": {**spare, "anew": anew}, "message": words}  # type: ignore[dict-item]
        if listener.rows.update(state=SizeCheck.State.DONE, **fields):
            keep_lay(row, cloth, problem, lay, is_whole=True)


def _steadier(
    problem: Problem, lay: tuple[Placement, ...], wishes: Wishes, listener: Listener
) -> tuple[Placement, ...]:
    """The lay farther from its edges, on the same panels, where that costs no wish."""
    narrow = on_panels(problem, {place.panel for place in lay})
    if narrow is None:
        return lay
    until = time.monotonic() + STEADY_S

    def go_on() -> bool:
        listener.tell()
        return not listener.is_over()

    found = steadied(narrow, lay, until, 0, go_on)
    if faults_of(problem, found):
        return lay
    dearer = cost_of(problem, found, wishes) - cost_of(problem, lay, wishes)
    return found if dearer <= LEAST_GAIN else lay

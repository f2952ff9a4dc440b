"""Seam allowance and edge finish, by how badly a cut edge frays.

The tested fray grade rules; without a test the construction's usual grade does; with
neither, the edge is treated as one that frays badly.
"""

from inventory.advice.edge_facts import (
    ALLOWANCE_BY_FRAY_MM,
    CHOOSE_BY_WEAVE,
    FINISH_BY_FRAY,
    FORM_ALLOWANCE_MM,
    FORM_FINISH,
    INTERFACING_STOPS_FRAY,
    TOY_ALLOWANCE_MM,
    UNKNOWN_FRAY,
    WEAK_ALLOWANCE_MM,
    EdgeFinish,
)
from inventory.advice.facts import Fact
from inventory.advice.known import KnownCloth
from inventory.advice.parts import Finding, Reason, reason
from inventory.advice.recommendations import EdgeAdvice, InterfacingAdvice


def edge_of(cloth: KnownCloth, interfacing: InterfacingAdvice) -> Finding[EdgeAdvice]:
    """The edge finish and seam allowance for ``cloth``."""
    grade, grade_reason = _grade(cloth)
    finish = _finish(cloth, grade)
    allowance = _allowance(cloth, grade)
    reasons = [
        reason(finish.value.why, finish),
        grade_reason,
        reason(f"A seam allowance of {allowance.value:g} mm.", allowance),
        reason("Weave, weight and use decide how an edge is finished.", CHOOSE_BY_WEAVE),
    ]
    if interfacing.attach == "fusible":
        words = "The fused layer also slows fraying."
        reasons.append(reason(words, INTERFACING_STOPS_FRAY))
    part = EdgeAdvice(
        text=f"Cut with a seam allowance of {allowance.value:g} mm and {finish.value.how}.",
        reasons=tuple(reasons),
        finish=finish.value.finish,
        allowance_mm=allowance.value,
        fray=cloth.fray,
    )
    return Finding(part)


def _grade(cloth: KnownCloth) -> tuple[int, Reason]:
    if cloth.fray is not None:
        words = f"The rub test gave fray grade {cloth.fray}."
        return cloth.fray, reason(words, _TESTED)
    if cloth.construction is not None:
        fact = cloth.construction.fray
        words = f"Not tested; cloth of this kind is usually grade {fact.value}."
        return fact.value, reason(words, fact)
    words = "How it frays is not known, so it is treated as bad until the rub test is done."
    return UNKNOWN_FRAY.value, reason(words, UNKNOWN_FRAY)


_TESTED: Fact[bool] = Fact(True, "the maker's own test", UNKNOWN_FRAY.certainty)


def _finish(cloth: KnownCloth, grade: int) -> Fact[EdgeFinish]:
    return FORM_FINISH.get(cloth.form) or FINISH_BY_FRAY[grade]


def _allowance(cloth: KnownCloth, grade: int) -> Fact[float]:
    asked = [TOY_ALLOWANCE_MM]
    if grade in ALLOWANCE_BY_FRAY_MM:
        asked.append(ALLOWANCE_BY_FRAY_MM[grade])
    if cloth.form in FORM_ALLOWANCE_MM:
        asked.append(FORM_ALLOWANCE_MM[cloth.form])
    if cloth.frailty >= 3:
        asked.append(WEAK_ALLOWANCE_MM)
    return max(asked, key=lambda fact: fact.value)

"""How to dry a garment after washing: flat, on a line, or tumbled.

Tumble drying is only ever allowed by a label; the table stops at the line. Cloth that
is not washed is not dried.
"""

from inventory.advice.dry_facts import (
    CREAM_UNTUMBLED,
    DRY_WHY,
    FORM_DRY,
    FORM_DRY_WHY,
    FRAIL_DRY,
    NEVER_TUMBLED,
    NOT_WETTED,
    SHADE_FOR_PROTEIN,
    UNKNOWN_DRY,
)
from inventory.advice.facts import Fact
from inventory.advice.fibre_kinds import Family
from inventory.advice.known import KnownCloth
from inventory.advice.label_limits import TUMBLE_C, DryLimit, dry_limit, label_fact
from inventory.advice.methods import DRY_ORDER, DryMethod, WashMethod, gentler_dry
from inventory.advice.parts import Finding, Notice, Reason, notice, reason
from inventory.advice.recommendations import DryAdvice

_TUMBLED = (DryMethod.TUMBLE, DryMethod.TUMBLE_LOW)


def dry_of(cloth: KnownCloth, wash: WashMethod) -> Finding[DryAdvice]:
    """The drying advice for ``cloth`` washed by ``wash``."""
    if wash in (WashMethod.NONE, WashMethod.PROFESSIONAL):
        return Finding(_undried(wash))
    limit, reasons = _table(cloth)
    limit, reasons, conflicts = _by_label(cloth, limit, reasons)
    if cloth.frailty >= 2 and DRY_ORDER[limit.method] > DRY_ORDER[DryMethod.FLAT]:
        limit = DryLimit(DryMethod.FLAT, limit.shade, limit.drip)
        reasons = (reason("Tender cloth tears when it hangs wet.", FRAIL_DRY), *reasons)
    if wash is WashMethod.SPOT:
        limit = DryLimit(DryMethod.FLAT, limit.shade)
    tumble_c = TUMBLE_C[limit.method].value if limit.method in _TUMBLED else None
    part = DryAdvice(
        text=_sentence(limit, wash, tumble_c),
        reasons=reasons,
        method=limit.method,
        max_c=tumble_c,
        shade=limit.shade,
        drip=limit.drip,
    )
    return Finding(part, must_not=_must_not(cloth, limit), conflicts=conflicts)


def _undried(wash: WashMethod) -> DryAdvice:
    text = "There is nothing to dry, because it is not washed."
    if wash is WashMethod.PROFESSIONAL:
        text = "It comes back dry; hang it in moving air for several days."
    return DryAdvice(
        text=text,
        reasons=(reason("Cloth that is not wetted needs no drying.", NOT_WETTED),),
        method=DryMethod.NONE,
        max_c=None,
        shade=False,
        drip=False,
    )


def _table(cloth: KnownCloth) -> tuple[DryLimit, tuple[Reason, ...]]:
    method, why = DryMethod.FLAT, reason("The fibre is not known.", UNKNOWN_DRY)
    if cloth.fibres:
        fibre = cloth.most_delicate(lambda each: DRY_ORDER[each.dry.value])
        method = fibre.dry.value
        why = reason(f"{fibre.label} {DRY_WHY[method]}.", fibre.dry)
    reasons: tuple[Reason, ...] = (why,)
    form = FORM_DRY.get(cloth.form)
    if form is not None and gentler_dry(method, form.value) is not method:
        method = form.value
        reasons = (reason(FORM_DRY_WHY[cloth.form], form), why)
    shade = not cloth.fibres or cloth.in_family(Family.PROTEIN) or cloth.has("polyamide")
    if shade:
        reasons = (*reasons, reason("Sun yellows and weakens it.", SHADE_FOR_PROTEIN))
    return DryLimit(method, shade=shade), reasons


def _by_label(
    cloth: KnownCloth, table: DryLimit, reasons: tuple[Reason, ...]
) -> tuple[DryLimit, tuple[Reason, ...], tuple[Notice, ...]]:
    mark = cloth.label.dry
    if mark is None:
        return table, reasons, ()
    said = label_fact(dry_limit(mark), cloth.label.edition)
    if mark == "no-tumble":
        why = reason("The label forbids tumble drying.", said)
        return table, (why, *reasons), ()
    never = _never_tumbled(cloth)
    if said.value.method in _TUMBLED and never is not None:
        return table, reasons, (_unbelievable(never),)
    why = reason(f"The label says {_LABEL_WORDS[said.value.method]}.", said)
    shade = said.value.shade or table.shade
    return DryLimit(said.value.method, shade, said.value.drip), (why, *reasons), ()


_LABEL_WORDS = {
    DryMethod.FLAT: "to dry flat",
    DryMethod.LINE: "to dry on a line",
    DryMethod.TUMBLE_LOW: "that a cool tumble dryer is allowed",
    DryMethod.TUMBLE: "that a tumble dryer is allowed",
}


def _never_tumbled(cloth: KnownCloth) -> tuple[str, Fact[bool]] | None:
    if "cream" in cloth.conditions:
        return "cloth with skin cream in it", CREAM_UNTUMBLED
    for family, fact in NEVER_TUMBLED["family"].items():
        for fibre in cloth.fibres:
            if fibre.family == family:
                return fibre.label.lower(), fact
    for name, fact in NEVER_TUMBLED["fibre"].items():
        if cloth.has(name):
            return name, fact
    fact_of_form = NEVER_TUMBLED["construction"].get(cloth.form)
    if fact_of_form is None:
        return None
    return f"{cloth.form.replace('-', ' ')} cloth", fact_of_form


def _unbelievable(never: tuple[str, Fact[bool]]) -> Notice:
    what, fact = never
    return notice(
        f"The label allows a tumble dryer, which {what} is not known to stand; it is dried "
        "without one.",
        "A label that cannot be true may belong to another garment or have been misread.",
        fact,
    )


def _must_not(cloth: KnownCloth, limit: DryLimit) -> tuple[Notice, ...]:
    never = _never_tumbled(cloth)
    if never is None or limit.method in _TUMBLED:
        return ()
    return (
        notice(
            "Do not tumble dry it.",
            f"Heat and tumbling do lasting harm to {never[0]}.",
            never[1],
        ),
    )


def _sentence(limit: DryLimit, wash: WashMethod, tumble_c: int | None) -> str:
    if wash is WashMethod.SPOT:
        return "Blot the damp place with a towel and leave it flat to dry by itself."
    place = "out of the sun" if limit.shade else "away from heat"
    if limit.method in _TUMBLED:
        return (
            f"You may tumble dry it at up to {tumble_c} °C, as the label allows, but a line "
            "is kinder."
        )
    if limit.method is DryMethod.LINE:
        start = "Hang it dripping" if limit.drip else "Pull it into shape and hang it"
        return f"{start} on a line, {place}."
    start = "Leave it dripping on a rack" if limit.drip else "Roll it in a towel, ease it"
    return f"{start}{'' if limit.drip else ' into shape'} and dry it flat, {place}."

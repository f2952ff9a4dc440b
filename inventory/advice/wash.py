"""Whether and how to wash a garment before it is cut.

The most delicate fibre and the construction set the table's limit; the label beats the
table unless it cannot be true; the condition beats the label; the giver's wish beats
them all. Every step down is given as a reason, the deciding one first.
"""

from dataclasses import dataclass

from inventory.advice.facts import Fact
from inventory.advice.known import KnownCloth
from inventory.advice.label_limits import label_fact, wash_limit
from inventory.advice.methods import WASH_ORDER, WashLimit, WashMethod, gentler_wash
from inventory.advice.parts import Finding, Notice, Reason, notice, reason
from inventory.advice.recommendations import WashAdvice
from inventory.advice.wash_facts import (
    BLOOD_HOTTEST,
    COLOUR_TEST,
    FORM_LABEL_WASH,
    FORM_WASH,
    FORM_WASH_WHY,
    FRAILTY_WASH,
    FRAILTY_WASH_WHY,
    GIVERS_WISH,
    HIDE_LABEL_WASH,
    HIDE_UNWASHED,
    MOST_DELICATE_GOVERNS,
    NEVER_WASHED,
    ONLY_DRY_CLEANED,
    RUBBER_PRINT_WASH,
    TOO_WEAK_TO_CLEAN,
    UNKNOWN_FIBRE_WASH,
)
from inventory.advice.wash_words import wash_sentence


@dataclass(frozen=True, slots=True)
class _Limit:
    method: WashMethod
    max_c: int | None
    reasons: tuple[Reason, ...]

    def lowered(self, method: WashMethod, max_c: int | None, why: Reason) -> "_Limit":
        """The gentler of this and another limit; the reason that lowered it leads."""
        gentler = gentler_wash(self.method, method)
        cooler = _cooler(self.max_c, max_c)
        if gentler is WashMethod.NONE:
            cooler = None
        if (gentler, cooler) == (self.method, self.max_c):
            return self
        return _Limit(gentler, cooler, (why, *self.reasons))


def wash_of(cloth: KnownCloth) -> Finding[WashAdvice]:
    """The washing advice for ``cloth``."""
    limit, conflicts = _label_layer(cloth, _table_layer(cloth))
    limit = _condition_layer(cloth, limit)
    limit = _wish_layer(cloth, _blood_layer(cloth, limit))
    is_wet = WASH_ORDER[limit.method] >= WASH_ORDER[WashMethod.SPOT]
    part = WashAdvice(
        text=wash_sentence(cloth, limit.method, limit.max_c),
        reasons=(*limit.reasons, reason(_COLOUR_TEST_WHY, COLOUR_TEST))
        if is_wet
        else limit.reasons,
        method=limit.method,
        max_c=limit.max_c,
        colour_test=is_wet,
        inside_out=is_wet and (cloth.form == "denim" or "rubber-print" in cloth.conditions),
    )
    return Finding(part, must_not=_must_not(cloth, limit), conflicts=conflicts)


_TOO_WEAK_WHY = "Weak cloth does not survive the turning drum of a dry cleaner."
_COLOUR_TEST_WHY = "A colour test comes before any wetting, because washing cannot be undone."


def _table_layer(cloth: KnownCloth) -> _Limit:
    if cloth.is_hide:
        why = reason("Water stiffens, stains and shrinks leather and skins.", HIDE_UNWASHED)
        return _Limit(WashMethod.NONE, None, (why,))
    if cloth.fibres:
        limit = _fibre_limit(cloth)
    else:
        why = reason("The fibre is not known, so the gentlest cleaning.", UNKNOWN_FIBRE_WASH)
        unknown = UNKNOWN_FIBRE_WASH.value
        limit = _Limit(unknown.method, unknown.max_c, (why,))
    form = FORM_WASH.get(cloth.form)
    if form is not None:
        why = reason(f"Whatever the fibre, {FORM_WASH_WHY[cloth.form]}.", form)
        limit = limit.lowered(form.value.method, form.value.max_c, why)
    if "rubber-print" in cloth.conditions:
        why = reason("Heat and rubbing crack a rubbery print.", RUBBER_PRINT_WASH)
        print_limit = RUBBER_PRINT_WASH.value
        limit = limit.lowered(print_limit.method, print_limit.max_c, why)
    return limit


def _fibre_limit(cloth: KnownCloth) -> _Limit:
    strictest = cloth.most_delicate(lambda fibre: WASH_ORDER[fibre.wash.value.method])
    coolest = cloth.most_delicate(lambda fibre: fibre.wash.value.max_c or 0)
    method, max_c = strictest.wash.value.method, coolest.wash.value.max_c
    heat = f" at no more than {max_c} °C" if max_c else ""
    why = reason(f"{strictest.label}: {_METHOD_WORDS[method]}{heat}.", strictest.wash)
    if len(cloth.fibres) == 1:
        return _Limit(method, max_c, (why,))
    governs = reason("In a blend the most delicate fibre governs.", MOST_DELICATE_GOVERNS)
    return _Limit(method, max_c, (why, governs))


_METHOD_WORDS = {
    WashMethod.NONE: "no washing",
    WashMethod.PROFESSIONAL: "a dry cleaner",
    WashMethod.SPOT: "dabbing only",
    WashMethod.HAND: "hand washing",
    WashMethod.MACHINE_VERY_MILD: "a very mild machine cycle",
    WashMethod.MACHINE_MILD: "a mild machine cycle",
    WashMethod.MACHINE: "machine washing",
}


def _label_layer(cloth: KnownCloth, table: _Limit) -> tuple[_Limit, tuple[Notice, ...]]:
    label = cloth.label
    professional = label.professional is not None and not label.professional.startswith("no")
    if label.wash is None:
        return (_dry_clean_only(table, cloth) if professional else table), ()
    said = label_fact(wash_limit(label.wash, label.edition), label.edition)
    limit = said.value
    if limit.method is WashMethod.NONE:
        method = WashMethod.PROFESSIONAL if professional else WashMethod.NONE
        why = reason(_no_wash_words(professional), said)
        return _Limit(method, None, (why,)), ()
    ceiling = _believable(cloth)
    if ceiling is not None and _is_rougher(limit, ceiling.value):
        return table, (_unbelievable(cloth, limit, ceiling),)
    why = reason(f"The label allows {_METHOD_WORDS[limit.method]} at up to {limit.max_c} °C.", said)
    return _Limit(limit.method, limit.max_c, (why,)), ()


def _no_wash_words(professional: bool) -> str:
    if professional:
        return "The label forbids washing and allows professional cleaning."
    return "The label forbids washing."


def _dry_clean_only(table: _Limit, cloth: KnownCloth) -> _Limit:
    why = reason(
        "The label names professional cleaning and says nothing of washing.",
        label_fact(ONLY_DRY_CLEANED.value, cloth.label.edition),
    )
    return table.lowered(WashMethod.PROFESSIONAL, None, why)


def _believable(cloth: KnownCloth) -> Fact[WashLimit] | None:
    """The roughest wash a label could mean for this cloth, or ``None`` if not known."""
    facts = [fibre.label_wash for fibre in cloth.fibres]
    if cloth.is_hide:
        facts.append(HIDE_LABEL_WASH)
    if cloth.form in FORM_LABEL_WASH:
        facts.append(FORM_LABEL_WASH[cloth.form])
    if not facts:
        return None
    return min(facts, key=lambda fact: (WASH_ORDER[fact.value.method], fact.value.max_c or 0))


def _is_rougher(one: WashLimit, other: WashLimit) -> bool:
    hotter = (one.max_c or 0) > (other.max_c or 0)
    return hotter or WASH_ORDER[one.method] > WASH_ORDER[other.method]


def _unbelievable(cloth: KnownCloth, said: WashLimit, ceiling: Fact[WashLimit]) -> Notice:
    frail = [fibre for fibre in cloth.fibres if fibre.label_wash == ceiling]
    what = frail[0].label.lower() if frail else "this cloth"
    return notice(
        f"The label allows {_METHOD_WORDS[said.method]} at {said.max_c} °C, which {what} "
        "is not known to stand; the gentler table is followed.",
        "A label that cannot be true may belong to another garment or have been misread.",
        ceiling,
    )


def _condition_layer(cloth: KnownCloth, limit: _Limit) -> _Limit:
    for condition, (words, fact) in NEVER_WASHED.items():
        if condition in cloth.conditions:
            limit = limit.lowered(WashMethod.NONE, None, reason(words, fact))
    if cloth.frailty == 3 and limit.method is WashMethod.PROFESSIONAL:
        return limit.lowered(WashMethod.NONE, None, reason(_TOO_WEAK_WHY, TOO_WEAK_TO_CLEAN))
    handling = FRAILTY_WASH.get(cloth.frailty)
    if handling is None:
        return limit
    why = reason(FRAILTY_WASH_WHY[cloth.frailty], handling)
    return limit.lowered(handling.value, limit.max_c, why)


def _blood_layer(cloth: KnownCloth, limit: _Limit) -> _Limit:
    if "blood" not in cloth.conditions or WASH_ORDER[limit.method] < WASH_ORDER[WashMethod.HAND]:
        return limit
    why = reason(
        "Blood calls for the hottest wash the cloth allows, with detergent and much water.",
        BLOOD_HOTTEST,
    )
    max_c = limit.max_c
    if cloth.label.wash is None and cloth.frailty < 3 and cloth.fibres:
        tops = [fibre.wash.value.top_c or 0 for fibre in cloth.fibres]
        form = FORM_WASH.get(cloth.form)
        tops += [form.value.top_c or 0] if form else []
        max_c = min(tops)
    return _Limit(limit.method, max_c, (why, *limit.reasons))


def _wish_layer(cloth: KnownCloth, limit: _Limit) -> _Limit:
    if not cloth.stays_unwashed:
        return limit
    words = "The giver wants the scent kept." if cloth.keep_scent else "The giver said so."
    return _Limit(WashMethod.NONE, None, (reason(words, GIVERS_WISH), *limit.reasons))


def _must_not(cloth: KnownCloth, limit: _Limit) -> tuple[Notice, ...]:
    if limit.method not in (WashMethod.NONE, WashMethod.PROFESSIONAL):
        return ()
    first = limit.reasons[0]
    wash = "Do not wash it or wet it."
    if cloth.keep_scent:
        wash = "Do not wash, air or spray it."
    return (Notice(text=wash, because=first.text, source=first.source, certainty=first.certainty),)


def _cooler(one: int | None, other: int | None) -> int | None:
    known = [each for each in (one, other) if each is not None]
    return min(known) if known else None

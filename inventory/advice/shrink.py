"""How much a cloth is expected to shrink before it is cut, along and across the grain.

A blend shrinks by the shares of its fibres. The answer is a range for the first wash;
measuring before and after washing always takes its place.
"""

from inventory.advice.dimensions import area_loss_pct
from inventory.advice.facts import Fact
from inventory.advice.fibre_kinds import Fibre
from inventory.advice.known import KnownCloth
from inventory.advice.methods import Shrink, WashMethod
from inventory.advice.parts import Finding, Reason, reason
from inventory.advice.recommendations import ShrinkAdvice
from inventory.advice.shrink_facts import (
    COTTON_FORMS,
    DRY_CLEANED_KNIT,
    DRY_CLEANED_WOVEN,
    EARLIER_WASHES,
    FELTED,
    HIDE,
    LEFT_ALONE,
    MEASURE_INSTEAD,
    SHARES_WEIGH,
    UNKNOWN_KNIT,
    UNKNOWN_WOVEN,
    UNWASHED,
)

SHARE_WORTH_NAMING_PCT = 5


def shrink_of(cloth: KnownCloth, wash: WashMethod, *, is_pressed: bool) -> Finding[ShrinkAdvice]:
    """The shrinkage to plan for when ``cloth`` is cleaned by ``wash`` before cutting."""
    shrink, reasons = _expected(cloth, wash, is_pressed=is_pressed)
    part = ShrinkAdvice(
        text=_sentence(shrink, wash),
        reasons=reasons,
        along_pct=shrink.along_pct,
        across_pct=shrink.across_pct,
        most_area_loss_pct=round(area_loss_pct(shrink.along_pct[1], shrink.across_pct[1]), 2),
    )
    return Finding(part)


def _expected(
    cloth: KnownCloth, wash: WashMethod, *, is_pressed: bool
) -> tuple[Shrink, tuple[Reason, ...]]:
    if cloth.is_hide:
        return HIDE.value, (reason("Leather and skins kept dry keep their size.", HIDE),)
    if wash is WashMethod.PROFESSIONAL:
        held = DRY_CLEANED_KNIT if cloth.is_knit else DRY_CLEANED_WOVEN
        most = f"{held.value.along_pct[1]:g} %"
        return held.value, (reason(f"Mills hold clothing cloth to about {most}.", held),)
    if wash is WashMethod.NONE and not is_pressed:
        return HIDE.value, (reason("Nothing is done to it that could shrink it.", LEFT_ALONE),)
    if wash in (WashMethod.NONE, WashMethod.SPOT):
        why = reason("It is not soaked; pressing and fusing alone may take a little.", UNWASHED)
        return UNWASHED.value, (why,)
    shrink, reasons = _washed(cloth)
    return shrink, (
        *reasons,
        reason("Cloth that was washed often has done most of its shrinking.", EARLIER_WASHES),
        reason("Marks measured before and after the wash tell the truth.", MEASURE_INSTEAD),
    )


def _washed(cloth: KnownCloth) -> tuple[Shrink, tuple[Reason, ...]]:
    if not cloth.shares:
        fact = UNKNOWN_KNIT if cloth.is_knit else UNKNOWN_WOVEN
        return fact.value, (reason("The fibre is not known; the usual plan is taken.", fact),)
    facts = [(fibre, share, _fibre_shrink(cloth, fibre)) for fibre, share in cloth.shares]
    blend = Shrink(
        _weighted([(fact.value.along_pct, share) for _, share, fact in facts]),
        _weighted([(fact.value.across_pct, share) for _, share, fact in facts]),
    )
    named = [each for each in facts if each[1] >= SHARE_WORTH_NAMING_PCT] or facts[:1]
    reasons = tuple(reason(_fibre_words(fibre, fact), fact) for fibre, _, fact in named)
    if len(facts) > 1:
        reasons = (*reasons, reason("Each fibre counts by its share.", SHARES_WEIGH))
    return blend, reasons


def _fibre_shrink(cloth: KnownCloth, fibre: Fibre) -> Fact[Shrink]:
    if fibre.felts.value and cloth.form == "felt":
        return FELTED
    if fibre.name == "cotton" and cloth.form in COTTON_FORMS:
        return COTTON_FORMS[cloth.form]
    return fibre.shrink_knit if cloth.is_knit else fibre.shrink_woven


def _fibre_words(fibre: Fibre, fact: Fact[Shrink]) -> str:
    along, across = _range(fact.value.along_pct), _range(fact.value.across_pct)
    return f"{fibre.label}: {along} along and {across} across at the first wash."


def _weighted(parts: list[tuple[tuple[float, float], float]]) -> tuple[float, float]:
    total = sum(share for _, share in parts)
    low = sum(pct[0] * share for pct, share in parts) / total
    high = sum(pct[1] * share for pct, share in parts) / total
    return (round(low, 1), round(high, 1))


def _range(pct: tuple[float, float]) -> str:
    return f"{pct[0]:g} %" if pct[0] == pct[1] else f"{pct[0]:g} to {pct[1]:g} %"


def _sentence(shrink: Shrink, wash: WashMethod) -> str:
    if shrink.along_pct[1] == 0 and shrink.across_pct[1] == 0:
        return "Plan for no shrinkage as long as it is kept dry and cool."
    loss = f"{_range(shrink.along_pct)} along the grain and {_range(shrink.across_pct)} across it"
    if shrink.along_pct == shrink.across_pct:
        loss = f"{_range(shrink.along_pct)} both along and across the grain"
    if wash in (WashMethod.NONE, WashMethod.SPOT):
        return f"Plan for a loss of {loss} from pressing and fusing, though it is not soaked."
    cleaned = "cleaning" if wash is WashMethod.PROFESSIONAL else "washing"
    return f"Plan for a loss of {loss}, until you have measured it before and after {cleaned}."

"""How hot a garment may be pressed, with steam or without, and how the iron is held.

The most delicate fibre and the construction set the table's limit. A label beats it
unless the label allows more dots than the cloth is known to stand. With one dot there
is no steam unless the label is known to be of the 2023 edition.
"""

from dataclasses import dataclass

from inventory.advice.facts import Fact
from inventory.advice.known import KnownCloth
from inventory.advice.label_limits import (
    NO_STEAM_AT_ONE_DOT,
    IronLimit,
    dots_ceiling_c,
    iron_limit,
    label_fact,
)
from inventory.advice.parts import Finding, Notice, Reason, notice, reason
from inventory.advice.press_facts import (
    FORM_PRESS,
    GREASE_UNPRESSED,
    MUSEUM_PIECES_UNPRESSED,
    NO_STEAM_FORMS,
    RUBBER_PRINT_UNPRESSED,
    SCENT_AND_HEAT,
    STAINS_SET,
    UNKNOWN_PRESS_DOTS,
    WEAK_CLOTH_UNPRESSED,
)
from inventory.advice.press_words import DOT_WORDS, press_sentence
from inventory.advice.recommendations import PressAdvice
from inventory.advice.wash_facts import MOST_DELICATE_GOVERNS

NO_IRON = IronLimit(0, None, False)
CLOTH_FORMS = frozenset({"satin", "lace", "chiffon", "brocade", "fleece", "felt", "sequinned"})


@dataclass(frozen=True, slots=True)
class _Heat:
    limit: IronLimit
    reasons: tuple[Reason, ...]


def press_of(cloth: KnownCloth) -> Finding[PressAdvice]:
    """The pressing advice for ``cloth``."""
    table = _form_layer(cloth, _fibre_layer(cloth))
    heat, conflicts = _label_layer(cloth, table)
    heat = _condition_layer(cloth, _steam_layer(cloth, heat))
    touch = _touch(cloth, heat.limit)
    press_cloth = touch == "press" and _wants_press_cloth(cloth)
    part = PressAdvice(
        text=press_sentence(cloth, heat.limit, touch, press_cloth),
        reasons=heat.reasons,
        max_c=heat.limit.max_c,
        dots=heat.limit.dots,
        steam=heat.limit.steam,
        touch=touch,
        press_cloth=press_cloth,
    )
    return Finding(part, must_not=_must_not(cloth, heat), conflicts=conflicts)


def _fibre_layer(cloth: KnownCloth) -> _Heat:
    if not cloth.fibres:
        why = reason("The fibre is not known, so the coolest setting.", UNKNOWN_PRESS_DOTS)
        dots = UNKNOWN_PRESS_DOTS.value
        return _Heat(IronLimit(dots, dots_ceiling_c(dots), False), (why,))
    fibre = cloth.most_delicate(lambda each: _fibre_ceiling_c(each.iron_dots, each.iron_found_c))
    if fibre.iron_dots.value == 0:
        return _Heat(
            NO_IRON, (reason(f"An iron is too hot for {fibre.label.lower()}.", fibre.iron_dots),)
        )
    max_c = _fibre_ceiling_c(fibre.iron_dots, fibre.iron_found_c)
    dots = fibre.iron_dots.value
    fact = fibre.iron_dots
    if fibre.iron_found_c is not None and fibre.iron_found_c.value == max_c:
        fact = fibre.iron_found_c
    reasons: tuple[Reason, ...] = (
        reason(f"{fibre.label}: {DOT_WORDS[dots]}, no hotter than {max_c} °C.", fact),
    )
    if len(cloth.fibres) > 1:
        words = "In a blend the most delicate fibre governs the heat."
        reasons = (*reasons, reason(words, MOST_DELICATE_GOVERNS))
    return _Heat(IronLimit(dots, max_c, dots > 1), reasons)


def _fibre_ceiling_c(dots: Fact[int], found_c: Fact[int] | None) -> int:
    if dots.value == 0:
        return 0
    ceiling_c = dots_ceiling_c(dots.value)
    return ceiling_c if found_c is None else min(ceiling_c, found_c.value)


def _form_layer(cloth: KnownCloth, heat: _Heat) -> _Heat:
    form = FORM_PRESS.get(cloth.form)
    if form is None or form.value.most_dots is None:
        return heat
    dots = form.value.most_dots
    if dots >= heat.limit.dots:
        return heat
    limit = IronLimit(dots, dots_ceiling_c(dots), False) if dots else NO_IRON
    return _Heat(limit, (reason(form.value.why, form), *heat.reasons))


def _is_imitation_hide(cloth: KnownCloth) -> bool:
    """Whether the construction is a hide's but the fibres are known to be textile."""
    return cloth.form in ("leather", "suede") and not cloth.is_hide


def _label_layer(cloth: KnownCloth, table: _Heat) -> tuple[_Heat, tuple[Notice, ...]]:
    mark = cloth.label.iron
    if mark is None:
        return table, ()
    said = label_fact(iron_limit(mark, cloth.label.edition), cloth.label.edition)
    limit = said.value
    if limit.dots == 0:
        return _Heat(NO_IRON, (reason("The label forbids ironing.", said),)), ()
    most = _believable_dots(cloth)
    if most is not None and limit.dots > most[0].value:
        return table, (_unbelievable(limit, *most),)
    why = reason(f"The label allows {DOT_WORDS[limit.dots]}: {limit.max_c} °C.", said)
    return _Heat(limit, (why,)), ()


def _believable_dots(cloth: KnownCloth) -> tuple[Fact[int], str] | None:
    """The most dots a label could mean for this cloth, and what sets it."""
    most = [(fibre.label_dots, fibre.label.lower()) for fibre in cloth.fibres]
    form = FORM_PRESS.get(cloth.form)
    if form is not None and form.value.most_dots is not None and not _is_imitation_hide(cloth):
        name = _form_words(cloth)
        most.append((Fact(form.value.most_dots, form.source, form.certainty), name))
    return min(most, key=lambda each: each[0].value) if most else None


def _form_words(cloth: KnownCloth) -> str:
    return cloth.construction.label.lower() if cloth.construction else "this cloth"


def _unbelievable(limit: IronLimit, most: Fact[int], what: str) -> Notice:
    return notice(
        f"The label allows {DOT_WORDS[limit.dots]} ({limit.max_c} °C), which {what} is not "
        "known to stand; the cooler table is followed.",
        "A label that cannot be true may belong to another garment or have been misread.",
        most,
    )


def _steam_layer(cloth: KnownCloth, heat: _Heat) -> _Heat:
    limit = heat.limit
    if limit.max_c is None:
        return heat
    if not limit.steam:
        words = "One dot means no steam unless the label says otherwise."
        return _Heat(limit, (*heat.reasons, reason(words, NO_STEAM_AT_ONE_DOT)))
    without = _Heat(IronLimit(limit.dots, limit.max_c, False), heat.reasons)
    for fibre in cloth.fibres:
        if not fibre.takes_steam.value:
            effect = "spots with water" if fibre.water_spots.value else "is spoilt by steam"
            words = f"{fibre.label} {effect}, so no steam."
            return _Heat(without.limit, (*heat.reasons, reason(words, fibre.takes_steam)))
    form = NO_STEAM_FORMS.get(cloth.form)
    if form is not None and cloth.construction is not None:
        words = f"{cloth.construction.label}: no steam."
        return _Heat(without.limit, (*heat.reasons, reason(words, form)))
    return heat


def _condition_layer(cloth: KnownCloth, heat: _Heat) -> _Heat:
    if "antique" in cloth.conditions:
        why = reason("A treasured or antique piece is not ironed.", MUSEUM_PIECES_UNPRESSED)
    elif cloth.frailty == 4:
        why = reason("Cloth this fragile cracks under an iron.", WEAK_CLOTH_UNPRESSED)
    elif "cream" in cloth.conditions:
        why = reason("Skin cream left in cloth can catch fire under an iron.", GREASE_UNPRESSED)
    else:
        return _kept_scent(cloth, heat)
    return _Heat(NO_IRON, (why, *heat.reasons))


def _kept_scent(cloth: KnownCloth, heat: _Heat) -> _Heat:
    if not cloth.keep_scent or not heat.limit.steam:
        return heat
    why = reason("Steam drives the scent out.", SCENT_AND_HEAT)
    return _Heat(IronLimit(heat.limit.dots, heat.limit.max_c, False), (*heat.reasons, why))


def _touch(cloth: KnownCloth, limit: IronLimit) -> str:
    if limit.max_c is None:
        return "none"
    form = FORM_PRESS.get(cloth.form)
    hovers = form is not None and form.value.touch == "hover"
    return "hover" if hovers and limit.steam else "press"


def _wants_press_cloth(cloth: KnownCloth) -> bool:
    if not cloth.fibres or cloth.frailty >= 2 or cloth.form in CLOTH_FORMS:
        return True
    return any(fibre.iron_dots.value < 3 for fibre in cloth.fibres)


def _must_not(cloth: KnownCloth, heat: _Heat) -> tuple[Notice, ...]:
    found = []
    if heat.limit.max_c is None:
        why = heat.reasons[0]
        found.append(
            Notice(
                text="Do not iron it.",
                because=why.text,
                source=why.source,
                certainty=why.certainty,
            )
        )
    elif "rubber-print" in cloth.conditions:
        found.append(
            notice(
                "Do not let the iron touch the rubbery print, from either side.",
                "The print melts, smears and sticks to the iron.",
                RUBBER_PRINT_UNPRESSED,
            )
        )
    if "blood" in cloth.conditions and heat.limit.max_c is not None:
        found.append(
            notice("Do not press over a stain.", "Heat sets a stain for good.", STAINS_SET)
        )
    return tuple(found)

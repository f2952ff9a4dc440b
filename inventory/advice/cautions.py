"""Which cautions and must-nots go with a cloth, beyond those of each recommendation."""

from collections.abc import Iterator

from inventory.advice import caution_facts as facts
from inventory.advice.fibre_kinds import Bleeding, Family, Fibre
from inventory.advice.known import KnownCloth
from inventory.advice.label_limits import label_fact
from inventory.advice.methods import WASH_ORDER, WashMethod
from inventory.advice.parts import Notice, notice
from inventory.advice.recommendations import WashAdvice
from inventory.advice.wash_facts import BLOOD_TARGET_C

QUICK_PILES = frozenset({"velvet", "corduroy", "towelling", "flannel", "fur-fabric"})
OPEN_FORMS = frozenset({"lace", "chiffon", "sweater-knit"})
TAILORING_FORMS = frozenset({"twill", "plain-weave", "flannel"})


def must_nots_of(cloth: KnownCloth, wash: WashAdvice) -> tuple[Notice, ...]:
    """What must not be done to ``cloth``, gravest first."""
    found = [
        each
        for condition, rows in facts.MUST_NOT_BY_CONDITION.items()
        if condition in cloth.conditions
        for each in rows
    ]
    if cloth.form == "sequinned":
        found.append(facts.SEQUINS_COME_OFF)
    if cloth.frailty == 4 and "shattered" not in cloth.conditions:
        found += facts.MUST_NOT_BY_CONDITION["shattered"]
    if not cloth.fibres:
        found.append(facts.NO_BURN_TEST)
    is_wet = WASH_ORDER[wash.method] >= WASH_ORDER[WashMethod.SPOT]
    if is_wet and any(fibre.felts.value for fibre in cloth.fibres):
        found.append(facts.NO_FELTING)
    return (*found, *_bleach_must_nots(cloth, is_wet=is_wet))


def _bleach_must_nots(cloth: KnownCloth, *, is_wet: bool) -> Iterator[Notice]:
    if cloth.label.bleach == "no":
        said = label_fact(True, cloth.label.edition)
        yield notice("Do not bleach it.", "The label forbids bleach.", said)
    elif is_wet:
        spoilt = [each.label.lower() for each in cloth.fibres if _spoilt_by_chlorine(each)]
        if spoilt:
            because = f"Chlorine harms {' and '.join(spoilt)} for good."
            yield notice("Do not use chlorine bleach.", because, facts.SPOILT_BY_CHLORINE)


def cautions_of(cloth: KnownCloth, wash: WashAdvice) -> tuple[Notice, ...]:
    """What to take care of with ``cloth``, in the order of the work."""
    return (
        *facts.ARRIVAL,
        *_condition_cautions(cloth, wash),
        *_fibre_cautions(cloth),
        *_form_cautions(cloth),
    )


def _condition_cautions(cloth: KnownCloth, wash: WashAdvice) -> Iterator[Notice]:
    for condition, rows in facts.CAUTIONS_BY_CONDITION.items():
        if condition in cloth.conditions:
            yield from rows
    if "blood" in cloth.conditions:
        yield from _blood_cautions(wash)
    if cloth.keep_scent:
        yield from facts.KEPT_SCENT


def _blood_cautions(wash: WashAdvice) -> Iterator[Notice]:
    if WASH_ORDER[wash.method] < WASH_ORDER[WashMethod.HAND]:
        yield facts.BLOOD_UNWASHED
        return
    yield facts.WASH_BLOOD_APART
    if (wash.max_c or 0) < BLOOD_TARGET_C.value:
        yield facts.HOT_WASH_NOT_REACHED


def _fibre_cautions(cloth: KnownCloth) -> Iterator[Notice]:
    if not cloth.fibres:
        yield facts.UNKNOWN_FIBRE
    for fibre in cloth.fibres:
        for fact in fibre.ageing:
            yield notice(fact.value, f"A known weakness of {fibre.label.lower()}.", fact)
        if fibre.bleeds.value is Bleeding.OFTEN and fibre.is_textile:
            words = f"Expect {fibre.label.lower()} to lose some colour in water."
            yield notice(words, "Its dyes are often not fast.", fibre.bleeds)
    woolly = cloth.in_family(Family.PROTEIN) and not cloth.has("silk")
    if woolly and cloth.form in TAILORING_FORMS:
        yield facts.TAILORED


def _form_cautions(cloth: KnownCloth) -> Iterator[Notice]:
    if cloth.construction is None:
        return
    if cloth.construction.is_directional:
        yield facts.ONE_WAY
    if cloth.form in OPEN_FORMS:
        yield facts.CANT_HOLD_SHAPE
    if cloth.form == "denim":
        yield facts.DENIM_INK
    if _is_quick_to_burn(cloth):
        yield facts.QUICK_TO_BURN


def _is_quick_to_burn(cloth: KnownCloth) -> bool:
    if cloth.construction is not None and cloth.construction.is_sheer:
        return True
    if cloth.form not in QUICK_PILES:
        return False
    quick = (Family.CELLULOSE, Family.REGENERATED)
    return not cloth.fibres or cloth.in_family(*quick) or cloth.has("silk")


def _spoilt_by_chlorine(fibre: Fibre) -> bool:
    return fibre.family in (Family.PROTEIN, Family.ELASTOMER) or fibre.name == "polyamide"

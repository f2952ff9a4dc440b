"""Whether a hard or soft part may go on a keepsake: refused, to be tested first, or allowed.

Joins the gauge's answer with age, market and material. The law bans small parts for under-3s; this
program's own rule goes further and refuses every hard part there. An answer is information for the
maker and no certificate: the law where the toy is made, sold and given decides.
"""

from dataclasses import dataclass
from enum import StrEnum

from planning.safety import sources
from planning.safety.ages import Band, Market, band_of, counts_as_under_3
from planning.safety.errors import SafetyError
from planning.safety.fit import Fit

HARD = ("plastic", "metal", "wood", "glass", "ceramic", "shell", "stone", "rubber", "leather")
SOFT = ("fabric", "felt", "ribbon", "paper", "yarn", "thread", "fuzz", "elastic", "string")


class Use(StrEnum):
    """What may be done with a part."""

    REFUSED = "refused"
    MUST_TEST = "must test"
    ALLOWED = "allowed"


@dataclass(frozen=True)
class Answer:
    """A verdict on a part with its reasons and the papers they come from."""

    use: Use
    because: tuple[str, ...]
    source: tuple[str, ...]


def use_of(
    fit: Fit,
    material: str = "plastic",
    age_months: int | None = None,
    market: Market | None = None,
    cuddly: bool = False,
) -> Answer:
    """Return whether a part may be used; without an age or a market the strictest rule holds.

    Raises SafetyError for an unknown material or an impossible age.
    """
    if material in SOFT:
        return _soft(fit, material, age_months, market, cuddly)
    if material not in HARD:
        known = ", ".join(HARD + SOFT)
        raise SafetyError(f"“{material}” is no material the rules know. Choose one of: {known}.")
    if counts_as_under_3(age_months, market, cuddly):
        return _refused(fit, age_months, market)
    if band_of(age_months) is Band.YOUNG:
        return _tested(fit, market, cuddly)
    return Answer(
        Use.ALLOWED,
        (
            fit.because,
            "From 8 years a hard part may stay if it is sewn through backed cloth with strong "
            "thread. Keep it away from younger children in the house.",
        ),
        (sources.GAUGE, sources.HOUSE_RULE),
    )


def is_small_part(fit: Fit, material: str, market: Market) -> bool:
    """Say whether a piece that came off counts as a small part in this market.

    The United States leaves out paper, fabric, yarn, fuzz, elastic and string (16 CFR
    1501.4(b)(2)); the European list differs and was not read, so nothing is left out there.
    """
    return fit.is_small and not (market == "us" and material in SOFT)


def _refused(fit: Fit, age_months: int | None, market: Market | None) -> Answer:
    gauge: tuple[str, ...] = (sources.GAUGE, sources.GAUGE_SHALLOW)
    if market != "us":
        gauge = (*gauge, sources.EN71_GAUGE)
    because = [fit.because, *_why_under_3(age_months)]
    if fit.is_small:
        because.append(
            "A small part on a toy for under-3s is banned: it can be swallowed or choke."
        )
        rule = sources.SMALL_PARTS_BAN
    else:
        because.append(
            "It is no small part as it stands, but it can chip, break or pull off; this program "
            "refuses every hard part for under-3s. Embroider or sew on cloth instead."
        )
        rule = sources.HOUSE_RULE
    return Answer(Use.REFUSED, tuple(because), (*gauge, rule, *_age_source(age_months)))


def _why_under_3(age_months: int | None) -> tuple[str, ...]:
    if age_months is None:
        return ("The age is not known, so the rules for the youngest hold.",)
    if band_of(age_months).is_under_3:
        return ()
    return (
        "A cuddly toy counts as meant for under 36 months here, whatever age is written on it.",
    )


def _age_source(age_months: int | None) -> tuple[str, ...]:
    presumed = age_months is not None and not band_of(age_months).is_under_3
    return (sources.EN71_CUDDLY,) if presumed else ()


def _tested(fit: Fit, market: Market | None, cuddly: bool) -> Answer:
    because = [
        fit.because,
        "From 3 to 7 years a hard part is used only if it withstands the twist and pull tests.",
    ]
    found = [sources.GAUGE, sources.US_ABUSE if market == "us" else sources.EN71_PULL]
    if fit.is_small and market != "eu" and market != "uk":
        because.append(
            "A toy sold for 3 to 5 years with a small part on it needs the choking-hazard warning "
            "in the United States."
        )
        found.append(sources.SMALL_PARTS_LABEL)
    if cuddly:
        because.append(
            "A stuffed animal may be judged to be for under-3s whatever age is written on it."
        )
        found.append(sources.AGE_JUDGED)
    return Answer(Use.MUST_TEST, tuple(because), tuple(found))


def _soft(
    fit: Fit, material: str, age_months: int | None, market: Market | None, cuddly: bool
) -> Answer:
    sewn = f"Sew the {material} down along its whole edge."
    if market == "us":
        left_out = f"Torn-off {material} is left out of the United States small-parts test."
        return Answer(Use.ALLOWED, (left_out, sewn), (sources.EXCLUDED_SOFT,))
    if fit.is_small and counts_as_under_3(age_months, market, cuddly):
        because = (
            fit.because,
            f"For under-3s {material} that comes off can count as a small part in Europe. {sewn}",
        )
        return Answer(Use.MUST_TEST, because, (sources.EN71_GAUGE, sources.EN71_PULL))
    return Answer(Use.ALLOWED, (sewn,), (sources.HOUSE_RULE,))

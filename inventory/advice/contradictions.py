"""What does not hold together in what was said about a cloth, and what is done about it.

Labels that ask too much are found where they are read; here are contradictions between
the giver's wish and the condition, and between the make, the fibre and the measures.
Each says which side is taken, and it is the safer one.
"""

from collections.abc import Iterator

from inventory.advice.facts import Fact, common
from inventory.advice.fibre_kinds import Family
from inventory.advice.known import KnownCloth
from inventory.advice.parts import Notice, notice

LEAST_KNIT_STRETCH_PCT: Fact[float] = common(5.0)
MOST_WOVEN_STRETCH_PCT: Fact[float] = common(25.0)
MOST_ELASTIC_SHARE_PCT: Fact[float] = common(50.0)
MASS_FACTOR: Fact[float] = common(2.0)
WISH_HOLDS: Fact[bool] = common(True)
HIDE_OR_CLOTH: Fact[bool] = common(True)
SHARP_BLEACH: Fact[bool] = common(True)

WISH_AGAINST: dict[str, str] = {
    "mould": "mould has to be cleaned off",
    "mothball": "mothball vapour is poisonous until it is washed and aired out",
    "blood": "blood has to be washed out",
    "cream": "the grease of skin cream burns",
    "smoke": "smoke has to be aired or washed out",
}

_WOVEN_THAT_GIVES = frozenset({"lace", "pleated", "leather", "suede", "fur-fabric", "quilted"})


def contradictions_of(cloth: KnownCloth) -> tuple[Notice, ...]:
    """Every contradiction in what is known of ``cloth``."""
    return (
        *_wish_conflicts(cloth),
        *_stretch_conflicts(cloth),
        *_make_conflicts(cloth),
        *_mass_conflicts(cloth),
        *_bleach_conflicts(cloth),
    )


def _wish_conflicts(cloth: KnownCloth) -> Iterator[Notice]:
    if cloth.keep_scent and cloth.may_wash:
        yield notice(
            "The giver allows washing and wants the scent kept; it is not washed.",
            "A scent that is washed out cannot be put back.",
            WISH_HOLDS,
        )
    if not cloth.stays_unwashed:
        return
    wish = "wants the scent kept" if cloth.keep_scent else "wants it unwashed"
    for condition, need in WISH_AGAINST.items():
        if condition in cloth.conditions:
            yield notice(
                f"The giver {wish}, but {need}; it is neither washed nor cut until the giver "
                "has been told and has chosen.",
                "The giver's wish comes first, and nobody is put at risk meanwhile.",
                WISH_HOLDS,
            )


def _stretch_conflicts(cloth: KnownCloth) -> Iterator[Notice]:
    given = [
        each for each in (cloth.stretch_along_pct, cloth.stretch_across_pct) if each is not None
    ]
    if not given or cloth.construction is None:
        return
    if cloth.is_knit and cloth.stretch_across_pct is not None:
        if max(given) < LEAST_KNIT_STRETCH_PCT.value:
            yield notice(
                "It is called a knit but was measured without stretch; it is sewn and backed "
                "as a knit until it is looked at again.",
                "A knit gives; it may be woven, felted, or already fused.",
                LEAST_KNIT_STRETCH_PCT,
            )
        return
    springy = cloth.in_family(Family.ELASTOMER) or cloth.form in _WOVEN_THAT_GIVES
    if not cloth.is_knit and not springy and max(given) >= MOST_WOVEN_STRETCH_PCT.value:
        yield notice(
            "It is called a woven cloth without elastane but stretches like a knit; it is "
            "backed so that it cannot stretch.",
            "It may be a knit, or hold elastane the label does not name.",
            MOST_WOVEN_STRETCH_PCT,
        )


def _make_conflicts(cloth: KnownCloth) -> Iterator[Notice]:
    names_hide = cloth.construction is not None and cloth.construction.is_hide
    has_hide = cloth.in_family(Family.HIDE)
    made_of_hide = names_hide or cloth.form in ("", "fur-fabric", "coated", "quilted")
    if names_hide and cloth.fibres and not has_hide:
        yield notice(
            "It is called leather or suede but its fibres are not; it is treated as an "
            "imitation, without a leather needle, and is not ironed.",
            "A leather needle slits imitations.",
            HIDE_OR_CLOTH,
        )
    if has_hide and not made_of_hide and cloth.construction is not None:
        yield notice(
            f"It holds leather or fur but is called {cloth.construction.label.lower()}; it is "
            "treated as leather.",
            "Leather stands the least water and heat.",
            HIDE_OR_CLOTH,
        )
    elastic = sum(pct for fibre, pct in cloth.shares if fibre.family is Family.ELASTOMER)
    if elastic > MOST_ELASTIC_SHARE_PCT.value:
        yield notice(
            f"A cloth of {elastic:g} % elastic fibre is hardly ever made; look at the label "
            "again. The gentler limits are used meanwhile.",
            "Elastane and rubber are blended into other fibres in small shares.",
            MOST_ELASTIC_SHARE_PCT,
        )


def _mass_conflicts(cloth: KnownCloth) -> Iterator[Notice]:
    if cloth.mass_g_m2 is None or cloth.construction is None:
        return
    low, high = cloth.construction.mass_g_m2.value
    factor = MASS_FACTOR.value
    if not low / factor <= cloth.mass_g_m2 <= high * factor:
        yield notice(
            f"{cloth.mass_g_m2:g} g/m² is far from the usual {low:g} to {high:g} for this cloth; "
            "weigh and measure it again. The lighter figure sets the interfacing meanwhile.",
            "A slip in the weighed mass or the measured area is the usual cause.",
            MASS_FACTOR,
        )


def _bleach_conflicts(cloth: KnownCloth) -> Iterator[Notice]:
    delicate = cloth.in_family(Family.PROTEIN, Family.ELASTOMER, Family.HIDE)
    if cloth.label.bleach == "any" and delicate:
        yield notice(
            "The label allows any bleach, which these fibres do not stand; no bleach is used.",
            "Chlorine destroys wool, hair, silk and elastane.",
            SHARP_BLEACH,
        )

"""Whether to back a cloth, and how, so that it does not stretch as a stuffed toy.

The interfacing is never heavier than the cloth. It is fused only where heat, pile,
holes and age allow, always after a test patch; otherwise it is sewn in. A stuffed body
pulls at every seam, so cloth that stretches is stopped before it is cut.
"""

from inventory.advice.interfacing_facts import (
    ANTIQUE_UNFUSED,
    FIRM_ENOUGH,
    FIRM_FORMS,
    FITS_KNITS,
    FUSE_LEAST_C,
    FUSE_MOST_C,
    HEAVIEST_BACKING_G_M2,
    HEAVY_FROM_G_M2,
    INTERFACING_CLASSES,
    NEVER_FUSED_FORMS,
    NEVER_HEAVIER,
    PRE_SHRINK,
    RUBBER_PRINT_UNFUSED,
    SAME_CARE,
    SILK_SEWN_IN,
    STOPS_STRETCH,
    STRETCH_LIMIT_PCT,
    STRETCHES_FROM_PCT,
    TEST_FIRST,
    TOY_HOLDS_SHAPE,
    UNKNOWN_SEWN_IN,
    WEAK_UNFUSED,
    WOVEN_ON_GRAIN,
)
from inventory.advice.interfacing_words import fuse_max_c, how_words, interfacing_sentence
from inventory.advice.known import KnownCloth
from inventory.advice.parts import Finding, Notice, Reason, notice, reason
from inventory.advice.recommendations import InterfacingAdvice, PressAdvice


def interfacing_of(cloth: KnownCloth, press: PressAdvice) -> Finding[InterfacingAdvice]:
    """The backing for ``cloth``, which may be pressed as ``press`` says."""
    unfused = _why_not_fused(cloth, press)
    attach, structure = _choice(cloth, fusible=unfused is None)
    mass_g_m2, mass_reasons = _mass(cloth, attach)
    part = InterfacingAdvice(
        text=interfacing_sentence(
            cloth, attach, structure, mass_g_m2, press, may_be_tried=unfused is None
        ),
        reasons=(*_reasons(cloth, attach, structure, unfused), *mass_reasons),
        attach=attach,
        structure=structure,
        mass_g_m2=mass_g_m2,
        fuse_max_c=fuse_max_c(press) if attach == "fusible" else None,
        how=how_words(cloth, attach, structure, press),
        test_patch=attach != "none",
        pre_shrink=attach != "none",
        stretch_after_pct=STRETCH_LIMIT_PCT.value,
    )
    return Finding(part, must_not=_must_not(cloth, unfused))


def _why_not_fused(cloth: KnownCloth, press: PressAdvice) -> Reason | None:
    """The first reason not to fuse ``cloth``, or ``None`` where fusing may be tried."""
    if "antique" in cloth.conditions or "shattered" in cloth.conditions:
        return reason("old or shattered cloth tears away from the glue", ANTIQUE_UNFUSED)
    if cloth.frailty >= 3:
        return reason("fusing cannot be undone, and weak cloth needs a soft support", WEAK_UNFUSED)
    if cloth.form in NEVER_FUSED_FORMS:
        fact = NEVER_FUSED_FORMS[cloth.form]
        return reason(fact.value, fact)
    if not cloth.fibres:
        return reason("nobody knows what heat an unknown fibre stands", UNKNOWN_SEWN_IN)
    for fibre in cloth.fibres:
        if not fibre.takes_fusible.value:
            words = f"{fibre.label.lower()} does not take the heat or the glue of fusing well"
            return reason(words, fibre.takes_fusible)
    if press.max_c is None or press.max_c < FUSE_LEAST_C.value:
        words = f"the glue sets at {FUSE_LEAST_C.value} °C or more, and this cloth is not ironed"
        return reason(words, FUSE_LEAST_C)
    return None


def _choice(cloth: KnownCloth, *, fusible: bool) -> tuple[str, str | None]:
    if not _wants_backing(cloth):
        return "none", None
    if not fusible or _is_silk(cloth):
        return "sew-in", "woven"
    return "fusible", _fusible_structure(cloth)


def _fusible_structure(cloth: KnownCloth) -> str:
    return "knit" if cloth.is_knit else "woven"


def _wants_backing(cloth: KnownCloth) -> bool:
    if cloth.is_hide:
        return cloth.frailty >= 2
    if _stretches(cloth) or cloth.frailty >= 2 or cloth.is_knit:
        return True
    mass_g_m2 = cloth.ground_mass_g_m2
    is_heavy = mass_g_m2 is not None and mass_g_m2 >= HEAVY_FROM_G_M2.value
    return not (is_heavy or cloth.form in FIRM_FORMS)


def _stretches(cloth: KnownCloth) -> bool:
    return cloth.most_stretch_pct >= STRETCHES_FROM_PCT.value


def _is_silk(cloth: KnownCloth) -> bool:
    return cloth.has("silk")


def _mass(cloth: KnownCloth, attach: str) -> tuple[tuple[float, float] | None, tuple[Reason, ...]]:
    ceiling = _most_mass(cloth)
    if attach == "none" or ceiling is None:
        return None, ()
    fact = next(fact for fact in reversed(INTERFACING_CLASSES) if ceiling >= fact.value[0])
    _, low, high = fact.value
    if attach == "sew-in":
        # Woven backing is sold heavier than glued: up to the cloth's own weight will do.
        high = HEAVIEST_BACKING_G_M2.value
    mass_g_m2 = (round(min(low, ceiling), 1), round(min(high, ceiling), 1))
    return mass_g_m2, (
        reason("Interfacing is about as heavy as the cloth or lighter.", NEVER_HEAVIER),
        reason(f"For cloth of this weight, {low:g} to {high:g} g/m² is usual.", fact),
    )


def _most_mass(cloth: KnownCloth) -> float | None:
    """The mass the interfacing must not pass: weighed, or the usual one if that is less."""
    usual = cloth.construction.mass_g_m2.value if cloth.construction else None
    if cloth.mass_g_m2 is None or usual is None:
        return cloth.ground_mass_g_m2
    return min(cloth.mass_g_m2, usual[1])


def _reasons(
    cloth: KnownCloth, attach: str, structure: str | None, unfused: Reason | None
) -> tuple[Reason, ...]:
    if attach == "none":
        return (reason("The cloth is firm enough for a toy by itself.", FIRM_ENOUGH),)
    found: list[Reason] = []
    if unfused is not None:
        found.append(Reason(_sentence(unfused.text), unfused.source, unfused.certainty))
    elif _is_silk(cloth):
        words = "Silk shows the glue and marks with heat; a sewn-in layer can be taken out."
        found.append(reason(words, SILK_SEWN_IN))
    if _stretches(cloth):
        found.append(reason("An interfacing stops the cloth from stretching.", STOPS_STRETCH))
        words = "Stuffing pulls a stretchy skin out of shape for good."
        found.append(reason(words, TOY_HOLDS_SHAPE))
    if structure == "knit":
        found.append(reason("A knit interfacing suits a knit.", FITS_KNITS))
    elif structure == "woven":
        words = "A woven interfacing is cut on the same grain as the cloth."
        found.append(reason(words, WOVEN_ON_GRAIN))
    if attach == "fusible":
        words = "Home fusing is done on the wool setting, never hotter than the cloth allows."
        found.append(reason(words, FUSE_MOST_C))
        found.append(reason("Whether a fusible will do is only known after a test.", TEST_FIRST))
    found.append(reason("An interfacing shrinks too unless it is shrunk first.", PRE_SHRINK))
    found.append(reason("Its care must match the care of the finished piece.", SAME_CARE))
    return tuple(found)


def _sentence(words: str) -> str:
    return f"Not fused: {words}."


def _must_not(cloth: KnownCloth, unfused: Reason | None) -> tuple[Notice, ...]:
    if unfused is not None:
        never = Notice(
            text="Do not fuse anything to it.",
            because=f"{_capital(unfused.text)}.",
            source=unfused.source,
            certainty=unfused.certainty,
        )
        return (never,)
    if "rubber-print" in cloth.conditions:
        because = "The heat of fusing melts the print against the board."
        return (notice("Do not fuse behind the rubbery print.", because, RUBBER_PRINT_UNFUSED),)
    return ()


def _capital(words: str) -> str:
    return words[0].upper() + words[1:]

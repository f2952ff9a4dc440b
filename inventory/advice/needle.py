"""Which needle to sew a cloth with: its point and its sizes.

The construction and fibre choose the point, the weight chooses the size. Leather
needles are for real leather only.
"""

from inventory.advice.facts import Fact
from inventory.advice.known import KnownCloth
from inventory.advice.needle_facts import (
    DENIM_HEAVY_FROM_G_M2,
    DENIM_MEDIUM_FROM_G_M2,
    DENIM_SIZES,
    FIXED_POINTS,
    HEAVY_FROM_G_M2,
    KNIT_SIZES,
    LEATHER_SIZES,
    LIGHT_UNDER_G_M2,
    MICROTEX_COATED_WHY,
    NEW_NEEDLE,
    NOT_FOR_IMITATIONS,
    POINT_WHY,
    SILK_SIZES,
    SPRINGY_FROM_PCT,
    STRETCH_SIZES,
    UNKNOWN_SIZES,
    WOVEN_SIZES,
    Sizes,
)
from inventory.advice.needles import us_of_nm
from inventory.advice.parts import Finding, Reason, reason
from inventory.advice.recommendations import NeedleAdvice

POINT_WORDS = {
    "universal": "universal",
    "ball": "ball-point (jersey)",
    "stretch": "stretch",
    "microtex": "microtex (sharp)",
    "jeans": "jeans",
    "leather": "leather (wedge)",
}


def needle_of(cloth: KnownCloth) -> Finding[NeedleAdvice]:
    """The needle for ``cloth``."""
    point, sizes = _choice(cloth)
    thin, thick = sizes.value
    us = (us_of_nm(thin), us_of_nm(thick))
    unsure = "; if the cloth proves a knit, change to a ball point"
    unsure = unsure if cloth.construction is None else ""
    part = NeedleAdvice(
        text=(
            f"Use a new {POINT_WORDS[point]} needle, Nm {thin} to {thick} "
            f"(US {us[0]} to {us[1]}), and the thinnest that takes the thread{unsure}."
        ),
        reasons=_reasons(cloth, point, sizes),
        point=point,
        size_nm=(thin, thick),
        size_us=us,
    )
    return Finding(part)


def _choice(cloth: KnownCloth) -> tuple[str, Fact[Sizes]]:
    if cloth.is_hide:
        return "leather", LEATHER_SIZES
    if cloth.is_knit:
        return _knit_choice(cloth)
    if cloth.form == "denim":
        return "jeans", DENIM_SIZES[_denim_weight(cloth)]
    if cloth.has("silk") and cloth.form not in ("velvet", "brocade", "quilted"):
        return "microtex", SILK_SIZES
    if cloth.form in ("leather", "suede"):
        return FIXED_POINTS["coated"]
    if cloth.form in FIXED_POINTS:
        return FIXED_POINTS[cloth.form]
    if cloth.construction is None and cloth.mass_g_m2 is None:
        return "universal", UNKNOWN_SIZES
    return "universal", WOVEN_SIZES[_weight(cloth)]


def _knit_choice(cloth: KnownCloth) -> tuple[str, Fact[Sizes]]:
    springy = cloth.has("elastane", "elastodiene", "elastolefin", "elastomultiester")
    bulky = cloth.form in ("sweater-knit", "fleece", "sweatshirt")
    if springy or (cloth.most_stretch_pct >= SPRINGY_FROM_PCT.value and not bulky):
        return "stretch", STRETCH_SIZES
    return "ball", KNIT_SIZES[_weight(cloth)]


def _weight(cloth: KnownCloth) -> str:
    mass_g_m2 = cloth.middle_mass_g_m2
    if mass_g_m2 is None or mass_g_m2 < LIGHT_UNDER_G_M2.value:
        return "light"
    return "medium" if mass_g_m2 < HEAVY_FROM_G_M2.value else "heavy"


def _denim_weight(cloth: KnownCloth) -> str:
    mass_g_m2 = cloth.middle_mass_g_m2 or 0.0
    if mass_g_m2 < DENIM_MEDIUM_FROM_G_M2.value:
        return "light"
    return "medium" if mass_g_m2 < DENIM_HEAVY_FROM_G_M2.value else "heavy"


def _reasons(cloth: KnownCloth, point: str, sizes: Fact[Sizes]) -> tuple[Reason, ...]:
    why = POINT_WHY[point]
    if point == "microtex" and cloth.form in ("coated", "leather", "suede"):
        why = MICROTEX_COATED_WHY
    found = [
        reason(f"{why.value[0].upper()}{why.value[1:]}.", why),
        reason(f"Sizes {sizes.value[0]} to {sizes.value[1]} suit cloth of this kind.", sizes),
    ]
    if cloth.form in ("leather", "suede") and not cloth.is_hide:
        words = "A leather needle slits imitation leather and suede, so it is not used."
        found.append(reason(words, NOT_FOR_IMITATIONS))
    if cloth.mass_g_m2 is None and cloth.construction is not None:
        words = "The cloth was not weighed; its usual weight is taken."
        found.append(reason(words, cloth.construction.mass_g_m2))
    found.append(reason("A worn needle pulls threads that cannot be put back.", NEW_NEEDLE))
    return tuple(found)

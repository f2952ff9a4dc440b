"""Stitch length and thread for the seams of a stuffed toy.

Short stitches hold stuffing in; skins and weak cloth get longer ones, because each hole
weakens them. Lengths are millimetres; stitches per inch are computed, never copied.
"""

from inventory.advice.facts import Fact
from inventory.advice.interfacing_facts import STRETCHES_FROM_PCT
from inventory.advice.known import KnownCloth
from inventory.advice.needle_facts import HEAVY_FROM_G_M2, LIGHT_UNDER_G_M2
from inventory.advice.needles import stitches_per_inch
from inventory.advice.parts import Finding, Reason, reason
from inventory.advice.recommendations import InterfacingAdvice, StitchAdvice, ThreadAdvice
from inventory.advice.stitch_facts import (
    FINE_CLOTH_MM,
    FINE_THREAD,
    HEAVY_SEAM_MM,
    HIDE_CURVE_MM,
    HIDE_SEAM_MM,
    LEATHER_THREAD,
    POLYESTER_THREAD,
    SEAM_BREAKS_FIRST,
    STRAIN_SECOND_ROW,
    STRONG_THREAD,
    THREAD_FITS_EYE,
    TIGHT_CURVE_MM,
    TOY_SEAM_MM,
    WEAK_SEAM_MM,
    ZIGZAG_IN_STRETCH,
)


def stitch_of(cloth: KnownCloth, interfacing: InterfacingAdvice) -> Finding[StitchAdvice]:
    """Stitch lengths for ``cloth`` backed as ``interfacing`` says."""
    length_mm, curve_mm, reasons = _lengths(cloth)
    kind, more = _kind(cloth, interfacing)
    per_inch = round(stitches_per_inch(length_mm), 1)
    part = StitchAdvice(
        text=(
            f"Sew {kind} of {length_mm:g} mm ({per_inch:g} to the inch), {curve_mm:g} mm on "
            f"tight curves{_second_row(cloth)}."
        ),
        reasons=(*reasons, *more),
        length_mm=length_mm,
        curve_length_mm=curve_mm,
        stitches_per_inch=per_inch,
        kind="zigzag" if "zigzag" in kind else "straight",
    )
    return Finding(part)


def _lengths(cloth: KnownCloth) -> tuple[float, float, tuple[Reason, ...]]:
    if cloth.is_hide:
        why = reason("Short stitches cut leather like a row of perforations.", HIDE_SEAM_MM)
        return HIDE_SEAM_MM.value, HIDE_CURVE_MM.value, (why,)
    if cloth.frailty >= 3:
        why = reason("Many needle holes weaken weak cloth further.", WEAK_SEAM_MM)
        return WEAK_SEAM_MM.value, TOY_SEAM_MM.value[1], (why,)
    mass_g_m2 = cloth.ground_mass_g_m2
    if mass_g_m2 is not None and mass_g_m2 >= HEAVY_FROM_G_M2.value:
        why = reason("Short stitches bunch up in thick cloth.", HEAVY_SEAM_MM)
        return HEAVY_SEAM_MM.value, TOY_SEAM_MM.value[1], (why,)
    curve_mm = TIGHT_CURVE_MM.value
    toy = reason("Short stitches hold the stuffing in.", TOY_SEAM_MM)
    if mass_g_m2 is not None and mass_g_m2 < LIGHT_UNDER_G_M2.value:
        fine = reason("Fine cloth is sewn with stitches of 1 to 2 mm.", FINE_CLOTH_MM)
        return TOY_SEAM_MM.value[0], curve_mm, (toy, fine)
    return TOY_SEAM_MM.value[1], curve_mm, (toy,)


def _kind(cloth: KnownCloth, interfacing: InterfacingAdvice) -> tuple[str, tuple[Reason, ...]]:
    gives = cloth.most_stretch_pct >= STRETCHES_FROM_PCT.value
    if interfacing.attach == "none" and gives and not cloth.is_hide:
        why = reason("A straight stitch snaps where the cloth gives.", ZIGZAG_IN_STRETCH)
        return "a narrow zigzag", (why,)
    strain = reason("Necks, arms and legs pull hardest.", STRAIN_SECOND_ROW)
    return "a straight stitch", (strain,)


def _second_row(cloth: KnownCloth) -> str:
    if cloth.is_hide:
        return ", and tie the ends off by hand instead of sewing back over them"
    return ", with a second row at the neck and limbs"


def thread_of(cloth: KnownCloth) -> Finding[ThreadAdvice]:
    """The thread for ``cloth``."""
    fact, why = _thread(cloth)
    part = ThreadAdvice(
        text=f"Sew with {fact.value}, and with a needle whose eye it runs through freely.",
        reasons=(
            reason(why, fact),
            reason("Fine thread goes with a fine needle, heavy with a large.", THREAD_FITS_EYE),
            reason("A seam can be mended, torn cloth cannot.", SEAM_BREAKS_FIRST),
        ),
        thread=fact.value,
    )
    return Finding(part)


def _thread(cloth: KnownCloth) -> tuple[Fact[str], str]:
    if cloth.is_hide:
        return LEATHER_THREAD, "Tanned leather rots cotton thread."
    mass_g_m2 = cloth.ground_mass_g_m2
    if cloth.has("silk") or cloth.form in ("chiffon", "lace", "satin") or cloth.frailty >= 3:
        return FINE_THREAD, "Thread stronger than the cloth cuts it at the seam."
    if not cloth.is_knit and mass_g_m2 is not None and mass_g_m2 >= HEAVY_FROM_G_M2.value:
        return STRONG_THREAD, "Heavy cloth makes heavy pulls on its seams."
    return POLYESTER_THREAD, "Polyester thread is strong and gives a little."

"""The words that say what to back a cloth with and how to put it on.

Words only: whether to fuse, and what weight, is settled in ``interfacing.py``.
"""

from inventory.advice.interfacing_facts import (
    FUSE_MOST_C,
    FUSE_SECONDS,
    STRETCH_LIMIT_PCT,
    STRETCHES_FROM_PCT,
)
from inventory.advice.known import KnownCloth
from inventory.advice.recommendations import PressAdvice

_STRETCH_TEST = (
    f"Check a finished scrap: 100 mm should stretch to no more than "
    f"{100 + STRETCH_LIMIT_PCT.value:g} mm either way."
)
_PRE_SHRINK = (
    "Shrink the interfacing first: lay it folded in hot water until the water is cool, blot "
    "it and dry it flat."
)


def fuse_max_c(press: PressAdvice) -> int | None:
    """The hottest iron for fusing, or ``None`` for cloth that is not ironed."""
    return None if press.max_c is None else min(press.max_c, FUSE_MOST_C.value)


def interfacing_sentence(
    cloth: KnownCloth,
    attach: str,
    structure: str | None,
    mass_g_m2: tuple[float, float] | None,
    press: PressAdvice,
    *,
    may_be_tried: bool,
) -> str:
    """What to back ``cloth`` with, as one sentence.

    ``may_be_tried`` says whether fusing is open to a test where sewing in is advised.
    """
    if attach == "none":
        return "It needs no interfacing: the cloth is firm enough for a toy."
    weight = _weight_words(attach, mass_g_m2)
    if attach == "fusible":
        kind = "knit (tricot)" if structure == "knit" else structure
        return (
            f"Fuse a {kind} interfacing{weight} to the whole panel{_but_the_print(cloth)} "
            f"before the pieces are cut, at no more than {fuse_max_c(press)} °C, once a test "
            "patch has held."
        )
    if may_be_tried:
        return (
            f"Baste a sewn-in layer of soft woven cotton or silk{weight} behind every piece; "
            "fuse only if a test patch at low heat, without steam, shows no mark."
        )
    return f"Baste a sewn-in layer of soft woven cotton{weight} behind every piece."


def how_words(cloth: KnownCloth, attach: str, structure: str | None, press: PressAdvice) -> str:
    """How the interfacing is put on so that the cloth no longer stretches."""
    if attach == "none":
        return "Nothing to put on."
    if attach == "sew-in":
        return _sewn_in_words(cloth)
    low, high = FUSE_SECONDS.value
    steam = "with steam" if press.steam else "without steam"
    pressing = (
        f"Press it through a cloth, {steam}, {low} to {high} seconds in each place without "
        "sliding, and let it cool flat before it is moved."
    )
    return f"{_PRE_SHRINK} {_direction_words(cloth, structure)} {pressing} {_STRETCH_TEST}"


def _direction_words(cloth: KnownCloth, structure: str | None) -> str:
    if structure != "knit":
        return "Lay it with its lengthwise grain along the lengthwise grain of the cloth."
    along, across = cloth.stretch_pct("along"), cloth.stretch_pct("across")
    way = "lengthwise" if along > across else "crosswise"
    second = ""
    if min(along, across) >= STRETCHES_FROM_PCT.value:
        second = (
            " The cloth gives both ways: add a second thin layer turned a quarter, the two "
            "together no heavier than the cloth."
        )
    return (
        "Let the cloth lie relaxed, and turn the interfacing so that the way it gives least "
        f"runs {way} of the cloth, the way the cloth gives most.{second}"
    )


def _sewn_in_words(cloth: KnownCloth) -> str:
    gives = cloth.most_stretch_pct >= STRETCHES_FROM_PCT.value
    may_stretch = gives or cloth.is_knit or cloth.construction is None
    stretch = f" {_STRETCH_TEST}" if may_stretch else ""
    return (
        f"{_PRE_SHRINK} Cut the layer from the same pattern piece, on the straight grain, "
        "baste it to the wrong side inside the seam allowance all round while the cloth lies "
        f"relaxed, and sew the two as one.{stretch}"
    )


def _weight_words(attach: str, mass_g_m2: tuple[float, float] | None) -> str:
    if mass_g_m2 is None:
        return ", lighter than the cloth,"
    low, high = mass_g_m2
    if attach == "sew-in":
        return f", no heavier than {high:g} g/m²,"
    span = f"{low:g}" if low == high else f"{low:g} to {high:g}"
    return f" of about {span} g/m²"


def _but_the_print(cloth: KnownCloth) -> str:
    if "rubber-print" not in cloth.conditions:
        return ""
    return ", stopping short of the rubbery print (baste a woven patch behind that),"

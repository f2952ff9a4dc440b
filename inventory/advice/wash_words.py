"""The one sentence that says how to clean a garment before cutting.

Words only: what to do has been settled in ``wash.py``.
"""

from inventory.advice.known import KnownCloth
from inventory.advice.methods import WASH_ORDER, WashMethod

_WET = {
    WashMethod.SPOT: (
        "Clean it only by dabbing with a white cloth barely damp with cool water, "
        "never hotter than {max_c} °C, and do not soak it"
    ),
    WashMethod.HAND: (
        "Wash it by hand in water no hotter than {max_c} °C, pressing without rubbing or "
        "wringing, and rinse at the same heat"
    ),
    WashMethod.MACHINE_VERY_MILD: (
        "Wash it in a net bag on the gentlest machine cycle, no hotter than {max_c} °C"
    ),
    WashMethod.MACHINE_MILD: (
        "Wash it on a mild machine cycle, no hotter than {max_c} °C, with little spinning"
    ),
    WashMethod.MACHINE: (
        "Wash it by machine, no hotter than {max_c} °C; a cooler wash is always allowed"
    ),
}


def wash_sentence(cloth: KnownCloth, method: WashMethod, max_c: int | None) -> str:
    """How to clean ``cloth``, as one sentence."""
    if method is WashMethod.NONE:
        return _unwashed(cloth)
    if method is WashMethod.PROFESSIONAL:
        return _professional(cloth)
    how = _WET[method].format(max_c=max_c)
    if "mould" in cloth.conditions:
        return (
            "Clean off the mould first, dry and outdoors; then test the colour on a hidden "
            f"place and, if none comes off, {_lower_first(how)}."
        )
    if "blood" in cloth.conditions and WASH_ORDER[method] >= WASH_ORDER[WashMethod.HAND]:
        return (
            "Test the colour on a hidden place, rinse the blood out in cold water with "
            f"gloves on, then {_lower_first(how)}, by itself and at the full heat allowed."
        )
    turned = _turned_out(cloth, method)
    return (
        f"Test the colour on a hidden place first; if none comes off, {turned}{_lower_first(how)}."
    )


def _turned_out(cloth: KnownCloth, method: WashMethod) -> str:
    by_machine = WASH_ORDER[method] > WASH_ORDER[WashMethod.HAND]
    if by_machine and (cloth.form == "denim" or "rubber-print" in cloth.conditions):
        return "turn it inside out and "
    return ""


def _unwashed(cloth: KnownCloth) -> str:
    if "mould" in cloth.conditions:
        return _mouldy_unwashed(cloth)
    if cloth.keep_scent:
        return (
            "Do not wash or air it: the giver wants the scent kept, so keep it dry and "
            "bagged until it is cut."
        )
    if cloth.may_wash is False:
        return "Do not wash it, as the giver asked; brush it softly and let it air indoors."
    if cloth.is_hide:
        return (
            "Do not wash it; brush it, wipe the smooth side with a barely damp cloth, and "
            "leave anything more to a leather cleaner."
        )
    if cloth.frailty == 4 or cloth.conditions & {"antique", "shattered"}:
        return (
            "Do not wash it; lift loose dust with a soft brush and a vacuum cleaner held "
            "behind a net, and ask a textile conservator about anything more."
        )
    if "bled" in cloth.conditions:
        return "Do not wash it, because its colour runs; brush it and let it air indoors."
    return "Do not wash it; brush it, and let it air indoors out of the sun."


def _mouldy_unwashed(cloth: KnownCloth) -> str:
    if cloth.stays_unwashed:
        return (
            "Do not wash, brush or shake it; keep it dry and sealed by itself until the giver "
            "has chosen what is done about the mould."
        )
    return (
        "Do not wash it; once it is dry, lift the mould off outdoors with a HEPA vacuum cleaner "
        "held behind a net, and leave anything more to a professional."
    )


def _professional(cloth: KnownCloth) -> str:
    mark = cloth.label.professional or "P"
    kind = "wet cleaning" if mark.startswith("W") else "dry cleaning"
    mild = (
        ", the very mild process"
        if mark.endswith("very-mild")
        else (", the mild process" if mark.endswith("mild") else "")
    )
    return (
        f"Leave the cleaning to a professional and show the mark ({kind}, {mark[0]}{mild}); "
        "air it for several days afterwards, before any iron or scissors."
    )


def _lower_first(sentence: str) -> str:
    return sentence[0].lower() + sentence[1:]

"""The one sentence that says how to press. Words only; ``press.py`` settles the heat."""

from inventory.advice.known import KnownCloth
from inventory.advice.label_limits import IronLimit
from inventory.advice.press_facts import FORM_PRESS

DOT_WORDS = {0: "no iron", 1: "one dot", 2: "two dots", 3: "three dots"}


def press_sentence(cloth: KnownCloth, limit: IronLimit, touch: str, press_cloth: bool) -> str:
    """How to press ``cloth``, as one sentence."""
    if touch == "none":
        return "Do not iron it; smooth it by hand and let it hang or lie flat."
    form = FORM_PRESS.get(cloth.form)
    how = form.value.how if form and form.value.how else "from the wrong side"
    heat = f"{DOT_WORDS[limit.dots]}, {limit.max_c} °C at most"
    if touch == "hover":
        return f"Do not rest the iron on it; hold it just above and steam it {how}, set to {heat}."
    through = " through a pressing cloth," if press_cloth else ""
    light = ""
    if form and form.value.touch == "hover":
        light = " only where it must be and without pressure,"
    steam = "with steam" if limit.steam else "without steam"
    test = "" if cloth.fibres else ", after a test on a hidden place"
    return f"Press it{light}{through} {how}, {steam}, at {heat}{test}."

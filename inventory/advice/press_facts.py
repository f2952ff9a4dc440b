"""Facts about pressing that belong to the construction or condition, not the fibre.

Fibre heat limits are in ``fibre_facts.py``, label limits in ``label_limits.py``.
"""

from dataclasses import dataclass

from inventory.advice.facts import Fact, common, memory, published, trade
from inventory.advice.sources import CCI_WASHING


@dataclass(frozen=True, slots=True)
class PressForm:
    """How one construction is pressed.

    ``touch`` is ``press``, ``hover`` (iron held above, steam only) or ``none``;
    ``most_dots`` is a ceiling whatever the fibre, ``None`` where the fibre decides.
    """

    touch: str
    most_dots: int | None
    how: str
    why: str


_PLAIN = PressForm("press", None, "from the wrong side", "Pressing the face can shine it.")

FORM_PRESS: dict[str, Fact[PressForm]] = {
    "plain-weave": common(_PLAIN),
    "twill": common(_PLAIN),
    "denim": common(_PLAIN),
    "flannel": common(_PLAIN),
    "satin": common(
        PressForm("press", None, "from the wrong side", "Satin shows the iron's edge.")
    ),
    "corduroy": common(
        PressForm(
            "press",
            None,
            "from the wrong side, face down on a towel",
            "A flat board crushes the ribs.",
        )
    ),
    "velvet": trade(
        PressForm(
            "hover",
            None,
            "from the back, pile down on a towel or a scrap of the same velvet",
            "Heat with pressure crushes the pile for good.",
        )
    ),
    "towelling": common(
        PressForm("hover", None, "from the wrong side", "Pressing flattens the loops.")
    ),
    "seersucker": common(
        PressForm("hover", None, "from the wrong side", "Pressing flattens the puckers.")
    ),
    "lace": common(
        PressForm(
            "press",
            None,
            "from the wrong side, laid on a towel",
            "The iron's tip catches in the holes.",
        )
    ),
    "chiffon": common(
        PressForm(
            "press", None, "barely touching, without sliding", "Sheer cloth moves and scorches."
        )
    ),
    "brocade": common(
        PressForm("press", None, "from the wrong side, laid on a towel", "Raised threads flatten.")
    ),
    "jersey": common(
        PressForm(
            "press", None, "lifting and lowering, never sliding", "A sliding iron stretches it."
        )
    ),
    "rib": common(
        PressForm("hover", None, "without pulling it", "A pressed rib loses its spring.")
    ),
    "interlock": common(
        PressForm(
            "press", None, "lifting and lowering, never sliding", "A sliding iron stretches it."
        )
    ),
    "sweater-knit": common(
        PressForm("hover", None, "without pulling it", "Pressure flattens a sweater knit.")
    ),
    "sweatshirt": common(
        PressForm(
            "press",
            None,
            "from the wrong side, lifting and lowering",
            "Pressure flattens the inner face.",
        )
    ),
    "fleece": common(
        PressForm(
            "press",
            1,
            "only where it must be and without pressure, from the wrong side",
            "Heat glazes and flattens fleece.",
        )
    ),
    "felt": common(
        PressForm("press", None, "lifting and lowering", "A sliding iron drags the felt.")
    ),
    "quilted": common(
        PressForm("press", 1, "without pressure", "Heat and pressure flatten the padding.")
    ),
    "coated": common(PressForm("none", 0, "", "An iron melts, lifts or cracks the coating.")),
    "leather": common(PressForm("none", 0, "", "An iron shrinks and hardens leather.")),
    "suede": common(PressForm("none", 0, "", "An iron marks suede for good.")),
    "fur-fabric": common(PressForm("none", 0, "", "An iron mats and melts the pile.")),
    "sequinned": common(
        PressForm(
            "press",
            1,
            "from the wrong side, laid on a towel",
            "Sequins curl and melt with heat and steam.",
        )
    ),
    "pleated": common(
        PressForm(
            "press", None, "only along the pleats, pinned in place", "An iron takes pleats out."
        )
    ),
}

NO_STEAM_FORMS: dict[str, Fact[bool]] = {
    "sequinned": common(True),
    "quilted": common(True),
    "pleated": common(True),
    "chiffon": common(True),
}

MUSEUM_PIECES_UNPRESSED: Fact[bool] = published(True, CCI_WASHING)
WEAK_CLOTH_UNPRESSED: Fact[bool] = common(True)
RUBBER_PRINT_UNPRESSED: Fact[bool] = common(True)
UNKNOWN_PRESS_DOTS: Fact[int] = common(1)
GREASE_UNPRESSED: Fact[bool] = memory(True)
SCENT_AND_HEAT: Fact[bool] = common(True)
STAINS_SET: Fact[bool] = common(True)

"""Facts about washing that belong to the construction or the condition of a cloth.

Fibre limits are in ``fibre_facts.py`` and label limits in ``label_limits.py``.
"""

from inventory.advice.facts import Fact, common, memory, published
from inventory.advice.methods import WashLimit, WashMethod
from inventory.advice.sources import (
    CCI_COLOUR_TEST,
    HSE_BLOOD,
    NHS_WASHING,
)


def _limit(method: WashMethod, max_c: int, top_c: int | None = None) -> WashLimit:
    return WashLimit(method, max_c, top_c or max_c)


# The roughest wash for a construction when there is no label, whatever the fibre.
FORM_WASH: dict[str, Fact[WashLimit]] = {
    "satin": common(_limit(WashMethod.HAND, 30)),
    "velvet": common(_limit(WashMethod.SPOT, 30)),
    "lace": common(_limit(WashMethod.HAND, 30)),
    "chiffon": common(_limit(WashMethod.HAND, 30)),
    "brocade": common(_limit(WashMethod.SPOT, 30)),
    "corduroy": common(_limit(WashMethod.MACHINE_MILD, 40, 60)),
    "denim": common(_limit(WashMethod.MACHINE_MILD, 40, 60)),
    "flannel": common(_limit(WashMethod.MACHINE_MILD, 40, 60)),
    "sweater-knit": common(_limit(WashMethod.HAND, 30)),
    "fleece": common(_limit(WashMethod.MACHINE_MILD, 30)),
    "felt": common(_limit(WashMethod.SPOT, 30)),
    "quilted": common(_limit(WashMethod.MACHINE_VERY_MILD, 30)),
    "coated": common(_limit(WashMethod.SPOT, 30)),
    "fur-fabric": common(_limit(WashMethod.HAND, 30)),
    "sequinned": published(_limit(WashMethod.SPOT, 30), CCI_COLOUR_TEST),
    "pleated": common(_limit(WashMethod.SPOT, 30)),
}

FORM_WASH_WHY: dict[str, str] = {
    "satin": "the long floats of satin snag and rub up in a machine",
    "velvet": "water and rubbing crush the pile of velvet",
    "lace": "lace tears when it is pulled about wet",
    "chiffon": "sheer cloth is pulled out of shape by a machine",
    "brocade": "brocade mixes threads that shrink differently in water",
    "corduroy": "hard washing wears the ribs of corduroy bald",
    "denim": "denim creases white and loses dye in a hard wash",
    "flannel": "hard washing mats the brushed face",
    "sweater-knit": "a sweater knit stretches under its own wet weight",
    "fleece": "heat and friction mat and pill fleece",
    "felt": "wet felt shrinks and loses its face",
    "quilted": "the padding clumps in a hard wash",
    "coated": "soaking and heat lift the coating",
    "fur-fabric": "machine washing mats the pile",
    "sequinned": "sequins and beads bend, bleed or drop off in water",
    "pleated": "water takes pleats out",
}

# The roughest wash a label can be believed for on these constructions.
FORM_LABEL_WASH: dict[str, Fact[WashLimit]] = {
    "sequinned": common(_limit(WashMethod.HAND, 30)),
    "fur-fabric": common(_limit(WashMethod.MACHINE_MILD, 40)),
    "fleece": common(_limit(WashMethod.MACHINE, 60)),
    "coated": common(_limit(WashMethod.MACHINE_MILD, 40)),
}

# The roughest handling for each fragility grade, by any method.
FRAILTY_WASH: dict[int, Fact[WashMethod]] = {
    2: common(WashMethod.MACHINE_VERY_MILD),
    3: common(WashMethod.HAND),
    4: published(WashMethod.NONE, CCI_COLOUR_TEST),
}
FRAILTY_WASH_WHY: dict[int, str] = {
    2: "The cloth is thin or tender, so only a very mild cycle in a net bag.",
    3: "The cloth is weak, so it is only washed by hand, laid on a net.",
    4: "Cloth this fragile does not survive washing.",
}

NEVER_WASHED: dict[str, tuple[str, Fact[bool]]] = {
    "shattered": (
        "Shattered cloth falls apart in water.",
        published(True, CCI_COLOUR_TEST),
    ),
    "bled": (
        "Cloth that has already bled will bleed again.",
        published(True, CCI_COLOUR_TEST),
    ),
    "antique": (
        "A treasured or antique piece is not washed without a conservator: washing cannot "
        "be undone.",
        published(True, CCI_COLOUR_TEST),
    ),
}

RUBBER_PRINT_WASH: Fact[WashLimit] = common(_limit(WashMethod.MACHINE_MILD, 30))
UNKNOWN_FIBRE_WASH: Fact[WashLimit] = common(_limit(WashMethod.SPOT, 30))
ONLY_DRY_CLEANED: Fact[bool] = common(True)
COLOUR_TEST: Fact[bool] = published(True, CCI_COLOUR_TEST)
HIDE_UNWASHED: Fact[bool] = common(True)
HIDE_LABEL_WASH: Fact[WashLimit] = common(WashLimit(WashMethod.NONE, None, None))
TOO_WEAK_TO_CLEAN: Fact[bool] = common(True)
MOST_DELICATE_GOVERNS: Fact[bool] = common(True)
GIVERS_WISH: Fact[bool] = common(True, "the giver's wish")

BLOOD_HOTTEST: Fact[bool] = published(True, HSE_BLOOD)
BLOOD_TARGET_C: Fact[int] = published(60, NHS_WASHING)
BLOOD_LEAST_C: Fact[int] = published(40, HSE_BLOOD)
COLD_RINSE_FIRST: Fact[bool] = common(True)
AIR_AFTER_DRY_CLEANING: Fact[bool] = memory(True)

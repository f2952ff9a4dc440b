"""Facts about drying: what the construction asks for, and what never goes in a dryer."""

from inventory.advice.facts import Fact, common, memory
from inventory.advice.methods import DryMethod

DRY_WHY: dict[DryMethod, str] = {
    DryMethod.FLAT: "is weak or heavy when wet and dries flat",
    DryMethod.LINE: "bears hanging wet",
    DryMethod.NONE: "is not wetted",
}

FORM_DRY: dict[str, Fact[DryMethod]] = {
    "chiffon": common(DryMethod.FLAT),
    "lace": common(DryMethod.FLAT),
    "jersey": common(DryMethod.FLAT),
    "rib": common(DryMethod.FLAT),
    "interlock": common(DryMethod.FLAT),
    "sweater-knit": common(DryMethod.FLAT),
    "felt": common(DryMethod.FLAT),
    "quilted": common(DryMethod.FLAT),
    "sequinned": common(DryMethod.FLAT),
    "velvet": common(DryMethod.LINE),
    "fur-fabric": common(DryMethod.LINE),
}

FORM_DRY_WHY: dict[str, str] = {
    "chiffon": "Sheer cloth stretches out of true when it hangs wet.",
    "lace": "Lace stretches out of true when it hangs wet.",
    "jersey": "A knit grows longer when it hangs wet.",
    "rib": "A knit grows longer when it hangs wet.",
    "interlock": "A knit grows longer when it hangs wet.",
    "sweater-knit": "A knit grows longer when it hangs wet.",
    "felt": "Felt dries in the shape it is laid in.",
    "quilted": "Wet padding slips down when it hangs.",
    "sequinned": "The weight of the sequins pulls wet cloth down.",
    "velvet": "The pile is crushed where it lies on itself.",
    "fur-fabric": "The pile is crushed where it lies on itself.",
}

# What a tumble dryer harms whatever a label says, by family, fibre and construction.
NEVER_TUMBLED: dict[str, dict[str, Fact[bool]]] = {
    "family": {"protein": common(True), "leather and fur": common(True)},
    "fibre": {
        "acetate": common(True),
        "chlorofibre": common(True),
        "modacrylic": common(True),
        "elastodiene": common(True),
        "polypropylene": common(True),
        "polyethylene": common(True),
        "metallised": common(True),
    },
    "construction": {
        "velvet": common(True),
        "lace": common(True),
        "chiffon": common(True),
        "sweater-knit": common(True),
        "felt": common(True),
        "coated": common(True),
        "fur-fabric": common(True),
        "sequinned": common(True),
        "pleated": common(True),
    },
}

CREAM_UNTUMBLED: Fact[bool] = memory(True)
UNKNOWN_DRY: Fact[DryMethod] = common(DryMethod.FLAT)
FRAIL_DRY: Fact[DryMethod] = common(DryMethod.FLAT)
NOT_WETTED: Fact[bool] = common(True)
SHADE_FOR_PROTEIN: Fact[bool] = common(True)

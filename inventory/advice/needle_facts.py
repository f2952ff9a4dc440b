"""Facts about which needle suits which cloth: points, sizes by weight, special cloths.

Sizes are Nm, thinnest and thickest. Masses part light, medium and heavy cloth at 150
and 300 g/m², a trade figure.
"""

from inventory.advice.facts import Fact, common, published, trade
from inventory.advice.sources import NEEDLE_ENTRY

type Sizes = tuple[int, int]

LIGHT_UNDER_G_M2: Fact[float] = trade(150.0)
HEAVY_FROM_G_M2: Fact[float] = trade(300.0)
SPRINGY_FROM_PCT: Fact[float] = trade(50.0)
DENIM_MEDIUM_FROM_G_M2: Fact[float] = common(270.0)
DENIM_HEAVY_FROM_G_M2: Fact[float] = common(410.0)

WOVEN_SIZES: dict[str, Fact[Sizes]] = {
    "light": published((65, 75), NEEDLE_ENTRY),
    "medium": published((80, 90), NEEDLE_ENTRY),
    "heavy": published((100, 110), NEEDLE_ENTRY),
}
DENIM_SIZES: dict[str, Fact[Sizes]] = {
    "light": published((70, 90), NEEDLE_ENTRY),
    "medium": published((100, 110), NEEDLE_ENTRY),
    "heavy": published((110, 140), NEEDLE_ENTRY),
}
KNIT_SIZES: dict[str, Fact[Sizes]] = {
    "light": trade((70, 80)),
    "medium": trade((75, 90)),
    "heavy": trade((90, 100)),
}
FINE_SIZES: Fact[Sizes] = published((65, 70), NEEDLE_ENTRY)
SILK_SIZES: Fact[Sizes] = trade((60, 70))
STRETCH_SIZES: Fact[Sizes] = common((75, 90))
LEATHER_SIZES: Fact[Sizes] = trade((75, 110))
UNKNOWN_SIZES: Fact[Sizes] = common((70, 80))

POINT_WHY: dict[str, Fact[str]] = {
    "universal": trade("a slightly rounded point suits most woven cloth"),
    "ball": trade("a ball point slips between the yarns of a knit instead of cutting them"),
    "stretch": trade("a stretch needle prevents skipped stitches in springy cloth"),
    "microtex": trade("a sharp point makes clean small holes in fine, tight cloth"),
    "jeans": trade("a stiff, sharp shaft goes through dense cloth without bending"),
    "leather": trade("a wedge point cuts its way through real leather"),
}
NOT_FOR_IMITATIONS: Fact[bool] = trade(True)
NEW_NEEDLE: Fact[bool] = common(True)

FIXED_POINTS: dict[str, tuple[str, Fact[Sizes]]] = {
    "satin": ("microtex", common((60, 75))),
    "chiffon": ("microtex", trade((60, 70))),
    "lace": ("microtex", common((60, 75))),
    "coated": ("microtex", common((70, 90))),
    "fur-fabric": ("universal", common((90, 100))),
    "velvet": ("universal", common((70, 80))),
    "sequinned": ("universal", common((70, 80))),
    "quilted": ("universal", common((80, 90))),
}
MICROTEX_COATED_WHY: Fact[str] = common("each hole in a coating stays, so it must be small")

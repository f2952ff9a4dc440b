"""Facts about interfacing: what is never fused, which weights exist, how fusing is done.

No published table of interfacing weights was found; the classes are from memory.
"""

from inventory.advice.facts import Fact, common, memory, published, trade
from inventory.advice.sources import FUSING_FACTS, INTERFACINGS, SEWING_TEXTBOOK

# Constructions that are never fused, and why.
NEVER_FUSED_FORMS: dict[str, Fact[str]] = {
    "velvet": trade("heat and pressure crush the pile"),
    "corduroy": trade("heat and pressure crush the pile"),
    "towelling": trade("heat and pressure crush the loops"),
    "fleece": trade("heat and pressure crush the pile"),
    "fur-fabric": trade("heat mats the pile and the bond does not hold"),
    "brocade": trade("heat flattens the raised threads and the bond does not hold"),
    "sequinned": trade("heat melts or loosens the sequins and beads"),
    "chiffon": trade("the adhesive shows or strikes through sheer cloth"),
    "lace": memory("the adhesive comes through the holes"),
    "coated": trade("the bond does not hold on a coating, and the coating melts"),
    "pleated": common("fusing presses the pleats flat for good"),
    "quilted": common("the heat flattens the padding"),
    "leather": common("the heat shrinks and hardens leather"),
    "suede": common("the heat shrinks and hardens suede"),
    "rib": common("a rib held flat by fusing loses its spring and ripples"),
    "sweater-knit": common("the bond holds only the tops of the stitches, and flattens them"),
}

ANTIQUE_UNFUSED: Fact[bool] = memory(True)
WEAK_UNFUSED: Fact[bool] = common(True)
SILK_SEWN_IN: Fact[bool] = memory(True)
UNKNOWN_SEWN_IN: Fact[bool] = common(True)
RUBBER_PRINT_UNFUSED: Fact[bool] = common(True)

# In g/m²: the cloth mass from which a class serves, and the class's own lightest and heaviest.
INTERFACING_CLASSES: tuple[Fact[tuple[float, float, float]], ...] = (
    memory((0.0, 15.0, 25.0)),
    memory((60.0, 25.0, 40.0)),
    memory((150.0, 40.0, 70.0)),
    memory((300.0, 70.0, 120.0)),
)

HEAVIEST_BACKING_G_M2: Fact[float] = memory(120.0)
NEVER_HEAVIER: Fact[bool] = published(True, INTERFACINGS)
TEST_FIRST: Fact[bool] = published(True, INTERFACINGS)
FITS_KNITS: Fact[bool] = published(True, SEWING_TEXTBOOK)
WOVEN_ON_GRAIN: Fact[bool] = published(True, SEWING_TEXTBOOK)
SAME_CARE: Fact[bool] = published(True, SEWING_TEXTBOOK)
PRE_SHRINK: Fact[bool] = published(True, FUSING_FACTS)
STOPS_STRETCH: Fact[bool] = published(True, INTERFACINGS)
FIRM_ENOUGH: Fact[bool] = common(True)
PILE_GLUED_BACK: Fact[bool] = common(True)
FUSE_SECONDS: Fact[tuple[int, int]] = trade((10, 15))
FUSE_LEAST_C: Fact[int] = trade(110)
# Home fusing is done on the wool setting: two dots.
FUSE_MOST_C: Fact[int] = trade(150)
STRETCH_LIMIT_PCT: Fact[float] = common(5.0)
STRETCHES_FROM_PCT: Fact[float] = common(15.0)
TOY_HOLDS_SHAPE: Fact[bool] = common(True)

# Cloths firm enough to be made up alone, unless they stretch or are weak.
FIRM_FORMS = frozenset(
    {
        "denim",
        "corduroy",
        "towelling",
        "felt",
        "quilted",
        "coated",
        "leather",
        "suede",
        "fur-fabric",
        "fleece",
    }
)
HEAVY_FROM_G_M2: Fact[float] = trade(300.0)

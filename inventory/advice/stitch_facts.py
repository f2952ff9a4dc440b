"""Facts about stitch length and thread. Toy lengths are from memory and say so."""

from inventory.advice.facts import Fact, common, memory, trade

TOY_SEAM_MM: Fact[tuple[float, float]] = memory((1.8, 2.0))
TIGHT_CURVE_MM: Fact[float] = memory(1.5)
STRAIN_SECOND_ROW: Fact[bool] = memory(True)
FINE_CLOTH_MM: Fact[tuple[float, float]] = trade((1.0, 2.0))
REGULATION_MM: Fact[tuple[float, float]] = trade((2.0, 3.0))
REINFORCED_MM: Fact[float] = trade(1.5)
HEAVY_SEAM_MM: Fact[float] = common(2.5)
HIDE_SEAM_MM: Fact[float] = common(3.0)
HIDE_CURVE_MM: Fact[float] = common(2.5)
WEAK_SEAM_MM: Fact[float] = common(2.5)
ZIGZAG_IN_STRETCH: Fact[bool] = common(True)

POLYESTER_THREAD: Fact[str] = common("all-purpose polyester thread")
FINE_THREAD: Fact[str] = trade("fine polyester or silk thread")
STRONG_THREAD: Fact[str] = trade("strong polyester thread")
LEATHER_THREAD: Fact[str] = memory("bonded polyester or nylon thread")
THREAD_FITS_EYE: Fact[bool] = trade(True)
SEAM_BREAKS_FIRST: Fact[bool] = common(True)

"""Facts about shrinkage beyond the fibre's own: unknown cloth, special constructions.

All are ranges in per cent for the first wash, from least to most; measured shrinkage
always takes their place. Fibre ranges are in ``fibre_facts.py``.
"""

from inventory.advice.facts import Fact, common, memory, published, trade
from inventory.advice.methods import Shrink
from inventory.advice.sources import SHRINK_METHOD

UNKNOWN_WOVEN: Fact[Shrink] = common(Shrink((0, 5), (0, 5)))
UNKNOWN_KNIT: Fact[Shrink] = common(Shrink((0, 8), (0, 5)))

# Cotton cloths that shrink otherwise than plain cotton.
COTTON_FORMS: dict[str, Fact[Shrink]] = {
    "denim": memory(Shrink((0, 10), (0, 5))),
    "flannel": memory(Shrink((5, 10), (2, 10))),
    "sweater-knit": common(Shrink((2, 8), (2, 5))),
    "seersucker": common(Shrink((2, 7), (2, 7))),
    "towelling": common(Shrink((2, 8), (2, 7))),
}

# What pressing and fusing alone may take out of cloth that is never washed.
UNWASHED: Fact[Shrink] = trade(Shrink((0, 2), (0, 2)))
LEFT_ALONE: Fact[bool] = common(True)
HIDE: Fact[Shrink] = common(Shrink((0, 0), (0, 0)))
DRY_CLEANED_WOVEN: Fact[Shrink] = trade(Shrink((0, 3), (0, 3)))
DRY_CLEANED_KNIT: Fact[Shrink] = trade(Shrink((0, 5), (0, 5)))
FELTED: Fact[Shrink] = memory(Shrink((0, 11), (0, 11)))

MEASURE_INSTEAD: Fact[bool] = published(True, SHRINK_METHOD)
SHARES_WEIGH: Fact[bool] = common(True)
EARLIER_WASHES: Fact[bool] = common(True)

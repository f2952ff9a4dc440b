"""The patterns that come with the program."""

from functools import cache

from planning.drafting.bear import bear
from planning.drafting.bear_seams import SEAMS
from planning.drafting.pieces import DraftPattern

BUILT_IN_HEIGHTS_MM = (150.0, 230.0, 300.0, 380.0, 460.0)


@cache
def built_in_pattern() -> DraftPattern:
    """Return the classic bear in its five sizes. Frozen, so one copy serves everyone."""
    return DraftPattern(
        key="bearing-cloth-bear",
        name="Bearing Cloth bear",
        description=(
            "A standing bear with a long muzzle, a round tummy and paw pads, drafted from body "
            "measures. Ten kinds of piece; arms and legs are closed limbs joined to the body."
        ),
        sizes=tuple(bear(height_mm) for height_mm in BUILT_IN_HEIGHTS_MM),
        seams=SEAMS,
    )

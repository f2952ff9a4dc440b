"""What washes were seen to take from the cloth, from the lengths marked before and after.

Knows how washes add up and how a measured loss is told from a predicted one. Refuses to count
growth: cloth that came out longer may relax again, so it is counted as unchanged until the panel
itself is measured anew.
"""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from datetime import date
from typing import Literal

from inventory.measuring.shrinkage import Shrinkage
from inventory.measuring.usable import TakenOff, UsableCloth
from inventory.models import WashEvent

type Way = Literal["along", "across"]
WAYS: tuple[Way, ...] = ("along", "across")
PREDICTED, MEASURED = "Expected shrinkage in the wash", "Shrinkage measured in the wash"


@dataclass(frozen=True, slots=True)
class MeasuredShrinkage(Shrinkage):
    """A shrinkage that was measured both ways, not foretold: both ends of each range agree."""


def washes_since(washes: Iterable[WashEvent], day: date) -> list[WashEvent]:
    """The washes that still stand, on or after a day."""
    return [wash for wash in washes if wash.withdrawn_at is None and wash.washed_on >= day]


def measured_pct(washes: Sequence[WashEvent], way: Way) -> float | None:
    """What the washes took together in percent, along or across; None where none was measured."""
    changes = [getattr(wash, f"{way}_change_pct") for wash in washes]
    kept = [1 + change / 100 for change in changes if change is not None]
    return max(0.0, 100 * (1 - math.prod(kept))) if kept else None


def as_measured(cloth: UsableCloth) -> UsableCloth:
    """The same cloth, its shrinkage called measured."""
    taken_off = tuple(
        TakenOff(MEASURED, part.area_mm2) if part.reason == PREDICTED else part
        for part in cloth.taken_off
    )
    return replace(cloth, taken_off=taken_off, is_shrinkage_predicted=False)

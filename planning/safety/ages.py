"""Ages and markets: which band of the rules a recipient falls in.

Ages are whole months. The United States ban is for children *under* 36 months (16 CFR 1501), while
its abuse tests run to 18, 36 and 96 months inclusive (16 CFR 1500.51 to .53). In the European Union
and the United Kingdom a soft-filled toy to cuddle counts as for under 36 months whatever its label
says (EN 71-1, scope). The same paper draws the line for collectors' pieces at 14 years.
"""

from enum import Enum
from typing import Literal, get_args

from planning.safety.errors import SafetyError

Market = Literal["us", "eu", "uk"]

BABY_MONTHS = 12
SMALL_PARTS_MONTHS = 36
TESTED_MONTHS = 96
COLLECTOR_MONTHS = 14 * 12
OLDEST_MONTHS = 130 * 12


class Band(Enum):
    """The age bands that the rules tell apart."""

    BABY = "under 12 months"
    TODDLER = "12 to 35 months"
    YOUNG = "3 to 7 years"
    OLDER = "8 to 13 years"
    GROWN = "14 years and over"

    @property
    def is_under_3(self) -> bool:
        """Say whether the small-parts ban covers this band."""
        return self in (Band.BABY, Band.TODDLER)


_UPPER = (
    (BABY_MONTHS, Band.BABY),
    (SMALL_PARTS_MONTHS, Band.TODDLER),
    (TESTED_MONTHS, Band.YOUNG),
    (COLLECTOR_MONTHS, Band.OLDER),
)


def band_of(age_months: int | None) -> Band:
    """Return the band of an age; an age nobody knows counts as the youngest.

    Raises SafetyError for an age below nothing or above 130 years.

    >>> band_of(35).value, band_of(36).value
    ('12 to 35 months', '3 to 7 years')
    """
    if age_months is None:
        return Band.BABY
    if not 0 <= age_months <= OLDEST_MONTHS:
        raise SafetyError(f"An age of {age_months} months is not one the rules know.")
    return next((band for upper, band in _UPPER if age_months < upper), Band.GROWN)


def market_of(name: str) -> Market:
    """Return the market of this name; raises SafetyError for an unknown one.

    >>> market_of("uk")
    'uk'
    """
    known: tuple[Market, ...] = get_args(Market)
    for market in known:
        if market == name:
            return market
    raise SafetyError(f"“{name}” is no market the rules know. Choose one of: us, eu, uk.")


def counts_as_under_3(age_months: int | None, market: Market | None, cuddly: bool) -> bool:
    """Say whether the under-3 rules hold: by age, or because a cuddly toy is presumed so.

    Without a market the strictest holds. A recipient of 14 or over is taken to be a collector.
    """
    band = band_of(age_months)
    return band.is_under_3 or (cuddly and market != "us" and band is not Band.GROWN)

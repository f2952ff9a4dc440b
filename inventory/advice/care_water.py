"""Cold, warm and hot water as the US Care Labeling Rule (16 CFR 423) means them.

The numbers are trade figures; that the rule changed its definitions in 2000 is
published. The bounds are in °F with no gap between them.
"""

import math

from inventory.advice.facts import Fact, trade
from inventory.advice.problems import BadFigure
from inventory.advice.sources import US_WATER_RULE

_SOURCE = f"trade figure for the definitions of {US_WATER_RULE}"

WATER_UP_TO_F: dict[str, Fact[float]] = {
    "cold": trade(86.0, _SOURCE),
    "warm": trade(111.0, _SOURCE),
    "hot": trade(145.0, _SOURCE),
}


def fahrenheit(celsius: float) -> float:
    """A temperature in °C as °F.

    >>> fahrenheit(30)
    86.0
    """
    return celsius * 9 / 5 + 32


def water_class(celsius: float) -> str | None:
    """``cold``, ``warm`` or ``hot``; ``None`` for water hotter than the rule names.

    >>> water_class(40)
    'warm'
    """
    if not math.isfinite(celsius):
        raise BadFigure("The water's temperature must be a number.")
    degrees = fahrenheit(celsius)
    return next((name for name, most in WATER_UP_TO_F.items() if degrees <= most.value), None)

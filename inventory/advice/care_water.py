"""Cold, warm and hot water as the US Care Labeling Rule (16 CFR 423) means them.

That the rule changed its definitions is published (65 Federal Register, 2 August 2000,
doc. 00-19491); the numbers themselves were only found as trade figures. The bounds are
in °F with no gap between them.
"""

import math

from inventory.advice.facts import Fact, trade
from inventory.advice.problems import BadFigure

WATER_UP_TO_F: dict[str, Fact[float]] = {
    "cold": trade(86.0),
    "warm": trade(111.0),
    "hot": trade(145.0),
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

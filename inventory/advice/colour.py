"""The grey scale for change of colour (ISO 105-A02): a colour difference as a grade.

Used to say how far a colour test or a wash has changed a cloth; 5 is no change, 1 the
most. A difference between two grades takes the nearest.
"""

import math

from inventory.advice.facts import Fact, published
from inventory.advice.problems import BadFigure
from inventory.advice.sources import GREY_SCALE

# Grade: CIELAB colour difference of the scale's own pair, best first.
GREY_SCALE_STEPS: dict[str, Fact[float]] = {
    "5": published(0.0, GREY_SCALE),
    "4-5": published(0.8, GREY_SCALE),
    "4": published(1.7, GREY_SCALE),
    "3-4": published(2.5, GREY_SCALE),
    "3": published(3.4, GREY_SCALE),
    "2-3": published(4.8, GREY_SCALE),
    "2": published(6.8, GREY_SCALE),
    "1-2": published(9.6, GREY_SCALE),
    "1": published(13.6, GREY_SCALE),
}


def grey_scale_grade(delta_e: float) -> str:
    """The grade whose own difference is nearest to ``delta_e``, the worse when they tie.

    >>> grey_scale_grade(2.9)
    '3-4'
    """
    if not (math.isfinite(delta_e) and delta_e >= 0):
        raise BadFigure("A colour difference is a number of 0 or more.")
    worst_first = reversed(GREY_SCALE_STEPS.items())
    return min(worst_first, key=lambda step: round(abs(step[1].value - delta_e), 9))[0]

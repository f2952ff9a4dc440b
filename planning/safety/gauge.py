"""The small-parts gauge: a round well with a slanted floor, as in 16 CFR 1501.4 Figure 1.

EN 71-1 and ISO 8124-1 use the same shape. Millimetres, from exact inches. z is measured downwards
from the rim; the floor falls at 45 degrees towards +x. The well is convex and open at the top, so a
rigid part fits just when its convex hull can lie somewhere inside.
"""

import math
from dataclasses import dataclass

INCH_MM = 25.4


@dataclass(frozen=True)
class Gauge:
    """A well of this inner diameter, this deep at the deep side."""

    diameter_mm: float
    deep_mm: float

    @property
    def radius_mm(self) -> float:
        """Half the inner diameter."""
        return self.diameter_mm / 2

    @property
    def middle_mm(self) -> float:
        """The depth under the middle of the rim."""
        return self.deep_mm - self.radius_mm

    @property
    def longest_mm(self) -> float:
        """The longest straight line inside: from the shallow rim to the deep corner."""
        return math.hypot(self.diameter_mm, self.deep_mm)

    @property
    def volume_mm3(self) -> float:
        """The volume under the rim.

        >>> round(GAUGE.volume_mm3 / 1000, 2)
        32.68
        """
        return math.pi * self.radius_mm**2 * self.middle_mm


GAUGE = Gauge(1.25 * INCH_MM, 2.25 * INCH_MM)
# Calipers and moulded parts vary, so a part is treated as small when it fits a well 1 mm larger.
GUARD_MM = 1.0
ENLARGED = Gauge(GAUGE.diameter_mm + GUARD_MM, GAUGE.deep_mm + GUARD_MM)

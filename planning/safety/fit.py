"""Whether a part fits the small-parts gauge, and by which argument.

The order: three things that make it impossible, then standing upright, then every way of turning.
A part that fits only the gauge enlarged by the guard band is borderline and is treated as small.
"""

from dataclasses import dataclass

from planning.safety.gauge import ENLARGED, GAUGE, Gauge
from planning.safety.parts import Part, Sphere
from planning.safety.sweep import narrowest_radius_mm

SAME_MM = 1e-6
LIGNE_MM = 25.4 / 40  # button sizes: 40 lignes to the inch, from memory


@dataclass(frozen=True)
class Fit:
    """The gauge's answer. ``is_small`` is the one to act on: borderline parts count as small."""

    fits: bool
    borderline: bool
    because: str

    @property
    def is_small(self) -> bool:
        """Say whether the part must be treated as a small part."""
        return self.fits or self.borderline


def fit_of(part: Part) -> Fit:
    """Hold a part against the gauge and, if it does not fit, against the enlarged one."""
    fits, because = fits_gauge(part, GAUGE)
    if fits:
        return Fit(True, False, because)
    nearly, _ = fits_gauge(part, ENLARGED)
    if nearly:
        because += " It fits a gauge 1 mm larger, so it is borderline and treated as small."
    return Fit(False, nearly, because)


def fit_of_diameter(diameter_mm: float) -> Fit:
    """Judge a button of unknown thickness by its width alone: all but the widest count as small.

    >>> fit_of_diameter(24 * LIGNE_MM).is_small, fit_of_diameter(33).is_small
    (True, False)
    """
    fits = diameter_mm <= GAUGE.diameter_mm
    borderline = not fits and diameter_mm <= ENLARGED.diameter_mm
    words = "no wider than" if fits else "within 1 mm of" if borderline else "wider than"
    return Fit(fits, borderline, f"It is {diameter_mm:g} mm wide, {words} the gauge's rim.")


def fits_gauge(part: Part, gauge: Gauge) -> tuple[bool, str]:
    """Say whether a part fits one gauge, with the reason in a sentence."""
    impossible = _impossible(part, gauge)
    if impossible:
        return False, impossible
    if part.stands_in(gauge):
        return True, "It fits inside the gauge without tilting."
    if isinstance(part, Sphere):
        return False, "It is a ball wider than the gauge."
    spare_mm = gauge.radius_mm - narrowest_radius_mm(part, gauge)
    if spare_mm >= -SAME_MM:
        return True, f"Tilted, it fits inside the gauge with {2 * spare_mm:.1f} mm to spare across."
    return False, f"However it is turned, it is at least {-2 * spare_mm:.1f} mm too wide across."


def _impossible(part: Part, gauge: Gauge) -> str:
    if part.disc_mm > gauge.diameter_mm + SAME_MM:
        return (
            f"It is {part.disc_mm:g} mm wide and cannot pass the gauge's rim of "
            f"{gauge.diameter_mm:g} mm any way round."
        )
    if part.longest_mm > gauge.longest_mm + SAME_MM:
        return (
            f"It is {part.longest_mm:.1f} mm long; nothing longer than "
            f"{gauge.longest_mm:.1f} mm can lie in the gauge."
        )
    if part.hull_mm3 > gauge.volume_mm3:
        return "It takes up more room than the gauge has."
    return ""

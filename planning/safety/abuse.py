"""The pulls, twists and drops a toy's parts must survive, as figures for a bench test.

United States: 16 CFR 1500.51 to .53, by age, upper bounds included. Europe and the United Kingdom:
EN 71-1, by the size of the part. Forces in newtons. Testing at home teaches; it proves nothing in
law.
"""

from dataclasses import dataclass

from planning.safety import sources
from planning.safety.errors import SafetyError

N_PER_LBF = 4.4482216152605  # by definition: 0.45359237 kg under standard gravity
NM_PER_IN_LBF = N_PER_LBF * 0.0254

GRASPABLE_MM = (
    6.0  # EN 71-1: a part no larger than this is pulled with 50 N, a larger one with 90 N
)


@dataclass(frozen=True)
class AbuseLimits:
    """What a part must survive: 5 s to the full load, then held 10 s.

    ``compression_n`` and the drops are None where no figure was found.
    """

    torque_nm: float
    tension_n: float
    seam_n: float
    compression_n: float | None
    drops: int
    drop_height_m: float
    source: str


def _us(
    torque_in_lbf: int, pull_lbf: int, press_lbf: int, drops: int, metres: float
) -> AbuseLimits:
    return AbuseLimits(
        torque_in_lbf * NM_PER_IN_LBF,
        pull_lbf * N_PER_LBF,
        pull_lbf * N_PER_LBF,
        press_lbf * N_PER_LBF,
        drops,
        metres,
        sources.US_ABUSE,
    )


US_ROWS = (  # up to and including this many months
    (18, _us(2, 10, 20, 10, 1.37)),
    (36, _us(3, 15, 25, 4, 0.92)),
    (96, _us(4, 15, 30, 4, 0.92)),
)


def us_abuse_limits(age_months: int) -> AbuseLimits:
    """Return the United States row for an age.

    Raises SafetyError past 96 months, where these sections end, and below nothing.

    >>> round(us_abuse_limits(18).tension_n, 1), round(us_abuse_limits(36).tension_n, 1)
    (44.5, 66.7)
    """
    for months, limits in US_ROWS:
        if 0 <= age_months <= months:
            return limits
    raise SafetyError(f"The use-and-abuse tests run from birth to 96 months, not {age_months}.")


def en71_abuse_limits(part_mm: float) -> AbuseLimits:
    """Return the European and United Kingdom figures for a part of this largest reachable size.

    Raises SafetyError unless the size is positive.

    >>> en71_abuse_limits(6).tension_n, en71_abuse_limits(6.1).tension_n
    (50.0, 90.0)
    """
    if not part_mm > 0:
        raise SafetyError("The size of the part must be more than nothing.")
    pull_n = 50.0 if part_mm <= GRASPABLE_MM else 90.0
    return AbuseLimits(0.34, pull_n, 70.0, None, 5, 0.85, sources.EN71_PULL)

"""Children's sleepwear as cloth: what its flame rules mean for a toy made of it.

United States sleepwear in sizes 0 to 14 must resist flame (16 CFR 1615 and 1616); TRIS, a finish of
the early and mid 1970s, was banned in 1977.
"""

from planning.safety import sources
from planning.safety.counts import Finding

TRIS_ERA = range(1970, 1978)


def sleepwear_check(year: int | None, for_child: bool) -> Finding:
    """Say whether a child's sleepwear of about this year may become a child's toy.

    An unknown year is taken as possibly from the 1970s only by warning, not by refusal.
    """
    if year is not None and year in TRIS_ERA:
        return Finding(
            not for_child,
            "Children's sleepwear of the early to mid 1970s may be finished with TRIS. Do not use "
            "it for a child's toy.",
            sources.TRIS,
        )
    doubt = " If it may be from the 1970s, do not use it for a child." if year is None else ""
    return Finding(
        True,
        "Flame rules for sleepwear apply to the garment; they do not make the toy fire-safe."
        + doubt,
        sources.SLEEPWEAR,
    )

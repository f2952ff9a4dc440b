"""Needles, pins, cords and ribbons: what is counted and measured at the bench.

A needle or pin unaccounted for stops the keepsake (16 CFR 1500.18(a)(3) bans parts inside a stuffed
animal that can puncture). Cords are held to the strictest of the limits found.
"""

from dataclasses import dataclass

from planning.safety import sources
from planning.safety.errors import SafetyError

LONGEST_TAIL_MM = 220.0
LONGEST_LOOP_MM = 360.0

SWEEP = (
    "Run a strong magnet over the toy and squeeze every part flat before and after stuffing. A "
    "magnet does not find brass, nickel silver or some stainless steel."
)


@dataclass(frozen=True)
class Finding:
    """Whether work may go on, and what to do."""

    ok: bool
    text: str
    source: str


def count_check(out: int, back: int) -> Finding:
    """Compare pins and needles handed out with those back in the box.

    Raises SafetyError for a count below nothing.
    """
    if out < 0 or back < 0:
        raise SafetyError("A count of pins and needles cannot be below nothing.")
    if out == back:
        return Finding(True, f"All {out} pins and needles are back. {SWEEP}", sources.HOUSE_RULE)
    gap = f"{out - back} missing" if out > back else f"{back - out} more than went out"
    return Finding(
        False,
        f"{out} pins and needles went out and {back} came back: {gap}. Do not hand the keepsake "
        "over until every one is found.",
        sources.PUNCTURE,
    )


def needle_check(broken: bool, all_fragments_found: bool) -> Finding:
    """Say whether work may go on after a needle broke."""
    if broken and not all_fragments_found:
        return Finding(
            False,
            "A piece of a broken needle is missing. Unpick and stuff anew, or make a sealed "
            "display piece for a grown person.",
            sources.PUNCTURE,
        )
    return Finding(True, SWEEP, sources.HOUSE_RULE)


def cord_check(tail_mm: float = 0.0, loop_mm: float = 0.0) -> Finding:
    """Hold the longest free end and the way round the longest loop to the limits.

    Raises SafetyError for a length below nothing.
    """
    if not (tail_mm >= 0 and loop_mm >= 0):
        raise SafetyError("A length of ribbon or cord cannot be below nothing.")
    if tail_mm > LONGEST_TAIL_MM:
        return Finding(
            False,
            f"A free end of {tail_mm:g} mm is over {LONGEST_TAIL_MM:g} mm. Shorten it or sew it "
            "down.",
            sources.EN71_CORDS,
        )
    if loop_mm > LONGEST_LOOP_MM:
        return Finding(
            False,
            f"A loop of {loop_mm:g} mm round is over {LONGEST_LOOP_MM:g} mm. Sew it closed.",
            sources.US_CORDS,
        )
    return Finding(
        True,
        "Free ends and loops are short enough. Sew a bow through its knot and both ends.",
        sources.EN71_CORDS,
    )

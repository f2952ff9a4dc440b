"""The cautions a keepsake's page always carries, by recipient, purpose and market.

Nothing switches them off but the facts: a display piece for a grown person needs fewer, a baby's
bear needs the most. They inform; they never certify.
"""

from dataclasses import dataclass
from typing import Literal

from planning.safety import sources
from planning.safety.ages import BABY_MONTHS, Band, Market, band_of, counts_as_under_3
from planning.safety.counts import SWEEP
from planning.safety.laws import DEFER

Purpose = Literal["toy", "display"]
Weight = Literal["stop", "take care", "note"]


@dataclass(frozen=True)
class Caution:
    """One caution: its kind, how heavy it weighs, the sentence, and where it comes from."""

    kind: str
    weight: Weight
    text: str
    source: tuple[str, ...]


SLEEP = Caution(
    "sleep",
    "stop",
    "Keep it out of the cot, the pram's sleeping space and the car seat until the first birthday: "
    "for the shelf, or for a cuddle with someone awake beside.",
    (sources.SAFE_SLEEP_US, sources.SAFE_SLEEP_UK),
)
NEEDLES = Caution(
    "needles",
    "stop",
    "Count pins and needles out and in. One that is missing, or a piece of one, stops the keepsake "
    f"from being given. {SWEEP}",
    (sources.PUNCTURE, sources.HOUSE_RULE),
)
LAW = Caution("law", "note", DEFER, (sources.HOUSE_RULE,))
MAGNETS_AND_CELLS = Caution(
    "magnets",
    "stop",
    "No magnets, magnetic snaps or badges, and no button cells, on or in a child's toy.",
    (sources.MAGNETS, sources.BUTTON_CELLS),
)
CORDS = Caution(
    "cords",
    "stop",
    "Take out drawstrings, cords and toggles. No free ribbon end over 220 mm, no loop over 360 mm "
    "round; sew a bow through its knot and both ends.",
    (sources.EN71_CORDS, sources.US_CORDS),
)
SMALL_PARTS_BANNED = Caution(
    "small parts",
    "stop",
    "No buttons, hard eyes, zips, beads, sequins or bells: embroider the face or sew on cloth.",
    (sources.SMALL_PARTS_BAN, sources.GAUGE, sources.HOUSE_RULE),
)
SMALL_PARTS_TESTED = Caution(
    "small parts",
    "take care",
    "Hard parts only through backed cloth with strong thread, twisted and pulled before it is "
    "given; keep it from younger children in the house.",
    (sources.US_ABUSE, sources.EN71_PULL),
)
DISPLAY = Caution(
    "display",
    "take care",
    "A display keepsake, not a toy: keep it away from children under 3. A cuddly look can still "
    "make it a toy in law.",
    (sources.HOUSE_RULE, sources.UK_REGULATIONS),
)
PRESUMED_YOUNG = Caution(
    "age",
    "note",
    "In the European Union and the United Kingdom a cuddly toy counts as meant for under 36 "
    "months, whatever age is written on it.",
    (sources.EN71_CUDDLY,),
)


def cautions_for(
    recipient_age_months: int | None,
    purpose: Purpose = "toy",
    market: Market | None = None,
    child_under_3_near: bool = False,
) -> tuple[Caution, ...]:
    """Return the cautions for one keepsake, heaviest first.

    An unknown age counts as a baby's, an unknown market as the strictest, and a child under 3 in
    the house brings the under-3 rules whoever it is for. Raises SafetyError for an impossible age.
    """
    band = band_of(recipient_age_months)
    is_display = purpose == "display" and band is Band.GROWN and not child_under_3_near
    found = [NEEDLES]
    if recipient_age_months is None or recipient_age_months < BABY_MONTHS:
        found.append(SLEEP)
    if is_display:
        found.append(DISPLAY)
    else:
        found += [*_for_play(recipient_age_months, market, child_under_3_near), CORDS]
        if band is not Band.GROWN or child_under_3_near:
            found.append(MAGNETS_AND_CELLS)
    found.append(LAW)
    return tuple(sorted(found, key=lambda caution: _ORDER.index(caution.weight)))


_ORDER = ("stop", "take care", "note")


def _for_play(
    age_months: int | None, market: Market | None, child_under_3_near: bool
) -> tuple[Caution, ...]:
    if child_under_3_near or band_of(age_months).is_under_3:
        return (SMALL_PARTS_BANNED,)
    if counts_as_under_3(age_months, market, cuddly=True):
        return (SMALL_PARTS_BANNED, PRESUMED_YOUNG)
    return (SMALL_PARTS_TESTED,)

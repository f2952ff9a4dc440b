"""Which laws a maker should look up, by market, place and day; never a statement of compliance.

Facts with their dates. The program does not know where a keepsake is made, sold and given; every
answer ends by sending the maker to the local law.
"""

from dataclasses import dataclass
from datetime import date

from planning.safety import sources
from planning.safety.ages import Market

EU_CHANGE = date(2030, 8, 1)
STATES = {"PA": sources.PENNSYLVANIA, "MA": sources.STATE_LAWS, "OH": sources.STATE_LAWS}
DEFER = (
    "This is information, not legal advice. Check the law where the keepsake is made, sold and "
    "given, and ask someone qualified."
)


@dataclass(frozen=True)
class LawNote:
    """One thing to look up, and where."""

    text: str
    source: str


def laws_for(market: Market, on: date, place: str = "") -> tuple[LawNote, ...]:
    """Return what to look up for a market on a day, and for a United States state in ``place``."""
    if market == "us":
        notes = (*_united_states(), *_state(place))
    elif market == "eu":
        notes = (_european_union(on),)
    else:
        notes = (_united_kingdom(),)
    return (*notes, LawNote(DEFER, sources.HOUSE_RULE))


def _united_states() -> tuple[LawNote, ...]:
    return (
        LawNote(
            "Anything for children of 12 or under that is sold or donated needs a certificate and "
            "a tracking label; small workshops are spared some of the testing. A commission for "
            "money generally counts, a gift within the family generally does not: ask.",
            sources.US_DUTIES,
        ),
    )


def _state(place: str) -> tuple[LawNote, ...]:
    state = place.strip().upper()
    if state not in STATES:
        return ()
    reach = "made there or meant for sale, gift or use there" if state == "PA" else "sold there"
    return (
        LawNote(
            f"{state} has a law of its own on stuffed toys {reach}: makers register and label. A "
            "bear of worn clothes cannot truthfully carry a tag that says all new material.",
            STATES[state],
        ),
    )


def _european_union(on: date) -> LawNote:
    if on >= EU_CHANGE:
        return LawNote(
            "Toys fall under Regulation (EU) 2025/2509, which also reaches things that carers can "
            "be expected to give for play.",
            sources.EU_REGULATION,
        )
    return LawNote(
        "Toys for under-14s fall under Directive 2009/48/EC until 31 July 2030, then under "
        "Regulation (EU) 2025/2509. A cuddly toy counts as for under 36 months.",
        sources.EU_DIRECTIVE,
    )


def _united_kingdom() -> LawNote:
    return LawNote(
        "Toys fall under the Toys (Safety) Regulations 2011. In Great Britain the UKCA or the CE "
        "mark is accepted; Northern Ireland has rules of its own. The words “not a toy” do not "
        "settle what it is.",
        sources.UK_REGULATIONS,
    )

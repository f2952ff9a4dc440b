"""What may be kept on or added to a keepsake, by age: eyes, buttons, zips, ribbons, magnets.

A table of this program's own rules, built on the small-parts ban, the cord limits and the tests;
the answer for a keepsake is the strictest of its features. Display pieces for grown people are
free, with cautions.
"""

from collections.abc import Iterable
from dataclasses import dataclass

from planning.safety import sources
from planning.safety.ages import Band, Market, band_of, counts_as_under_3
from planning.safety.errors import SafetyError
from planning.safety.use import Answer, Use

R, T, A = Use.REFUSED, Use.MUST_TEST, Use.ALLOWED


@dataclass(frozen=True)
class Feature:
    """A kind of feature with its verdict under 3, from 3 to 7, from 8 to 13, and from 14 years."""

    words: str
    under_3: Use
    young: Use
    older: Use
    grown: Use
    because: str
    source: str

    def use(self, band: Band, as_under_3: bool) -> Use:
        """Return the verdict for a band, or that for under 3 where it counts as such."""
        if as_under_3:
            return self.under_3
        return {Band.YOUNG: self.young, Band.OLDER: self.older}.get(band, self.grown)


_HOUSE, _BAN = sources.HOUSE_RULE, sources.SMALL_PARTS_BAN

FEATURES: dict[str, Feature] = {
    "embroidered-face": Feature(
        "embroidered eyes, nose or mouth", A, A, A, A, "Thread cannot come off in a lump.", _HOUSE
    ),
    "sewn-on-cloth": Feature(
        "cloth or felt sewn on", A, A, A, A, "Sew down the whole edge, for all ages.", _HOUSE
    ),
    "hard-eyes": Feature(
        "hard eyes or nose",
        R,
        T,
        A,
        A,
        "A hard eye is a small part once it or the cloth round it gives way; worn cloth is the "
        "weak link, so back it.",
        _BAN,
    ),
    "glued-parts": Feature(
        "glued-on or beaded eyes, wire or pipe cleaners",
        R,
        R,
        R,
        A,
        "Glue, single threads and wire ends do not hold or can prick.",
        sources.PUNCTURE,
    ),
    "small-button": Feature(
        "buttons up to 32.75 mm",
        R,
        T,
        A,
        A,
        "A button of this size fits the small-parts gauge with its guard band. The exemption for "
        "buttons is for clothing, not for toys.",
        _BAN,
    ),
    "large-button": Feature(
        "buttons over 32.75 mm", R, T, A, A, "A large button can chip or pull off.", _HOUSE
    ),
    "zip": Feature(
        "a zip with teeth and pull",
        R,
        T,
        A,
        A,
        "Teeth and end stops come off, the pull is a small part, old brass may hold lead. Sew it "
        "closed and take the pull off for young children.",
        sources.LEAD,
    ),
    "snaps-and-hooks": Feature(
        "snaps, rivets, hooks or buckles",
        R,
        R,
        A,
        A,
        "Small and often sharp once bent open.",
        _BAN,
    ),
    "sequins-and-beads": Feature(
        "sequins, beads, stones, studs or bells",
        R,
        R,
        T,
        A,
        "Small parts on single threads; old crystal may hold lead.",
        sources.LEAD,
    ),
    "badge": Feature(
        "a name badge, brooch, medal or key ring",
        R,
        R,
        R,
        A,
        "A pin point or a small part: for a display case only.",
        sources.PUNCTURE,
    ),
    "ribbon": Feature(
        "ribbon, lace or elastic",
        A,
        A,
        A,
        A,
        "Sew it flat, bow and ends too; no free end over 220 mm, no loop over 360 mm round.",
        sources.EN71_CORDS,
    ),
    "pompom": Feature(
        "a pompom nose or tail",
        R,
        T,
        A,
        A,
        "Pompoms have a pull test of their own (ISO 8124-1 clause 5.24.6.3).",
        "ISO 8124-1:2018 clause 5.24.6.3",
    ),
    "cord": Feature(
        "a cord, drawstring or hanging loop",
        R,
        T,
        A,
        A,
        "Cords can catch round a neck; take drawstrings and toggles out before cutting.",
        sources.EN71_CORDS,
    ),
    "magnet": Feature(
        "magnets or magnetic snaps",
        R,
        R,
        R,
        A,
        "Two swallowed magnets can pinch the gut between them.",
        sources.MAGNETS,
    ),
    "button-cell": Feature(
        "a sound or light module with a button cell",
        R,
        R,
        T,
        A,
        "A swallowed cell burns within hours: the compartment must need a tool.",
        sources.BUTTON_CELLS,
    ),
    "pellets": Feature(
        "pellets or beads as weight",
        R,
        T,
        A,
        A,
        "Only in a closed inner bag, sewn apart from the cover, whose seams are tested.",
        "EN 71-1 clause 5.2 (read second-hand)",
    ),
    "print-or-vinyl": Feature(
        "a rubbery print, vinyl patch or coated cloth",
        R,
        T,
        A,
        A,
        "Old prints crack and may hold softeners: leave it out where a child can mouth it.",
        sources.LEAD,
    ),
}


def age_gate(
    features: Iterable[str],
    age_months: int | None = None,
    market: Market | None = None,
    cuddly: bool = True,
) -> Answer:
    """Return the strictest verdict over the features, with a reason for each that is not allowed.

    Raises SafetyError for an unknown feature or an impossible age. Without an age or a market the
    strictest holds.
    """
    band, as_under_3 = band_of(age_months), counts_as_under_3(age_months, market, cuddly)
    found = [_feature(name) for name in features]
    uses = [feature.use(band, as_under_3) for feature in found]
    strictest = next((use for use in (Use.REFUSED, Use.MUST_TEST) if use in uses), Use.ALLOWED)
    held_back = [
        (f"{feature.words}: {use}. {feature.because}", feature.source)
        for feature, use in zip(found, uses, strict=True)
        if use is not Use.ALLOWED
    ]
    if held_back and as_under_3 and not band.is_under_3:
        held_back.append(
            ("A cuddly toy counts as meant for under 36 months here.", sources.EN71_CUDDLY)
        )
    return Answer(
        strictest,
        tuple(text for text, _ in held_back),
        tuple(dict.fromkeys(source for _, source in held_back)),
    )


def _feature(name: str) -> Feature:
    if name not in FEATURES:
        known = ", ".join(FEATURES)
        raise SafetyError(f"“{name}” is no feature the rules know. Choose from: {known}.")
    return FEATURES[name]

"""Facts about seam allowance and edge finishes, by fray grade and construction."""

from dataclasses import dataclass

from inventory.advice.facts import Fact, common, memory, published, trade
from inventory.advice.sources import INTERFACINGS, SEAM_FINISHES


@dataclass(frozen=True, slots=True)
class EdgeFinish:
    """A finish, the sentence that says how, and why."""

    finish: str
    how: str
    why: str


FINISH_BY_FRAY: dict[int, Fact[EdgeFinish]] = {
    0: trade(EdgeFinish("none", "leave the cut edge as it is", "The edge does not fray.")),
    1: trade(
        EdgeFinish(
            "pink",
            "pink the edge after sewing, or zigzag it",
            "A tight weave hardly frays; pinking alone would not stop a looser one.",
        )
    ),
    2: trade(
        EdgeFinish(
            "zigzag",
            "zigzag or overlock each cut edge before sewing",
            "A zigzag holds an edge that frays moderately.",
        )
    ),
    3: trade(
        EdgeFinish(
            "overlock",
            "overlock each edge, or zigzag it twice, as soon as it is cut",
            "A badly fraying edge is bound or overlocked.",
        )
    ),
    4: memory(
        EdgeFinish(
            "seal-and-overlock",
            "seal each edge as soon as it is cut, with a line of small stitches or a fray "
            "sealer tried on a scrap first, and then overlock it",
            "An edge that unravels is sealed before the toy is turned.",
        )
    ),
}

FORM_FINISH: dict[str, Fact[EdgeFinish]] = {
    "sweater-knit": common(
        EdgeFinish(
            "stitch-then-cut",
            "sew two rows of small zigzag just inside the cutting line, then cut outside them",
            "A cut sweater knit runs as soon as it is handled.",
        )
    ),
    "sequinned": common(
        EdgeFinish(
            "clear-and-zigzag",
            "take the sequins or beads out of the seam allowance by hand, then zigzag it",
            "Cut sequins break the needle and drop off along the seam.",
        )
    ),
    "lace": common(
        EdgeFinish(
            "zigzag-with-backing",
            "zigzag its edge together with the edge of the backing",
            "Lace has no edge of its own to hold a stitch.",
        )
    ),
    "fur-fabric": common(
        EdgeFinish(
            "trim-pile",
            "trim the pile out of the seam allowance, then zigzag the backing",
            "Pile caught in the seam makes it thick and lets it slip.",
        )
    ),
}

TOY_ALLOWANCE_MM: Fact[float] = memory(6.0)
ALLOWANCE_BY_FRAY_MM: dict[int, Fact[float]] = {3: memory(10.0), 4: memory(12.0)}
FORM_ALLOWANCE_MM: dict[str, Fact[float]] = {
    "sweater-knit": common(10.0),
    "sequinned": common(10.0),
    "lace": common(10.0),
    "chiffon": common(10.0),
}
WEAK_ALLOWANCE_MM: Fact[float] = common(10.0)
UNKNOWN_FRAY: Fact[int] = common(3)
CHOOSE_BY_WEAVE: Fact[bool] = published(True, SEAM_FINISHES)
INTERFACING_STOPS_FRAY: Fact[bool] = published(True, INTERFACINGS)

"""The legal names of fibres: those of the EU list, and what the US calls the same fibre.

The EU names are those kept by Regulation (EU) 1007/2011; US names are those of 16 CFR
303. Leather and fur are on neither list.
"""

from inventory.advice.facts import Fact, memory, published, trade
from inventory.advice.sources import (
    AGREED_ALLOWANCES,
    EU_FIBRE_NAMES,
    FTC_ELASTERELL,
    FTC_OLEFIN,
)

EU_NAMES: tuple[Fact[frozenset[str]], ...] = (
    published(
        frozenset(
            {
                "wool",
                "alpaca",
                "llama",
                "camel",
                "cashmere",
                "mohair",
                "angora",
                "vicuna",
                "yak",
                "guanaco",
                "animal hair",
                "horsehair",
                "silk",
                "cotton",
                "kapok",
                "flax",
                "hemp",
                "jute",
                "abaca",
                "ramie",
                "sisal",
                "acetate",
            }
        ),
        EU_FIBRE_NAMES,
    ),
    published(
        frozenset(
            {
                "cupro",
                "modal",
                "protein",
                "triacetate",
                "viscose",
                "acrylic",
                "chlorofibre",
                "modacrylic",
                "polyamide",
                "lyocell",
                "polylactide",
                "polyester",
                "polyethylene",
                "polypropylene",
                "polyurethane",
                "elastodiene",
                "elastane",
                "metallised",
                "elastomultiester",
                "paper",
            }
        ),
        AGREED_ALLOWANCES,
    ),
    memory(frozenset({"aramid", "fluorofibre", "vinylal", "elastolefin"})),
)

# Only where the US name is another word.
US_NAMES: dict[str, Fact[str]] = {
    "flax": memory("linen"),
    "viscose": trade("rayon"),
    "cupro": memory("rayon"),
    "modal": memory("rayon"),
    "protein": memory("azlon"),
    "polyamide": published("nylon", AGREED_ALLOWANCES),
    "polypropylene": memory("olefin"),
    "polyethylene": memory("olefin"),
    "chlorofibre": memory("vinyon"),
    "polylactide": memory("PLA"),
    "fluorofibre": memory("fluoropolymer"),
    "vinylal": memory("vinal"),
    "elastane": trade("spandex"),
    "elastodiene": memory("rubber"),
    "elastolefin": published("lastol", FTC_OLEFIN),
    "elastomultiester": published("elasterell-p", FTC_ELASTERELL),
    "metallised": memory("metallic"),
}

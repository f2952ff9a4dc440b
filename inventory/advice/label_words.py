"""Other words for the care marks: everyday spellings and the US Care Labeling Rule.

The US words for water are taken at the figures of the Federal Trade Commission's own
care card, which are cooler than the tops of the ranges in 16 CFR 423, so a label is
never read as allowing more than it says.
"""

from inventory.advice.facts import Fact, published
from inventory.advice.sources import FTC_CARE_CARD

US_WATER_C: dict[str, Fact[int]] = {
    "cold": published(30, FTC_CARE_CARD),
    "warm": published(40, FTC_CARE_CARD),
    "hot": published(50, FTC_CARE_CARD),
}

_US_CYCLES = {
    "": "",
    " gentle cycle": "-very-mild",
    " delicate cycle": "-very-mild",
    " permanent press": "-mild",
}


def _us_wash_words() -> dict[str, str]:
    words = {}
    for water, tub in US_WATER_C.items():
        words[water] = str(tub.value)
        for cycle, bars in _US_CYCLES.items():
            # No tub of 50 °C has two bars, so the next cooler one stands for it.
            tub_c = 40 if (tub.value, bars) == (50, "-very-mild") else tub.value
            words[f"machine wash {water}{cycle}"] = f"{tub_c}{bars}"
    return words


WASH_WORDS: dict[str, str] = {
    **_us_wash_words(),
    "hand wash": "hand",
    "hand wash only": "hand",
    "hand wash cold": "hand-cool",
    "do not wash": "no",
    "none": "no",
}

BLEACH_WORDS: dict[str, str] = {
    "yes": "any",
    "bleach when needed": "any",
    "only non-chlorine bleach when needed": "oxygen",
    "non-chlorine": "oxygen",
    "do not bleach": "no",
}

DRY_WORDS: dict[str, str] = {
    "no": "no-tumble",
    "do not tumble dry": "no-tumble",
    "tumble dry low": "tumble-low",
    "tumble dry medium": "tumble-low",
    "tumble dry high": "tumble",
    "low": "tumble-low",
    "yes": "tumble",
    "normal": "tumble",
    "line dry": "line",
    "drip dry": "drip-line",
    "dry flat": "flat",
    "line dry in shade": "line-shade",
}

IRON_WORDS: dict[str, str] = {
    "hot iron": "3",
    "high": "3",
    "warm iron": "2",
    "medium": "2",
    "cool iron": "1",
    "low": "1",
    "cool iron no steam": "1-no-steam",
    "do not iron": "no",
    "0": "no",
}

PROFESSIONAL_WORDS: dict[str, str] = {
    "dryclean": "P",
    "dry clean": "P",
    "dryclean only": "P",
    "dry clean only": "P",
    "dryclean petroleum": "F",
    "do not dryclean": "no",
    "do not dry clean": "no",
    "do not wet clean": "no-wet",
}

WORDS: dict[str, dict[str, str]] = {
    "wash": WASH_WORDS,
    "bleach": BLEACH_WORDS,
    "dry": DRY_WORDS,
    "iron": IRON_WORDS,
    "professional": PROFESSIONAL_WORDS,
}

"""Other words for the care marks: everyday spellings and the US Care Labeling Rule.

The US words for water are read at the top of their range as the rule now defines them
(cold to 30 °C, warm to 44 °C, hot to 63 °C), then taken down to the nearest tub that is
not hotter, so a label is never read as allowing more than it says.
"""

# The tub that stands for each word: the hottest one not above the word's own range.
WASH_WORDS: dict[str, str] = {
    "machine wash cold": "30",
    "machine wash warm": "40",
    "machine wash hot": "60",
    "cold": "30",
    "warm": "40",
    "hot": "60",
    "machine wash cold gentle cycle": "30-very-mild",
    "machine wash warm gentle cycle": "40-very-mild",
    "machine wash cold delicate cycle": "30-very-mild",
    "machine wash warm delicate cycle": "40-very-mild",
    "machine wash cold permanent press": "30-mild",
    "machine wash warm permanent press": "40-mild",
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

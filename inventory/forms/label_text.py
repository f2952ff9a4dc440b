"""Reads a care label that has words only, in the words of the US Care Labeling Rule (16 CFR 423).

Takes the longest phrase it knows at each place and names whatever is left over, so that nothing on
a label is silently dropped. The phrases and what they stand for are those of ``inventory.advice``.
"""

import re

from inventory.advice.label import MARKS
from inventory.advice.label_words import WORDS
from inventory.advice.problems import BadLabel, nearest_names

# printed on many labels, and no limit on any of the five marks
SAYS_NOTHING = (
    "as needed",
    "if needed",
    "inside out",
    "remove promptly",
    "reshape",
    "reshape while damp",
    "separately",
    "turn inside out",
    "wash inside out",
    "wash separately",
    "with like colors",
    "with like colours",
)
ALONE = frozenset(
    {"dryclean", "non-chlorine"}
)  # single words that mean one thing wherever they are


def _phrases() -> dict[str, tuple[str, str]]:
    return {
        phrase: (part, mark)
        for part, words in WORDS.items()
        for phrase, mark in words.items()
        if " " in phrase or phrase in ALONE
    }


PHRASES = _phrases()
LONGEST = max(len(phrase.split()) for phrase in (*PHRASES, *SAYS_NOTHING))


def marks_in(text: str) -> dict[str, str]:
    """The marks that the words of a label stand for, by part.

    Raises BadLabel for words that are not understood, with the nearest that are, and for a label
    that says two things about one part. 'Do not tumble dry' beside another way to dry is no such
    thing: the other way is taken.

    >>> marks_in("Machine wash cold, gentle cycle. Do not bleach. Line dry.")
    {'wash': '30-very-mild', 'bleach': 'no', 'dry': 'line'}
    """
    found, rest = _split(text)
    if rest:
        raise BadLabel(f"“{rest[0]}” is not understood.{_offer(rest[0])}")
    marks: dict[str, str] = {}
    for part, mark in found:
        marks[part] = _both(part, marks.get(part), mark)
    return marks


def _both(part: str, one: str | None, other: str) -> str:
    if one is None or one == other:
        return other
    without_tumbling = {one, other} - {"no-tumble"}
    if part == "dry" and len(without_tumbling) == 1:
        (way,) = without_tumbling
        if not way.startswith("tumble"):
            return way
    said = dict(MARKS[part])
    raise BadLabel(f"It says two things: “{said[one]}” and “{said[other]}”. Keep one.")


def _split(text: str) -> tuple[list[tuple[str, str]], list[str]]:
    words = (
        re.sub(r"[^\w\s-]", " ", text.casefold()).replace("non chlorine", "non-chlorine").split()
    )
    found: list[tuple[str, str]] = []
    rest: list[list[str]] = [[]]
    while words:
        phrase = _first_phrase(words)
        if phrase is None:
            rest[-1].append(words.pop(0))
            continue
        if phrase in PHRASES:
            found.append(PHRASES[phrase])
        rest.append([])
        words = words[len(phrase.split()) :]
    return found, [" ".join(part) for part in rest if part]


def _first_phrase(words: list[str]) -> str | None:
    for count in range(min(LONGEST, len(words)), 0, -1):
        phrase = " ".join(words[:count])
        if phrase in PHRASES or phrase in SAYS_NOTHING:
            return phrase
    return None


def _offer(words: str) -> str:
    nearest = nearest_names(words, PHRASES)
    return f" Nearest: {', '.join(nearest)}." if nearest else ""

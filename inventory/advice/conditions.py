"""What a maker may report about the state of a garment, each with its words.

Only the names; what each one changes is in the rules. Grades of fragility and fray are
in ``grades.py``.
"""

from inventory.advice.problems import UnknownName, nearest_names, tidy_name

CONDITIONS: dict[str, str] = {
    "mould": "Mould, or a musty smell",
    "moth": "Moth, carpet beetle, or their holes and cases",
    "mothball": "A smell of mothballs",
    "blood": "Blood or other body fluid",
    "cream": "Soaked with skin cream or ointment",
    "smoke": "A smell of smoke",
    "antique": "Treasured or antique: to be handled as a museum would",
    "shattered": "Splits, cracks or powders when touched",
    "bled": "Its colour has already run",
    "rubber-print": "A rubbery printed picture or lettering",
    "dry-cleaned": "Just back from the dry cleaner",
}

_OTHER_WORDS: dict[str, str] = {
    "mold": "mould",
    "musty": "mould",
    "moths": "moth",
    "mothballs": "mothball",
    "rubber print": "rubber-print",
    "dry cleaned": "dry-cleaned",
}


def condition_named(text: str) -> str:
    """The condition called ``text``; raises :class:`UnknownName` when there is none.

    >>> condition_named("Mold")
    'mould'
    """
    word = tidy_name(text)
    word = _OTHER_WORDS.get(word, word)
    if word not in CONDITIONS:
        raise UnknownName("condition", text, nearest_names(word, CONDITIONS))
    return word

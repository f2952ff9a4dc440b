"""The fibres a donated garment may be made of, by their EU or US names.

What a fibre is and how to find it; the figures themselves are in ``fibre_facts.py``.
Leather and fur are here as well, because they arrive, though they are no textile fibres.
"""

from inventory.advice.fibre_facts import ALL_FIBRES
from inventory.advice.fibre_kinds import Fibre
from inventory.advice.problems import UnknownName, nearest_names, tidy_name

__all__ = ["FIBRES", "Fibre", "fibre_named"]

FIBRES: dict[str, Fibre] = {each.name: each for each in ALL_FIBRES}

_BY_ANY_NAME: dict[str, Fibre] = {
    tidy_name(word): each for each in ALL_FIBRES for word in (each.name, *each.also_called)
}


def fibre_named(text: str) -> Fibre:
    """The fibre called ``text``, by its EU name, US name or another common name.

    Raises :class:`UnknownName`, offering the nearest names, when there is none.

    >>> fibre_named("Spandex").name
    'elastane'
    """
    word = tidy_name(text)
    if word not in _BY_ANY_NAME:
        raise UnknownName("fibre", text, nearest_names(word, _BY_ANY_NAME))
    return _BY_ANY_NAME[word]

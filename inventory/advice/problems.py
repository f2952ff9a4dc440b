"""The named errors of the advice room, each with a sentence a maker can act on."""

from collections.abc import Iterable
from difflib import get_close_matches

from shared.errors import ClothError


class AdviceError(ClothError):
    """Something given to the advice room cannot be true or cannot be read."""


class UnknownName(AdviceError):
    """A fibre, construction, mark or condition that is not in the tables."""

    def __init__(self, kind: str, given: str, nearest: tuple[str, ...]) -> None:
        self.kind = kind
        self.given = given
        self.nearest = nearest
        offer = f" Nearest: {', '.join(nearest)}." if nearest else ""
        super().__init__(f"No {kind} is called “{given}”.{offer}")


class BadShares(AdviceError):
    """Fibre shares that do not add up to 100, repeat a fibre or are not above 0."""


class BadFigure(AdviceError):
    """A number outside what it can mean, or not a number at all."""


class BadLabel(AdviceError):
    """Care-label text that cannot be read."""


def nearest_names(given: str, names: Iterable[str]) -> tuple[str, ...]:
    """Up to three of ``names`` that look most like ``given``, likeliest first.

    >>> nearest_names("cottn", ["cotton", "acrylic", "coir"])
    ('cotton',)
    """
    return tuple(get_close_matches(given.casefold(), list(names), n=3, cutoff=0.55))


def tidy_name(text: str) -> str:
    """A name as the tables spell it: lower case, single spaces, no outer blanks."""
    return " ".join(text.casefold().replace("_", " ").split())

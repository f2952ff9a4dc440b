"""Reading typed parts out of parsed JSON, each refusal naming the place it was found at.

Knows nothing of panels or pieces. A key that is unknown but close to a known one is refused as a
slip of the pen, because a misspelt rule that is passed over would give a wrong verdict.
"""

import difflib
import math
from collections.abc import Callable, Sequence

from planning.coverage.problem import Outline, Point, ProblemError

LARGEST_NUMBER = 1e9
CLOSE_SPELLING = 0.8


def part_of(
    value: object, place: str, known: Sequence[str], needed: Sequence[str]
) -> dict[str, object]:
    """A JSON object with all its needed keys."""
    if not isinstance(value, dict):
        raise ProblemError(f"{place}: an object is needed here, not {kind_of(value)}")
    for key in value:
        if key not in known:
            near = difflib.get_close_matches(str(key), known, 1, CLOSE_SPELLING)
            if near:
                raise ProblemError(f"{place}: there is no key '{key}'; is '{near[0]}' meant?")
    for key in needed:
        if key not in value:
            raise ProblemError(f"{place}: the key '{key}' is missing")
    return value


def items_of[T](value: object, place: str, read: Callable[[object, str], T]) -> tuple[T, ...]:
    """A JSON list, each item read by `read` with its own place; None is an empty list."""
    if value is None:
        return ()
    if not isinstance(value, list):
        raise ProblemError(f"{place}: a list is needed here, not {kind_of(value)}")
    return tuple(read(item, f"{place}[{index}]") for index, item in enumerate(value))


def number_of(value: object, place: str, low: float = -math.inf, high: float = math.inf) -> float:
    """A finite number from low to high."""
    if isinstance(value, bool) or not isinstance(value, int | float):
        raise ProblemError(f"{place}: a number is needed here, not {kind_of(value)}")
    if not abs(value) <= LARGEST_NUMBER:  # also true of a number that is none
        raise ProblemError(f"{place}: this number cannot be used")
    if not low <= value <= high:
        bound = f"at least {low:g}" if value < low else f"at most {high:g}"
        raise ProblemError(f"{place}: {value:g} is not allowed; it must be {bound}")
    return float(value)


def whole_of(value: object, place: str, low: int, high: int) -> int:
    """A whole number from low to high."""
    number = number_of(value, place, low, high)
    if number != int(number):
        raise ProblemError(f"{place}: {number:g} is not a whole number")
    return int(number)


def flag_of(value: object, place: str) -> bool:
    """True or false."""
    if not isinstance(value, bool):
        raise ProblemError(f"{place}: true or false is needed here, not {kind_of(value)}")
    return value


def name_of(value: object, place: str) -> str:
    """A name with at least one letter in it."""
    if not isinstance(value, str):
        raise ProblemError(f"{place}: a name is needed here, not {kind_of(value)}")
    if not value.strip():
        raise ProblemError(f"{place}: the name is empty")
    return value


def names_of(value: object, place: str) -> tuple[str, ...]:
    """A list of names."""
    return items_of(value, place, name_of)


def point_of(value: object, place: str) -> Point:
    """A point [x, y]."""
    if not isinstance(value, list) or len(value) != 2:
        raise ProblemError(f"{place}: a point [x, y] is needed here")
    return number_of(value[0], place), number_of(value[1], place)


def outline_of(value: object, place: str) -> Outline:
    """A ring of points, not yet checked to be a sound one."""
    if not isinstance(value, list):
        raise ProblemError(f"{place}: a list of points is needed here, not {kind_of(value)}")
    return items_of(value, place, point_of)


def kind_of(value: object) -> str:
    """What a JSON value is, in plain words.

    >>> kind_of([1])
    'a list'
    """
    if value is None:
        return "null"
    if isinstance(value, bool):
        return "true" if value else "false"
    kinds = {dict: "an object", list: "a list", str: "a text", int: "a number", float: "a number"}
    return kinds.get(type(value), type(value).__name__)

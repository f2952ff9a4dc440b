"""A maker's own piece as it was typed in: points, an edge on the fold, notches, marks, an opening.

Plain values and their JSON; what they mean is drawn in ``entering``. Nothing is mended here in
silence: JSON that is no entry is refused with the field and the row that are wrong.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import asdict, dataclass
from typing import Any

from planning.drafting.errors import DraftError
from planning.drafting.pieces import Mark

LOOP = "outline"  # the one edge of an outline without corners
TWIN = "{}, other half"  # an edge's mirror image across the fold


class EntryError(DraftError):
    """An entry that is no piece. ``field`` and ``row`` (counted from 0) say what to mend."""

    def __init__(self, message: str, field: str, row: int | None = None) -> None:
        super().__init__(message)
        self.field = field
        self.row = row


@dataclass(frozen=True)
class EnteredPoint:
    """A point of the outline. A corner may name the ``edge`` that starts at it."""

    x_mm: float
    y_mm: float
    is_curve: bool = False
    edge: str = ""


@dataclass(frozen=True)
class EnteredNotch:
    """A notch ``at_mm`` along an edge of the seam line, from the corner the edge starts at."""

    name: str
    edge: str
    at_mm: float
    is_double: bool = False


@dataclass(frozen=True)
class Entry:
    """An outline in millimetres, y upwards, entered in either direction.

    Curves run through their points; lines between corners are straight. ``fold_edge`` lies on the
    fold. The drawn line runs ``outside_mm`` outside the template. ``is_cut_line`` says that the
    points were measured on the cutting line.
    """

    points: tuple[EnteredPoint, ...]
    is_cut_line: bool
    allowance_mm: float
    fold_edge: str = ""
    outside_mm: float = 0.0
    notches: tuple[EnteredNotch, ...] = ()
    marks: tuple[Mark, ...] = ()
    opening: str = ""


def edge_names(points: Sequence[EnteredPoint]) -> tuple[str, ...]:
    """Return the names of the edges in the order of the table.

    An unnamed edge is called after its place in that order, so naming one renames no other.

    >>> edge_names((EnteredPoint(0, 0, edge="foot"), EnteredPoint(9, 0), EnteredPoint(0, 9)))
    ('foot', 'edge 2', 'edge 3')
    """
    corners = [point for point in points if not point.is_curve]
    if not corners:
        return (LOOP,)
    return tuple(point.edge or f"edge {place}" for place, point in enumerate(corners, 1))


def entry_to_json(entry: Entry) -> dict[str, Any]:
    """Return the entry as plain dicts, lists, numbers and words."""
    marks = [{"name": mark.name, "x_mm": mark.at[0], "y_mm": mark.at[1]} for mark in entry.marks]
    return {
        **asdict(entry),
        "points": [asdict(point) for point in entry.points],
        "notches": [asdict(notch) for notch in entry.notches],
        "marks": marks,
    }


def entry_from_json(data: object) -> Entry:
    """Return the entry that ``entry_to_json`` wrote. Raises EntryError for anything else."""
    whole = _Reader(data, "points")
    return Entry(
        points=whole.rows("points", _point),
        is_cut_line=whole.flag("is_cut_line"),
        allowance_mm=whole.number("allowance_mm"),
        fold_edge=whole.words("fold_edge"),
        outside_mm=whole.number("outside_mm"),
        notches=whole.rows("notches", _notch),
        marks=whole.rows("marks", _mark),
        opening=whole.words("opening"),
    )


class _Reader:
    """Reads one JSON object; a row's faults carry the name of its list and its place in it."""

    def __init__(self, data: object, field: str, row: int | None = None) -> None:
        self.field, self.row = field, row
        if not isinstance(data, Mapping):
            raise EntryError("An entry is a table of named values.", field, row)
        self.data = data

    def refusal(self, key: str, wanted: str) -> EntryError:
        where = key if self.row is None else f"row {self.row + 1} of {self.field}: {key}"
        field = key if self.row is None else self.field
        return EntryError(f"The entry needs {wanted} here: {where}.", field, self.row)

    def number(self, key: str) -> float:
        value = self.data.get(key)
        if isinstance(value, bool) or not isinstance(value, int | float):
            raise self.refusal(key, "a number")
        try:
            return float(value)
        except OverflowError:
            raise self.refusal(key, "a smaller number") from None

    def flag(self, key: str) -> bool:
        value = self.data.get(key)
        if not isinstance(value, bool):
            raise self.refusal(key, "yes or no")
        return value

    def words(self, key: str) -> str:
        value = self.data.get(key)
        if not isinstance(value, str):
            raise self.refusal(key, "words")
        return value

    def rows[Row](self, key: str, read: Callable[["_Reader"], Row]) -> tuple[Row, ...]:
        value = self.data.get(key)
        if not isinstance(value, list):
            raise self.refusal(key, "a list")
        return tuple(read(_Reader(each, key, row)) for row, each in enumerate(value))


def _point(row: _Reader) -> EnteredPoint:
    x_mm, y_mm = row.number("x_mm"), row.number("y_mm")
    return EnteredPoint(x_mm, y_mm, row.flag("is_curve"), row.words("edge"))


def _notch(row: _Reader) -> EnteredNotch:
    at_mm, is_double = row.number("at_mm"), row.flag("is_double")
    return EnteredNotch(row.words("name"), row.words("edge"), at_mm, is_double)


def _mark(row: _Reader) -> Mark:
    return Mark(row.words("name"), (row.number("x_mm"), row.number("y_mm")))

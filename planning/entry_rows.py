"""The rows of a piece's form: points of its outline, notches on its edges, marks inside it."""

import re
from collections.abc import Iterator
from dataclasses import replace
from typing import Any

from django import forms

from inventory.forms.panels import PlaceField
from planning.drafting.entry import EnteredNotch, EnteredPoint, Entry, EntryError
from planning.drafting.pieces import Mark
from planning.drafting.rings import Point
from planning.piece_form import PieceFactsForm
from shared.errors import ClothError
from shared.units import LengthUnit

FEWEST_ROWS, SPARE_ROWS, MOST_ROWS = 12, 4, 120
NOTCH_ROWS = 6
MARK_ROWS = 5


class EntryRows(PieceFactsForm):
    """Fields for rows, and what is typed in them; an empty row is passed over."""

    units: LengthUnit

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.rows = 0
        self.spots: list[tuple[int, Point, bool]] = []
        self.typed_rows: dict[str, list[int]] = {}

    def add_rows(self, kept: Entry | None, rows: int) -> None:
        """Rows for what was entered and some to spare."""
        points = kept.points if kept else ()
        self.rows = min(max(FEWEST_ROWS, len(points) + SPARE_ROWS, rows), MOST_ROWS)
        for row in range(1, self.rows + 1):
            point = points[row - 1] if row <= len(points) else None
            self._length(f"point_{row}_across", f"Point {row} across", point, "x_mm")
            self._length(f"point_{row}_up", f"Point {row} up", point, "y_mm")
            self.fields[f"point_{row}_curve"] = forms.BooleanField(
                label=f"Point {row} lies on a curve",
                required=False,
                initial=bool(point and point.is_curve),
            )
            self._text(f"point_{row}_edge", f"Edge from point {row}", point, "edge")
        notches = kept.notches if kept else ()
        for row in range(1, NOTCH_ROWS + 1):
            notch = notches[row - 1] if row <= len(notches) else None
            self._text(f"notch_{row}_name", f"Notch {row}", notch, "name")
            self._text(f"notch_{row}_edge", f"Edge of notch {row}", notch, "edge")
            self._length(f"notch_{row}_at", f"Notch {row} along it", notch, "at_mm")
        marks = kept.marks if kept else ()
        for row in range(1, MARK_ROWS + 1):
            mark = marks[row - 1] if row <= len(marks) else None
            self._text(f"mark_{row}_name", f"Mark {row}", mark, "name")
            place = mark and EnteredPoint(*mark.at)
            self._length(f"mark_{row}_across", f"Mark {row} across", place, "x_mm")
            self._length(f"mark_{row}_up", f"Mark {row} up", place, "y_mm")

    def _length(self, name: str, label: str, kept: object, what: str) -> None:
        self.fields[name] = PlaceField(
            label=label, unit=self.units, required=False, initial=getattr(kept, what, None)
        )

    def _text(self, name: str, label: str, kept: object, what: str) -> None:
        self.fields[name] = forms.CharField(
            label=label, max_length=60, required=False, initial=getattr(kept, what, "")
        )
        if name.endswith("_edge") and not name.startswith("point"):
            self.fields[name].widget.attrs["list"] = "edge-names"

    def read_spots(self) -> Iterator[tuple[int, Point, bool]]:
        """Every point that has both its lengths: its row, its place, and whether on a curve."""
        data = self.cleaned_data
        for row in range(1, self.rows + 1):
            across, up = data.get(f"point_{row}_across"), data.get(f"point_{row}_up")
            if across is not None and up is not None:
                yield row, (across, up), bool(data.get(f"point_{row}_curve"))

    def read_rows(self) -> dict[str, list[int]]:
        """The rows that hold a point, a notch or a mark; half of one counts, and is an error."""
        kinds = {
            "points": ("point", self.rows, ("across", "up", "edge")),
            "notches": ("notch", NOTCH_ROWS, ("name", "edge", "at")),
            "marks": ("mark", MARK_ROWS, ("name", "across", "up")),
        }
        return {
            field: [
                row
                for row in range(1, rows + 1)
                if any(
                    self.cleaned_data.get(f"{kind}_{row}_{way}") not in (None, "") for way in ways
                )
            ]
            for field, (kind, rows, ways) in kinds.items()
        }

    def read_points(self) -> list[EnteredPoint]:
        """The points typed. Raises EntryError for half a one."""
        data, points = self.cleaned_data, list[EnteredPoint]()
        for row in self.typed_rows["points"]:
            across, up = data.get(f"point_{row}_across"), data.get(f"point_{row}_up")
            if across is None or up is None:
                raise EntryError("A point needs both lengths.", field="points", row=len(points))
            points.append(
                EnteredPoint(
                    across,
                    up,
                    bool(data.get(f"point_{row}_curve")),
                    (data.get(f"point_{row}_edge") or "").strip(),
                )
            )
        return points

    def read_notches(self) -> list[EnteredNotch]:
        """The notches typed. Raises EntryError for half a one."""
        data, notches = self.cleaned_data, list[EnteredNotch]()
        for row in self.typed_rows["notches"]:
            edge, at = data.get(f"notch_{row}_edge"), data.get(f"notch_{row}_at")
            if not edge or at is None:
                raise EntryError(
                    "A notch needs an edge and a distance.", field="notches", row=len(notches)
                )
            name = data.get(f"notch_{row}_name") or f"notch {row}"
            notches.append(EnteredNotch(name, edge.strip(), at))
        return notches

    def read_marks(self) -> list[Mark]:
        """The marks typed. Raises EntryError for half a one."""
        data, marks = self.cleaned_data, list[Mark]()
        for row in self.typed_rows["marks"]:
            name = (data.get(f"mark_{row}_name") or "").strip()
            at = (data.get(f"mark_{row}_across"), data.get(f"mark_{row}_up"))
            if not name or at[0] is None or at[1] is None:
                raise EntryError("A mark needs a name and a place.", field="marks", row=len(marks))
            marks.append(Mark(name, (at[0], at[1])))
        return marks

    def row_of(self, error: EntryError) -> int | None:
        """The form's row of the point, notch or mark that an error is about."""
        rows = self.typed_rows.get(error.field, [])
        return rows[error.row] if error.row is not None and error.row < len(rows) else None

    def words_of(self, error: ClothError) -> str:
        """The error in words, its points and notches numbered by their rows on the form."""

        def numbered(found: re.Match[str]) -> str:
            rows = self.typed_rows["notches" if found[1].lower() == "notch" else "points"]
            place = int(found[2]) - 1
            return f"{found[1]} {rows[place]}" if place < len(rows) else found[0]

        return re.sub(r"\b(point|notch) (\d+)", numbered, str(error), flags=re.IGNORECASE)

    @property
    def has_places(self) -> bool:
        """Whether a notch or a mark is typed, whichever row it is in."""
        names = (name for name in self.fields if name.startswith(("notch_", "mark_")))
        return any(self[name].value() not in (None, "") for name in names)

    @property
    def points(self) -> list[tuple[int, list[forms.BoundField]]]:
        ways = ("across", "up", "curve", "edge")
        return [
            (row, [self[f"point_{row}_{way}"] for way in ways]) for row in range(1, self.rows + 1)
        ]

    @property
    def notches(self) -> list[tuple[int, list[forms.BoundField]]]:
        ways = ("name", "edge", "at")
        return [
            (row, [self[f"notch_{row}_{way}"] for way in ways]) for row in range(1, NOTCH_ROWS + 1)
        ]

    @property
    def marks(self) -> list[tuple[int, list[forms.BoundField]]]:
        ways = ("name", "across", "up")
        return [
            (row, [self[f"mark_{row}_{way}"] for way in ways]) for row in range(1, MARK_ROWS + 1)
        ]


def from_lower_left(entry: Entry) -> Entry:
    """The entry moved so that nothing of it is left of or below the corner it is measured from."""
    left = min(0.0, *(point.x_mm for point in entry.points))
    low = min(0.0, *(point.y_mm for point in entry.points))
    if left == low == 0.0:
        return entry
    return replace(
        entry,
        points=tuple(
            replace(point, x_mm=point.x_mm - left, y_mm=point.y_mm - low) for point in entry.points
        ),
        marks=tuple(
            replace(mark, at=(mark.at[0] - left, mark.at[1] - low)) for mark in entry.marks
        ),
    )

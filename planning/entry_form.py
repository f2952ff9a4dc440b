"""The outline of one pattern piece: rows of points, or the measures of a basic shape."""

import re
from collections.abc import Iterator
from dataclasses import replace
from typing import Any

from django import forms

from inventory.forms.panels import PlaceField
from planning.drafting.basic_shapes import BASIC_SHAPES, entry_of_shape
from planning.drafting.entering import entered_piece
from planning.drafting.entry import (
    EnteredNotch,
    EnteredPoint,
    Entry,
    EntryError,
    entry_from_json,
)
from planning.drafting.pieces import DraftPiece, Mark
from planning.drafting.rings import Point
from planning.piece_form import PieceFactsForm
from shared.errors import ClothError, OutlineError
from shared.forms import LengthField
from shared.units import LengthUnit

FEWEST_ROWS, SPARE_ROWS, MOST_ROWS = 12, 4, 120
NOTCH_ROWS = 6
MARK_ROWS = 5
ROW_FIELDS = ("point_", "notch_", "mark_", "measure_")


class PieceForm(PieceFactsForm):
    """A piece with its outline: rows of points, or the measures of a basic shape."""

    line = forms.ChoiceField(
        label="The line I measured is",
        choices=[("seam", "the stitching line"), ("cut", "the cutting line, allowance included")],
        widget=forms.RadioSelect,
        initial="seam",
    )
    fold_edge = forms.CharField(
        label="Edge on the fold",
        max_length=60,
        required=False,
        help_text="Name it as in the table; the piece is opened out over it. Empty for none.",
    )
    opening = forms.CharField(
        label="Edge left open for turning and stuffing", max_length=80, required=False
    )

    def __init__(
        self, *args: Any, units: LengthUnit, shape: str = "", rows: int = 0, **kwargs: Any
    ) -> None:
        super().__init__(*args, **kwargs)
        self.shape = shape
        self.units = units
        self.allowance_mm = self.instance.size.pattern.seam_allowance_mm
        self.entry: Entry | None = None
        self.piece: DraftPiece | None = None
        self.trouble: ClothError | None = None
        self.trouble_words = ""
        self.spots: list[tuple[int, Point, bool]] = []
        self.typed_rows: dict[str, list[int]] = {}
        kept = entry_from_json(self.instance.entry) if self.instance.entry else None
        if kept:
            kept = _from_lower_left(kept)
            self.initial["line"] = "cut" if kept.is_cut_line else "seam"
            self.initial["fold_edge"], self.initial["opening"] = kept.fold_edge, kept.opening
            self._draw(kept)
        self.fields["outside"] = PlaceField(
            label="The drawn line runs outside the template by",
            unit=units,
            required=False,
            initial=kept.outside_mm if kept else None,
            help_text="Half a pen’s width and the gap along the template, so that the cut goes "
            "inside the drawn line. Empty for nothing.",
        )
        if shape:
            del self.fields["fold_edge"], self.fields["opening"]
            self.rows = 0
            for key, label in BASIC_SHAPES[shape].measures:
                self.fields[f"measure_{key}"] = LengthField(label=label, unit=units)
        else:
            self._add_rows(kept, rows)

    def _draw(self, kept: Entry) -> None:
        """The piece as it is, until something is typed."""
        row = self.instance
        self.piece = entered_piece(kept, row.name, row.count, row.mirrored, row.grain_deg)
        self.spots = [
            (number, (point.x_mm, point.y_mm), point.is_curve)
            for number, point in enumerate(kept.points, start=1)
        ]

    def _add_rows(self, kept: Entry | None, rows: int) -> None:
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

    def clean(self) -> dict[str, Any]:
        data = super().clean()
        self.piece = None
        # before any error takes its field out of the cleaned data
        self.spots = list(self._spots())
        self.typed_rows = self._typed_rows()
        is_read = not any(name.startswith(ROW_FIELDS) for name in self.errors)
        try:
            self.entry = self.typed_entry()
            self.piece = entered_piece(
                self.entry,
                data.get("name") or "piece",
                data.get("count") or 1,
                min(data.get("mirrored") or 0, data.get("count") or 1),
                self.instance.grain_deg,
            )
        except (EntryError, OutlineError) as error:
            self.trouble = error
            self.trouble_words = self._words(error)
            # a length that cannot be read is trouble enough: what follows from it is not told
            if is_read:
                field = self._field_of(error) if isinstance(error, EntryError) else None
                self.add_error(field, self.trouble_words)
        return data

    def _spots(self) -> Iterator[tuple[int, Point, bool]]:
        """Every point that has both its lengths: its row, its place, and whether on a curve."""
        data = self.cleaned_data
        for row in range(1, self.rows + 1):
            across, up = data.get(f"point_{row}_across"), data.get(f"point_{row}_up")
            if across is not None and up is not None:
                yield row, (across, up), bool(data.get(f"point_{row}_curve"))

    def typed_entry(self) -> Entry:
        """The outline as typed, also while other fields are wrong. Raises EntryError."""
        data = self.cleaned_data
        facts: dict[str, Any] = {
            "is_cut_line": data.get("line") == "cut",
            "allowance_mm": self.allowance_mm,
            "outside_mm": data.get("outside") or 0.0,
        }
        if self.shape:
            keys = [key for key, _ in BASIC_SHAPES[self.shape].measures]
            if any(data.get(f"measure_{key}") is None for key in keys):
                raise EntryError("Type every measure.", field=keys[0])
            measures = {key: data[f"measure_{key}"] for key in keys}
            entry = entry_of_shape(self.shape, measures, self.allowance_mm)
            return replace(entry, **facts)
        return Entry(
            points=tuple(self._points()),
            fold_edge=data.get("fold_edge") or "",
            opening=data.get("opening") or "",
            notches=tuple(self._notches()),
            marks=tuple(self._marks()),
            **facts,
        )

    def _typed_rows(self) -> dict[str, list[int]]:
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

    def _points(self) -> list[EnteredPoint]:
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

    def _notches(self) -> list[EnteredNotch]:
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

    def _marks(self) -> list[Mark]:
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

    def _words(self, error: ClothError) -> str:
        """The error in words, its points and notches numbered by their rows on the form."""

        def numbered(found: re.Match[str]) -> str:
            rows = self.typed_rows["notches" if found[1].lower() == "notch" else "points"]
            place = int(found[2]) - 1
            return f"{found[1]} {rows[place]}" if place < len(rows) else found[0]

        return re.sub(r"\b(point|notch) (\d+)", numbered, str(error), flags=re.IGNORECASE)

    def _field_of(self, error: EntryError) -> str | None:
        """The form's field for a place of the entry."""
        if self.shape and f"measure_{error.field}" in self.fields:
            return f"measure_{error.field}"
        if error.field == "points":
            return None if self.shape else f"point_{self.row_of(error) or 1}_across"
        if error.field == "notches":
            return f"notch_{self.row_of(error) or 1}_edge"
        if error.field == "marks":
            return f"mark_{self.row_of(error) or 1}_across"
        names = {"outside_mm": "outside"}
        name = names.get(error.field, error.field)
        return name if name in self.fields else None

    @property
    def has_places(self) -> bool:
        """Whether a notch or a mark is typed, whichever row it is in."""
        names = (name for name in self.fields if name.startswith(("notch_", "mark_")))
        return any(self[name].value() not in (None, "") for name in names)

    @property
    def fact_fields(self) -> list[forms.BoundField]:
        return [self[name] for name in ("name", "count", "mirrored", "grain_deg")]

    @property
    def more_fields(self) -> list[forms.BoundField]:
        names = ("is_bias", "same_hand", "asks_stretch_pct", "part", "note")
        return [self[name] for name in names]

    @property
    def measure_fields(self) -> list[forms.BoundField]:
        return [self[name] for name in self.fields if name.startswith("measure_")]

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


def _from_lower_left(entry: Entry) -> Entry:
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

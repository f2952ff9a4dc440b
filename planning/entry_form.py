"""The outline of one pattern piece: rows of points, or the measures of a basic shape."""

from dataclasses import replace
from typing import Any

from django import forms

from inventory.forms.panels import PlaceField
from planning.drafting.basic_shapes import BASIC_SHAPES, entry_of_shape
from planning.drafting.entering import entered_piece
from planning.drafting.entry import Entry, EntryError, entry_from_json
from planning.drafting.pieces import DraftPiece
from planning.entry_rows import EntryRows, from_lower_left
from shared.errors import ClothError, OutlineError
from shared.forms import LengthField
from shared.units import LengthUnit

ROW_FIELDS = ("point_", "notch_", "mark_", "measure_")


class PieceForm(EntryRows):
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
        self.shape, self.units = shape, units
        self.allowance_mm = self.instance.size.pattern.seam_allowance_mm
        self.entry: Entry | None = None
        self.piece: DraftPiece | None = None
        self.trouble: ClothError | None = None
        self.trouble_words = ""
        kept = entry_from_json(self.instance.entry) if self.instance.entry else None
        if kept:
            kept = from_lower_left(kept)
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
            for key, label in BASIC_SHAPES[shape].measures:
                self.fields[f"measure_{key}"] = LengthField(label=label, unit=units)
        else:
            self.add_rows(kept, rows)

    def _draw(self, kept: Entry) -> None:
        """The piece as it is, until something is typed."""
        row = self.instance
        self.piece = entered_piece(kept, row.name, row.count, row.mirrored, row.grain_deg)
        self.spots = [
            (number, (point.x_mm, point.y_mm), point.is_curve)
            for number, point in enumerate(kept.points, start=1)
        ]

    def clean(self) -> dict[str, Any]:
        data = super().clean()
        self.piece = None
        # before any error takes its field out of the cleaned data
        self.spots = list(self.read_spots())
        self.typed_rows = self.read_rows()
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
            self.trouble_words = self.words_of(error)
            # a length that cannot be read is trouble enough: what follows from it is not told
            if is_read:
                field = self._field_of(error) if isinstance(error, EntryError) else None
                self.add_error(field, self.trouble_words)
        return data

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
            points=tuple(self.read_points()),
            fold_edge=data.get("fold_edge") or "",
            opening=data.get("opening") or "",
            notches=tuple(self.read_notches()),
            marks=tuple(self.read_marks()),
            **facts,
        )

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
    def fact_fields(self) -> list[forms.BoundField]:
        return [self[name] for name in ("name", "count", "mirrored", "grain_deg")]

    @property
    def more_fields(self) -> list[forms.BoundField]:
        names = ("is_bias", "same_hand", "asks_stretch_pct", "part", "note")
        return [self[name] for name in names]

    @property
    def measure_fields(self) -> list[forms.BoundField]:
        return [self[name] for name in self.fields if name.startswith("measure_")]

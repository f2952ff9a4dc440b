"""Reading a pattern from a file, and saying what each outline in it is."""

from dataclasses import replace
from typing import Any, cast

from django import forms
from django.core.files.uploadedfile import UploadedFile

from planning.drafting.errors import DraftError
from planning.drafting.exchange.found import Found, FoundPiece
from planning.drafting.exchange.read import read_pattern_file
from planning.drafting.exchange.scale import scaled
from planning.drafting.exchange.write import piece_from
from planning.drafting.pieces import DraftPiece, DraftSize
from planning.pattern_forms import LEAST_MM, MOST_MM, AllowanceField
from shared.errors import LengthError, OutlineError
from shared.forms import LengthField
from shared.units import MM_PER, LengthUnit, parse_length

MOST_BYTES = 8_000_000
UNITS = [
    ("", "the unit that the file names"),
    ("mm", "millimetres"),
    ("cm", "centimetres"),
    ("in", "inches"),
]


class FileForm(forms.Form):
    """One SVG or DXF file."""

    file = forms.FileField(
        label="Pattern file",
        help_text="SVG with its size in millimetres, centimetres or inches, or DXF as the sewing "
        "trade lays it out (ASTM D6673, AAMA-292). Up to 8 MB.",
        widget=forms.FileInput(attrs={"accept": ".svg,.dxf,image/svg+xml"}),
    )
    unit = forms.ChoiceField(
        label="It is drawn in",
        choices=UNITS,
        required=False,
        help_text="Choose one only where the file names none, or a wrong one.",
    )
    found: Found

    def clean_file(self) -> UploadedFile:
        upload = cast(UploadedFile, self.cleaned_data["file"])
        if (upload.size or 0) > MOST_BYTES:
            raise forms.ValidationError("This file is larger than 8 MB. Export the pieces alone.")
        return upload

    def clean(self) -> dict[str, Any]:
        data = super().clean() or self.cleaned_data
        if self.errors:
            return data
        upload, unit = cast(UploadedFile, data["file"]), data["unit"]
        try:
            mm_per_unit = MM_PER[unit] if unit else None
            self.found = read_pattern_file(upload.read(), upload.name or "", mm_per_unit)
        except DraftError as error:
            self.add_error("file", str(error))
        return data


class TakeInForm(forms.Form):
    """What the outlines of a file are: which to take, how many of each, and how tall it becomes."""

    name = forms.CharField(label="Name of the pattern", max_length=80)
    source = forms.CharField(label="Where it comes from", max_length=200, required=False)
    licence = forms.CharField(label="What its licence allows you", max_length=200, required=False)

    def __init__(self, *args: Any, found: Found, units: LengthUnit, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.found = found
        self.sizes = list(dict.fromkeys(piece.size for piece in found.pieces))
        self.drafts: list[DraftSize] = []
        self.fields["seam_allowance"] = AllowanceField(
            unit=units,
            help_text="Between the stitching line and the cutting line, where a file has only one.",
        )
        self.fields["true_width"] = LengthField(
            label="True width of the largest piece",
            unit=units,
            required=False,
            help_text="Only if the width shown is wrong: everything is scaled to this.",
        )
        for number, size in enumerate(self.sizes):
            label = f"Finished height of size {size}" if size else "Finished height"
            self.fields[f"height_{number}"] = LengthField(
                label=label,
                unit=units,
                required=len(self.sizes) == 1,
                initial=_length_in(size),
                help_text="Empty leaves this size out." if len(self.sizes) > 1 else "",
            )
        for number, piece in enumerate(found.pieces):
            self._ask_about(number, piece)

    def _ask_about(self, number: int, piece: FoundPiece) -> None:
        self.fields[f"take_{number}"] = forms.BooleanField(
            label=f"Take {piece.name}", required=False, initial=True
        )
        self.fields[f"name_{number}"] = forms.CharField(
            label="Name", max_length=60, initial=piece.name[:60]
        )
        self.fields[f"count_{number}"] = forms.IntegerField(
            label="Cut", min_value=1, max_value=200, initial=piece.count
        )
        self.fields[f"mirrored_{number}"] = forms.IntegerField(
            label="Turned over", min_value=0, max_value=200, initial=piece.mirrored
        )
        self.fields[f"line_{number}"] = forms.ChoiceField(
            label="The outline is",
            choices=[("cut", "the cutting line"), ("seam", "the stitching line")],
            initial=piece.line,
        )

    def clean(self) -> dict[str, Any]:
        data = super().clean() or self.cleaned_data
        for number, _ in enumerate(self.sizes):
            height = data.get(f"height_{number}")
            if height is not None and not LEAST_MM <= height <= MOST_MM:
                self.add_error(f"height_{number}", "A height lies between 3 cm and 2 m.")
        for number, _ in enumerate(self.found.pieces):
            count, mirrored = data.get(f"count_{number}"), data.get(f"mirrored_{number}")
            if count and mirrored and mirrored > count:
                self.add_error(f"mirrored_{number}", "No more can be turned over than are cut.")
        if not self.errors:
            self._draw(data)
        return data

    def _draw(self, data: dict[str, Any]) -> None:
        """Draw every size that is taken; an error names the piece it came from."""
        true_mm = data.get("true_width")
        found = scaled(self.found, true_mm / self.found.width_mm) if true_mm else self.found
        self.drafts = []
        heights: set[float] = set()
        for size_number, size in enumerate(self.sizes):
            height = data.get(f"height_{size_number}")
            if height is None:
                continue
            pieces = self._pieces(found, size, data)
            if height in heights:
                self.add_error(f"height_{size_number}", "Another size has this height.")
            elif pieces:
                heights.add(height)
                self.drafts.append(DraftSize(size, height, tuple(pieces), data["seam_allowance"]))
        if not self.errors and not self.drafts:
            self.add_error(None, "Nothing is taken. Tick a piece, and give its size a height.")

    def _pieces(self, found: Found, size: str, data: dict[str, Any]) -> list[DraftPiece]:
        pieces: list[DraftPiece] = []
        for number, piece in enumerate(found.pieces):
            if piece.size != size or not data.get(f"take_{number}"):
                continue
            name = data[f"name_{number}"].strip()
            if name in {each.name for each in pieces}:
                self.add_error(f"name_{number}", "Another piece of this size has that name.")
                continue
            asked = replace(
                piece,
                name=name,
                count=data[f"count_{number}"],
                mirrored=data[f"mirrored_{number}"],
                line=data[f"line_{number}"],
            )
            try:
                pieces.append(piece_from(asked, data["seam_allowance"]))
            except (DraftError, OutlineError) as error:
                self.add_error(f"take_{number}", str(error))
        return pieces

    @property
    def heights(self) -> list[forms.BoundField]:
        return [self[f"height_{number}"] for number, _ in enumerate(self.sizes)]

    @property
    def fact_fields(self) -> list[forms.BoundField]:
        return [self[name] for name in ("name", "source", "licence")]

    def rows(self) -> list[tuple[FoundPiece, list[forms.BoundField]]]:
        ways = ("take", "name", "count", "mirrored", "line")
        return [
            (piece, [self[f"{way}_{number}"] for way in ways])
            for number, piece in enumerate(self.found.pieces)
        ]


def _length_in(size: str) -> float | None:
    """The height a size is named by, as in “30 cm”; None where its name is no length."""
    try:
        return parse_length(size, "cm") if size.strip().endswith(("cm", "mm", "in")) else None
    except LengthError:
        return None

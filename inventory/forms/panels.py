"""Panels by tape measure, and the places on them: flaws and details."""

import re
from typing import Any, ClassVar

from django import forms
from django.utils import timezone
from shapely import MultiPoint, Point, Polygon
from shapely.geometry.base import BaseGeometry

from inventory.choices import ClothPart, DetailKind, FlawKind, PanelShape
from inventory.cloth import cloths_of, measure
from inventory.measuring.rings import clean_ring
from inventory.measuring.shapes import MEASURES, outline_from
from inventory.measuring.usable import Place
from inventory.models import Detail, Flaw, Garment, Panel
from shared.errors import OutlineError
from shared.forms import LengthField
from shared.units import LengthUnit, parse_length

CORNER_ROWS = 16
STRIPE_PLACE = {
    "repeat_x_mm": "A stripe starts at, across",
    "repeat_y_mm": "A stripe starts at, up",
}
GRAINS = ((90.0, "Up and down, along the length"), (0.0, "Sideways"), (45.0, "On the bias"))
PART_NAMES = (
    "Back",
    "Left front",
    "Right front",
    "Left sleeve",
    "Right sleeve",
    "Front",
    "Left leg front",
    "Right leg front",
    "Left leg back",
    "Right leg back",
)


NOTHING = re.compile(r"0+([.,]0+)?\s*(mm|cm|m|in|inch|inches|[\"″”])?")


class PlaceField(LengthField):
    """A length that may be nothing: how far across or up a place lies."""

    def to_python(self, value: Any) -> Any:
        text = "" if value is None else str(value).strip().lower()
        return 0.0 if NOTHING.fullmatch(text) else super().to_python(text)


def _box(outline_mm: list[list[float]]) -> BaseGeometry:
    return MultiPoint(outline_mm).envelope


type CornerRow = tuple[int, forms.BoundField, forms.BoundField]


class Corners:
    """Rows of two lengths on a form, read as points; empty rows are passed over."""

    @staticmethod
    def add(form: forms.BaseForm, unit: LengthUnit, rows: int, points: list[list[float]]) -> None:
        for row in range(1, rows + 1):
            across, up = points[row - 1] if row <= len(points) else (None, None)
            for way, initial in (("across", across), ("up", up)):
                form.fields[f"corner_{row}_{way}"] = PlaceField(
                    label=f"Corner {row} {way}", unit=unit, required=False, initial=initial
                )
            form.fields[f"corner_{row}_across"].widget.attrs["data-across"] = f"id_corner_{row}_up"

    @staticmethod
    def read(form: forms.BaseForm, rows: int) -> list[tuple[float, float]]:
        points = []
        for row in range(1, rows + 1):
            names = (f"corner_{row}_across", f"corner_{row}_up")
            across, up = (form.cleaned_data.get(name) for name in names)
            if across is None and up is None:
                continue
            for name, length in zip(names, (across, up), strict=True):
                if length is None and name not in form.errors:
                    form.add_error(name, "A corner needs both lengths.")
            points.append((across or 0.0, up or 0.0))
        return points

    @staticmethod
    def rows(form: forms.BaseForm, rows: int) -> list[CornerRow]:
        return [
            (row, form[f"corner_{row}_across"], form[f"corner_{row}_up"])
            for row in range(1, rows + 1)
        ]


class PanelForm(forms.ModelForm[Panel]):
    """One panel of a chosen shape. The measures asked for are those of the shape."""

    grain_deg = forms.TypedChoiceField(
        label="The grain runs",
        coerce=float,
        choices=GRAINS,
        help_text="Lengthwise threads, or the columns of stitches in a knit.",
    )

    class Meta:
        model = Panel
        fields = ("name", "part", "grain_deg", "is_measured_after_wash")
        help_texts: ClassVar = {
            "is_measured_after_wash": "Best: wash and press first, then measure. "
            "Otherwise the shrinkage to come is taken off.",
        }

    def __init__(
        self, *args: Any, garment: Garment, shape: str, units: LengthUnit, **kwargs: Any
    ) -> None:
        super().__init__(*args, **kwargs)
        self.shape = self.instance.shape = shape
        if self.instance.pk is None:
            self.instance.garment, self.instance.workshop = garment, garment.workshop
        self.fields["name"].widget.attrs["list"] = "part-names"
        self._offer_cloths(garment)
        self._ask_for_a_stripe(garment, units)
        kept = self.instance.measures_mm or {}
        if shape == PanelShape.CORNERS:
            Corners.add(self, units, CORNER_ROWS, kept.get("points", []))
        for measure_ in MEASURES.get(shape, ()):
            self.fields[f"measure_{measure_.key}"] = LengthField(
                label=measure_.label,
                help_text=measure_.hint,
                unit=units,
                required=measure_.default_mm is None,
                initial=kept.get(measure_.key, measure_.default_mm),
            )

    def _offer_cloths(self, garment: Garment) -> None:
        """Ask which cloth it is cut from only where the garment has more than one."""
        parts = {*cloths_of(garment), self.instance.part}
        field = self.fields["part"]
        assert isinstance(field, forms.ChoiceField)  # noqa: S101 - for the type checker
        field.choices = [(value, label) for value, label in ClothPart.choices if value in parts]
        if len(parts) == 1:
            del self.fields["part"]

    def _ask_for_a_stripe(self, garment: Garment, units: LengthUnit) -> None:
        """Ask where a stripe starts only where the cloth has a repeat."""
        if garment.repeat_along_mm or garment.repeat_across_mm:
            for name, label in STRIPE_PLACE.items():
                kept = getattr(self.instance, name)
                self.fields[name] = PlaceField(
                    label=label, unit=units, required=False, initial=kept
                )

    def clean(self) -> dict[str, Any]:
        data = super().clean() or self.cleaned_data
        if any(name.startswith(("measure_", "corner_")) for name in self.changed_data):
            self.instance.measured_on = timezone.localdate()
        if self.shape == PanelShape.CORNERS:
            measures: dict[str, Any] = {"points": Corners.read(self, CORNER_ROWS)}
        else:
            keys = [measure_.key for measure_ in MEASURES[self.shape]]
            measures = {key: data.get(f"measure_{key}") for key in keys}
        self.instance.measures_mm = {k: v for k, v in measures.items() if v is not None}
        if not self.errors:
            self._draw()
        if not self.errors:
            self._place_the_stripe(data)
        return data

    def _place_the_stripe(self, data: dict[str, Any]) -> None:
        """Both lengths or neither, and on the panel."""
        if STRIPE_PLACE.keys() - self.fields.keys():
            return
        place: list[Any] = [data.get(name) for name in STRIPE_PLACE]
        for name, length, other in zip(STRIPE_PLACE, place, reversed(place), strict=True):
            if length is None and other is not None:
                self.add_error(name, "The place of a stripe needs both lengths.")
        if None not in place and not _box(self.instance.outline_mm).covers(Point(place)):
            self.add_error("repeat_x_mm", "This place lies off the panel. Check the unit.")
        if not self.errors:
            self.instance.repeat_x_mm, self.instance.repeat_y_mm = place

    def _draw(self) -> None:
        try:
            outline = outline_from(self.shape, self.instance.measures_mm)
        except OutlineError as error:
            self.add_error(self._first_measure(), str(error))
        else:
            self.instance.outline_mm = [[x, y] for x, y in outline]

    def _first_measure(self) -> str:
        if self.shape == PanelShape.CORNERS:
            return "corner_1_across"
        return f"measure_{MEASURES[self.shape][0].key}"

    def _post_clean(self) -> None:
        super()._post_clean()  # type: ignore[misc]
        if not self.errors:
            measure(self.instance)

    @property
    def stripe_fields(self) -> list[forms.BoundField]:
        return [self[name] for name in STRIPE_PLACE if name in self.fields]

    @property
    def measure_fields(self) -> list[forms.BoundField]:
        return [self[name] for name in self.fields if name.startswith("measure_")]

    @property
    def corner_rows(self) -> list[CornerRow]:
        return Corners.rows(self, CORNER_ROWS) if self.shape == PanelShape.CORNERS else []


def sketch_measures(shape: str, typed: dict[str, str], units: LengthUnit) -> dict[str, Any]:
    """Read half-typed measures for the drawing; raises LengthError or OutlineError."""

    def length(name: str) -> float:
        text = typed.get(name, "").strip()
        return 0.0 if text in {"", "0"} else parse_length(text, units)

    if shape == PanelShape.CORNERS:
        rows = range(1, CORNER_ROWS + 1)
        pairs = [(f"corner_{row}_across", f"corner_{row}_up") for row in rows]
        return {
            "points": [
                (length(across), length(up))
                for across, up in pairs
                if typed.get(across, "").strip() and typed.get(up, "").strip()
            ]
        }
    return {m.key: length(f"measure_{m.key}") for m in MEASURES.get(shape, ())}


def sketch_place(typed: dict[str, str], units: LengthUnit) -> tuple[float, float] | None:
    """The typed place of a stripe, or None while it is not whole; raises LengthError."""
    texts = [typed.get(name, "").strip() for name in STRIPE_PLACE]
    if not all(texts):
        return None
    across, up = (0.0 if NOTHING.fullmatch(text) else parse_length(text, units) for text in texts)
    return across, up


MARK_ROWS = 8
LEAST_RADIUS_MM = 0.5


class PlaceForm(forms.Form):
    """A flaw or a detail: as a circle, or corner by corner."""

    kind = forms.ChoiceField(label="What is it?")
    note = forms.CharField(label="In your words", max_length=80, required=False)
    is_kept_aside = forms.BooleanField(
        label="Keep this place out of the pieces",
        required=False,
        initial=True,
        help_text="Leave this on unless a piece may be cut across it.",
    )

    def __init__(
        self, *args: Any, panel: Panel, what: str, drawn: str, units: LengthUnit, **kwargs: Any
    ) -> None:
        super().__init__(*args, **kwargs)
        self.panel, self.what, self.drawn = panel, what, drawn
        kinds = FlawKind.choices if what == "flaw" else DetailKind.choices
        kind = self.fields["kind"]
        assert isinstance(kind, forms.ChoiceField)  # noqa: S101 - for the type checker
        kind.choices = kinds
        if what == "flaw":
            del self.fields["is_kept_aside"]
        if drawn == "circle":
            self.fields["across"] = PlaceField(
                label="Centre, across from the left edge", unit=units
            )
            self.fields["up"] = PlaceField(label="Centre, up from the lower edge", unit=units)
            self.fields["width"] = LengthField(label="Widest part of the place", unit=units)
            self.fields["across"].widget.attrs["data-across"] = "id_up"
        else:
            Corners.add(self, units, MARK_ROWS, [])

    def clean(self) -> dict[str, Any]:
        data = super().clean() or self.cleaned_data
        if self.errors:
            return data
        if self.drawn == "circle":
            data["points"], data["radius_mm"] = [[data["across"], data["up"]]], data["width"] / 2
            if data["radius_mm"] < LEAST_RADIUS_MM:
                self.add_error("width", "That is too small to mark. Check the unit.")
            else:
                self._must_touch_the_panel(data, "across")
            return data
        try:
            ring = clean_ring(Corners.read(self, MARK_ROWS), least_mm2=1.0)
            data["points"], data["radius_mm"] = [[x, y] for x, y in ring], None
            self._must_touch_the_panel(data, "corner_1_across")
        except OutlineError as error:
            self.add_error("corner_1_across", str(error))
        return data

    def _must_touch_the_panel(self, data: dict[str, Any], field: str) -> None:
        ring = tuple((x, y) for x, y in data["points"])
        place = Place("", ring, data["radius_mm"]).shape
        if not place.intersects(Polygon(self.panel.outline_mm)):
            self.add_error(field, "This place lies off the panel. Measure from its lower left.")

    def save(self) -> Flaw | Detail:
        model = Flaw if self.what == "flaw" else Detail
        extra = {} if self.what == "flaw" else {"is_kept_aside": self.cleaned_data["is_kept_aside"]}
        return model.objects.create(
            workshop=self.panel.workshop,
            panel=self.panel,
            kind=self.cleaned_data["kind"],
            note=self.cleaned_data["note"],
            points_mm=self.cleaned_data["points"],
            radius_mm=self.cleaned_data["radius_mm"],
            **extra,
        )

    @property
    def corner_rows(self) -> list[CornerRow]:
        return Corners.rows(self, MARK_ROWS) if self.drawn == "corners" else []

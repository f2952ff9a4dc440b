"""What is added to a garment's record: notes with their place and pictures, and washes."""

from typing import Any, ClassVar

from django import forms
from django.core.files.uploadedfile import UploadedFile
from django.db import transaction
from django.utils import timezone

from inventory.bench import move_to
from inventory.choices import Status
from inventory.cloth import measure_again
from inventory.forms.collections import DayInput
from inventory.forms.garments import PICTURES, prepared_or_refused, save_photo
from inventory.forms.panels import PlaceField
from inventory.ledger import LEAST_LEFT, MOST_GROWTH
from inventory.models import ConditionNote, Garment, Panel, WashEvent
from shared.errors import PhotoError
from shared.forms import LengthField
from shared.models import Member
from shared.units import LengthUnit

MOST_PICTURES = 6
HOTTEST_C = 95
WAYS = ("along", "across")


class SeveralFiles(forms.FileInput):
    allow_multiple_selected = True


class SeveralFilesField(forms.FileField):
    """Up to a handful of files; cleans to a list."""

    widget = SeveralFiles

    def clean(self, data: Any, initial: Any = None) -> list[UploadedFile]:
        given = data if isinstance(data, list | tuple) else [data]
        files = [super(SeveralFilesField, self).clean(file, initial) for file in given if file]
        if len(files) > MOST_PICTURES:
            raise forms.ValidationError(f"At most {MOST_PICTURES} pictures a note.")
        return files


class ConditionNoteForm(forms.ModelForm[ConditionNote]):
    """A dated note. Its place is asked for only where a panel was chosen to note it on."""

    pictures = SeveralFilesField(
        label="Pictures",
        required=False,
        widget=SeveralFiles(attrs={"accept": PICTURES}),
        help_text="They stay with the note.",
    )
    description = forms.CharField(
        label="What the pictures show",
        max_length=160,
        required=False,
        help_text="Read aloud to those who cannot see them.",
    )

    class Meta:
        model = ConditionNote
        fields = ("noted_on", "grade", "text")
        widgets: ClassVar = {
            "noted_on": DayInput(),
            "text": forms.Textarea(attrs={"rows": 3}),
        }

    def __init__(
        self, data: Any, files: Any, *, garment: Garment, panel: Panel | None, units: LengthUnit
    ) -> None:
        note = ConditionNote(garment=garment, workshop=garment.workshop, panel=panel)
        super().__init__(data, files, instance=note)
        if panel is not None:
            for name, label in (
                ("across_mm", "Place: across from the left edge"),
                ("up_mm", "Place: up from the lower edge"),
            ):
                self.fields[name] = PlaceField(label=label, unit=units, required=False)
            self.fields["across_mm"].widget.attrs["data-across"] = "id_up_mm"

    def clean(self) -> dict[str, Any]:
        data = super().clean() or self.cleaned_data
        across, up = data.get("across_mm"), data.get("up_mm")
        for name, length, other in (("across_mm", across, up), ("up_mm", up, across)):
            if length is None and other is not None and name not in self.errors:
                self.add_error(name, "A place needs both lengths.")
        self.instance.across_mm, self.instance.up_mm = across, up
        try:
            data["pictures"] = [prepared_or_refused(file) for file in data.get("pictures") or []]
        except PhotoError as error:
            self.add_error("pictures", str(error))
        return data

    @transaction.atomic
    def save(self, commit: bool = True) -> ConditionNote:
        note = super().save()
        for pictures in self.cleaned_data["pictures"]:
            save_photo(note.garment, pictures, self.cleaned_data["description"], note)
        return note


class WashForm(forms.ModelForm[WashEvent]):
    """One wash, with a length along and one across, marked before and measured after."""

    class Meta:
        model = WashEvent
        fields = ("washed_on", "way", "water_c", "text")
        widgets: ClassVar = {
            "washed_on": DayInput(),
            "text": forms.Textarea(attrs={"rows": 2}),
        }
        help_texts: ClassVar = {"text": "Colour in the water, felting, a seam that opened."}

    def __init__(self, data: Any, *, garment: Garment, member: Member, units: LengthUnit) -> None:
        wash = WashEvent(garment=garment, workshop=garment.workshop, made_by=member)
        super().__init__(data, instance=wash)
        self.fields["water_c"] = forms.IntegerField(
            label="Water in °C", required=False, min_value=0, max_value=HOTTEST_C
        )
        for way in WAYS:
            for when in ("before", "after"):
                self.fields[f"{way}_{when}_mm"] = LengthField(
                    label=f"{way.capitalize()} the grain, {when}", unit=units, required=False
                )

    def clean(self) -> dict[str, Any]:
        data = super().clean() or self.cleaned_data
        washed_on = data.get("washed_on")
        if washed_on and washed_on > timezone.localdate():
            self.add_error("washed_on", "This day is still to come.")
        for way in WAYS:
            self._check(data, way)
            for when in ("before", "after"):
                name = f"{way}_{when}_mm"
                setattr(self.instance, name, data.get(name) if not self.errors else None)
        return data

    def _check(self, data: dict[str, Any], way: str) -> None:
        names = [f"{way}_{when}_mm" for when in ("before", "after")]
        if any(name in self.errors for name in names):
            return
        before, after = (data.get(name) for name in names)
        for name, length, other in zip(names, (before, after), (after, before), strict=True):
            if length is None and other is not None:
                self.add_error(name, "A change needs the length before and the length after.")
                return
        if before is None or after is None:
            return
        if not LEAST_LEFT * before <= after <= MOST_GROWTH * before:
            self.add_error(
                names[1],
                "Cloth does not change that much in a wash. Are both lengths in the same unit?",
            )

    @transaction.atomic
    def save(self, commit: bool = True) -> WashEvent:
        wash = super().save()
        if wash.garment.status in (Status.ARRIVED, Status.SET_ASIDE):
            move_to(wash.garment, Status.WASHED)
        measure_again(wash.garment)
        return wash

    @property
    def length_rows(self) -> list[tuple[str, forms.BoundField, forms.BoundField]]:
        return [(way, self[f"{way}_before_mm"], self[f"{way}_after_mm"]) for way in WAYS]

"""Taking a garment in, and describing it once there is time."""

from collections.abc import Iterator
from typing import Any, ClassVar

from django import forms
from django.db import transaction

from inventory.advice.constructions import CONSTRUCTIONS
from inventory.advice.grades import FRAGILITY, FRAY, HAND_FEELS
from inventory.advice.label import MARKS
from inventory.choices import Kind, Trouble
from inventory.cloth import measure_again
from inventory.forms.fibres import FibreRows, save_shares
from inventory.models import Collection, Garment, Photo, new_tag
from inventory.photos import MOST_BYTES, prepared
from shared.errors import PhotoError
from shared.forms import LengthField
from shared.models import Workshop
from shared.units import LengthUnit

PART_WORDS = {
    "wash": "Washing tub",
    "bleach": "Triangle",
    "dry": "Square",
    "iron": "Iron",
    "professional": "Circle",
}


def construction_choices() -> list[tuple[str, str]]:
    return [("", "Not known yet"), *((c.name, c.label) for c in CONSTRUCTIONS.values())]


def clean_photo(form: forms.Form, name: str) -> None:
    """Check the upload in a form's field and put the two finished pictures in its place."""
    upload = form.cleaned_data.get(name)
    if not upload:
        return
    try:
        if upload.size > MOST_BYTES:
            raise PhotoError("This file is over 40 megabytes. Choose a smaller size in the camera.")
        form.cleaned_data[name] = prepared(upload, upload.content_type)
    except PhotoError as error:
        form.add_error(name, str(error))


def save_photo(garment: Garment, pictures: Any, description: str = "") -> Photo:
    """Store a prepared picture; the file is written before the row, so no row lacks its file."""
    full, small = pictures
    photo = Photo(workshop=garment.workshop, garment=garment, description=description)
    photo.small.save("small.jpg", small, save=False)
    photo.image.save("full.jpg", full, save=False)
    photo.save()
    return photo


class PhotoForm(forms.Form):
    photo = forms.FileField(
        label="Photograph",
        widget=forms.FileInput(attrs={"accept": "image/jpeg,image/png,image/webp"}),
    )
    description = forms.CharField(
        label="What the picture shows",
        max_length=160,
        required=False,
        help_text="Read aloud to those who cannot see it.",
    )

    def clean(self) -> dict[str, Any]:
        super().clean()
        clean_photo(self, "photo")
        return self.cleaned_data


class TakeInForm(FibreRows):
    """The minute at the door: which collection, what it is, a picture, its fibre and its make."""

    field_order = ("collection", "new_collection", "kind", "photo", "name")

    collection = forms.ModelChoiceField(
        Collection.objects.none(),
        label="Collection",
        required=False,
        empty_label="A new collection",
    )
    new_collection = forms.CharField(
        label="Name of the new collection",
        max_length=80,
        required=False,
        help_text="Only for a new one. What its giver allows can be added afterwards.",
    )
    kind = forms.ChoiceField(label="What is it?", choices=Kind)
    photo = forms.FileField(
        label="Photograph",
        required=False,
        widget=forms.FileInput(
            attrs={"accept": "image/jpeg,image/png,image/webp", "capture": "environment"}
        ),
    )
    name = forms.CharField(label="Name or description", max_length=80, required=False)
    construction = forms.ChoiceField(
        label="How the cloth is made", choices=construction_choices, required=False
    )

    def __init__(self, *args: Any, workshop: Workshop, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.workshop = workshop
        choice = self.fields["collection"]
        assert isinstance(choice, forms.ModelChoiceField)  # noqa: S101 - for the type checker
        choice.queryset = Collection.objects.of(workshop)

    def clean(self) -> dict[str, Any]:
        data = super().clean()
        if not data.get("collection") and not (data.get("new_collection") or "").strip():
            self.add_error("collection", "Choose a collection, or name a new one below.")
        clean_photo(self, "photo")
        return data

    @transaction.atomic
    def save(self) -> Garment:
        data = self.cleaned_data
        collection = data["collection"] or Collection.objects.create(
            workshop=self.workshop, name=data["new_collection"].strip()
        )
        garment = Garment.objects.create(
            workshop=self.workshop,
            collection=collection,
            tag=free_tag(self.workshop),
            kind=data["kind"],
            name=data["name"],
            construction=data["construction"],
            has_no_label=data["has_no_label"],
        )
        save_shares(garment, data["shares"])
        if data.get("photo"):
            save_photo(garment, data["photo"])
        return garment


def free_tag(workshop: Workshop) -> str:
    """A tag no garment of this workshop has; the database has the last word."""
    while Garment.objects.of(workshop).filter(tag=(tag := new_tag())).exists():
        pass
    return tag


class DescribeForm(FibreRows, forms.ModelForm[Garment]):
    """Everything that is known of the cloth. All of it may stay empty."""

    construction = forms.ChoiceField(
        label="How the cloth is made", choices=construction_choices, required=False
    )
    hand_feel = forms.ChoiceField(label="Weight by hand", required=False)
    fragility = forms.TypedChoiceField(coerce=int, empty_value=None, required=False)
    fray = forms.TypedChoiceField(label="Fraying", coerce=int, empty_value=None, required=False)
    troubles = forms.MultipleChoiceField(
        label="Does any of this apply?",
        choices=Trouble,
        required=False,
        widget=forms.CheckboxSelectMultiple,
    )

    class Meta:
        model = Garment
        fields = (
            "collection",
            "kind",
            "name",
            "colour",
            "status",
            "has_no_label",
            "construction",
            "mass_g_m2",
            "hand_feel",
            "stretch_along_pct",
            "stretch_across_pct",
            "fragility",
            "fray",
            "is_one_way",
            "surface",
            "troubles",
            "notes",
        )
        help_texts: ClassVar = {
            "mass_g_m2": "Weigh it on kitchen scales and divide by its area. Wins over the hand.",
            "stretch_along_pct": "Percent. Pull 10 cm: if it reaches 11.5 cm that is 15.",
            "stretch_across_pct": "Percent, measured the same way across the grain.",
        }

    def __init__(self, *args: Any, workshop: Workshop, units: LengthUnit, **kwargs: Any) -> None:
        garment = kwargs["instance"]
        shares = [(share.fibre, share.percent) for share in garment.fibre_shares.all()]
        super().__init__(*args, shares=shares, **kwargs)
        collection = self.fields["collection"]
        assert isinstance(collection, forms.ModelChoiceField)  # noqa: S101 - for the type checker
        collection.queryset = Collection.objects.of(workshop)
        self._offer("hand_feel", [(f.name, f.label) for f in HAND_FEELS.values()])
        self._offer("fragility", [(str(g.value), f"{g.value}: {g.words}") for g in FRAGILITY])
        self._offer("fray", [(str(g.value), f"{g.value}: {g.words}") for g in FRAY])
        for part, marks in MARKS.items():
            self.fields[f"label_{part}"] = forms.ChoiceField(
                label=PART_WORDS[part],
                choices=[("", "Not on the label, or not readable"), *marks],
                required=False,
                initial=garment.label_marks.get(part, ""),
            )
        for way in ("along", "across"):
            self.fields[f"repeat_{way}_mm"] = LengthField(
                label=f"Pattern repeats {way} the grain every",
                unit=units,
                required=False,
                initial=getattr(garment, f"repeat_{way}_mm"),
            )

    def _offer(self, name: str, choices: list[tuple[str, str]]) -> None:
        field = self.fields[name]
        assert isinstance(field, forms.ChoiceField)  # noqa: S101 - for the type checker
        field.choices = [("", "Not known yet"), *choices]

    def group(self, *names: str) -> Iterator[forms.BoundField]:
        return (self[name] for name in names)

    @transaction.atomic
    def save(self, commit: bool = True) -> Garment:
        garment = super().save(commit=False)
        marks = {part: self.cleaned_data[f"label_{part}"] for part in MARKS}
        garment.label_marks = {part: mark for part, mark in marks.items() if mark}
        garment.repeat_along_mm = self.cleaned_data["repeat_along_mm"]
        garment.repeat_across_mm = self.cleaned_data["repeat_across_mm"]
        garment.save()
        save_shares(garment, self.cleaned_data["shares"])
        measure_again(garment)
        return garment

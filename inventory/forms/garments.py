"""Taking a garment in, and its pictures."""

from typing import Any

from django import forms
from django.db import transaction

from inventory.choices import Kind
from inventory.forms.fibres import FibreRows, construction_choices, save_shares
from inventory.models import Collection, ConditionNote, Garment, Photo, new_tag
from inventory.photos import MOST_BYTES, prepared
from shared.errors import PhotoError
from shared.models import Workshop

PICTURES = "image/jpeg,image/png,image/webp"


def prepared_or_refused(upload: Any) -> Any:
    """The two finished pictures of an upload; raises PhotoError for one that is none."""
    if upload.size > MOST_BYTES:
        raise PhotoError("This file is over 40 megabytes. Choose a smaller size in the camera.")
    return prepared(upload, upload.content_type)


def clean_photo(form: forms.Form, name: str) -> None:
    """Check the upload in a form's field and put the two finished pictures in its place."""
    upload = form.cleaned_data.get(name)
    if not upload:
        return
    try:
        form.cleaned_data[name] = prepared_or_refused(upload)
    except PhotoError as error:
        form.add_error(name, str(error))


def save_photo(
    garment: Garment, pictures: Any, description: str = "", note: ConditionNote | None = None
) -> Photo:
    """Store a prepared picture; the file is written before the row, so no row lacks its file."""
    full, small = pictures
    photo = Photo(workshop=garment.workshop, garment=garment, description=description, note=note)
    photo.small.save("small.jpg", small, save=False)
    photo.image.save("full.jpg", full, save=False)
    photo.save()
    return photo


class PhotoForm(forms.Form):
    photo = forms.FileField(
        label="Photograph",
        widget=forms.FileInput(attrs={"accept": PICTURES}),
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
        widget=forms.FileInput(attrs={"accept": PICTURES, "capture": "environment"}),
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

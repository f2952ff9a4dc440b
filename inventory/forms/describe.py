"""Describing a garment once there is time: what it is, its cloths, its condition, its label."""

import hashlib
from collections.abc import Iterator
from typing import Any, cast

from django import forms
from django.db import transaction
from django.http import QueryDict

from inventory.advice.grades import FRAGILITY, FRAY, HAND_FEELS
from inventory.choices import ClothPart, Trouble
from inventory.cloth import measure_again
from inventory.forms.fibres import FibreRows, Shares, construction_choices, save_shares
from inventory.forms.label import LabelFields
from inventory.models import Collection, Garment, StatusChange
from shared.forms import LengthField
from shared.models import Workshop
from shared.units import LengthUnit

SHORTEST_REPEAT_MM, LONGEST_REPEAT_MM = 1, 2000


def _figure(label: str, least: float, most: float, help_text: str) -> forms.FloatField:
    return forms.FloatField(
        label=label,
        required=False,
        min_value=least,
        max_value=most,
        help_text=help_text,
        widget=forms.NumberInput(attrs={"step": "any", "inputmode": "decimal"}),
    )


class DescribeForm(FibreRows, LabelFields, forms.ModelForm[Garment]):
    """Everything that is known of a garment. All of it may stay empty."""

    cloth_parts = tuple(ClothPart)

    construction = forms.ChoiceField(
        label="How the cloth is made", choices=construction_choices, required=False
    )
    lining_construction = forms.ChoiceField(
        label="How the lining is made", choices=construction_choices, required=False
    )
    trim_construction = forms.ChoiceField(
        label="How the trim is made", choices=construction_choices, required=False
    )
    mass_g_m2 = _figure("Weight in g/m²", 5, 3000, "Wins over the hand.")
    stretch_along_pct = _figure(
        "Stretch along", 0, 300, "Percent. Pull 10 cm: if it reaches 11.5 cm that is 15."
    )
    stretch_across_pct = _figure(
        "Stretch across", 0, 300, "Percent. Pull 10 cm across the grain in the same way."
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
            "lining_construction",
            "trim_construction",
            "mass_g_m2",
            "hand_feel",
            "stretch_along_pct",
            "stretch_across_pct",
            "fragility",
            "fray",
            "is_one_way",
            "surface",
            "label_edition",
            "troubles",
            "notes",
        )

    def __init__(self, *args: Any, workshop: Workshop, units: LengthUnit, **kwargs: Any) -> None:
        garment = kwargs["instance"]
        super().__init__(*args, shares=shares_of(garment), marks=garment.label_marks, **kwargs)
        collection = self.fields["collection"]
        assert isinstance(collection, forms.ModelChoiceField)  # noqa: S101 - for the type checker
        collection.queryset = Collection.objects.of(workshop)
        self._offer("hand_feel", [(f.name, f.label) for f in HAND_FEELS.values()])
        self._offer("fragility", [(str(g.value), f"{g.value}: {g.words}") for g in FRAGILITY])
        self._offer("fray", [(str(g.value), f"{g.value}: {g.words}") for g in FRAY])
        for way in ("along", "across"):
            self.fields[f"repeat_{way}_mm"] = LengthField(
                label=f"Pattern repeats {way} the grain every",
                unit=units,
                required=False,
                initial=getattr(garment, f"repeat_{way}_mm"),
            )

        self.state = state_of(garment)
        self.fields["seen"] = forms.CharField(
            widget=forms.HiddenInput, required=False, initial=self.state
        )

    def clean(self) -> dict[str, Any]:
        data = super().clean()
        if data.get("seen") and data["seen"] != self.state:
            typed = cast(QueryDict, self.data).copy()
            typed["seen"] = self.state
            self.data = typed
            self.add_error(
                None,
                "This garment was changed elsewhere while this page was open. Nothing is saved "
                "yet. What you typed stands below: save again to let it replace what is there now.",
            )
        for name in ("repeat_along_mm", "repeat_across_mm"):
            length = data.get(name)
            if length and not SHORTEST_REPEAT_MM <= length <= LONGEST_REPEAT_MM:
                self.add_error(name, "A pattern repeats every 1 mm to 2 m. Check the unit.")
        return data

    def _offer(self, name: str, choices: list[tuple[str, str]]) -> None:
        field = self.fields[name]
        assert isinstance(field, forms.ChoiceField)  # noqa: S101 - for the type checker
        field.choices = [("", "Not known yet"), *choices]

    @property
    def other_cloths(self) -> Iterator[tuple[str, Any, forms.BoundField, bool]]:
        """Lining and trim: name, fibre rows, make, and whether anything is there."""
        for part in (ClothPart.LINING, ClothPart.TRIM):
            rows, make = self.rows_of(part), self[f"{part}_construction"]
            fields = [field for pair in rows for field in pair] + [make]
            yield (
                str(part.label),
                rows,
                make,
                any(field.value() or field.errors for field in fields),
            )

    @transaction.atomic
    def save(self, commit: bool = True) -> Garment:
        garment = super().save(commit=False)
        for name in ("label_marks", "repeat_along_mm", "repeat_across_mm"):
            setattr(garment, name, self.cleaned_data[name])
        garment.save()
        if garment.status != self.initial["status"]:
            StatusChange.objects.create(
                workshop=garment.workshop, garment=garment, status=garment.status
            )
        for part, shares in self.cleaned_data["shares_by_part"].items():
            save_shares(garment, shares, part)
        measure_again(garment)
        return garment


def state_of(garment: Garment) -> str:
    """A short mark of all that the form shows, to see that nothing changed in between."""
    facts = [getattr(garment, name) for name in DescribeForm.Meta.fields if name != "collection"]
    facts += [garment.collection_id, garment.label_marks, sorted(shares_of(garment).items())]
    facts += [garment.repeat_along_mm, garment.repeat_across_mm]
    return hashlib.sha256(repr(facts).encode()).hexdigest()[:16]


def shares_of(garment: Garment) -> dict[str, Shares]:
    """A garment's fibre shares by the part they are of."""
    shares: dict[str, Shares] = {}
    for share in garment.fibre_shares.all():
        shares.setdefault(share.part, []).append((share.fibre, share.percent))
    return shares

"""Keepsakes: what is to be made, for whom, from what and by which rules."""

from typing import Any, ClassVar

from django import forms
from django.db import transaction

from inventory.forms.panels import PlaceField
from inventory.models import Collection, Garment
from planning.models import Keepsake, Pattern, PieceRule
from shared.models import Workshop
from shared.units import LengthUnit

AGES = (
    (0, "A baby under 12 months"),
    (12, "A child of 1 or 2"),
    (36, "A child of 3 to 5"),
    (72, "A child of 6 to 13"),
    (168, "14 or older"),
)


def _age_band(age_months: int) -> int:
    return max(low for low, _ in AGES if low <= age_months)


def age_words(age_months: int | None) -> str:
    """The age in the words of the form; nothing where it is not known."""
    return "" if age_months is None else dict(AGES)[_age_band(age_months)]


class KeepsakeForm(forms.ModelForm[Keepsake]):
    recipient_age_months = forms.TypedChoiceField(
        label="The youngest child it can reach",
        choices=[("", "Not known yet"), *AGES],
        coerce=int,
        empty_value=None,
        required=False,
        help_text="In the house it goes to, not only who it is for: eyes and buttons hang on it.",
    )

    class Meta:
        model = Keepsake
        fields = (
            "name",
            "collection",
            "pattern",
            "recipient",
            "recipient_age_months",
            "purpose",
            "notes",
        )
        help_texts: ClassVar = {"name": "For example “A bear for Ellen”."}
        widgets: ClassVar = {"purpose": forms.RadioSelect()}

    def __init__(self, *args: Any, workshop: Workshop, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        _only(self, "collection", Collection.objects.of(workshop))
        open_ = Pattern.objects.of(workshop).current().exclude(sizes=None)
        kept = Pattern.objects.of(workshop).filter(pk=self.instance.pattern_id)
        _only(self, "pattern", (open_ | kept).distinct())
        if self.instance.pattern_id is None and not self.initial.get("pattern"):
            built_in = open_.exclude(built_in="").order_by("pk")
            self.initial["pattern"] = built_in.first() or open_.first()
        age = self.instance.recipient_age_months
        if age is not None:
            self.initial["recipient_age_months"] = _age_band(age)

    def clean(self) -> dict[str, Any]:
        data = super().clean() or self.cleaned_data
        if "pattern" in self.changed_data:
            self.instance.chosen_size = None  # it was a size of the other pattern
        return data


WISHES = ("wants_few_garments", "wants_leftover", "wants_same_cloth", "kept_whole")
MOST_MM = {"clearance_mm": 50, "edge_margin_mm": 100, "flaw_margin_mm": 100}


class RulesForm(forms.ModelForm[Keepsake]):
    """The rules of the cutting table: margins, grain, and what may come from where."""

    left_out = forms.ModelMultipleChoiceField(
        Garment.objects.none(),
        label="Garments left out",
        required=False,
        widget=forms.CheckboxSelectMultiple,
        help_text="Ticked garments are not cut for this keepsake.",
    )
    grain_tolerance_deg = forms.FloatField(
        label="Off the grain by at most, in degrees",
        min_value=0,
        max_value=45,
        help_text="0 keeps every piece exactly on the grain.",
    )

    class Meta:
        model = Keepsake
        fields = ("left_out", "grain_tolerance_deg", *WISHES)
        labels: ClassVar = {
            "wants_few_garments": "Cut into as few garments as can be",
            "wants_leftover": "Leave the largest piece of cloth over",
            "wants_same_cloth": "Cut all copies of a piece from one garment",
            "kept_whole": "Garments to be kept whole if they can be",
        }
        help_texts: ClassVar = {
            "kept_whole": "These are cut only where the others are not enough.",
        }
        widgets: ClassVar = {"kept_whole": forms.CheckboxSelectMultiple}

    MARGINS: ClassVar = {
        "clearance_mm": "Gap between pieces",
        "edge_margin_mm": "Margin to the edges of a panel",
        "flaw_margin_mm": "Margin round a flaw",
    }

    def __init__(self, *args: Any, units: LengthUnit, pieces: list[str], **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        garments = Garment.objects.of(self.instance.workshop).here()
        garments = garments.filter(collection=self.instance.collection)
        _only(self, "left_out", garments)
        _only(self, "kept_whole", garments)
        for name, label in self.MARGINS.items():
            kept = self.initial.get(name, getattr(self.instance, name))
            self.fields[name] = PlaceField(label=label, unit=units, initial=kept)
        self.pieces = {f"piece_{number}": piece for number, piece in enumerate(pieces)}
        rules = list(self.instance.piece_rules.all()) if self.instance.pk else []
        for name, piece in self.pieces.items():
            self.fields[name] = forms.ModelMultipleChoiceField(
                garments,
                label=piece.capitalize(),
                required=False,
                widget=forms.CheckboxSelectMultiple,
                initial=self.initial.get(
                    name, [rule.garment_id for rule in rules if rule.piece_name == piece]
                ),
            )

    def clean(self) -> dict[str, Any]:
        data = super().clean() or self.cleaned_data
        for name, most_mm in MOST_MM.items():
            if (data.get(name) or 0) > most_mm:
                self.add_error(name, "That is more than any margin should be. Check the unit.")
        return data

    @property
    def piece_fields(self) -> list[forms.BoundField]:
        return [self[name] for name in self.pieces]

    @property
    def margin_fields(self) -> list[forms.BoundField]:
        return [self[name] for name in self.MARGINS]

    @transaction.atomic
    def save(self, commit: bool = True) -> Keepsake:
        keepsake = self.instance
        for name in self.MARGINS:
            setattr(keepsake, name, self.cleaned_data[name])
        super().save()
        keepsake.piece_rules.all().delete()
        PieceRule.objects.bulk_create(
            PieceRule(
                workshop=keepsake.workshop, keepsake=keepsake, piece_name=piece, garment=garment
            )
            for name, piece in self.pieces.items()
            for garment in self.cleaned_data[name]
        )
        return keepsake


def _only(form: forms.ModelForm[Keepsake], name: str, rows: Any) -> None:
    field = form.fields[name]
    assert isinstance(field, forms.ModelChoiceField)  # noqa: S101 - for the type checker
    field.queryset = rows

"""What one pattern piece is, apart from its outline."""

from typing import Any, ClassVar

from django import forms

from planning.models import PatternPiece

GRAINS = (
    (90.0, "Up and down on the drawing"),
    (0.0, "Sideways on the drawing"),
    (45.0, "Slanting, up to the right"),
    (135.0, "Slanting, up to the left"),
)
FACTS = ("name", "count", "mirrored", "is_bias", "same_hand", "asks_stretch_pct", "part", "note")


class PieceFactsForm(forms.ModelForm[PatternPiece]):
    """What a piece is, apart from its outline."""

    grain_deg = forms.TypedChoiceField(label="The grain runs", coerce=float, choices=GRAINS)
    asks_stretch_pct = forms.FloatField(
        label="Stretch the pattern asks of the cloth, %",
        required=False,
        min_value=0,
        max_value=200,
        help_text="Empty or 0 for woven cloth.",
    )

    class Meta:
        model = PatternPiece
        fields = FACTS
        labels: ClassVar = {
            "count": "How many are cut",
            "mirrored": "Of these, how many turned over",
        }
        help_texts: ClassVar = {
            "name": "For example “ear” or “body front”.",
            "mirrored": "A left and a right make 2 cut, 1 of them turned over.",
            "is_bias": "The grain arrow then lies at 45° to the threads of the cloth.",
            "same_hand": "Only for pieces that are no pair, like the sections of a ball.",
            "part": "For the estimate of stuffing: body, head, arm, leg …",
        }

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        if self.instance.pk is None:
            self.initial["count"], self.initial["mirrored"] = 2, 1
        grain = self.instance.grain_deg % 180
        self.initial["grain_deg"] = grain
        if grain not in dict(GRAINS):
            field = self.fields["grain_deg"]
            assert isinstance(field, forms.ChoiceField)  # noqa: S101 - for the type checker
            field.choices = [(grain, f"At {grain:g}° from sideways, as it is"), *GRAINS]
        # the piece is in its size already, so a name that is taken is found here
        self.taken = set()
        if self.instance.size_id:
            others = self.instance.size.pieces.exclude(pk=self.instance.pk)
            self.taken = {name.casefold() for name in others.values_list("name", flat=True)}

    def clean_name(self) -> str:
        name = str(self.cleaned_data["name"]).strip()
        if name.casefold() in self.taken:
            raise forms.ValidationError("Another piece of this size has that name.")
        return name

    def clean_asks_stretch_pct(self) -> float:
        return float(self.cleaned_data["asks_stretch_pct"] or 0)

    def clean(self) -> dict[str, Any]:
        data = super().clean() or self.cleaned_data
        count, mirrored = data.get("count"), data.get("mirrored")
        if count is not None and count < 1:
            self.add_error("count", "At least one is cut.")
        elif count is not None and count > 200:
            self.add_error("count", "More than 200 of one piece cannot be planned.")
        elif count is not None and mirrored is not None and mirrored > count:
            self.add_error("mirrored", "No more can be turned over than are cut.")
        if "grain_deg" in data:
            self.instance.grain_deg = data["grain_deg"]
        return data

"""How much of a bolt to buy: its width, and the pieces that are cut from it."""

from typing import Any

from django import forms

from planning.models import PatternSize
from shared.forms import LengthField
from shared.units import LengthUnit

NARROWEST_MM, WIDEST_MM = 100.0, 3000.0
USUAL_MM: dict[LengthUnit, float] = {"cm": 900.0, "in": 36 * 25.4}  # common practice, no source


class BoltForm(forms.Form):
    """Asked by address, so that an answer can be kept and printed."""

    line = forms.ChoiceField(
        label="Cut at",
        choices=[("cut", "the cutting line"), ("seam", "the seam line, as interfacing often is")],
        initial="cut",
    )
    one_way = forms.BooleanField(label="With a pile or a one-way print", required=False)

    def __init__(self, *args: Any, size: PatternSize, units: LengthUnit, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.fields["width"] = LengthField(
            label="Width of the bolt", unit=units, initial=USUAL_MM[units]
        )
        names = [piece.name for piece in size.pieces.all()]
        self.fields["pieces"] = forms.MultipleChoiceField(
            label="Pieces cut from it",
            choices=[(name, name.capitalize()) for name in names],
            widget=forms.CheckboxSelectMultiple,
            initial=names,
        )
        self.order_fields(["width", "line", "one_way", "pieces"])

    def clean_width(self) -> float:
        width = float(self.cleaned_data["width"])
        if not NARROWEST_MM <= width <= WIDEST_MM:
            raise forms.ValidationError("A bolt is 10 cm to 3 m wide. Check the unit.")
        return width

"""Which two garments to lay side by side."""

from typing import Any

from django import forms

from inventory.models import Garment
from shared.models import Workshop


class GarmentChoice(forms.ModelChoiceField):
    def label_from_instance(self, garment: Any) -> str:
        return f"{garment} ({garment.tag})"


class CompareForm(forms.Form):
    a = GarmentChoice(
        Garment.objects.none(), label="This garment", required=False, empty_label="Choose a garment"
    )
    b = GarmentChoice(
        Garment.objects.none(), label="and this one", required=False, empty_label="Choose a garment"
    )

    def __init__(self, *args: Any, workshop: Workshop, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        for name in ("a", "b"):
            field = self.fields[name]
            assert isinstance(field, forms.ModelChoiceField)  # noqa: S101 - for the type checker
            field.queryset = Garment.objects.of(workshop).here()

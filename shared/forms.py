"""How forms look everywhere: one renderer, one field template, lengths with their own field."""

from typing import Any

from django import forms
from django.forms.renderers import TemplatesSetting

from shared.errors import LengthError
from shared.units import LengthUnit, length_for_field, parse_length


class PageRenderer(TemplatesSetting):
    form_template_name = "shared/form.html"
    field_template_name = "shared/field.html"


class LengthField(forms.CharField):
    """A length as a person writes it; cleans to millimetres."""

    def __init__(self, *, unit: LengthUnit = "cm", **options: Any) -> None:
        super().__init__(max_length=24, **options)
        self.unit = unit
        self.widget.attrs.setdefault("inputmode", "text")
        self.widget.attrs.setdefault("autocomplete", "off")

    def to_python(self, value: Any) -> Any:
        text = super().to_python(value)
        if not text:
            return None
        try:
            return parse_length(text, self.unit)
        except LengthError as error:
            raise forms.ValidationError(str(error)) from None

    def prepare_value(self, value: Any) -> Any:
        if isinstance(value, (int, float)):
            return length_for_field(value, self.unit)
        return value

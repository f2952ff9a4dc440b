"""How forms look everywhere: one renderer, one field template, lengths with their own field."""

from typing import Any

from django import forms
from django.forms.renderers import TemplatesSetting

from shared.errors import LengthError
from shared.units import LengthUnit, length_for_field, parse_length


class PageRenderer(TemplatesSetting):
    form_template_name = "shared/form.html"
    field_template_name = "shared/field.html"


class LengthField(forms.Field):
    """A length as a person writes it; cleans to millimetres, or None where it is left empty."""

    widget = forms.TextInput

    def __init__(self, *, unit: LengthUnit = "cm", **options: Any) -> None:
        super().__init__(**options)
        self.unit = unit
        self.widget.attrs.update({"autocomplete": "off", "maxlength": 24})

    def to_python(self, value: Any) -> Any:
        text = str(value or "").strip()
        if not text:
            return None
        if len(text) > 24:
            raise forms.ValidationError("That is too long to be a length.")
        try:
            return parse_length(text, self.unit)
        except LengthError as error:
            raise forms.ValidationError(str(error)) from None

    def prepare_value(self, value: Any) -> Any:
        if isinstance(value, (int, float)):
            return length_for_field(value, self.unit)
        return value

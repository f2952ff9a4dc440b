"""The care label on a form: its five marks as pictures to tap, or its words."""

from typing import Any

from django import forms

from inventory.advice.label import MARKS
from inventory.advice.problems import AdviceError
from inventory.choices import LabelEdition
from inventory.forms.label_text import marks_in

PART_WORDS = {
    "wash": "Washing tub",
    "bleach": "Triangle",
    "dry": "Square",
    "iron": "Iron",
    "professional": "Circle",
}


class MarkSelect(forms.RadioSelect):
    """Radio buttons, each with its mark drawn and its meaning in words."""

    template_name = "inventory/mark_select.html"

    def __init__(self, part: str, **options: Any) -> None:
        super().__init__(**options)
        self.part = part

    def create_option(self, *args: Any, **kwargs: Any) -> dict[str, Any]:
        option = super().create_option(*args, **kwargs)
        words = str(option["label"]).replace(" °", "\N{NO-BREAK SPACE}°")
        sign, _, meaning = words.rpartition(": ")
        return option | {"part": self.part, "sign": sign, "meaning": meaning}


class LabelFields(forms.Form):
    """The five marks, the edition, and a line for a label that has words only."""

    label_edition = forms.TypedChoiceField(
        label="Edition of the label",
        choices=[("", "Not known"), *LabelEdition.choices],
        coerce=int,
        empty_value=None,
        required=False,
        help_text="Of ISO 3758, by the garment’s age. Not known: the lower limits hold.",
    )
    label_words = forms.CharField(
        label="The label has words only",
        max_length=300,
        required=False,
        help_text="Type them as they stand, like “Machine wash warm, gentle cycle. Do not bleach. "
        "Tumble dry low. Cool iron.” They are read as marks.",
        widget=forms.Textarea(attrs={"rows": 2}),
    )

    def __init__(self, *args: Any, marks: dict[str, str] | None = None, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        for part, choices in MARKS.items():
            self.fields[f"label_{part}"] = forms.ChoiceField(
                label=PART_WORDS[part],
                choices=[("", "Not on the label"), *choices],
                required=False,
                initial=(marks or {}).get(part, ""),
                widget=MarkSelect(part),
            )

    def clean(self) -> dict[str, Any]:
        data = super().clean() or self.cleaned_data
        chosen = {part: data.get(f"label_{part}") or "" for part in MARKS}
        data["label_marks"] = {
            part: mark for part, mark in (chosen | self._in_words(data, chosen)).items() if mark
        }
        return data

    def _in_words(self, data: dict[str, Any], chosen: dict[str, str]) -> dict[str, str]:
        try:
            marks = marks_in(data.get("label_words") or "")
        except AdviceError as problem:
            self.add_error("label_words", str(problem))
            return {}
        for part, mark in marks.items():
            if chosen[part] not in ("", mark):
                said = dict(MARKS[part])
                self.add_error(
                    "label_words",
                    f"The words say “{said[mark]}”, the mark that is chosen says "
                    f"“{said[chosen[part]]}”. Keep one of them.",
                )
        return marks

    @property
    def mark_fields(self) -> list[forms.BoundField]:
        return [self[f"label_{part}"] for part in MARKS]

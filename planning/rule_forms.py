"""The rules that come in rows: pieces from one garment, details that show, stripes that meet.

A row left empty is passed over; what is wrong in one is said beside its own field.
"""

import json
from typing import Any, ClassVar, cast

from django import forms
from django.forms.formsets import DELETION_FIELD_NAME, BaseFormSet, formset_factory

from inventory.forms.panels import PlaceField
from inventory.models import Detail
from planning.models import Keepsake, StripeMatch
from planning.rule_choices import PieceChoices
from shared.units import LengthUnit

FARTHEST_MM = 200.0
MOST_ROWS = 200


class RowForm(forms.Form):
    """One rule. Subclasses take what a row can speak of."""

    def __init__(
        self, *args: Any, keepsake: Keepsake, choices: PieceChoices, units: LengthUnit, **kw: Any
    ) -> None:
        super().__init__(*args, **kw)
        self.choices, self.units, self.keepsake = choices, units, keepsake
        self.add_rule_fields()

    def add_rule_fields(self) -> None:
        raise NotImplementedError

    def add_length(self, label: str, initial_mm: float, help_text: str) -> None:
        self.fields["within_mm"] = PlaceField(
            label=label, unit=self.units, initial=initial_mm, help_text=help_text
        )

    def add_place(self, side: str, label: str) -> None:
        """A copy and a place on it."""
        copies: list[tuple[str, str]] = [("", "Choose a piece"), *self.choices.copies]
        self.fields[f"{side}copy"] = forms.ChoiceField(label=label, choices=copies)
        spots: list[Any] = [("", "Its middle"), *self.choices.spots]
        self.fields[f"{side}spot"] = forms.ChoiceField(
            label="Which place on it", choices=spots, required=False
        )

    def clean(self) -> dict[str, Any]:
        data = super().clean() or self.cleaned_data
        if (data.get("within_mm") or 0) > FARTHEST_MM:
            self.add_error("within_mm", "That is more than 20 cm. Check the unit.")
        return data

    def read_place(self, side: str) -> tuple[str, int, str] | None:
        """Piece, copy and place, or None where one of them was refused."""
        copy, spot = self.cleaned_data.get(f"{side}copy"), self.cleaned_data.get(f"{side}spot", "")
        if not copy:
            return None
        piece, number = json.loads(copy)
        owner, name = json.loads(spot) if spot else (piece, "")
        if owner != piece:
            self.add_error(f"{side}spot", f"“{name}” is a place on {owner}, not on {piece}.")
            return None
        return piece, number, name


class TogetherForm(RowForm):
    """Pieces that come from one garment, whichever it is."""

    def add_rule_fields(self) -> None:
        self.fields["piece_names"] = forms.MultipleChoiceField(
            label="These come from one garment",
            choices=[(name, name.capitalize()) for name in self.choices.names],
            required=False,
            widget=forms.CheckboxSelectMultiple,
        )

    def rule(self) -> dict[str, Any] | None:
        names = self.cleaned_data.get("piece_names")
        return {"piece_names": names} if names else None


class PinForm(RowForm):
    """A detail that shows on one copy of a piece."""

    def add_rule_fields(self) -> None:
        details = Detail.objects.of(self.keepsake.workshop).select_related("panel__garment")
        self.fields["detail"] = forms.ModelChoiceField(
            details.filter(panel__garment__collection=self.keepsake.collection),
            label="Detail",
            widget=forms.HiddenInput,
        )
        self.add_place("", "Shows on")
        self.add_length("How near", 5.0, "From the middle of the detail to that place.")

    def clean(self) -> dict[str, Any]:
        data = super().clean()
        self.place = self.read_place("")
        return data

    def rule(self) -> dict[str, Any] | None:
        if not self.cleaned_data.get("detail") or self.place is None:
            return None
        piece, copy, spot = self.place
        return {
            "detail": self.cleaned_data["detail"],
            "piece_name": piece,
            "copy": copy,
            "spot": spot,
            "within_mm": self.cleaned_data["within_mm"],
        }


class MatchForm(RowForm):
    """Two places where the stripe or check runs on across the seam."""

    def add_rule_fields(self) -> None:
        self.add_place("a_", "One piece")
        self.add_place("b_", "meets the other piece")
        self.fields["direction"] = forms.ChoiceField(
            label="Stripes meet",
            choices=StripeMatch.Direction,
            initial=StripeMatch.Direction.ALONG,
            help_text="Along the grain for stripes that run across the cloth.",
        )
        self.add_length("Within", 3.0, "How far apart they may be at most.")

    def clean(self) -> dict[str, Any]:
        data = super().clean()
        self.places = (self.read_place("a_"), self.read_place("b_"))
        a, b = self.places
        if a and b and a[:2] == b[:2]:
            self.add_error("b_copy", "A piece cannot be made to meet itself. Choose another copy.")
        return data

    def rule(self) -> dict[str, Any] | None:
        a, b = self.places
        if a is None or b is None:
            return None
        return {
            "a_piece": a[0],
            "a_copy": a[1],
            "a_spot": a[2],
            "b_piece": b[0],
            "b_copy": b[1],
            "b_spot": b[2],
            "direction": self.cleaned_data["direction"],
            "within_mm": self.cleaned_data["within_mm"],
        }


class Rows(BaseFormSet[Any]):
    """Rows of one kind of rule; every row may be left empty or taken away."""

    deletion_widget = forms.CheckboxInput
    default_error_messages: ClassVar = {
        "missing_management_form": "The rules did not arrive whole. Load the page and try again.",
    }

    def initial_form_count(self) -> int:
        return 0

    def total_form_count(self) -> int:
        return super().total_form_count() if self.is_bound else len(self.initial or ())

    def add_fields(self, form: Any, index: int | None) -> None:
        super().add_fields(form, index)
        form.fields[DELETION_FIELD_NAME].label = "Take this rule away"

    @property
    def wanted(self) -> list[Any]:
        """The rows that are neither empty nor taken away."""
        return [
            form
            for form in self.forms
            if form.has_changed() and not form.cleaned_data.get(DELETION_FIELD_NAME)
        ]

    def rules(self) -> list[dict[str, Any]]:
        found = [form.rule() for form in self.wanted]
        return [rule for rule in found if rule]

    def typed(self) -> list[dict[str, Any]]:
        """What was typed, row by row, to be shown again with nothing judged."""
        return [{name: form[name].data for name in form.fields} for form in self.forms]


class PinRows(Rows):
    """No copy and no detail is asked for twice."""

    def clean(self) -> None:
        if any(self.errors):
            return
        seen: set[Any] = set()
        for form in self.wanted:
            rule = form.rule()
            if rule is None:
                continue
            for field, key in (
                ("copy", (rule["piece_name"], rule["copy"])),
                ("detail", rule["detail"].pk),
            ):
                if key in seen:
                    words = "This piece shows" if field == "copy" else "This detail is shown by"
                    form.add_error("copy", f"{words} something else already.")
                seen.add(key)


def _rows(form: type[RowForm], formset: type[Rows] = Rows) -> type[Rows]:
    made = formset_factory(
        form, formset=formset, extra=0, can_delete=True, absolute_max=MOST_ROWS, max_num=MOST_ROWS
    )
    return cast(type[Rows], made)


TogetherRows = _rows(TogetherForm)
DetailRows = _rows(PinForm, PinRows)
MatchRows = _rows(MatchForm)
KINDS: dict[str, type[Rows]] = {
    "together": TogetherRows,
    "pins": DetailRows,
    "matches": MatchRows,
}

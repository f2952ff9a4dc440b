"""Fibre shares on a form: up to four rows, saved together or not at all."""

from typing import Any

from django import forms
from django.db import transaction

from inventory.advice.fibres import FIBRES
from inventory.models import FibreShare, Garment

ROWS = (1, 2, 3, 4)
COMMON = (
    "cotton",
    "polyester",
    "wool",
    "viscose",
    "polyamide",
    "elastane",
    "acrylic",
    "silk",
    "flax",
)


def fibre_choices() -> list[tuple[str, Any]]:
    """All fibres by label, the ones most often met first."""
    often = [(name, FIBRES[name].label) for name in COMMON]
    rest = sorted(
        ((name, fibre.label) for name, fibre in FIBRES.items() if name not in COMMON),
        key=lambda pair: pair[1].lower(),
    )
    return [("", "Choose a fibre"), ("Met most often", often), ("All others", rest)]


class FibreRows(forms.Form):
    """Four pairs of fibre and percent, and 'no label' as an answer of its own."""

    has_no_label = forms.BooleanField(
        label="There is no fibre label",
        required=False,
        help_text="An answer like any other: the advice is then the gentlest there is.",
    )

    def __init__(self, *args: Any, shares: list[tuple[str, float]] | None = None, **kwargs: Any):
        super().__init__(*args, **kwargs)
        for row in ROWS:
            fibre, percent = shares[row - 1] if shares and len(shares) >= row else ("", None)
            self.fields[f"fibre_{row}"] = forms.ChoiceField(
                label="Fibre" if row == 1 else f"Fibre {row}",
                choices=fibre_choices,
                required=False,
                initial=fibre,
            )
            self.fields[f"percent_{row}"] = forms.FloatField(
                label="Percent" if row == 1 else f"Percent of fibre {row}",
                required=False,
                min_value=0.1,
                max_value=100,
                initial=None if percent is None else f"{percent:g}",
                widget=forms.NumberInput(attrs={"step": "any", "inputmode": "decimal"}),
            )

    def clean(self) -> dict[str, Any]:
        data = super().clean() or self.cleaned_data
        data["shares"] = self._shares(data)
        if data["shares"] and data.get("has_no_label"):
            self.add_error(
                "has_no_label", "Either there is no label or there are fibres: not both."
            )
        return data

    def _shares(self, data: dict[str, Any]) -> list[tuple[str, float]]:
        rows = [(row, data.get(f"fibre_{row}") or "", data.get(f"percent_{row}")) for row in ROWS]
        named = [row for row in rows if row[1]]
        for row, fibre, percent in rows:
            if percent is not None and not fibre:
                self.add_error(f"fibre_{row}", "Which fibre is this percentage of?")
        if len(named) == 1 and named[0][2] is None and "percent_1" not in self.errors:
            return [(named[0][1], 100.0)]
        shares: list[tuple[str, float]] = []
        for row, fibre, percent in named:
            if percent is None and f"percent_{row}" not in self.errors:
                self.add_error(f"percent_{row}", "How many percent of this fibre?")
            if fibre in dict(shares):
                self.add_error(f"fibre_{row}", "This fibre is there already. Add the two together.")
            shares.append((fibre, percent or 0.0))
        total = sum(percent for _, percent in shares)
        if shares and not self.errors and abs(total - 100) > 0.01:
            self.add_error(
                f"percent_{named[-1][0]}",
                f"The fibres add up to {total:g} %. They must make 100 %.",
            )
        return shares


@transaction.atomic
def save_shares(garment: Garment, shares: list[tuple[str, float]]) -> None:
    """Replace a garment's fibre shares."""
    garment.fibre_shares.all().delete()
    FibreShare.objects.bulk_create(
        FibreShare(workshop=garment.workshop, garment=garment, fibre=fibre, percent=percent)
        for fibre, percent in shares
    )

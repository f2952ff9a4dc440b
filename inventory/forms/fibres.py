"""Fibre shares on a form: up to four rows a cloth, saved together or not at all."""

from typing import Any

from django import forms
from django.db import transaction

from inventory.advice.constructions import CONSTRUCTIONS
from inventory.advice.fibres import FIBRES
from inventory.choices import ClothPart
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


def construction_choices() -> list[tuple[str, str]]:
    return [("", "Not known yet"), *((c.name, c.label) for c in CONSTRUCTIONS.values())]


type Shares = list[tuple[str, float]]


def name_of(what: str, row: int, part: str = ClothPart.SHELL) -> str:
    """The name of a field: the shell's have none before them, so that the take-in stays plain."""
    return f"{what}_{row}" if part == ClothPart.SHELL else f"{part}_{what}_{row}"


class FibreRows(forms.Form):
    """Four pairs of fibre and percent for each cloth, and 'no label' as an answer of its own."""

    cloth_parts: tuple[ClothPart, ...] = (ClothPart.SHELL,)

    has_no_label = forms.BooleanField(
        label="There is no fibre label",
        required=False,
        help_text="An answer like any other: the advice is then the gentlest there is.",
    )

    def __init__(self, *args: Any, shares: dict[str, Shares] | None = None, **kwargs: Any):
        super().__init__(*args, **kwargs)
        for part in self.cloth_parts:
            self._add_rows(part, (shares or {}).get(part, []))

    def _add_rows(self, part: ClothPart, shares: Shares) -> None:
        of = "" if part == ClothPart.SHELL else f", {part}"
        for row in ROWS:
            number = "" if row == 1 else f" {row}"
            fibre, percent = shares[row - 1] if len(shares) >= row else ("", None)
            self.fields[name_of("fibre", row, part)] = forms.ChoiceField(
                label=f"Fibre{number}{of}", choices=fibre_choices, required=False, initial=fibre
            )
            self.fields[name_of("percent", row, part)] = forms.FloatField(
                label=f"Percent{number}{of}",
                required=False,
                min_value=0.1,
                max_value=100,
                initial=None if percent is None else f"{percent:g}",
                widget=forms.NumberInput(attrs={"step": "any", "inputmode": "decimal"}),
            )

    def clean(self) -> dict[str, Any]:
        data = super().clean() or self.cleaned_data
        by_part = {part: self._shares(data, part) for part in self.cloth_parts}
        data["shares_by_part"], data["shares"] = by_part, by_part[ClothPart.SHELL]
        if data["shares"] and data.get("has_no_label"):
            self.add_error(
                "has_no_label", "Either there is no label or there are fibres: not both."
            )
        return data

    def _shares(self, data: dict[str, Any], part: ClothPart) -> Shares:
        def name(what: str, row: int) -> str:
            return name_of(what, row, part)

        rows = [(r, data.get(name("fibre", r)) or "", data.get(name("percent", r))) for r in ROWS]
        named = [row for row in rows if row[1]]
        for row, fibre, percent in rows:
            if percent is not None and not fibre:
                self.add_error(name("fibre", row), "Which fibre is this percentage of?")
        if len(named) == 1 and named[0][2] is None and name("percent", 1) not in self.errors:
            return [(named[0][1], 100.0)]
        shares: Shares = []
        for row, fibre, percent in named:
            if percent is None and name("percent", row) not in self.errors:
                self.add_error(name("percent", row), "How many percent of this fibre?")
            if fibre in dict(shares):
                self.add_error(
                    name("fibre", row), "This fibre is there already. Add the two together."
                )
            shares.append((fibre, percent or 0.0))
        self._check_total(shares, name("percent", named[-1][0]) if named else "")
        return shares

    def _check_total(self, shares: Shares, field: str) -> None:
        total = sum(percent for _, percent in shares)
        if shares and not self.errors and abs(total - 100) > 0.01:
            self.add_error(field, f"The fibres add up to {total:g} %. They must make 100 %.")

    def rows_of(self, part: str) -> list[tuple[forms.BoundField, forms.BoundField]]:
        """The pairs of fields of one cloth."""
        return [(self[name_of("fibre", r, part)], self[name_of("percent", r, part)]) for r in ROWS]

    @property
    def shell_rows(self) -> list[tuple[forms.BoundField, forms.BoundField]]:
        return self.rows_of(ClothPart.SHELL)


@transaction.atomic
def save_shares(garment: Garment, shares: Shares, part: str = ClothPart.SHELL) -> None:
    """Replace the fibre shares of one of a garment's cloths."""
    garment.fibre_shares.filter(part=part).delete()
    FibreShare.objects.bulk_create(
        FibreShare(
            workshop=garment.workshop, garment=garment, part=part, fibre=fibre, percent=percent
        )
        for fibre, percent in shares
    )

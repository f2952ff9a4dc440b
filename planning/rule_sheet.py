"""All rules of a keepsake on one sheet: read, asked for one more row, saved all or nothing."""

from collections.abc import Mapping
from typing import Any

from django.db import transaction
from django.db.models import Prefetch
from django.http import QueryDict

from inventory.models import Detail, Garment
from planning.forms import RulesForm
from planning.models import DetailPin, Keepsake, StripeMatch, Together
from planning.problems import panels_open_to
from planning.rule_choices import (
    DetailPicture,
    Preset,
    choices_of,
    copy_value,
    picture_of,
    presets_of,
    spot_value,
)
from planning.rule_forms import KINDS, Rows
from shared.units import LengthUnit

MORE = ("together", "matches")  # rows that begin empty; a pin begins with its detail


class RuleSheet:
    """The form of single rules and a set of rows for each kind of rule that comes in rows."""

    def __init__(
        self,
        keepsake: Keepsake,
        units: LengthUnit,
        typed: QueryDict | None = None,
        shown: Mapping[str, Any] | None = None,
    ) -> None:
        self.keepsake, self.units = keepsake, units
        self.choices = choices_of(keepsake.pattern)
        shown = shown if shown is not None else kept_rules(keepsake)
        self.form = RulesForm(
            typed,
            instance=keepsake,
            units=units,
            pieces=list(self.choices.names),
            initial=shown.get("form"),
        )
        self.rows: dict[str, Rows] = {
            kind: rows(
                typed,
                prefix=kind,
                initial=None if typed is not None else shown[kind],
                form_kwargs={"keepsake": keepsake, "choices": self.choices, "units": units},
            )
            for kind, rows in KINDS.items()
        }

    def is_valid(self) -> bool:
        return all([self.form.is_valid(), *(rows.is_valid() for rows in self.rows.values())])

    @property
    def has_errors(self) -> bool:
        rows = self.rows.values()
        return bool(self.form.errors) or any(r.total_error_count() for r in rows if r.is_bound)

    def asking_for(self, wish: str) -> "RuleSheet":
        """The sheet as typed, with the rows that a button asked for; nothing is judged or saved."""
        shown: dict[str, Any] = {kind: rows.typed() for kind, rows in self.rows.items()}
        shown["form"] = {name: self.form[name].data for name in self.form.fields}
        kind, _, which = wish.partition(":")
        if kind in MORE:
            shown[kind] = [*shown[kind], {}]
        elif kind == "show" and which in {str(picture.detail.pk) for picture in self.pictures()}:
            shown["pins"] = [*shown["pins"], {"detail": which}]
        elif kind == "preset":
            chosen = [preset for preset in self.presets() if preset.words == which]
            shown["matches"] = [*shown["matches"], *(row for each in chosen for row in each.rows)]
        return RuleSheet(self.keepsake, self.units, shown=shown)

    def presets(self) -> list[Preset]:
        """The seams that can be made rules by one tap."""
        rows = self.keepsake.matches.all()
        taken = {
            frozenset(
                {(row.a_piece, row.a_copy, row.a_spot), (row.b_piece, row.b_copy, row.b_spot)}
            )
            for row in rows
        }
        return presets_of(self.keepsake.pattern, taken)

    def pictures(self) -> list[DetailPicture]:
        """Every detail of the cloth that may be cut, on its panel."""
        panels = panels_open_to(self.keepsake)
        return [picture_of(detail, panel) for panel in panels for detail in panel.details.all()]

    def pin_rows(self) -> list[tuple[Any, DetailPicture | None]]:
        """The rows of details that show, each with its picture."""
        garments = Prefetch("panel__garment", queryset=Garment.objects.with_cloth())
        forms = self.rows["pins"].forms
        chosen = [form["detail"].value() for form in forms]
        known = Detail.objects.of(self.keepsake.workshop).prefetch_related("panel", garments)
        details = known.in_bulk([int(pk) for pk in chosen if str(pk).isdecimal()])
        found = [details.get(int(pk)) if str(pk).isdecimal() else None for pk in chosen]
        pictures = [picture_of(each, each.panel) if each else None for each in found]
        return list(zip(forms, pictures, strict=True))

    @transaction.atomic
    def save(self) -> Keepsake:
        """Every rule anew, or none of them."""
        keepsake = self.form.save()
        owner = {"workshop": keepsake.workshop, "keepsake": keepsake}
        for old in (keepsake.together, keepsake.pins, keepsake.matches):
            old.all().delete()
        Together.objects.bulk_create(Together(**owner, **r) for r in self.rows["together"].rules())
        DetailPin.objects.bulk_create(DetailPin(**owner, **r) for r in self.rows["pins"].rules())
        matches = self.rows["matches"].rules()
        StripeMatch.objects.bulk_create(StripeMatch(**owner, **rule) for rule in matches)
        return keepsake


def kept_rules(keepsake: Keepsake) -> dict[str, list[dict[str, Any]]]:
    """The rows as they stand, as the forms show them."""
    return {
        "together": [{"piece_names": row.piece_names} for row in keepsake.together.all()],
        "pins": [
            {
                "detail": row.detail_id,
                "copy": copy_value(row.piece_name, row.copy),
                "spot": spot_value(row.piece_name, row.spot),
                "within_mm": row.within_mm,
            }
            for row in keepsake.pins.all()
        ],
        "matches": [
            {
                "a_copy": copy_value(row.a_piece, row.a_copy),
                "a_spot": spot_value(row.a_piece, row.a_spot),
                "b_copy": copy_value(row.b_piece, row.b_copy),
                "b_spot": spot_value(row.b_piece, row.b_spot),
                "direction": row.direction,
                "within_mm": row.within_mm,
            }
            for row in keepsake.matches.all()
        ],
    }

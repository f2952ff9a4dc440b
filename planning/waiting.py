"""What keeps a rule from being kept as it stands, and where it is mended.

Stripes can be matched only where it is known how the cloth repeats and where a stripe starts.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from django.urls import reverse

from inventory.cloth import shrinkage_for
from inventory.models import Panel
from inventory.stripes import is_unmeasured, origin_of, repeat_of


@dataclass(frozen=True, slots=True)
class Remark:
    """Something the maker should know about her rules, and where she can mend it."""

    words: str
    address: str = ""
    link: str = ""
    stops: bool = False


def waiting_panels(rows: Mapping[str, Panel]) -> dict[str, Remark]:
    """The panels nobody can match stripes on yet, each with what it waits for."""
    waiting = {}
    for name, row in rows.items():
        remark = _waits_for(row)
        if remark:
            waiting[name] = remark
    return waiting


def _waits_for(row: Panel) -> Remark | None:
    which = f"{row} of {row.garment} ({row.garment.tag})"
    edit = reverse("inventory:edit-panel", args=[row.pk])
    if is_unmeasured(row):
        address = reverse("inventory:describe", args=[row.garment_id]) + "#id_repeat_along_mm"
        words = f"{which} is striped or checked, but its repeat is not measured."
        return Remark(words, address, "Measure the repeat")
    if repeat_of(row) is None:
        return None
    if origin_of(row) is None:
        words = f"On {which} nobody has measured where a stripe starts."
        return Remark(words, f"{edit}#id_repeat_x_mm", "Measure where a stripe starts")
    if shrinkage_for(row) is not None:
        words = f"{which} has still to be washed, and its stripes will move with the cloth."
        return Remark(words, edit, "Measure it again after washing")
    return None

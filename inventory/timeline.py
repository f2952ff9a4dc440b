"""What happened to a garment, newest first: its arrival, notes, washes, moves and own words.

Reads the record and leaves nothing out: what was withdrawn is shown as withdrawn.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, datetime

from django.utils import timezone

from inventory.ledger import AdviceOverride, ConditionNote, WashEvent, Withdrawable
from inventory.models import Garment, Panel, Photo
from shared.units import LengthUnit, format_length


@dataclass(frozen=True, slots=True)
class Entry:
    """One line of the record. ``withdraw`` names the row that may still be withdrawn."""

    on: date
    written_at: datetime
    title: str
    text: str = ""
    detail: str = ""
    photos: tuple[Photo, ...] = ()
    withdrawn: str = ""
    wash_pk: int | None = None


def timeline_of(garment: Garment, units: LengthUnit) -> list[Entry]:
    """Every entry of a garment's record, newest first."""
    entries = [
        *(_note(row, units) for row in garment.condition_notes.all()),
        *(_wash(row, units) for row in garment.wash_events.all()),
        *(_own_words(row) for row in garment.overrides.all()),
        *_moves(garment),
        Entry(timezone.localdate(garment.created_at), garment.created_at, "Taken in"),
    ]
    return sorted(entries, key=lambda entry: (entry.on, entry.written_at), reverse=True)


def notes_on(panel: Panel, units: LengthUnit) -> list[Entry]:
    """What was noted about one panel, newest first."""
    return [_note(row, units) for row in panel.condition_notes.all()]


def _moves(garment: Garment) -> Iterator[Entry]:
    for row in garment.status_changes.all():
        yield Entry(row.changed_on, row.created_at, f"On the bench: {row.get_status_display()}")


def _note(row: ConditionNote, units: LengthUnit) -> Entry:
    return Entry(
        row.noted_on,
        row.created_at,
        f"Condition: {row.get_grade_display()}",
        row.text,
        place_words(row, units),
        tuple(row.photos.all()),
    )


def place_words(row: ConditionNote, units: LengthUnit) -> str:
    """Where on the garment a note belongs; empty where it is about the whole of it."""
    if row.panel is None:
        return ""
    if row.across_mm is None or row.up_mm is None:
        return f"On: {row.panel}"
    across, up = format_length(row.across_mm, units), format_length(row.up_mm, units)
    return f"On: {row.panel}, {across} across and {up} up"


def _wash(row: WashEvent, units: LengthUnit) -> Entry:
    water = f" at {row.water_c} °C" if row.water_c is not None else ""
    changes = [
        _change_words(way, change, before, after, units)
        for way, change, before, after in (
            ("Along", row.along_change_pct, row.along_before_mm, row.along_after_mm),
            ("Across", row.across_change_pct, row.across_before_mm, row.across_after_mm),
        )
        if change is not None and before is not None and after is not None
    ]
    return Entry(
        row.washed_on,
        row.created_at,
        f"Washed: {row.get_way_display().lower()}{water}",
        row.text,
        ". ".join(changes) or "No lengths were measured",
        withdrawn=_withdrawn(row),
        wash_pk=None if row.withdrawn_at else row.pk,
    )


def _change_words(
    way: str, change_pct: float, before_mm: float, after_mm: float, units: LengthUnit
) -> str:
    lengths = f"{format_length(before_mm, units)} became {format_length(after_mm, units)}"
    return f"{way}: {lengths}, {change_words(change_pct)}"


def change_words(change_pct: float) -> str:
    """A change of length in words.

    >>> change_words(-3.21), change_words(0.0), change_words(1.0)
    ('it shrank 3.2 %', 'it kept its length', 'it grew 1 %')
    """
    size = f"{abs(change_pct):.1f}".removesuffix(".0")
    if size == "0":
        return "it kept its length"
    return f"it {'grew' if change_pct > 0 else 'shrank'} {size} %"


def _own_words(row: AdviceOverride) -> Entry:
    return Entry(
        row.made_on,
        row.created_at,
        f"{row.get_part_display()} in the words of {row.made_by}",
        row.text,
        f"Because: {row.reason}",
        withdrawn=_withdrawn(row),
    )


def _withdrawn(row: Withdrawable) -> str:
    if row.withdrawn_at is None:
        return ""
    day = timezone.localdate(row.withdrawn_at)
    return f"Withdrawn on {day.day} {day:%B %Y} by {row.withdrawn_by}"

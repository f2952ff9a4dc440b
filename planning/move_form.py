"""The place of one piece in numbers: which panel, how turned, how far across and up."""

import json
import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from django import forms

from inventory.forms.panels import PlaceField
from inventory.models import Panel
from planning.coverage.problem import Piece, Placement, Problem
from planning.hand_lays import moved, turn_choices, turn_value
from planning.problems import Cloth
from shared.units import LengthUnit

type Copy = tuple[str, int]
ROUNDED_MM = 0.01


def copy_of(text: str, problem: Problem) -> Copy | None:
    """The copy that a form names; None for one that is not there."""
    try:
        name, copy = json.loads(text)
        piece = problem.piece(name)
    except (ValueError, TypeError, KeyError):
        return None
    return (name, copy) if isinstance(copy, int) and 0 <= copy < piece.count else None


def panel_words(row: Panel) -> str:
    """A panel as a list of panels names it."""
    return f"{row} of {row.garment} ({row.garment.tag})"


@dataclass(frozen=True, slots=True)
class Moving:
    """What a place is chosen for: one copy, where it lies now, and the cloth it may lie on."""

    problem: Problem
    cloth: Cloth
    copy: Copy
    now: Placement | None

    @property
    def piece(self) -> Piece:
        return self.problem.piece(self.copy[0])

    @property
    def panels(self) -> list[tuple[str, str]]:
        """The panels it may come from, by their row's number; the one it lies on among them."""
        rows = self.cloth.rows
        return [
            (str(rows[panel.id].pk), panel_words(rows[panel.id]))
            for panel in self.problem.panels
            if self.problem.may_come_from(self.piece, panel)
            or (self.now is not None and self.now.panel == panel.id)
        ]


class MoveForm(forms.Form):
    """Numbers for one piece. `placement` is where it comes to lie once the form is valid."""

    placement: Placement

    def __init__(self, *args: Any, moving: Moving, units: LengthUnit, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.moving = moving
        self.fields["panel"] = forms.ChoiceField(label="Panel", choices=moving.panels)
        self.fields["turn"] = forms.ChoiceField(label="Turned by", choices=self._turns())
        self.fields["across"] = PlaceField(label="From the left", unit=units)
        self.fields["up"] = PlaceField(label="From below", unit=units)
        if moving.now is not None:
            self.initial = self._place_now(moving.now)
        if self.is_bound:
            self._suit_the_panel()

    def _panel_name(self) -> str:
        """The panel that is chosen, else where the piece lies, else the first it may come from."""
        typed = self.data.get("panel", "") if self.is_bound else ""
        known = self.moving.cloth.name_of(int(typed)) if str(typed).isdecimal() else ""
        if known:
            return known
        if self.moving.now is not None:
            return self.moving.now.panel
        offered = self.moving.panels
        return self.moving.cloth.name_of(int(offered[0][0])) if offered else ""

    def _turns(self) -> list[tuple[str, str]]:
        name, now = self._panel_name(), self.moving.now
        if not name:
            return []
        angle = now.rotation_deg if now is not None and now.panel == name else None
        panel = self.moving.problem.panel(name)
        return turn_choices(self.moving.piece, self.moving.copy[1], panel, angle)

    def _suit_the_panel(self) -> None:
        """On another panel the grain may run otherwise: then the first turn there is taken."""
        now, typed = self.moving.now, self.data.get("turn")
        choices = [value for value, _ in self._turns()]
        is_moved = now is None or self._panel_name() != now.panel
        if is_moved and choices and typed not in choices:
            self.data = {**dict(self.data.items()), "turn": choices[0]}

    def _place_now(self, now: Placement) -> dict[str, Any]:
        row = self.moving.cloth.rows[now.panel]
        return {
            "panel": str(row.pk),
            "turn": turn_value(now.rotation_deg % 360),
            "across": min(x for x, _ in now.outline) - min(x for x, _ in row.outline_mm),
            "up": min(y for _, y in now.outline) - min(y for _, y in row.outline_mm),
        }

    @property
    def is_left_aside(self) -> bool:
        """Whether a piece that has no place yet was left without one."""
        typed = (self.data.get("across", ""), self.data.get("up", ""))
        return self.moving.now is None and not any(text.strip() for text in typed)

    def clean(self) -> dict[str, Any]:
        data = super().clean() or self.cleaned_data
        if not self.errors:
            name = self.moving.cloth.name_of(int(data["panel"]))
            row = self.moving.cloth.rows[name]
            across = data["across"] + min(x for x, _ in row.outline_mm)
            up = data["up"] + min(y for _, y in row.outline_mm)
            panel = self.moving.problem.panel(name)
            turn = float(data["turn"])
            place = moved(self.moving.problem, self.moving.copy, panel, turn, across, up)
            self.placement = self._now_if_same(place)
        return data

    def _now_if_same(self, place: Placement) -> Placement:
        """What was only rounded on the way through the form lies where it lay."""
        now = self.moving.now
        if now is None or now.panel != place.panel or now.rotation_deg % 360 != place.rotation_deg:
            return place
        return now if math.dist(now.translation, place.translation) < ROUNDED_MM else place


def replaced(lay: Sequence[Placement], place: Placement) -> list[Placement]:
    """The lay with one copy in its new place; the others keep theirs, and their order."""
    copy = (place.piece, place.copy)
    if any((each.piece, each.copy) == copy for each in lay):
        return [place if (each.piece, each.copy) == copy else each for each in lay]
    return [*lay, place]

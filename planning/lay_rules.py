"""The rules a keepsake sets for one size, as the coverage room takes them.

Decides nothing about a lay. What a rule speaks of but cannot be found, in this cloth or this size,
is never passed over in silence: it becomes a remark, and one that `stops` keeps the size from
being checked until somebody mends it.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field

from django.urls import reverse

from inventory.models import Detail, Panel
from planning.coverage.problem import Direction, Locked, Match, Pin, Point, Spot
from planning.models import Keepsake, PatternPiece, PatternSize
from planning.showing import point_of, still_aside
from planning.spots import copy_words, spots_of
from planning.waiting import Remark, waiting_panels

ROWS = ("left_out", "piece_rules__garment", "together", "pins__detail__panel", "matches", "locks")
DIRECTIONS: dict[str, Direction] = {"along": "along", "across": "across", "both": "both"}


@dataclass(slots=True)
class SizeRules:
    """What the rules come to for one size.

    `panels` holds, for pieces that may not come from every panel, the names they may come from.
    `waits` says that a panel was shut out only because its stripes are not measured: then nothing
    can be proven impossible.
    """

    same_garment: list[tuple[str, ...]] = field(default_factory=list)
    pins: list[Pin] = field(default_factory=list)
    matches: list[Match] = field(default_factory=list)
    locked: list[Locked] = field(default_factory=list)
    panels: dict[str, tuple[str, ...]] = field(default_factory=dict)
    remarks: list[Remark] = field(default_factory=list)
    waits: bool = False

    @property
    def stops(self) -> list[Remark]:
        return [remark for remark in self.remarks if remark.stops]


def rules_for(keepsake: Keepsake, size: PatternSize, rows: Mapping[str, Panel]) -> SizeRules:
    """The rules of one size; `rows` are the panels of the cloth by their names."""
    return _Reading(keepsake, size, rows).read()


class _Reading:
    """Reads the rows of one keepsake for one size."""

    def __init__(self, keepsake: Keepsake, size: PatternSize, rows: Mapping[str, Panel]) -> None:
        self.keepsake, self.rows = keepsake, rows
        self.pieces = {piece.name: piece for piece in size.pieces.all()}
        self.size = size
        self.names = {row.pk: name for name, row in rows.items()}
        self.address = reverse("planning:rules", args=[keepsake.pk])
        self.found = SizeRules()
        self._spots: dict[str, dict[str, Point]] = {}

    def read(self) -> SizeRules:
        self._bind()
        self._match()
        self._pin()
        self._lock()
        return self.found

    def _bind(self) -> None:
        for group in self.keepsake.together.all():
            names = tuple(name for name in group.piece_names if self._piece(name))
            if names:
                self.found.same_garment.append(names)

    def _match(self) -> None:
        for row in self.keepsake.matches.all():
            a = self._spot(row.a_piece, row.a_copy, row.a_spot)
            b = self._spot(row.b_piece, row.b_copy, row.b_spot)
            if a and b:
                match = Match(a, b, DIRECTIONS[row.direction], row.within_mm)
                self.found.matches.append(match)
        waiting = waiting_panels(self.rows) if self.found.matches else {}
        if waiting:
            open_to = tuple(name for name in self.rows if name not in waiting)
            self.found.waits = True
            self.found.remarks += waiting.values()
            for match in self.found.matches:
                self._narrow(match.a.piece, open_to)
                self._narrow(match.b.piece, open_to)

    def _pin(self) -> None:
        pinned = {pin.detail_id for pin in self.keepsake.pins.all()}
        for row in self.keepsake.pins.all():
            spot = self._spot(row.piece_name, row.copy, row.spot)
            if spot is None:
                continue
            words = f"{row.detail} shall show on {copy_words(self.pieces[spot.piece], spot.copy)}"
            panel = self.names.get(row.detail.panel_id, "")
            if not panel:
                where = f"{row.detail.panel} is not in the cloth that may be cut"
                self._stop(spot.piece, f"{words}, but {where}.")
            elif self._may_come_from(spot.piece, panel, words):
                point = point_of(row.detail, self.rows[panel])
                pin = Pin(spot.piece, spot.copy, panel, spot.at, point, row.within_mm)
                self.found.pins.append(pin)
                self._say_what_is_cut(row.detail, panel, pinned)

    def _say_what_is_cut(self, detail: Detail, panel: str, pinned: set[int]) -> None:
        row = self.rows[panel]
        kept = {each.pk for each in still_aside(row, pinned)}
        for each in row.details.all():
            if each.is_kept_aside and each.pk not in kept | pinned:
                self._say(f"{each} on {row} may be cut into, because {detail} lies on it.")

    def _lock(self) -> None:
        for row in self.keepsake.locks.all():
            piece = self._piece(row.piece_name) if row.size_id == self.size.pk else None
            if piece is None or row.copy >= piece.count:
                continue
            panel, words = self.names.get(row.panel_id, ""), copy_words(piece, row.copy)
            if not panel:
                gone = "that panel is no longer in the cloth, so the piece is free again"
                self._say(f"{words} was kept in its place, but {gone}.")
            elif self._may_come_from(piece.name, panel, f"{words} is kept in its place"):
                is_mirrored = row.copy >= piece.count_as_drawn
                place = (row.x_mm, row.y_mm)
                lock = Locked(piece.name, row.copy, panel, is_mirrored, row.rotation_deg, place)
                self.found.locked.append(lock)

    def _piece(self, name: str) -> PatternPiece | None:
        piece = self.pieces.get(name)
        if piece is None:
            self._say(f"A rule speaks of “{name}”, which this pattern does not have.")
        return piece

    def _spot(self, name: str, copy: int, spot: str) -> Spot | None:
        """A place on one copy, or None with a remark that says why not."""
        piece = self._piece(name)
        if piece is None:
            return None
        if copy >= piece.count:
            words = f"A rule speaks of {name} {copy + 1}, but {name} is cut {piece.count} times."
            self._stop(name, words)
            return None
        spots = self._spots.setdefault(name, spots_of(piece))
        if spot not in spots:
            self._stop(name, f"“{name}” has no place called “{spot}” in this size.")
            return None
        return Spot(name, copy, spots[spot])

    def _may_come_from(self, piece: str, panel: str, words: str) -> bool:
        garment = self.rows[panel].garment
        rules = self.keepsake.piece_rules.all()
        allowed = [rule.garment_id for rule in rules if rule.piece_name == piece]
        if allowed and garment.pk not in allowed:
            self._stop(piece, f"{words}, but {piece} may not be cut from {garment}.")
            return False
        if panel not in self.found.panels.get(piece, (panel,)):
            why = f"the stripes of {self.rows[panel]} are not measured, and it must meet another"
            self._stop(piece, f"{words}, but {why}.")
            return False
        return True

    def _narrow(self, piece: str, panels: tuple[str, ...]) -> None:
        kept = self.found.panels.get(piece, panels)
        self.found.panels[piece] = tuple(name for name in panels if name in kept)

    def _say(self, words: str) -> None:
        remark = Remark(words, self.address, "Change the rules")
        if remark not in self.found.remarks:
            self.found.remarks.append(remark)

    def _stop(self, piece: str, words: str) -> None:
        """A rule that cannot be read shuts its piece out, so that no older verdict stands."""
        self.found.panels[piece] = ()
        self.found.remarks.append(Remark(words, self.address, "Change the rules", stops=True))

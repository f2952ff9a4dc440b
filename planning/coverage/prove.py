"""Whether no lay can exist, with the reason in a sentence; the simplest proofs first.

Each is sound whatever the search does: margins are read sparingly, a shortage must exceed a
thousandth of the need, and a second look by another method must agree. Where none holds, nothing
is said: cloth that is not proven short may still be short.
"""

from collections.abc import Iterator, Sequence

from planning.coverage import second_look
from planning.coverage.anywhere import Fit, fit_of
from planning.coverage.kinds import Kind, kinds_of
from planning.coverage.problem import Placement, Problem
from planning.coverage.rivals import Rivals, looks_apart, rivals_of
from planning.coverage.room import Room, rooms_of
from planning.coverage.shortage import shortage_of
from planning.coverage.verdict import Proof
from planning.coverage.verify import faults_of
from planning.coverage.wording import (
    area_sentence,
    nowhere_sentence,
    rivals_sentence,
    same_garment_sentence,
)

LIGHT = 0.5  # share of the cloth below which a lay is the likelier answer
SHORT_BY = 1.001  # a need must exceed what there is by this much, far above any rounding


class Prover:
    """Looks for a proof in short steps, so that a lay found meanwhile can end it.

    `can_wait` once all is done that finds most proofs in little time, where so much cloth is there
    that a lay is likelier than a proof.
    """

    _END = object()

    def __init__(self, problem: Problem, laid: Sequence[Placement] = ()) -> None:
        self.proof: Proof | None = None
        self.can_wait = False
        self._problem, self._laid = problem, laid
        self._kinds = kinds_of(problem, laid)
        self._rooms = [room for panel in problem.panels for room in rooms_of(problem, panel, laid)]
        self._open = [
            {
                number
                for number, room in enumerate(self._rooms)
                if problem.may_come_from(kind.piece, room.panel)
            }
            for kind in self._kinds
        ]
        self._settled: set[tuple[int, int]] = set()
        self._steps = self._look()
        self.is_over = False

    def step(self) -> None:
        """Go on for a moment, or note that there is nothing more to do."""
        if self.proof or next(self._steps, self._END) is self._END:
            self.is_over = True

    def _look(self) -> Iterator[None]:
        self._try_area()
        yield
        for number in self._by_size():
            yield from self._close_rooms(number, until_seen=True)
            if not self._open[number]:
                self._try_nowhere(self._kinds[number])
        need = sum(kind.need_mm2 for kind in self._kinds)
        self.can_wait = need < LIGHT * sum(room.fillable_mm2 for room in self._rooms)
        for number in self._by_size():
            yield from self._close_rooms(number)
        self._try_same_garment()
        self._try_area()
        yield from self._try_rivals()

    def _by_size(self) -> list[int]:
        return sorted(range(len(self._kinds)), key=lambda number: -self._kinds[number].area_mm2)

    def _close_rooms(self, number: int, *, until_seen: bool = False) -> Iterator[None]:
        """Strike out the rooms where this kind fits nowhere, the largest looked at first."""
        kind = self._kinds[number]
        for room_number in sorted(self._open[number], key=lambda n: -self._rooms[n].cloth.area):
            if (number, room_number) in self._settled:
                continue
            self._settled.add((number, room_number))
            room = self._rooms[room_number]
            fit = fit_of(kind.shape, room.cloth, kind.turns_on(room.panel))
            if fit is Fit.NOWHERE:
                self._open[number].discard(room_number)
            yield
            if until_seen and fit is Fit.SEEN:
                return

    def _try_nowhere(self, kind: Kind) -> None:
        allowed = [p for p in self._problem.panels if self._problem.may_come_from(kind.piece, p)]
        if all(
            second_look.has_no_place(self._problem, self._laid, kind, panel) for panel in allowed
        ):
            rooms = [room for room in self._rooms if room.panel in allowed]
            self.proof = self.proof or Proof(
                kind="fits_nowhere",
                pieces=(kind.piece.id,),
                panels=tuple(panel.id for panel in allowed),
                need_mm2=kind.piece_area_mm2,
                have_mm2=max((room.cloth.area for room in rooms), default=0.0),
                text=nowhere_sentence(kind, allowed, rooms),
            )

    def _try_same_garment(self) -> None:
        """A group that must come from one garment, of which no garment holds every piece."""
        garments = list(dict.fromkeys(panel.garment for panel in self._problem.panels))
        for group in () if self._laid else self._problem.same_garment:
            numbers = [n for n, kind in enumerate(self._kinds) if kind.piece.id in group]
            fits = {n: {self._rooms[room].panel.garment for room in self._open[n]} for n in numbers}
            is_held = not numbers or set.intersection(*fits.values())
            if is_held or not all(self._holds_not_all(numbers, each) for each in garments):
                continue
            told = {self._kinds[n].piece.id: sorted(fits[n]) for n in numbers}
            self.proof = self.proof or Proof(
                kind="same_garment",
                pieces=tuple(told),
                panels=(),
                need_mm2=None,
                have_mm2=None,
                text=same_garment_sentence(list(told), list(told.items())),
            )

    def _holds_not_all(self, numbers: Sequence[int], garment: str) -> bool:
        """The second look: some piece of the group has no place on any panel of the garment."""
        panels = [panel for panel in self._problem.panels if panel.garment == garment]
        return any(
            all(
                not self._problem.may_come_from(self._kinds[n].piece, panel)
                or second_look.has_no_place(self._problem, self._laid, self._kinds[n], panel)
                for panel in panels
            )
            for n in numbers
        )

    def _try_rivals(self) -> Iterator[None]:
        """More pieces that are in each other's way than places for them."""
        for found in rivals_of(self._problem, self._kinds, self._rooms, self._open):
            yield
            if found is None or not self._are_confirmed(found):
                continue
            kinds = [self._kinds[number] for number in found.kinds]
            rooms = [self._rooms[number] for number in sorted(found.rooms)]
            self.proof = self.proof or Proof(
                kind="rivals",
                pieces=tuple(dict.fromkeys(kind.piece.id for kind in kinds)),
                panels=tuple(dict.fromkeys(room.panel.id for room in rooms)),
                need_mm2=None,
                have_mm2=None,
                text=rivals_sentence(kinds, found.copies, rooms),
            )
            return

    def _are_confirmed(self, found: Rivals) -> bool:
        """The second look: they have no place elsewhere, and no pair was seen to share one."""
        kinds = [self._kinds[number] for number in found.kinds]
        inside = {self._rooms[number].panel.id for number in found.rooms}
        for kind in kinds:
            for panel in self._problem.panels:
                if panel.id in inside or not self._problem.may_come_from(kind.piece, panel):
                    continue
                if not second_look.has_no_place(self._problem, self._laid, kind, panel):
                    return False
        return not any(
            looks_apart(self._problem, one, other, self._rooms[room])
            for one in kinds
            for other in kinds
            for room in found.rooms
            if one is not other or one.copies > 1
        )

    def _try_area(self) -> None:
        short = shortage_of(
            [kind.need_mm2 for kind in self._kinds],
            [room.fillable_mm2 for room in self._rooms],
            self._open,
        )
        if short and short.need_mm2 > SHORT_BY * short.have_mm2:
            kinds = [self._kinds[number] for number in short.kinds]
            if not second_look.is_short(self._problem, self._laid, kinds, SHORT_BY):
                return
            rooms: list[Room] = [self._rooms[number] for number in short.rooms]
            panels = tuple(dict.fromkeys(room.panel.id for room in rooms))
            self.proof = self.proof or Proof(
                kind="area",
                pieces=tuple(dict.fromkeys(kind.piece.id for kind in kinds)),
                panels=panels,
                need_mm2=short.need_mm2,
                have_mm2=short.have_mm2,
                text=area_sentence(self._problem, kinds, panels, short),
            )


def locked_proof(problem: Problem, locked: Sequence[Placement]) -> Proof | None:
    """Why no lay can keep all the locked copies where they lie, if one of them breaks a rule."""
    faults = faults_of(problem, locked, whole=False)
    if not faults:
        return None
    return Proof(
        kind="locked",
        pieces=tuple(dict.fromkeys(fault.piece for fault in faults)),
        panels=tuple(dict.fromkeys(fault.panel for fault in faults)),
        need_mm2=None,
        have_mm2=None,
        text=f"The locked {faults[0].text}",
    )

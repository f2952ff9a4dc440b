"""How much of a bolt pieces need: interfacing, lining, or cloth that is still to be bought.

The pieces are first laid in rows by their boxes, so that there is always an answer; then the search
looks for a shorter one. Whatever is answered was verified on a panel of just that length.
"""

import math
import queue
import time
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

import numpy as np
from shapely import Polygon

from planning.coverage.engine import Child, Heard, Job
from planning.coverage.grain import turns_of, upright_deg
from planning.coverage.items import items_of
from planning.coverage.placing import placement_of
from planning.coverage.problem import Outline, Panel, Piece, Placement, Problem, ProblemError
from planning.coverage.rings import mended
from planning.coverage.sheets import sheets_of
from planning.coverage.sound import refuse_unsound
from planning.coverage.task import Task
from planning.coverage.verify import TOLERANCE_MM, faults_of
from planning.coverage.whole import DIRECT

BOLT = "bolt"
ALONG_DEG = 90.0  # the grain of a bolt as it is drawn: its length runs up
ROW_ORDERS = 40
STIR = 0.2  # how far a random order strays from tallest first
TURN_STEP_DEG = 15.0
ROOMIER = 1.5  # times the length that rows need is given to the search
START_SECONDS = 0.3  # for the child to begin and end


@dataclass(frozen=True, slots=True)
class StripLay:
    """A lay on a bolt. `density` is the share of the length's whole width that pieces cover."""

    length_mm: float
    placements: tuple[Placement, ...]
    panel: Panel
    used_mm2: float
    density: float


def strip_lay(
    pieces: Sequence[Piece],
    width_mm: float,
    clearance_mm: float = 2.0,
    edge_margin_mm: float = 5.0,
    one_way: bool = False,
    seconds: float = 3.0,
    seed: int = 0,
) -> StripLay:
    """The shortest lay found on a bolt of this width, its length along the grain.

    The margin is kept to both sides and both ends. What the pieces' own lists say of panels and
    garments does not count here. Raises ProblemError for pieces that are not sound or too wide.
    """
    deadline = time.monotonic() + seconds
    free = tuple(replace(piece, panels=None, garments=None) for piece in pieces)
    rules = _Bolt(free, width_mm, clearance_mm, edge_margin_mm, one_way)
    best = rules.in_rows(seed)
    for lay in rules.searched(rules.length_of(best), deadline):
        if rules.length_of(lay) < rules.length_of(best) and rules.holds(lay):
            best = lay
    if not rules.holds(best):
        raise AssertionError("pieces laid in rows do not keep their margins")
    return rules.answer(best)


class _Bolt:
    """Pieces, a width and the rules between them; `_cloth` makes a length of it a panel."""

    def __init__(
        self,
        pieces: tuple[Piece, ...],
        width_mm: float,
        clearance_mm: float,
        edge_margin_mm: float,
        one_way: bool,
    ) -> None:
        self._wide, self._one_way = width_mm, one_way
        self._gap, self._margin = clearance_mm, edge_margin_mm
        self._pieces = pieces
        if not (math.isfinite(width_mm) and width_mm > 2 * edge_margin_mm):
            raise ProblemError("width_mm: nothing is left of it between the margins")
        refuse_unsound(self._problem(width_mm))

    def _problem(self, length_mm: float) -> Problem:
        ring = ((0.0, 0.0), (self._wide, 0.0), (self._wide, length_mm), (0.0, length_mm))
        panel = Panel(BOLT, BOLT, ring, grain_deg=ALONG_DEG, one_way=self._one_way)
        return Problem((panel,), self._pieces, self._gap, self._margin)

    def length_of(self, lay: Sequence[Placement]) -> float:
        """The length of bolt that a lay takes, its end margin included."""
        return max(y for place in lay for _, y in place.outline) + self._margin

    def holds(self, lay: Sequence[Placement]) -> bool:
        """Whether the lay keeps every rule on a panel of its own length."""
        return not faults_of(self._problem(self.length_of(lay)), lay)

    def answer(self, lay: tuple[Placement, ...]) -> StripLay:
        """The lay with its figures."""
        length = self.length_of(lay)
        used = sum(Polygon(mended(place.outline)).area for place in lay)
        panel = self._problem(length).panels[0]
        return StripLay(length, lay, panel, used, used / (length * self._wide))

    def in_rows(self, seed: int) -> tuple[Placement, ...]:
        """The shortest of a few lays in rows, the tallest pieces first or nearly so."""
        flat = [self._flat(piece, copy) for piece, copy in self._problem(1e3).copies()]
        tall = np.array([_high(place.outline) for place in flat])
        dice = np.random.default_rng(seed)
        stirs = [np.zeros(len(flat)), *dice.normal(0.0, STIR, (ROW_ORDERS - 1, len(flat)))]
        orders = (np.argsort(-tall * np.exp(stir), kind="stable") for stir in stirs)
        lays = (self._rows([flat[number] for number in order]) for order in orders)
        return min(lays, key=self.length_of)

    def _flat(self, piece: Piece, copy: int) -> Placement:
        """A copy turned so that it takes the least length of those turns that fit the width."""
        upright = ALONG_DEG + upright_deg(piece, piece.is_mirrored(copy))
        places = [
            placement_of(piece, copy, BOLT, (upright + turn) % 360.0, (0.0, 0.0))
            for turn in _turns_to_try(piece, self._one_way)
        ]
        room = self._wide - 2 * self._margin
        narrow = [place for place in places if _wide(place.outline) <= room + TOLERANCE_MM / 2]
        if not narrow:
            raise ProblemError(f"{piece.id}: it is wider than the bolt between its margins")
        return min(narrow, key=lambda place: _high(place.outline))

    def _rows(self, flat: Sequence[Placement]) -> tuple[Placement, ...]:
        """First fit: each into the first row that is tall enough and has room."""
        rows: list[list[float]] = []  # lower edge, height, where the next piece begins
        laid, top = [], self._margin
        for place in flat:
            wide, high = _wide(place.outline), _high(place.outline)
            most = self._wide - self._margin + TOLERANCE_MM / 2 - wide
            row = next((row for row in rows if high <= row[1] and row[2] <= most), None)
            if row is None:
                row = [top, high, self._margin]
                rows.append(row)
                top += high + self._gap
            laid.append(_moved_to(place, row[2], row[0]))
            row[2] += wide + self._gap
        return tuple(laid)

    def searched(self, length_mm: float, deadline: float) -> Iterator[tuple[Placement, ...]]:
        """What the search finds up to the deadline, moved down to the margin; not yet verified."""
        problem = self._problem(ROOMIER * length_mm)
        sheets, items = sheets_of(problem, problem.panels[0]), items_of(problem, problem.copies())
        seconds = deadline - time.monotonic() - START_SECONDS
        if seconds <= 0.0 or not sheets:
            return
        job = Job("bolt", sheets, items, self._one_way, "OpenDimensionX", DIRECT)
        task = Task(problem, (), sheets, items, (), (), ())
        heard: queue.Queue[Heard] = queue.Queue()
        child = Child(job, seconds, heard)
        try:
            while (left := deadline - time.monotonic()) > 0.0:
                news = heard.get(timeout=left)
                if news.ended is not None:
                    return
                if len(news.lies) == job.size():
                    lay = task.lay_of(job, news.lies)
                    low = min(y for place in lay for _, y in place.outline)
                    yield tuple(_moved_by(place, 0.0, self._margin - low) for place in lay)
        except queue.Empty:
            return
        finally:
            child.end()


def _turns_to_try(piece: Piece, one_way: bool) -> Iterator[float]:
    for first, last in turns_of(piece, one_way):
        steps = max(2, 2 * math.ceil((last - first) / (2 * TURN_STEP_DEG)))
        yield from (first + (last - first) * step / steps for step in range(steps + 1))


def _wide(outline: Outline) -> float:
    return max(x for x, _ in outline) - min(x for x, _ in outline)


def _high(outline: Outline) -> float:
    return max(y for _, y in outline) - min(y for _, y in outline)


def _moved_to(place: Placement, left: float, low: float) -> Placement:
    x, y = min(x for x, _ in place.outline), min(y for _, y in place.outline)
    return _moved_by(place, left - x, low - y)


def _moved_by(place: Placement, dx: float, dy: float) -> Placement:
    return replace(
        place,
        translation=(place.translation[0] + dx, place.translation[1] + dy),
        outline=tuple((x + dx, y + dy) for x, y in place.outline),
    )

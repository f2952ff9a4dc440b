"""Which pieces are cut from which group of panels: whole numbers first, shapes afterwards.

Panels on which the same pieces may lie form a class. A small integer programme shares the pieces
out over the classes, the fullest class as little full as can be; then each class is laid by itself.
A class that was not laid in its time forbids that share of pieces and those above it. Because time
outs are no proof, running out of shares is no proof either (Logic-based cuts: Hooker 2019, arXiv
1910.11944; assignment masters for packing: Cote, Haouari and Iori 2021).
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np
from scipy.optimize import Bounds, LinearConstraint, milp
from scipy.sparse import csr_array

from planning.coverage.task import Task

type Share = Mapping[int, int]  # item -> copies, for one class

MASTER_SECONDS = 0.25
FILL_LIMIT = 1.0
TIE_BREAK = 1e-3


@dataclass(frozen=True, slots=True)
class SheetClass:
    """Sheets alike in what may lie on them, and which turns."""

    sheets: tuple[int, ...]
    one_way: bool
    items: frozenset[int]
    area_mm2: float


@dataclass(frozen=True, slots=True)
class Refusal:
    """A share that could not be laid on a class in its time."""

    sheet_class: int
    share: Share


def classes_of(task: Task) -> tuple[SheetClass, ...]:
    """The sheets gathered by the items that may lie on them, the way of the cloth and the bonds."""
    alike: dict[object, list[int]] = {}
    for number, sheet in enumerate(task.sheets):
        items = _items_on(task, number)
        bonds = tuple(
            next((n for n, group in enumerate(bond.sheets) if number in group), None)
            for bond in task.bonds
        )
        if items:
            alike.setdefault((items, sheet.panel.one_way, bonds), []).append(number)
    return tuple(
        SheetClass(
            tuple(numbers),
            task.sheets[numbers[0]].panel.one_way,
            _items_on(task, numbers[0]),
            sum(task.sheets[number].area_mm2 for number in numbers),
        )
        for numbers in alike.values()
    )


def _items_on(task: Task, sheet: int) -> frozenset[int]:
    return frozenset(item for item, sheets in enumerate(task.open_to) if sheet in sheets)


def shares_of(
    task: Task,
    classes: Sequence[SheetClass],
    refused: Sequence[Refusal],
    weights: Sequence[float],
    chance: np.random.Generator,
) -> tuple[Share, ...] | None:
    """A share for each class that avoids what was refused; None if there is none to be had.

    `weights` make a class count as fuller than it is; `chance` breaks ties.
    """
    return _Master(task, classes, refused).solved(weights, chance)


class _Master:
    """The integer programme: a whole number for each pair of item and class, then the switches."""

    def __init__(
        self, task: Task, classes: Sequence[SheetClass], refused: Sequence[Refusal]
    ) -> None:
        self._task, self._classes = task, classes
        self._pairs = [
            (item, number) for number, one in enumerate(classes) for item in sorted(one.items)
        ]
        self._column = {pair: column for column, pair in enumerate(self._pairs)}
        self._width = len(self._pairs)
        self._rows: list[tuple[dict[int, float], float, float]] = []
        self._highest: list[float] = [
            float(len(task.items[item].copies)) for item, _ in self._pairs
        ]
        self._level = self._new_column(np.inf)
        self._ask_all_copies()
        self._ask_bonds()
        for refusal in refused:
            self._forbid(refusal)
        self._loads = [self._load_row(number) for number in range(len(classes))]

    def solved(
        self, weights: Sequence[float], chance: np.random.Generator
    ) -> tuple[Share, ...] | None:
        """The shares with the lowest weighted level."""
        rows = list(self._rows)
        for (load, area), weight in zip(self._loads, weights, strict=True):
            level = {column: weight * use / area for column, use in load.items()}
            rows.append(({**level, self._level: -1.0}, -np.inf, 0.0))
            rows.append((load, -np.inf, FILL_LIMIT * area))
        cost = np.zeros(self._width)
        cost[: len(self._pairs)] = TIE_BREAK * chance.random(len(self._pairs))
        cost[self._level] = 1.0
        whole = np.ones(self._width, dtype=int)
        whole[self._level] = 0
        answer = milp(
            cost,
            constraints=_constraints(rows, self._width),
            integrality=whole,
            bounds=Bounds(0, np.array(self._highest)),
            options={"time_limit": MASTER_SECONDS},
        )
        return None if answer.x is None else self._read(answer.x)

    def _read(self, values: np.ndarray) -> tuple[Share, ...]:
        shares: list[dict[int, int]] = [{} for _ in self._classes]
        for (item, number), value in zip(self._pairs, values, strict=False):
            if round(value) > 0:
                shares[number][item] = round(value)
        return tuple(shares)

    def _new_column(self, highest: float) -> int:
        self._highest.append(highest)
        self._width += 1
        return self._width - 1

    def _ask_all_copies(self) -> None:
        for item, what in enumerate(self._task.items):
            row = {self._column[pair]: 1.0 for pair in self._pairs if pair[0] == item}
            self._rows.append((row, len(what.copies), len(what.copies)))

    def _ask_bonds(self) -> None:
        """One switch for each key of a bond; its items lie only where the switch is on."""
        for bond in self._task.bonds:
            switches = [self._new_column(1.0) for _ in bond.sheets]
            self._rows.append((dict.fromkeys(switches, 1.0), 1.0, 1.0))
            for item, number in self._pairs:
                if item in bond.items:
                    first = self._classes[number].sheets[0]
                    on = [
                        s for s, group in zip(switches, bond.sheets, strict=True) if first in group
                    ]
                    copies = float(len(self._task.items[item].copies))
                    row = {self._column[item, number]: 1.0, **dict.fromkeys(on, -copies)}
                    self._rows.append((row, -np.inf, 0.0))

    def _forbid(self, refusal: Refusal) -> None:
        """At least one item of the refused share must come in fewer copies."""
        switches = []
        for item, count in refusal.share.items():
            switch = self._new_column(1.0)
            copies = float(len(self._task.items[item].copies))
            row = {self._column[item, refusal.sheet_class]: 1.0, switch: copies - count + 1}
            self._rows.append((row, -np.inf, copies))
            switches.append(switch)
        self._rows.append((dict.fromkeys(switches, 1.0), 1.0, np.inf))

    def _load_row(self, number: int) -> tuple[dict[int, float], float]:
        load = {
            self._column[pair]: self._task.items[pair[0]].area_mm2
            for pair in self._pairs
            if pair[1] == number
        }
        return load, self._classes[number].area_mm2


def _constraints(
    rows: Sequence[tuple[dict[int, float], float, float]], width: int
) -> LinearConstraint:
    data = [
        (row, column, value)
        for row, (cells, _, _) in enumerate(rows)
        for column, value in cells.items()
    ]
    shape = (len(rows), width)
    matrix = csr_array(
        ([value for *_, value in data], ([row for row, *_ in data], [col for _, col, _ in data])),
        shape=shape,
    )
    return LinearConstraint(matrix, [low for _, low, _ in rows], [high for _, _, high in rows])

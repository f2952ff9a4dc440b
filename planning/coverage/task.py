"""One problem made ready for the search: what is laid already, what is left, and what goes where.

Every rule that the engine does not know is turned here into shapes and lists: locked and pinned
copies are cloth gone, matched copies are swept, and copies bound together are given as bonds.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace

from planning.coverage.engine import Job, Lie
from planning.coverage.items import HAIR_MM, TIE_HAIR_MM, Item, items_of, lies_at, swept
from planning.coverage.placing import placement_of
from planning.coverage.problem import Panel, Placement, Problem
from planning.coverage.sheets import Sheet, sheets_of
from planning.coverage.stripes import (
    Copy,
    Follower,
    followers_of,
    matched_sets,
    repeat_key,
    slid,
    sweep_of,
)

FULL_LOAD = 0.97


@dataclass(frozen=True, slots=True)
class Bond:
    """Items that must all lie on sheets of one key; `sheets` holds the sheets of each key."""

    items: frozenset[int]
    sheets: tuple[frozenset[int], ...]


@dataclass(frozen=True, slots=True)
class Task:
    """What the search works on. `open_to` holds, for each item, the sheets it may be cut from."""

    problem: Problem
    fixed: tuple[Placement, ...]
    sheets: tuple[Sheet, ...]
    items: tuple[Item, ...]
    open_to: tuple[frozenset[int], ...]
    bonds: tuple[Bond, ...]
    followers: tuple[Follower, ...]

    @property
    def load(self) -> float:
        """The share of the sheets that the items would fill, gaps counted in."""
        cloth = sum(sheet.area_mm2 for sheet in self.sheets)
        return sum(item.area_mm2 * len(item.copies) for item in self.items) / max(cloth, 1.0)

    @property
    def is_listed(self) -> bool:
        """Whether some items may not come from some of the sheets."""
        every = frozenset(range(len(self.sheets)))
        return any(sheets != every for sheets in self.open_to)

    @property
    def is_mixed(self) -> bool:
        """Whether the panels differ in what may lie on them, or how."""
        ways = {sheet.panel.one_way for sheet in self.sheets}
        return self.is_listed or bool(self.bonds) or len(ways) > 1

    def lay_of(self, job: Job, lies: Sequence[Lie]) -> tuple[Placement, ...]:
        """The placements a claim speaks of, each copy taken in turn and slid to its stripe."""
        left = [list(item.copies) for item in job.items]
        lay = list(self.fixed)
        for number, sheet_number, turn_deg, x, y in lies:
            item, sheet = job.items[number], job.sheets[sheet_number]
            rotation_deg, translation = lies_at(item, sheet, turn_deg, (x, y))
            copy = left[number].pop(0)
            lay.append(placement_of(item.piece, copy, sheet.panel.id, rotation_deg, translation))
        return slid(self.problem, lay, self.followers)


def task_of(problem: Problem, fixed: Sequence[Placement] = (), *, inset_mm: float = 0.0) -> Task:
    """The task of laying all that is not `fixed`; with an inset, on panels that much smaller."""
    sheets = tuple(
        sheet
        for panel in problem.panels
        for sheet in sheets_of(problem, panel, laid=fixed, inset_mm=inset_mm)
    )
    followers = followers_of(problem, fixed)
    items = _items(problem, fixed, followers, sheets)
    open_to = tuple(
        frozenset(
            number
            for number, sheet in enumerate(sheets)
            if problem.may_come_from(item.piece, sheet.panel)
        )
        for item in items
    )
    return _bound(Task(problem, tuple(fixed), sheets, items, open_to, (), followers))


def _items(
    problem: Problem,
    fixed: Sequence[Placement],
    followers: Sequence[Follower],
    sheets: Sequence[Sheet],
) -> tuple[Item, ...]:
    gone = {(placement.piece, placement.copy) for placement in fixed}
    wanted = [(piece, copy) for piece, copy in problem.copies() if (piece.id, copy) not in gone]
    matched = frozenset[Copy]().union(*matched_sets(problem))
    free = [(piece, copy) for piece, copy in wanted if (piece.id, copy) not in matched]
    tied = [(piece, copy) for piece, copy in wanted if (piece.id, copy) in matched]

    def all_items(hair_mm: float) -> tuple[Item, ...]:
        singles = [items_of(problem, [one], hair_mm=hair_mm)[0] for one in tied]
        following = {follower.copy: follower for follower in followers}
        return (
            *items_of(problem, free, hair_mm=hair_mm),
            *(_tied(problem, item, following) for item in singles),
        )

    items = all_items(HAIR_MM)
    cloth = sum(sheet.area_mm2 for sheet in sheets)
    need = sum(item.area_mm2 * len(item.copies) for item in items)
    return all_items(TIE_HAIR_MM) if need > FULL_LOAD * cloth else items


def _tied(problem: Problem, item: Item, following: Mapping[Copy, Follower]) -> Item:
    follower = following.get((item.piece.id, item.copies[0]))
    if follower is None:
        return swept(item, 0.0, 0.0)
    panels = [panel for panel in problem.panels if problem.may_come_from(item.piece, panel)]
    return swept(item, *sweep_of(follower.direction, panels))


def _bound(task: Task) -> Task:
    """The task with its bonds; a bond that leaves one key only narrows the lists instead."""
    open_to, bonds = list(task.open_to), []
    for copies, key_of in _bonds_asked(task.problem):
        items = frozenset(
            number
            for number, item in enumerate(task.items)
            if any((item.piece.id, copy) in copies for copy in item.copies)
        )
        groups = _groups(task, copies, items, key_of)
        if len(groups) > 1:
            bonds.append(Bond(items, groups))
            continue
        for number in items:
            open_to[number] &= groups[0] if groups else frozenset()
    return replace(task, open_to=tuple(open_to), bonds=tuple(bonds))


def _bonds_asked(problem: Problem) -> list[tuple[frozenset[Copy], Callable[[Panel], object]]]:
    """The copies of each rule that binds them, and what must be the same of all their panels."""
    garments = [
        frozenset((piece.id, copy) for piece, copy in problem.copies() if piece.id in group)
        for group in problem.same_garment
    ]
    return [
        *((copies, lambda panel: panel.garment) for copies in garments),
        *((copies, repeat_key) for copies in matched_sets(problem)),
    ]


def _groups(
    task: Task,
    copies: frozenset[Copy],
    items: frozenset[int],
    key_of: Callable[[Panel], object],
) -> tuple[frozenset[int], ...]:
    """The sheets of each key on which every one of the items may lie."""
    laid_on = [p.panel for p in task.fixed if (p.piece, p.copy) in copies]
    fixed_keys = {key_of(task.problem.panel(panel_id)) for panel_id in laid_on}
    by_key: dict[object, set[int]] = {}
    for number, sheet in enumerate(task.sheets):
        by_key.setdefault(key_of(sheet.panel), set()).add(number)
    return tuple(
        frozenset(sheets)
        for key, sheets in by_key.items()
        if fixed_keys <= {key} and all(task.open_to[item] & sheets for item in items)
    )

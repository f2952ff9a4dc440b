"""How well a lay keeps the rules that name places: by how much stripes miss, details are off.

Says nothing about whether the lay holds; ``coverage.verify`` does.
"""

import math
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from string import ascii_uppercase

from planning.coverage.placing import placed
from planning.coverage.problem import Match, Panel, Pin, Placement, Point, Problem, Spot

type Copy = tuple[str, int]
type Named = Callable[[str, int], str]


@dataclass(frozen=True, slots=True)
class RuleMark:
    """A rule's letter at a place in a piece's own frame, and which way its stripes run as laid."""

    letter: str
    at: Point
    stripes_deg: tuple[float, ...] = ()


@dataclass(frozen=True, slots=True)
class KeptRule:
    """One rule in words, and by how much it is missed: None where there is nothing to miss."""

    letter: str
    words: str
    off_mm: float | None
    within_mm: float
    what: str


def letter_of(number: int) -> str:
    """A, B, ... Z, A2, B2, ...

    >>> letter_of(0), letter_of(27)
    ('A', 'B2')
    """
    turn, place = divmod(number, len(ascii_uppercase))
    return ascii_uppercase[place] + (str(turn + 1) if turn else "")


def marks_of(problem: Problem, lay: Sequence[Placement]) -> dict[Copy, list[RuleMark]]:
    """The letters that each laid copy carries: stripes that meet first, then details that show."""
    panels = {panel.id: panel for panel in problem.panels}
    laid = {(placement.piece, placement.copy): placement for placement in lay}
    marks: dict[Copy, list[RuleMark]] = {}
    for number, match in enumerate(problem.match):
        for spot in (match.a, match.b):
            placement = laid.get((spot.piece, spot.copy))
            if placement is not None:
                panel = panels.get(placement.panel)
                mark = RuleMark(letter_of(number), spot.at, _stripes_deg(match, panel))
                marks.setdefault((spot.piece, spot.copy), []).append(mark)
    for number, pin in enumerate(problem.pin, len(problem.match)):
        mark = RuleMark(letter_of(number), pin.piece_point)
        marks.setdefault((pin.piece, pin.copy), []).append(mark)
    return marks


def _stripes_deg(match: Match, panel: Panel | None) -> tuple[float, ...]:
    if panel is None or panel.repeat is None:
        return ()
    ways = []
    if match.direction != "across" and panel.repeat.along_mm:
        ways.append(panel.grain_deg + 90.0)
    if match.direction != "along" and panel.repeat.across_mm:
        ways.append(panel.grain_deg)
    return tuple(ways)


@dataclass(frozen=True, slots=True)
class Target:
    """A detail that shall show: its rule's letter, its middle on the panel, whom it shows on."""

    letter: str
    at: Point
    copy: Copy


def targets_of(problem: Problem) -> dict[str, list[Target]]:
    """The details that shall show, panel by panel."""
    targets: dict[str, list[Target]] = {}
    for number, pin in enumerate(problem.pin, len(problem.match)):
        target = Target(letter_of(number), pin.panel_point, (pin.piece, pin.copy))
        targets.setdefault(pin.panel, []).append(target)
    return targets


def kept_rules(
    problem: Problem, lay: Sequence[Placement], named: Named, details: Mapping[Copy, str]
) -> list[KeptRule]:
    """Each rule whose pieces are laid, with what it misses; `details` names what a copy shows."""
    laid = {(placement.piece, placement.copy): placement for placement in lay}
    panels = {panel.id: panel for panel in problem.panels}
    kept = []
    for number, match in enumerate(problem.match):
        a, b = (laid.get((spot.piece, spot.copy)) for spot in (match.a, match.b))
        if a and b and {a.panel, b.panel} <= set(panels):
            names = [named(spot.piece, spot.copy) for spot in (match.a, match.b)]
            words = f"{names[0]} and {names[1]}: stripes meet {WAYS[match.direction]}"
            off = _stripes_off_mm(match, (a, panels[a.panel]), (b, panels[b.panel]))
            kept.append(KeptRule(letter_of(number), words, off, match.within_mm, "apart"))
    for number, pin in enumerate(problem.pin, len(problem.match)):
        placement = laid.get((pin.piece, pin.copy))
        if placement and placement.panel == pin.panel:
            words = f"{details.get((pin.piece, pin.copy), 'The detail')} shows on "
            words += named(pin.piece, pin.copy)
            off = _pin_off_mm(pin, placement)
            kept.append(KeptRule(letter_of(number), words, off, pin.within_mm, "from its place"))
    return kept


WAYS = {"along": "along the grain", "across": "across the grain", "both": "both ways"}


def _pin_off_mm(pin: Pin, placement: Placement) -> float:
    return math.dist(_carried(pin.piece_point, placement), pin.panel_point)


def _carried(at: Point, placement: Placement) -> Point:
    ((x, y),) = placed(
        [at],
        mirrored=placement.mirrored,
        rotation_deg=placement.rotation_deg,
        translation=placement.translation,
    )
    return x, y


def _stripes_off_mm(
    match: Match, a: tuple[Placement, Panel], b: tuple[Placement, Panel]
) -> float | None:
    """The larger miss of the ways asked for; None where neither cloth repeats."""
    phases = [_phases(match_spot, *laid) for match_spot, laid in ((match.a, a), (match.b, b))]
    axes = {"along": (0,), "across": (1,), "both": (0, 1)}[match.direction]
    misses = []
    for axis in axes:
        (at_a, period), (at_b, other) = phases[0][axis], phases[1][axis]
        if period and other:
            misses.append(abs((at_a - at_b + period / 2) % period - period / 2))
    return max(misses, default=None)


def _phases(
    spot: Spot, placement: Placement, panel: Panel
) -> tuple[tuple[float, float | None], tuple[float, float | None]]:
    if panel.repeat is None:
        return (0.0, None), (0.0, None)
    x, y = _carried(spot.at, placement)
    x, y = x - panel.repeat.origin[0], y - panel.repeat.origin[1]
    grain = math.radians(panel.grain_deg)
    along = x * math.cos(grain) + y * math.sin(grain)
    across = x * math.sin(grain) - y * math.cos(grain)
    return (along, panel.repeat.along_mm), (across, panel.repeat.across_mm)

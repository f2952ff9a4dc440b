"""Stripes and checks that meet: which copies follow which, and how far each slides to its stripe.

The copies joined by `match` rules form trees. One copy of each is free; every other follows a copy
laid before it. Room for one whole repeat is kept beside a follower, so that it can always slide to
where its stripe meets, on whatever panel it lies, and cannot collide on the way.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from planning.coverage.placing import placed, turned
from planning.coverage.problem import Direction, Panel, Placement, Point, Problem, Spot

type Copy = tuple[str, int]


@dataclass(frozen=True, slots=True)
class Follower:
    """A copy that slides until its spot meets the spot of a copy laid before it."""

    copy: Copy
    spot: Spot
    leader: Copy
    leader_spot: Spot
    direction: Direction


def followers_of(problem: Problem, laid: Iterable[Placement] = ()) -> tuple[Follower, ...]:
    """Every follower, each after its leader; copies already `laid` lead and never follow."""
    fixed = {(placement.piece, placement.copy) for placement in laid}
    links: dict[Copy, list[Follower]] = {}
    for match in problem.match:
        for own, other in ((match.a, match.b), (match.b, match.a)):
            leader = (other.piece, other.copy)
            follower = Follower((own.piece, own.copy), own, leader, other, match.direction)
            links.setdefault(leader, []).append(follower)
    reached = {copy for copy in links if copy in fixed}
    waiting = sorted(reached)
    followers: list[Follower] = []
    for start in sorted(links):
        if not waiting and start not in reached:
            reached.add(start)
            waiting.append(start)
        while waiting:
            leader = waiting.pop(0)
            for follower in links[leader]:
                if follower.copy not in reached:
                    reached.add(follower.copy)
                    waiting.append(follower.copy)
                    followers.append(follower)
    return tuple(followers)


def matched_sets(problem: Problem) -> tuple[frozenset[Copy], ...]:
    """The copies joined by match rules, directly or through others."""
    sets: list[set[Copy]] = []
    for match in problem.match:
        pair: set[Copy] = {(match.a.piece, match.a.copy), (match.b.piece, match.b.copy)}
        joined = [group for group in sets if group & pair]
        sets = [group for group in sets if not group & pair]
        sets.append(pair.union(*joined))
    return tuple(map(frozenset, sets))


def sweep_of(direction: Direction, panels: Iterable[Panel]) -> Point:
    """How far along and across the grain a follower may have to slide on any of the panels."""
    repeats = [panel.repeat for panel in panels if panel.repeat]
    along = max((repeat.along_mm or 0.0 for repeat in repeats), default=0.0)
    across = max((repeat.across_mm or 0.0 for repeat in repeats), default=0.0)
    return (along if direction != "across" else 0.0, across if direction != "along" else 0.0)


def slid(
    problem: Problem, lay: Sequence[Placement], followers: Sequence[Follower]
) -> tuple[Placement, ...]:
    """The lay with every follower slid to its stripe."""
    by_copy = {(placement.piece, placement.copy): placement for placement in lay}
    for follower in followers:
        own, leader = by_copy.get(follower.copy), by_copy.get(follower.leader)
        if own and leader:
            by_copy[follower.copy] = _slid_to(problem, own, leader, follower)
    return tuple(by_copy.values())


def _slid_to(problem: Problem, own: Placement, leader: Placement, follower: Follower) -> Placement:
    panel = problem.panel(own.panel)
    if panel.repeat is None:
        return own
    here = _phase(panel, own, follower.spot.at)
    there = _phase(problem.panel(leader.panel), leader, follower.leader_spot.at)
    along, across = 0.0, 0.0
    if follower.direction != "across" and panel.repeat.along_mm:
        along = (there[0] - here[0]) % panel.repeat.along_mm
    if follower.direction != "along" and panel.repeat.across_mm:
        across = (there[1] - here[1]) % panel.repeat.across_mm
    dx, dy = turned((along, across), panel.grain_deg)
    return replace(
        own,
        translation=(own.translation[0] + dx, own.translation[1] + dy),
        outline=tuple((x + dx, y + dy) for x, y in own.outline),
    )


def _phase(panel: Panel, placement: Placement, at: Point) -> Point:
    """How far along and across the grain a spot lies from where the repeat starts."""
    ((x, y),) = placed(
        [at],
        mirrored=placement.mirrored,
        rotation_deg=placement.rotation_deg,
        translation=placement.translation,
    )
    origin = panel.repeat.origin if panel.repeat else panel.outline[0]
    return turned((x - origin[0], y - origin[1]), -panel.grain_deg)


def repeat_key(panel: Panel) -> tuple[float | None, float | None]:
    """What must be the same of two panels for their stripes to meet."""
    return (panel.repeat.along_mm, panel.repeat.across_mm) if panel.repeat else (None, None)

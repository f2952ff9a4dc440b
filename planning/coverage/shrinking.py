"""How much the cloth may shrink, the same both ways, under a lay that stays as it is.

The lay may move as a whole on each panel, which is to say that the panel shrinks about whichever
centre suits it. Within its hull every edge then nears or leaves the pieces evenly, so that the two
ends of a range answer for all between; hollows of the outline and flaws may pass a corner on their
way and are followed step by step.
"""

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import cast

import numpy as np
from shapely import GeometryCollection, Polygon, affinity

from planning.coverage.contacts import Floats, contacts_of, moves_that_clear
from planning.coverage.laid import Laid, laid_on
from planning.coverage.problem import Panel, Placement, Point, Problem, Repeat
from planning.coverage.sheets import polygons
from planning.coverage.verify import TOLERANCE_MM

LARGEST_SHARE = 0.2
EXACT_SHARE = 1e-4
MOST_STEPS = 200


def shrink_pct(problem: Problem, lay: Sequence[Placement]) -> float:
    """How much the panels may shrink both ways, flaws with them; 0 for a lay of nothing.

    In percent, at most 20. The lay holds at every lesser shrinkage too. Exact to a tenth where a
    panel has neither hollows nor flaws; elsewhere never too much.
    """
    return 100.0 * held_shrinkage(problem, lay)[0]


def held_shrinkage(problem: Problem, lay: Sequence[Placement]) -> tuple[float, dict[str, Point]]:
    """The share of every length that may be lost, and about which point of each panel in use.

    On panels shrunk so about these points the lay holds where it lies.
    """
    found = {laid.panel.id: _largest_share(_bench(problem, laid)) for laid in laid_on(problem, lay)}
    share = min((share for share, _ in found.values()), default=0.0)
    return share, {panel: centre for panel, (_, centre) in found.items()}


def shrunk(problem: Problem, share: float, centres: Mapping[str, Point]) -> Problem:
    """The problem with every panel, its flaws and its stripes smaller by this share.

    Each shrinks about its own point of `centres`, or about its first corner. Pins and locked copies
    stay where they are.
    """
    panels = tuple(
        _shrunk_panel(panel, 1.0 - share, centres.get(panel.id, panel.outline[0]))
        for panel in problem.panels
    )
    return replace(problem, panels=panels)


def _shrunk_panel(panel: Panel, scale: float, centre: Point) -> Panel:
    def moved(point: Point) -> Point:
        return (
            centre[0] + scale * (point[0] - centre[0]),
            centre[1] + scale * (point[1] - centre[1]),
        )

    return replace(
        panel,
        outline=tuple(map(moved, panel.outline)),
        flaws=tuple(tuple(map(moved, flaw)) for flaw in panel.flaws),
        repeat=panel.repeat
        and Repeat(
            panel.repeat.along_mm and scale * panel.repeat.along_mm,
            panel.repeat.across_mm and scale * panel.repeat.across_mm,
            moved(panel.repeat.origin),
        ),
    )


@dataclass(frozen=True, slots=True)
class _Bench:
    """A panel as half-planes of its hull, and what is not cloth inside it, each with its margin.

    `spare_mm` is what the nearest piece keeps from each edge of the hull more than it must.
    """

    middle: Point
    shapes: tuple[Polygon, ...]
    corners: Floats
    inward: Floats
    spare_mm: Floats
    bare: tuple[tuple[Polygon, float], ...]


def _bench(problem: Problem, laid: Laid) -> _Bench:
    cloth = laid.cloth
    hull = cast(Polygon, cloth.convex_hull)
    ring = np.array(hull.exterior.coords)[:: 1 if hull.exterior.is_ccw else -1]
    run = np.diff(ring, axis=0)
    inward = np.stack([-run[:, 1], run[:, 0]], axis=1) / np.hypot(run[:, 0], run[:, 1])[:, None]
    corners = ring[:-1]
    points = np.concatenate([np.array(shape.exterior.coords) for shape in laid.shapes])
    depth = (inward @ points.T).min(axis=1) - (inward * corners).sum(axis=1)
    hollows = polygons(hull.difference(cloth))
    bare = [(hollow, problem.edge_margin_mm) for hollow in hollows]
    bare += [(flaw, problem.flaw_margin_mm) for flaw in laid.flaws]
    middle = (cloth.centroid.x, cloth.centroid.y)
    return _Bench(middle, laid.shapes, corners, inward, depth - problem.edge_margin_mm, tuple(bare))


def _largest_share(bench: _Bench) -> tuple[float, Point]:
    """The largest share lost about the better of two centres up to which the pieces are clear."""
    centres = (bench.middle, _best_centre(bench))
    return max((_share_about(bench, centre), centre) for centre in centres)


def _share_about(bench: _Bench, centre: Point) -> float:
    nearing = (bench.inward * (np.array(centre) - bench.corners)).sum(axis=1)
    spare = np.maximum(bench.spare_mm, 0.0)
    limits = spare[nearing > 0.0] / nearing[nearing > 0.0]
    share = min(LARGEST_SHARE, float(limits.min(initial=math.inf)))
    for shape, margin_mm in bench.bare:
        share = min(share, _share_past(shape, margin_mm, bench.shapes, centre, share))
    return share


def _share_past(
    bare: Polygon, margin_mm: float, shapes: Sequence[Polygon], centre: Point, most: float
) -> float:
    """How far one hollow or flaw may come along.

    No point of it moves faster than its reach, so the gap at each step tells how far the next may
    go, and nothing between two steps is passed over.
    """
    reach = max(math.dist(centre, point[:2]) for point in bare.exterior.coords)
    laid, share = GeometryCollection(shapes), 0.0
    for _ in range(MOST_STEPS):
        scale = 1.0 - share
        moved = affinity.scale(bare, scale, scale, origin=centre)
        step = (moved.distance(laid) - margin_mm + TOLERANCE_MM / 2) / reach
        share += max(0.0, step)
        if step < EXACT_SHARE / 10 or share >= most:
            break
    return min(share, most)


def _best_centre(bench: _Bench) -> Point:
    """The centre about which the panel could shrink furthest, to first order.

    Shrunk by a share s about c, a point q of the panel moves by s (c - q): every contact asks
    something linear of s c. The largest share that all can be given is found by halving.
    """
    rows = [(bench.inward, bench.spare_mm, bench.corners), *_contacts_with_bare(bench)]
    normals, spare, spots = (np.concatenate(part) for part in zip(*rows, strict=True))
    spare, at_spot = np.maximum(spare, 0.0), (normals * spots).sum(axis=1)
    low, high, best = 0.0, LARGEST_SHARE, bench.middle
    while high - low > EXACT_SHARE / 2:
        share = (low + high) / 2
        given = spare + share * at_spot
        move = moves_that_clear(-normals, given[None, :])[0]
        if (given - normals @ move).min() >= 0.0:
            low, best = share, (float(move[0] / share), float(move[1] / share))
        else:
            high = share
    return best


def _contacts_with_bare(bench: _Bench) -> Iterator[tuple[Floats, Floats, Floats]]:
    """Of each hollow and flaw the nearest contact with each piece: normal, spare and spot."""
    for bare, margin_mm in bench.bare:
        ring = np.array(bare.exterior.coords[:-1])[:: 1 if bare.exterior.is_ccw else -1]
        for shape in bench.shapes:
            own = np.array(shape.exterior.coords[:-1])
            found = contacts_of(own, ring, math.inf)
            if len(found):
                row = int(found.gaps.argmin())
                edge, share = found.edges[row], found.shares[row]
                spot = (1.0 - share) * ring[edge] + share * ring[(edge + 1) % len(ring)]
                yield found.normals[[row]], found.gaps[[row]] - margin_mm, spot[None, :]

"""How far a lay stands from the edge, measured on the lay itself without another search.

Sound, not best: another lay of the same pieces may hold to more. Lengths in mm, shares in percent.
"""

import math
from collections.abc import Iterable, Sequence

from shapely import Polygon, affinity
from shapely.geometry.base import BaseGeometry
from shapely.ops import unary_union

from planning.coverage.problem import Panel, Placement, Point, Problem
from planning.coverage.rings import mended
from planning.coverage.verdict import Spare

LARGEST_SHRINK_PCT = 20.0
STEP_PCT = 0.5
HALVINGS = 8


def spare_of(problem: Problem, lay: Sequence[Placement]) -> Spare:
    """What a lay uses and what it would still stand."""
    used = sum(Polygon(mended(placement.outline)).area for placement in lay)
    usable = sum(usable_cloth(problem, panel).area for panel in problem.panels)
    laid = _by_panel(problem, lay)
    shrink = min((_shrink_pct(problem, panel, shapes) for panel, shapes in laid), default=0.0)
    return Spare(used, usable, inset_mm(problem, lay), max(0.0, shrink))


def inset_mm(problem: Problem, lay: Sequence[Placement]) -> float:
    """How much further in every edge, and further out every flaw, could be; 0 for a lay of nothing.

    Exact: no piece keeps more than its margin by less than this.
    """
    laid = _by_panel(problem, lay)
    slack = min((_slack_mm(problem, panel, shapes) for panel, shapes in laid), default=0.0)
    return max(0.0, slack)


def _by_panel(problem: Problem, lay: Sequence[Placement]) -> list[tuple[Panel, list[BaseGeometry]]]:
    """The panels that something is cut from, with the shapes cut."""
    shapes: dict[str, list[BaseGeometry]] = {}
    for placement in lay:
        shapes.setdefault(placement.panel, []).append(Polygon(mended(placement.outline)))
    return [(panel, shapes[panel.id]) for panel in problem.panels if panel.id in shapes]


def usable_cloth(problem: Problem, panel: Panel) -> BaseGeometry:
    """The panel less its edge margin and its flaws with theirs."""
    cloth: BaseGeometry = Polygon(mended(panel.outline)).buffer(-problem.edge_margin_mm)
    flaws = [Polygon(mended(flaw)).buffer(problem.flaw_margin_mm) for flaw in panel.flaws]
    return cloth.difference(unary_union(flaws)) if flaws else cloth


def _slack_mm(problem: Problem, panel: Panel, shapes: Iterable[BaseGeometry]) -> float:
    """How much more than its margins the nearest piece keeps."""
    edge = Polygon(mended(panel.outline)).exterior
    flaws = [Polygon(mended(flaw)) for flaw in panel.flaws]
    slack = math.inf
    for shape in shapes:
        slack = min(slack, edge.distance(shape) - problem.edge_margin_mm)
        slack = min([slack, *(flaw.distance(shape) - problem.flaw_margin_mm for flaw in flaws)])
    return slack


def _shrink_pct(problem: Problem, panel: Panel, shapes: Sequence[BaseGeometry]) -> float:
    """The largest shrinkage, about the better of two centres, up to which the shapes hold."""
    laid = unary_union(shapes)
    box = laid.envelope.centroid
    cloth = Polygon(mended(panel.outline)).centroid
    return max(_shrink_about(problem, panel, laid, (c.x, c.y)) for c in (box, cloth))


def _shrink_about(problem: Problem, panel: Panel, laid: BaseGeometry, centre: Point) -> float:
    """Walked up in small steps, since holding at one shrinkage does not prove the lesser ones."""
    cloth = Polygon(mended(panel.outline))
    flaws = [Polygon(mended(flaw)) for flaw in panel.flaws]

    def holds(pct: float) -> bool:
        scale = 1.0 - pct / 100.0

        def shrunk(shape: BaseGeometry) -> BaseGeometry:
            return affinity.scale(shape, scale, scale, origin=centre)

        small = shrunk(cloth)
        if not small.covers(laid.representative_point()):
            return False
        if small.boundary.distance(laid) < problem.edge_margin_mm:
            return False
        return all(shrunk(flaw).distance(laid) >= problem.flaw_margin_mm for flaw in flaws)

    low = 0.0
    while low + STEP_PCT <= LARGEST_SHRINK_PCT and holds(low + STEP_PCT):
        low += STEP_PCT
    high = low + STEP_PCT
    for _ in range(HALVINGS):
        middle = (low + high) / 2
        low, high = (middle, high) if holds(middle) else (low, middle)
    return low

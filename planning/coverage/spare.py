"""How far a lay stands from the edge, measured on the lay itself without another search.

Sound: whatever is said to hold, holds. Another lay of the same pieces may hold to more. Lengths in
mm, shares in percent.
"""

from collections.abc import Sequence

from shapely import GeometryCollection, Polygon
from shapely.geometry.base import BaseGeometry
from shapely.ops import unary_union

from planning.coverage.laid import Laid, laid_on
from planning.coverage.problem import Panel, Placement, Problem
from planning.coverage.rings import mended
from planning.coverage.sheets import outset
from planning.coverage.shrinking import shrink_pct
from planning.coverage.verdict import Spare

EXACT_MM = 0.01


def spare_of(problem: Problem, lay: Sequence[Placement]) -> Spare:
    """What a lay uses and what it would still stand."""
    used = sum(Polygon(mended(placement.outline)).area for placement in lay)
    usable = sum(usable_cloth(problem, panel).area for panel in problem.panels)
    return Spare(used, usable, inset_mm(problem, lay), shrink_pct(problem, lay))


def inset_mm(problem: Problem, lay: Sequence[Placement]) -> float:
    """How much further in every edge, and further out every flaw, could be; 0 for a lay of nothing.

    Edges move as lines, so that an inward corner comes nearer than they do (up to 2.5 times as
    far); edges that move by less than this, each by its own amount, are held to as well. Exact to
    a hundredth.
    """
    return max(0.0, min((_inset_mm(problem, each) for each in laid_on(problem, lay)), default=0.0))


def usable_cloth(problem: Problem, panel: Panel) -> BaseGeometry:
    """The panel less its edge margin and its flaws with theirs."""
    cloth: BaseGeometry = Polygon(mended(panel.outline)).buffer(-problem.edge_margin_mm)
    flaws = [Polygon(mended(flaw)).buffer(problem.flaw_margin_mm) for flaw in panel.flaws]
    return cloth.difference(unary_union(flaws)) if flaws else cloth


def _inset_mm(problem: Problem, laid: Laid) -> float:
    cloth, flaws = laid.cloth, laid.flaws
    shapes = GeometryCollection(laid.shapes)
    slack = cloth.exterior.distance(shapes) - problem.edge_margin_mm
    slack = min([slack, *(flaw.distance(shapes) - problem.flaw_margin_mm for flaw in flaws)])

    def holds(by_mm: float) -> bool:
        left, gone = outset(cloth, -by_mm), [outset(flaw, by_mm) for flaw in flaws]
        return (
            all(left.contains(shape) for shape in laid.shapes)
            and left.boundary.distance(shapes) > problem.edge_margin_mm - EXACT_MM / 2
            and all(flaw.distance(shapes) > problem.flaw_margin_mm - EXACT_MM / 2 for flaw in gone)
        )

    if slack <= 0.0 or holds(slack):
        return slack
    low, high = 0.0, slack
    while high - low > EXACT_MM / 2:
        middle = (low + high) / 2
        low, high = (middle, high) if holds(middle) else (low, middle)
    return low

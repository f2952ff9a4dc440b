"""A panel with the shapes that are cut from it: what the measures of a lay start from."""

from collections.abc import Sequence
from dataclasses import dataclass

from shapely import Polygon

from planning.coverage.problem import Panel, Placement, Problem
from planning.coverage.rings import mended


@dataclass(frozen=True, slots=True)
class Laid:
    """A panel and the shapes laid on it."""

    panel: Panel
    shapes: tuple[Polygon, ...]

    @property
    def cloth(self) -> Polygon:
        """The whole panel."""
        return Polygon(mended(self.panel.outline))

    @property
    def flaws(self) -> tuple[Polygon, ...]:
        """Its flaws."""
        return tuple(Polygon(mended(flaw)) for flaw in self.panel.flaws)


def laid_on(problem: Problem, lay: Sequence[Placement]) -> list[Laid]:
    """The panels that something is cut from, with what is."""
    shapes: dict[str, list[Polygon]] = {}
    for placement in lay:
        shapes.setdefault(placement.panel, []).append(Polygon(mended(placement.outline)))
    return [Laid(panel, tuple(shapes[panel.id])) for panel in problem.panels if panel.id in shapes]

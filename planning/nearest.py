"""Where a piece that fits nowhere comes nearest: something to look at beside the proof.

The proof stands without it. Places are tried on a grid, so the piece may come a little nearer
still; it never comes onto the cloth, or there would be no proof.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from shapely import Polygon, affinity, union_all
from shapely.geometry.base import BaseGeometry

from planning.coverage.problem import Outline, Panel, Piece, Problem

PANELS_TRIED = 4
STEPS = 9


@dataclass(frozen=True, slots=True)
class NearMiss:
    """A piece laid on the grain where least of it sticks out."""

    piece: str
    panel: str
    outline: Outline
    outside_mm2: float


def near_miss(problem: Problem, piece_id: str) -> NearMiss | None:
    """The nearest place for one piece among its largest panels; None where it has no panel."""
    piece = problem.piece(piece_id)
    allowed = [panel for panel in problem.panels if problem.may_come_from(piece, panel)]
    rooms = sorted(
        ((_room(problem, panel), panel) for panel in allowed), key=lambda pair: -pair[0].area
    )
    tried = [
        (shape.difference(room).area, panel, shape)
        for room, panel in rooms[:PANELS_TRIED]
        if not room.is_empty
        for shape in _places(piece, panel, room)
    ]
    if not tried:
        return None
    outside_mm2, panel, shape = min(tried, key=lambda each: each[0])
    ring = tuple((x, y) for x, y in shape.exterior.coords[:-1])
    return NearMiss(piece.id, panel.id, ring, outside_mm2)


def _room(problem: Problem, panel: Panel) -> BaseGeometry:
    inner = Polygon(panel.outline).buffer(-problem.edge_margin_mm, join_style="mitre")
    flaws = [Polygon(flaw).buffer(problem.flaw_margin_mm) for flaw in panel.flaws]
    return inner.difference(union_all(flaws)) if flaws else inner


def _places(piece: Piece, panel: Panel, room: BaseGeometry) -> Iterator[Polygon]:
    left, low, right, high = room.bounds
    for turn in (0,) if panel.one_way else (0, 180):
        shape = affinity.rotate(Polygon(piece.outline), panel.grain_deg - piece.grain_deg + turn)
        x0, y0, x1, y1 = shape.bounds
        for row in range(STEPS):
            for column in range(STEPS):
                yield affinity.translate(
                    shape,
                    left - x0 + (right - left - (x1 - x0)) * column / (STEPS - 1),
                    low - y0 + (high - low - (y1 - y0)) * row / (STEPS - 1),
                )

"""The cloth a piece could ever lie on, never drawn too small: what the proofs measure against.

Where the search builds margins generously, the proofs build them sparingly: a place that rounding
or the verifier's tolerance might still allow counts as cloth. Frames are those of `prepare`: each
panel turned so that its grain points along +x.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from shapely import Polygon, affinity
from shapely.geometry.base import BaseGeometry

from planning.coverage.grain import upright_deg
from planning.coverage.placing import placed
from planning.coverage.problem import Outline, Panel, Piece, Placement, Problem
from planning.coverage.rings import mended
from planning.coverage.verify import TOLERANCE_MM

SPARING_MM = 2 * TOLERANCE_MM  # taken off every margin before anything is called impossible
ARC_SEGMENTS = 16
CHORD_EXCESS = 1.01  # a ring drawn with chords of 16 to the quarter lies within 0.2 % of its arc


@dataclass(frozen=True, slots=True)
class Room:
    """One connected part of a panel that pieces may lie on, and the area they can fill there."""

    panel: Panel
    number: int
    cloth: Polygon
    fillable_mm2: float


def rooms_of(problem: Problem, panel: Panel, laid: Sequence[Placement] = ()) -> tuple[Room, ...]:
    """The parts of a panel left by its margins and flaws, and by what is laid there for good."""
    cloth: BaseGeometry = _upright_ring(panel.outline, panel)
    cloth = cloth.buffer(-_spared(problem.edge_margin_mm), ARC_SEGMENTS)
    for flaw in panel.flaws:
        grown = _upright_ring(flaw, panel).buffer(_spared(problem.flaw_margin_mm), ARC_SEGMENTS)
        cloth = cloth.difference(grown)
    for placement in laid:
        if placement.panel == panel.id:
            grown = _upright_ring(placement.outline, panel)
            gap = _spared(problem.clearance_mm)
            cloth = cloth.difference(grown.buffer(gap, ARC_SEGMENTS))
    halo = CHORD_EXCESS * problem.clearance_mm / 2
    parts = [part for part in _polygons(cloth) if not part.is_empty]
    return tuple(
        Room(panel, number, part, part.buffer(halo, ARC_SEGMENTS).area)
        for number, part in enumerate(parts)
    )


def least_shape(piece: Piece, mirrored: bool) -> Polygon:
    """The piece upright, its grain along +x, about its own middle."""
    turn = upright_deg(piece, mirrored)
    ring = placed(piece.outline, mirrored=mirrored, rotation_deg=turn, translation=(0.0, 0.0))
    shape = Polygon(mended(ring))
    middle = shape.centroid
    return affinity.translate(shape, -middle.x, -middle.y)


def least_area_mm2(problem: Problem, piece: Piece) -> float:
    """The cloth a piece takes at the least, with its half of the gap around it."""
    halo = _spared(problem.clearance_mm) / 2
    return float(Polygon(mended(piece.outline)).buffer(halo, ARC_SEGMENTS).area)


def _spared(margin_mm: float) -> float:
    return max(0.0, margin_mm - SPARING_MM)


def _upright_ring(outline: Outline, panel: Panel) -> Polygon:
    x, y = panel.outline[0]
    moved = [(px - x, py - y) for px, py in outline]
    ring = placed(moved, mirrored=False, rotation_deg=-panel.grain_deg, translation=(0.0, 0.0))
    return Polygon(mended(ring))


def _polygons(shape: BaseGeometry) -> list[Polygon]:
    return [part for part in getattr(shape, "geoms", [shape]) if isinstance(part, Polygon)]

"""The cloth given to the search: panels less their margins, with the margins already taken off.

Each panel is turned so that its grain points along +x and shrunk by the edge margin less half the
clearance; flaws are grown likewise, and pieces already laid by half the clearance. The search's own
pieces are grown by that half too (`items`), so that shapes which touch stand exactly right. The
offsets are mitred: an arc drawn with chords would give a little of the margin away.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from shapely import Polygon
from shapely.geometry.base import BaseGeometry
from shapely.ops import unary_union

from planning.coverage.placing import placed
from planning.coverage.problem import Outline, Panel, Placement, Point, Problem
from planning.coverage.rings import mended

SLIVER_MM2 = 1.0
MITRE_LIMIT = 2.5
SAME_AREA = 1e-6
SLIT_MM = 3.0  # narrower than any piece; a seam allowance alone is wider
SHARPEST = 12.0  # corners down to 10 degrees are kept


@dataclass(frozen=True, slots=True)
class Sheet:
    """One connected part of a panel as the search sees it; `origin` undoes the change of frame."""

    panel: Panel
    origin: Point
    outline: Outline
    holes: tuple[Outline, ...]
    area_mm2: float


def sheets_of(
    problem: Problem,
    panel: Panel,
    *,
    laid: Sequence[Placement] = (),
    inset_mm: float = 0.0,
) -> tuple[Sheet, ...]:
    """The usable parts of a panel around what is `laid`; `inset_mm` takes more off every edge."""
    half = problem.clearance_mm / 2
    cloth = _shrunk(panel.outline, problem.edge_margin_mm + inset_mm - half)
    bare = [_grown(flaw, problem.flaw_margin_mm + inset_mm - half) for flaw in panel.flaws]
    bare += [outset(_polygon(p.outline), half) for p in laid if p.panel == panel.id]
    usable = _without_slits(cloth.difference(unary_union(bare))) if bare else cloth
    return tuple(_sheet(part, panel) for part in polygons(usable))


def _without_slits(cloth: BaseGeometry) -> BaseGeometry:
    """The cloth less the slits that no piece can use.

    Left in, they make the search take a large bare place inside a sheet for an island to be moved
    across, which it does badly.
    """
    opened = cloth.buffer(-SLIT_MM / 2, join_style="mitre", mitre_limit=SHARPEST).buffer(
        SLIT_MM / 2, join_style="mitre", mitre_limit=SHARPEST
    )
    return opened.intersection(cloth)


def _sheet(part: Polygon, panel: Panel) -> Sheet:
    origin = panel.outline[0]

    def upright(points: Sequence[tuple[float, ...]]) -> Outline:
        moved = [(point[0] - origin[0], point[1] - origin[1]) for point in points]
        ring = placed(moved, mirrored=False, rotation_deg=-panel.grain_deg, translation=(0.0, 0.0))
        return mended(ring)

    holes = tuple(upright(ring.coords[:-1]) for ring in part.interiors)
    return Sheet(panel, origin, upright(part.exterior.coords[:-1]), holes, part.area)


def outset(shape: BaseGeometry, by_mm: float) -> BaseGeometry:
    """The shape grown all round (shrunk for less than 0), its corners kept unless very sharp."""
    grown: BaseGeometry = shape.buffer(by_mm, join_style="mitre", mitre_limit=MITRE_LIMIT)
    return grown


def polygons(shape: BaseGeometry) -> Iterator[Polygon]:
    """The connected parts of a shape that are worth anything."""
    for part in getattr(shape, "geoms", [shape]):
        if isinstance(part, Polygon) and part.area > SLIVER_MM2:
            yield part


def _shrunk(outline: Outline, by_mm: float) -> BaseGeometry:
    """The panel shrunk; grown for less than 0, if that closes no notch a piece could lie over."""
    cloth = _polygon(outline)
    shrunk = outset(cloth, -by_mm)
    return shrunk if by_mm >= 0 or _is_undone(shrunk, by_mm, cloth) else cloth


def _grown(outline: Outline, by_mm: float) -> BaseGeometry:
    """The flaw grown; shrunk for less than 0, if that loses no thin part of it."""
    flaw = _polygon(outline)
    grown = outset(flaw, by_mm)
    return grown if by_mm >= 0 or _is_undone(grown, -by_mm, flaw) else flaw


def _is_undone(changed: BaseGeometry, by_mm: float, before: Polygon) -> bool:
    """Whether the opposite offset gives the shape back."""
    again = outset(changed, by_mm)
    return float(again.symmetric_difference(before).area) <= SAME_AREA * before.area


def _polygon(outline: Outline) -> Polygon:
    return Polygon(mended(outline))

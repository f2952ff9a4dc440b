"""The shapes given to the search: every margin is built into them, so that nothing is left to it.

Pieces are grown by half the clearance, panels shrunk by the edge margin less that half, flaws grown
likewise; each panel is turned so that its grain points along +x, each piece so that its grain does.
Shapes that touch then stand exactly the clearance apart. The offsets are mitred: an arc drawn with
chords would give a little of the margin away.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from shapely import MultiPolygon, Polygon
from shapely.geometry.base import BaseGeometry

from planning.coverage.grain import Turn, turns_of, upright_deg
from planning.coverage.placing import placed, turned
from planning.coverage.problem import Outline, Panel, Piece, Point, Problem
from planning.coverage.rings import mended

HAIR_MM = 0.006  # kept to spare on each side of a gap, above the search's own rounding
SLIVER_MM2 = 1.0
FEW_POINTS = 60
SMOOTHING_MM = 0.05
MITRE_LIMIT = 2.5


@dataclass(frozen=True, slots=True)
class Sheet:
    """One connected part of a panel as the search sees it; `origin` undoes the change of frame."""

    panel: str
    grain_deg: float
    origin: Point
    outline: Outline
    holes: tuple[Outline, ...]
    area_mm2: float


@dataclass(frozen=True, slots=True)
class Item:
    """Copies of a piece of one side as the search sees them; `origin` is the piece's own."""

    piece: Piece
    copies: tuple[int, ...]
    mirrored: bool
    upright_deg: float
    origin: Point
    outline: Outline
    area_mm2: float

    def turns(self, one_way: bool) -> tuple[Turn, ...]:
        """The turns allowed to it on a sheet."""
        return turns_of(self.piece, one_way)


def sheets_of(problem: Problem, panel: Panel, *, inset_mm: float = 0.0) -> tuple[Sheet, ...]:
    """The panel less its margins, in connected parts; `inset_mm` takes more off every edge."""
    half = problem.clearance_mm / 2
    cloth = _outset(Polygon(mended(panel.outline)), half - problem.edge_margin_mm - inset_mm)
    flaws = [
        _outset(Polygon(mended(flaw)), problem.flaw_margin_mm + inset_mm - half)
        for flaw in panel.flaws
    ]
    frame = panel.outline[0]
    return tuple(
        sheet for part in _polygons(cloth) for sheet in _sheets_of_part(part, flaws, panel, frame)
    )


def _sheets_of_part(
    part: Polygon, flaws: Sequence[BaseGeometry], panel: Panel, frame: Point
) -> Iterable[Sheet]:
    holes = [hole for flaw in flaws for hole in _polygons(flaw) if hole.intersects(part)]
    usable = part
    for hole in holes:
        usable = usable.difference(hole)
    for rest in _polygons(usable):
        rings = [rest.exterior, *rest.interiors]
        outline, *inner = (_into_frame(ring.coords[:-1], panel.grain_deg, frame) for ring in rings)
        yield Sheet(
            panel.id, panel.grain_deg, frame, mended(outline), tuple(map(mended, inner)), rest.area
        )


def items_of(problem: Problem, pieces: Iterable[tuple[Piece, Sequence[int]]]) -> tuple[Item, ...]:
    """The copies asked for, gathered by piece and side."""
    items = []
    for piece, copies in pieces:
        for mirrored in (False, True):
            of_side = tuple(copy for copy in copies if piece.is_mirrored(copy) == mirrored)
            if of_side:
                items.append(_item(problem, piece, of_side, mirrored))
    return tuple(items)


def _item(problem: Problem, piece: Piece, copies: tuple[int, ...], mirrored: bool) -> Item:
    upright = upright_deg(piece, mirrored)
    ring = placed(piece.outline, mirrored=mirrored, rotation_deg=upright, translation=(0.0, 0.0))
    origin = ring[0]
    ring = tuple((x - origin[0], y - origin[1]) for x, y in ring)
    grown = grown_outline(ring, problem.clearance_mm / 2 + HAIR_MM)
    return Item(piece, copies, mirrored, upright, origin, grown, Polygon(grown).area)


def grown_outline(ring: Outline, by_mm: float) -> Outline:
    """A ring that holds the given one grown all round; one with many points is smoothed outwards."""
    shape = Polygon(mended(ring))
    smoothing = SMOOTHING_MM if len(shape.exterior.coords) > FEW_POINTS else 0.0
    grown = _outset(shape, by_mm + smoothing).simplify(smoothing)
    return mended(tuple(max(_polygons(grown), key=lambda part: part.area).exterior.coords[:-1]))


def lies_at(item: Item, sheet: Sheet, turn_deg: float, corner: Point) -> tuple[float, Point]:
    """The rotation and translation, on the panel itself, of an item laid on a sheet."""
    start = turned(item.origin, turn_deg)
    inside = turned((corner[0] - start[0], corner[1] - start[1]), sheet.grain_deg)
    rotation = (sheet.grain_deg + turn_deg + item.upright_deg) % 360.0
    return rotation, (inside[0] + sheet.origin[0], inside[1] + sheet.origin[1])


def _outset(shape: Polygon, by_mm: float) -> BaseGeometry:
    return shape.buffer(by_mm, join_style="mitre", mitre_limit=MITRE_LIMIT)


def _into_frame(points: Iterable[tuple[float, ...]], grain_deg: float, frame: Point) -> Outline:
    moved = ((point[0] - frame[0], point[1] - frame[1]) for point in points)
    return placed(moved, mirrored=False, rotation_deg=-grain_deg, translation=(0.0, 0.0))


def _polygons(shape: BaseGeometry) -> list[Polygon]:
    parts = shape.geoms if isinstance(shape, MultiPolygon) else [shape]
    return [part for part in parts if isinstance(part, Polygon) and part.area > SLIVER_MM2]

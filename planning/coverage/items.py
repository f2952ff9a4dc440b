"""The pieces given to the search: upright, grown by half the clearance, copies alike gathered.

A copy whose stripe must meet another's is swept along the repeat (its mate slides onto the stripe
afterwards, inside the room that the sweep has kept free).
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from shapely import Polygon
from shapely.affinity import translate
from shapely.ops import unary_union

from planning.coverage.grain import Turn, turns_of, upright_deg
from planning.coverage.placing import placed, turned
from planning.coverage.problem import Outline, Piece, Point, Problem
from planning.coverage.rings import mended
from planning.coverage.sheets import Sheet, outset, polygons

HAIR_MM = 0.0005  # kept to spare around each piece; the engine's own rounding is 1e-9 (measured)
TIE_HAIR_MM = -0.0002  # where pieces fill the cloth to the last thread, rounding must not decide
SMOOTHING_MM = 0.05
FEW_POINTS = 60


@dataclass(frozen=True, slots=True)
class Item:
    """Copies of a piece of one side as the search sees them; `origin` is the piece's own.

    `sweep` is how far along and across the grain a mate may slide; such a copy, and the one that
    it follows, keep the one `upright_only` turn.
    """

    piece: Piece
    copies: tuple[int, ...]
    upright_deg: float
    origin: Point
    outline: Outline
    area_mm2: float
    sweep: Point = (0.0, 0.0)
    upright_only: bool = False

    def turns(self, one_way: bool) -> tuple[Turn, ...]:
        """The turns allowed to it on a sheet."""
        turns = turns_of(self.piece, one_way)
        if not self.upright_only:
            return turns
        middle = (turns[0][0] + turns[0][1]) / 2
        return ((middle, middle),)


def items_of(
    problem: Problem, copies: Iterable[tuple[Piece, int]], *, hair_mm: float = HAIR_MM
) -> tuple[Item, ...]:
    """The copies asked for, gathered by piece and side."""
    alike: dict[tuple[Piece, bool], list[int]] = {}
    for piece, copy in copies:
        alike.setdefault((piece, piece.is_mirrored(copy)), []).append(copy)
    grow_mm = problem.clearance_mm / 2 + hair_mm
    return tuple(
        _item(piece, tuple(numbers), mirrored, grow_mm)
        for (piece, mirrored), numbers in alike.items()
    )


def _item(piece: Piece, copies: tuple[int, ...], mirrored: bool, grow_mm: float) -> Item:
    upright = upright_deg(piece, mirrored)
    ring = placed(piece.outline, mirrored=mirrored, rotation_deg=upright, translation=(0.0, 0.0))
    origin = ring[0]
    ring = tuple((x - origin[0], y - origin[1]) for x, y in ring)
    grown = grown_outline(ring, grow_mm)
    return Item(piece, copies, upright, origin, grown, Polygon(grown).area)


def grown_outline(ring: Outline, by_mm: float) -> Outline:
    """A ring around the given one grown by so much; one with many points is smoothed outwards."""
    shape = Polygon(mended(ring))
    smoothing = SMOOTHING_MM if len(shape.exterior.coords) > FEW_POINTS else 0.0
    grown = outset(shape, by_mm + smoothing)
    return _largest_ring(list(polygons(grown.simplify(smoothing) if smoothing else grown)))


def plainer(item: Item, by_mm: float) -> Item:
    """The item with fewer points, its outline nowhere further out than twice this."""
    shape = outset(Polygon(item.outline), by_mm).simplify(by_mm)
    outline = _largest_ring(list(polygons(shape)))
    return replace(item, outline=outline, area_mm2=Polygon(outline).area)


def swept(item: Item, along_mm: float, across_mm: float) -> Item:
    """The item with room to slide so far along and across the grain."""
    if along_mm == 0.0 and across_mm == 0.0:
        return replace(item, upright_only=True)
    turn = item.turns(True)[0]
    middle = (turn[0] + turn[1]) / 2
    shape: Polygon = Polygon(item.outline)
    for step in ((along_mm, 0.0), (0.0, across_mm)):
        shape = _swept_by(shape, turned(step, -middle))
    outline = _largest_ring([shape])
    return replace(
        item,
        outline=outline,
        area_mm2=Polygon(outline).area,
        sweep=(along_mm, across_mm),
        upright_only=True,
    )


def lies_at(
    item: Item, sheet: Sheet, turn_deg: float, corner: Point, slide: Point = (0.0, 0.0)
) -> tuple[float, Point]:
    """The rotation and translation, on the panel itself, of an item laid on a sheet."""
    grain = sheet.panel.grain_deg
    start = turned(item.origin, turn_deg)
    inside = turned((corner[0] - start[0] + slide[0], corner[1] - start[1] + slide[1]), grain)
    rotation = (grain + turn_deg + item.upright_deg) % 360.0
    return rotation, (inside[0] + sheet.origin[0], inside[1] + sheet.origin[1])


def _swept_by(shape: Polygon, step: Point) -> Polygon:
    """All that the shape covers on its way: itself, itself moved, and what each edge sweeps."""
    if step == (0.0, 0.0):
        return shape
    ring = list(shape.exterior.coords)
    dx, dy = step
    strips = []
    for (x1, y1), (x2, y2) in zip(ring, ring[1:], strict=False):
        strip = Polygon([(x1, y1), (x2, y2), (x2 + dx, y2 + dy), (x1 + dx, y1 + dy)])
        strips.append(strip.buffer(0))
    whole = unary_union([shape, translate(shape, dx, dy), *strips])
    return max(polygons(whole), key=lambda part: part.area)


def _largest_ring(parts: Sequence[Polygon]) -> Outline:
    ring = max(parts, key=lambda part: part.area).exterior
    return mended(tuple((x, y) for x, y in ring.coords[:-1]))

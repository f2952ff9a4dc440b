"""A second, simpler look at what a proof claims, by another library and another method.

Whole-number polygons (pyclipper, a thousandth of a millimetre) and inner-fit regions by Minkowski
sums: the moves at which the edge of a piece touches the edge of the cloth are swept out, and one
place in each cell that is left decides for the cell. A proof that this does not confirm is dropped.
"""

import math
from collections.abc import Iterable, Iterator, Sequence

import pyclipper
from shapely import Polygon, affinity

from planning.coverage.kinds import Kind
from planning.coverage.placing import placed
from planning.coverage.problem import Outline, Panel, Placement, Problem
from planning.coverage.rings import mended

type Path = list[tuple[int, int]]

UNITS_PER_MM = 1000
SPARING_MM = 0.03  # given back on every margin, above what the verifier forgives
HAIR_MM = 0.05  # taken off a piece, so that an exact fit never counts as none
ARC_TOLERANCE_UNITS = 10.0  # chords lie within a hundredth of a millimetre of their arc
HALO_EXCESS = 1.02
MOST_STEPS = 24
FINEST_STEP_DEG = 0.25
LEAST_CELL_UNITS2 = 10.0
PLAINER_MM = 0.5
FIRST_MOVES = 12


def has_no_place(problem: Problem, laid: Sequence[Placement], kind: Kind, panel: Panel) -> bool:
    """Whether a piece of this kind fits nowhere on the panel around what is laid there."""
    return not any(_fits(kind, room, panel) for room in rooms_by_clipper(problem, laid, panel))


def is_short(problem: Problem, laid: Sequence[Placement], kinds: Sequence[Kind], by: float) -> bool:
    """Whether the kinds need more than `by` times all the cloth where one of them may lie.

    Where counting every allowed panel does not settle it, rooms in which none fits are left out.
    """
    need = _need_mm2(problem, kinds)
    return any(need > by * _have_mm2(problem, laid, kinds, fitting) for fitting in (False, True))


def _have_mm2(
    problem: Problem, laid: Sequence[Placement], kinds: Sequence[Kind], fitting: bool
) -> float:
    total = 0.0
    for panel in problem.panels:
        allowed = [kind for kind in kinds if problem.may_come_from(kind.piece, panel)]
        for room in rooms_by_clipper(problem, laid, panel) if allowed else ():
            if not fitting or any(_fits(kind, room, panel) for kind in allowed):
                grown = _offset(_rings(room), HALO_EXCESS * problem.clearance_mm / 2)
                total += sum(map(_area_mm2, grown))
    return total


def _need_mm2(problem: Problem, kinds: Sequence[Kind]) -> float:
    """The cloth that all copies take, each grown by its half of the gap."""
    halo = max(0.0, problem.clearance_mm - SPARING_MM) / 2
    total = 0.0
    for kind in kinds:
        grown = _offset([_path(mended(kind.piece.outline))], halo)
        total += kind.copies * sum(map(_area_mm2, grown))
    return total


def rooms_by_clipper(problem: Problem, laid: Sequence[Placement], panel: Panel) -> list[Polygon]:
    """The connected parts of a panel that pieces may lie on, its grain along +x."""
    edge = max(0.0, problem.edge_margin_mm - SPARING_MM)
    grow = max(0.0, problem.flaw_margin_mm - SPARING_MM)
    cloth = _offset([_upright(panel.outline, panel)], -edge)
    gap = max(0.0, problem.clearance_mm - SPARING_MM)
    bare = [(flaw, grow) for flaw in panel.flaws]
    bare += [(placement.outline, gap) for placement in laid if placement.panel == panel.id]
    holes = [path for ring, by in bare for path in _offset([_upright(ring, panel)], by)]
    return _polygons(_combined(cloth, holes, pyclipper.CT_DIFFERENCE)) if cloth else []


def _fits(kind: Kind, room: Polygon, panel: Panel) -> bool:
    """Whether a place is left at one of the turns; a range of turns is looked at in steps."""
    reach = max(math.hypot(x, y) for x, y in kind.shape.exterior.coords)
    for first, last in kind.turns_on(panel):
        steps = min(MOST_STEPS, max(1, math.ceil((last - first) / FINEST_STEP_DEG)))
        step = (last - first) / steps
        core = kind.shape.buffer(-HAIR_MM - reach * math.radians(step / 2))
        for part in getattr(core, "geoms", [core]):
            for number in range(steps if last > first else 1):
                turn = first + (number + 0.5) * step
                if part.is_empty or _has_cell(_turned(part, turn), room):
                    return True
    return False


def _turned(part: Polygon, turn_deg: float) -> Polygon:
    return affinity.rotate(part, turn_deg, origin=(0, 0))


def _has_cell(part: Polygon, room: Polygon) -> bool:
    """Whether a move exists that brings the part wholly onto the room.

    A few moves are tried outright; then a plainer part that lies inside the part is looked at in a
    plainer room that the room lies inside, since where that finds no cell there is none.
    """
    if part.area > room.area or _is_wider(part, room):
        return False
    if any(room.covers(affinity.translate(part, *move)) for move in _first_moves(part, room)):
        return True
    plainer = part.buffer(-PLAINER_MM).simplify(0.95 * PLAINER_MM)
    roomier = room.buffer(PLAINER_MM).simplify(0.95 * PLAINER_MM)
    if isinstance(plainer, Polygon) and isinstance(roomier, Polygon) and not plainer.is_empty:  # noqa: SIM102
        if not any(True for _ in _cells(plainer, roomier)):
            return False
    return any(True for _ in _cells(part, room))


def _cells(part: Polygon, room: Polygon) -> Iterator[Polygon]:
    """The cells of moves at which the part lies wholly on the room."""
    pattern = [(-x, -y) for x, y in _path(part.exterior.coords[:-1])]
    touching = [
        path for ring in _rings(room) for path in pyclipper.MinkowskiSum(pattern, ring, True)
    ]
    left, low, right, high = (round(bound * UNITS_PER_MM) for bound in room.bounds)
    frame = [(left, low), (right, low), (right, high), (left, high)]
    for cell in _polygons(_combined([frame], touching, pyclipper.CT_DIFFERENCE)):
        move = cell.representative_point()
        if room.covers(affinity.translate(part, move.x, move.y)):
            yield cell


def _is_wider(part: Polygon, room: Polygon) -> bool:
    left, low, right, high = part.bounds
    x0, y0, x1, y1 = room.bounds
    return bool(right - left > x1 - x0 or high - low > y1 - y0)


def _first_moves(part: Polygon, room: Polygon) -> Iterator[tuple[float, float]]:
    """A coarse grid of moves that keep the part inside the room's box."""
    left, low, right, high = part.bounds
    x0, y0, x1, y1 = room.bounds
    across, up = (x1 - x0) - (right - left), (y1 - y0) - (high - low)
    for row in range(FIRST_MOVES + 1):
        for column in range(FIRST_MOVES + 1):
            yield (
                x0 - left + across * column / FIRST_MOVES,
                y0 - low + up * row / FIRST_MOVES,
            )


def _upright(outline: Outline, panel: Panel) -> Path:
    x, y = panel.outline[0]
    moved = [(px - x, py - y) for px, py in mended(outline)]
    return _path(
        placed(moved, mirrored=False, rotation_deg=-panel.grain_deg, translation=(0.0, 0.0))
    )


def _path(points: Iterable[tuple[float, ...]]) -> Path:
    return [(round(point[0] * UNITS_PER_MM), round(point[1] * UNITS_PER_MM)) for point in points]


def _rings(room: Polygon) -> list[Path]:
    return [_path(ring.coords[:-1]) for ring in (room.exterior, *room.interiors)]


def _area_mm2(path: Path) -> float:
    return float(pyclipper.Area(path)) / UNITS_PER_MM**2


def _offset(paths: Sequence[Path], by_mm: float) -> list[Path]:
    tool = pyclipper.PyclipperOffset(2.0, ARC_TOLERANCE_UNITS)
    tool.AddPaths(paths, pyclipper.JT_ROUND, pyclipper.ET_CLOSEDPOLYGON)
    result: list[Path] = tool.Execute(by_mm * UNITS_PER_MM)
    return result


def _combined(subject: Sequence[Path], clip: Sequence[Path], how: int) -> pyclipper.PyPolyNode:
    tool = pyclipper.Pyclipper()
    tool.AddPaths(subject, pyclipper.PT_SUBJECT, True)
    if clip:
        tool.AddPaths(clip, pyclipper.PT_CLIP, True)
    return tool.Execute2(how, pyclipper.PFT_NONZERO, pyclipper.PFT_NONZERO)


def _polygons(tree: pyclipper.PyPolyNode) -> list[Polygon]:
    """The tree's areas, each with its holes, in millimetres."""
    found, waiting = [], list(tree.Childs)
    while waiting:
        node = waiting.pop()
        waiting += [island for hole in node.Childs for island in hole.Childs]
        if pyclipper.Area(node.Contour) > LEAST_CELL_UNITS2:
            found.append(Polygon(_mm(node.Contour), [_mm(hole.Contour) for hole in node.Childs]))
    return found


def _mm(path: Path) -> list[tuple[float, float]]:
    return [(x / UNITS_PER_MM, y / UNITS_PER_MM) for x, y in path]

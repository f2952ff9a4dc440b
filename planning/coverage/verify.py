"""Whether a lay keeps every rule, measured on the shapes as they were given.

This is the last word before *covers*. It reads the rules for itself and shares no geometry with the
preparation for the search or with the search: what those get wrong must show here. It finds faults;
it mends nothing.
"""

import itertools
import math
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

from shapely import LineString, Polygon, affinity, get_coordinates, make_valid
from shapely import Point as ShapelyPoint
from shapely.geometry.base import BaseGeometry

from planning.coverage.problem import (
    Match,
    Outline,
    Panel,
    Piece,
    Placement,
    Point,
    Problem,
)

TOLERANCE_MM = 0.01  # a tenth of the finest line a tailor's chalk or blade leaves; common practice


@dataclass(frozen=True, slots=True)
class Fault:
    """One rule that one copy breaks. `kind` is a short name, `text` a sentence."""

    kind: str
    piece: str
    copy: int
    panel: str
    text: str


def faults_of(
    problem: Problem, placements: Sequence[Placement], *, whole: bool = True
) -> list[Fault]:
    """Every fault of the lay; an empty list means that it holds.

    With `whole` false the lay may be a part of one: copies may be missing, but whatever lies must
    lie right. Lengths are compared with TOLERANCE_MM, angles with the turn that moves no point of
    the piece by more than that.
    """
    faults = list(_counting_faults(problem, placements, whole))
    if any(fault.kind == "unknown" for fault in faults):
        return faults
    shapes = [_polygon(placement.outline) for placement in placements]
    for placement, shape in zip(placements, shapes, strict=True):
        faults.extend(_faults_alone(problem, placement, shape))
    faults.extend(_clearance_faults(problem, placements, shapes))
    faults.extend(_faults_between(problem, placements))
    return faults


def _counting_faults(
    problem: Problem, placements: Sequence[Placement], whole: bool
) -> Iterator[Fault]:
    pieces = {piece.id: piece for piece in problem.pieces}
    panels = {panel.id for panel in problem.panels}
    seen: set[tuple[str, int]] = set()
    for placement in placements:
        piece = pieces.get(placement.piece)
        if piece is None or placement.panel not in panels or not 0 <= placement.copy < piece.count:
            yield _fault("unknown", placement, "names a piece, copy or panel that is not there")
        elif (placement.piece, placement.copy) in seen:
            yield _fault("twice", placement, "is laid twice")
        seen.add((placement.piece, placement.copy))
    for piece in problem.pieces if whole else ():
        for copy in range(piece.count):
            if (piece.id, copy) not in seen:
                text = f"{piece.id} (copy {copy}) is not laid."
                yield Fault("missing", piece.id, copy, "", text)


def _faults_alone(problem: Problem, placement: Placement, shape: BaseGeometry) -> Iterator[Fault]:
    """The rules a copy keeps or breaks by itself."""
    piece = next(piece for piece in problem.pieces if piece.id == placement.piece)
    panel = next(panel for panel in problem.panels if panel.id == placement.panel)
    if placement.mirrored != (placement.copy >= piece.count - piece.mirrored):
        yield _fault("mirror", placement, "is laid on the wrong side, left for right")
    if not _is_carried(piece, placement):
        yield _fault("transform", placement, "does not lie where its turn and move say")
    if piece.panels is not None and panel.id not in piece.panels:
        yield _fault("panel", placement, "may not be cut from this panel")
    if piece.garments is not None and panel.garment not in piece.garments:
        yield _fault("garment", placement, "may not be cut from this garment")
    if not _grain_is_right(piece, panel, placement):
        yield _fault("grain", placement, "lies off the grain")
    cloth = _polygon(panel.outline)
    if not _is_within(shape, cloth, problem.edge_margin_mm):
        yield _fault("edge", placement, "comes too close to the edge of the panel")
    for flaw in panel.flaws:
        if _is_too_close(shape, _polygon(flaw), problem.flaw_margin_mm):
            yield _fault("flaw", placement, "comes too close to a flaw")


def _is_carried(piece: Piece, placement: Placement) -> bool:
    """Whether the outline is the piece's own, mirrored, turned and moved as the placement says."""
    if len(placement.outline) != len(piece.outline):
        return False
    carried = _carried(piece.outline, placement)
    return all(
        math.dist(point, given) <= TOLERANCE_MM
        for point, given in zip(carried, placement.outline, strict=True)
    )


def _carried(points: Sequence[Point], placement: Placement) -> list[Point]:
    """Points of the piece's own coordinates where they lie on the panel."""
    spots: BaseGeometry = LineString(points) if len(points) > 1 else ShapelyPoint(points[0])
    if placement.mirrored:
        spots = affinity.scale(spots, xfact=-1.0, yfact=1.0, origin=(0, 0))
    spots = affinity.rotate(spots, placement.rotation_deg, origin=(0, 0))
    spots = affinity.translate(spots, *placement.translation)
    return [(float(x), float(y)) for x, y in get_coordinates(spots)]


def _carrier(placement: Placement) -> Callable[[Point], Point]:
    """The map from the piece's own coordinates to the panel's."""
    return lambda point: _carried([point], placement)[0]


def _grain_is_right(piece: Piece, panel: Panel, placement: Placement) -> bool:
    """Whether the grain line as laid runs with the panel's, or at 45 degrees to it on the bias."""
    grain = math.radians(piece.grain_deg)
    carry = _carrier(placement)
    tail, tip = carry((0.0, 0.0)), carry((math.cos(grain), math.sin(grain)))
    lies_deg = math.degrees(math.atan2(tip[1] - tail[1], tip[0] - tail[0]))
    wanted = [panel.grain_deg + lean for lean in ((-45.0, 45.0) if piece.bias else (0.0,))]
    if not panel.one_way:
        wanted += [angle + 180.0 for angle in wanted]
    off_deg = min(abs((lies_deg - angle + 180.0) % 360.0 - 180.0) for angle in wanted)
    reach_mm = max(math.dist(piece.outline[0], point) for point in piece.outline)
    return math.radians(max(0.0, off_deg - piece.grain_tolerance_deg)) * reach_mm <= TOLERANCE_MM


def _is_within(shape: BaseGeometry, cloth: BaseGeometry, margin_mm: float) -> bool:
    """Whether the shape lies inside the cloth and keeps the margin to its edge."""
    if margin_mm > TOLERANCE_MM:
        inside = cloth.covers(shape.representative_point())
        return inside and cloth.boundary.distance(shape) >= margin_mm - TOLERANCE_MM
    return _pared(shape).within(cloth)


def _is_too_close(shape: BaseGeometry, other: BaseGeometry, margin_mm: float) -> bool:
    """Whether two shapes overlap or come closer than the margin."""
    if margin_mm > TOLERANCE_MM:
        return shape.distance(other) < margin_mm - TOLERANCE_MM
    return _pared(shape).intersects(_pared(other))


def _pared(shape: BaseGeometry) -> BaseGeometry:
    """The shape less half the tolerance all round, for margins of nothing where edges may touch."""
    return shape.buffer(-TOLERANCE_MM / 2, join_style="mitre")


def _clearance_faults(
    problem: Problem, placements: Sequence[Placement], shapes: Sequence[BaseGeometry]
) -> Iterator[Fault]:
    gap_mm = problem.clearance_mm
    boxes = [shape.bounds for shape in shapes]
    for i, j in itertools.combinations(range(len(placements)), 2):
        first, second = placements[i], placements[j]
        if first.panel != second.panel or _are_apart(boxes[i], boxes[j], gap_mm):
            continue
        if _is_too_close(shapes[i], shapes[j], gap_mm):
            what = f"comes too close to {second.piece} (copy {second.copy})"
            yield _fault("clearance", first, what)


def _are_apart(
    first: tuple[float, float, float, float],
    second: tuple[float, float, float, float],
    gap_mm: float,
) -> bool:
    return (
        first[2] + gap_mm < second[0]
        or second[2] + gap_mm < first[0]
        or first[3] + gap_mm < second[1]
        or second[3] + gap_mm < first[1]
    )


def _faults_between(problem: Problem, placements: Sequence[Placement]) -> Iterator[Fault]:
    """The rules that name particular copies, or bind several."""
    by_copy = {(placement.piece, placement.copy): placement for placement in placements}
    for lock in problem.locked:
        laid = by_copy.get((lock.piece, lock.copy))
        if laid and not _is_same_place(
            (laid.panel, laid.mirrored, laid.rotation_deg, laid.translation),
            (lock.panel, lock.mirrored, lock.rotation_deg, lock.translation),
        ):
            yield _fault("locked", laid, "was moved, though it is locked in its place")
    for pin in problem.pin:
        laid = by_copy.get((pin.piece, pin.copy))
        if laid and (
            laid.panel != pin.panel
            or math.dist(_carrier(laid)(pin.piece_point), pin.panel_point)
            > pin.within_mm + TOLERANCE_MM
        ):
            yield _fault("pin", laid, "does not land on the place it is pinned to")
    yield from _same_garment_faults(problem, placements)
    for match in problem.match:
        a = by_copy.get((match.a.piece, match.a.copy))
        b = by_copy.get((match.b.piece, match.b.copy))
        if a and b and not _stripes_meet(problem, match, a, b):
            yield _fault("match", a, f"does not meet the stripe of {b.piece} (copy {b.copy})")


def _is_same_place(
    laid: tuple[str, bool, float, Point], lock: tuple[str, bool, float, Point]
) -> bool:
    turn_deg = abs((laid[2] - lock[2] + 180.0) % 360.0 - 180.0)
    moved_mm = math.dist(laid[3], lock[3])
    return laid[:2] == lock[:2] and turn_deg <= 1e-6 and moved_mm <= TOLERANCE_MM


def _same_garment_faults(problem: Problem, placements: Sequence[Placement]) -> Iterator[Fault]:
    garment_of = {panel.id: panel.garment for panel in problem.panels}
    for group in problem.same_garment:
        laid = [placement for placement in placements if placement.piece in group]
        for placement in laid:
            if garment_of[placement.panel] != garment_of[laid[0].panel]:
                yield _fault(
                    "same_garment", placement, "comes from another garment than its fellows"
                )


def _stripes_meet(problem: Problem, match: Match, a: Placement, b: Placement) -> bool:
    """Whether both spots lie at the same place of the repeat, counted from each panel's origin.

    Where neither cloth repeats there is nothing to meet. Where only one does, or the repeats are
    of different lengths, the pattern cannot run on across the seam.
    """
    panels = {panel.id: panel for panel in problem.panels}
    at_a = _along_across(panels[a.panel], _carrier(a)(match.a.at))
    at_b = _along_across(panels[b.panel], _carrier(b)(match.b.at))
    names = {"along": (0,), "across": (1,), "both": (0, 1)}[match.direction]
    for axis in names:
        period_a, period_b = at_a[axis][1], at_b[axis][1]
        if period_a is None and period_b is None:
            continue
        if period_a is None or period_b is None or abs(period_a - period_b) > TOLERANCE_MM:
            return False
        off_mm = abs((at_a[axis][0] - at_b[axis][0] + period_a / 2) % period_a - period_a / 2)
        if off_mm > match.within_mm + TOLERANCE_MM:
            return False
    return True


def _along_across(
    panel: Panel, point: Point
) -> tuple[tuple[float, float | None], tuple[float, float | None]]:
    """How far along and across the grain a point lies from the repeat's origin, and each repeat."""
    if panel.repeat is None:
        return (0.0, None), (0.0, None)
    grain = math.radians(panel.grain_deg)
    x, y = point[0] - panel.repeat.origin[0], point[1] - panel.repeat.origin[1]
    along = x * math.cos(grain) + y * math.sin(grain)
    across = x * math.sin(grain) - y * math.cos(grain)
    return (along, panel.repeat.along_mm), (across, panel.repeat.across_mm)


def _polygon(outline: Outline) -> BaseGeometry:
    """The outline's area; a spike or a repeated point adds nothing to it."""
    shape: BaseGeometry = Polygon(outline)
    if shape.is_valid:
        return shape
    parts = [part for part in _parts(make_valid(shape)) if isinstance(part, Polygon)]
    return max(parts, key=lambda part: part.area, default=shape)


def _parts(shape: BaseGeometry) -> list[BaseGeometry]:
    return list(getattr(shape, "geoms", [shape]))


def _fault(kind: str, placement: Placement, what: str) -> Fault:
    text = f"{placement.piece} (copy {placement.copy}) on {placement.panel} {what}."
    return Fault(kind, placement.piece, placement.copy, placement.panel, text)

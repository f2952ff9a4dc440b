"""What a block or the modelspace of a DXF document draws, by layer, in millimetres.

Arcs are cut into chords that keep within ``FLATTENED_MM`` of them. A bulge is the tangent of a
quarter of its arc's angle, negative when the arc runs clockwise (DXF reference, VERTEX and
LWPOLYLINE). Coordinates of a block are taken as drawn; where it is inserted does not matter.
"""

import math
from collections import Counter, defaultdict
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, field
from typing import Any

from ezdxf.entities import (
    Arc,
    Circle,
    DXFEntity,
    DXFGraphic,
    Ellipse,
    LWPolyline,
    MText,
    Polyline,
    Spline,
    Text,
)
from ezdxf.math import bulge_to_arc

from planning.drafting.exchange.chains import Closed, Line, chained, closed_ring
from planning.drafting.exchange.checked import FARTHEST_MM, MOST_POINTS, refuse_far
from planning.drafting.exchange.found import PatternFileError
from planning.drafting.rings import Point

FLATTENED_MM = 0.1
SPLINE_FRAME = 16  # flag of a vertex that steers a curve and is not on it


@dataclass(frozen=True)
class Stroke:
    """One entity as a line of points; a POINT is a line of one."""

    points: Line
    is_closed: bool


@dataclass(frozen=True)
class Words:
    """A text and where it stands."""

    text: str
    at: Point


@dataclass
class Drawn:
    """All that one block holds; ``unread`` counts entities of no use by layer and kind."""

    name: str
    strokes: dict[str, list[Stroke]] = field(default_factory=lambda: defaultdict(list))
    words: list[Words] = field(default_factory=list)
    unread: Counter[tuple[str, str]] = field(default_factory=Counter)
    points: int = 0


def drawn_of(entities: Iterable[DXFEntity], name: str, place: str, mm_per_unit: float) -> Drawn:
    """Return what the entities draw; raises PatternFileError for a point that is no number."""
    drawn = Drawn(name)
    for entity in entities:
        kind = entity.dxftype()
        # ezdxf keeps an entity it does not know as bare tags, without a layer
        layer = str(entity.dxf.get("layer", "0")) if entity.dxf.is_supported("layer") else "0"
        where = f"{place}, layer “{layer}”"
        if isinstance(entity, Text | MText):
            text = entity.plain_text() if isinstance(entity, MText) else entity.dxf.text
            at = _scaled([_xy(entity.dxf.insert)], mm_per_unit, where)[0]
            drawn.words.append(Words(str(text), at))
        elif kind in _READERS and isinstance(entity, DXFGraphic):
            strokes = _strokes(entity, mm_per_unit, where)
            drawn.strokes[layer] += strokes
            drawn.points += sum(len(stroke.points) for stroke in strokes)
            refuse_too_many(drawn.points)
        elif kind not in ("INSERT", "ATTDEF", "ATTRIB", "SEQEND"):
            drawn.unread[layer, kind] += 1
    return drawn


def refuse_too_many(points: int) -> None:
    """Raise PatternFileError for more points than are read of one drawing."""
    if points > MOST_POINTS:
        raise PatternFileError(
            f"The drawing has over {MOST_POINTS} points. Save only the pieces, or simplify them."
        )


def rings_of(strokes: Sequence[Stroke]) -> tuple[list[Closed], list[Line]]:
    """Return the closed lines among the strokes, open ones joined end to end, and what stays open.

    Single points are passed by.
    """
    strokes = [stroke for stroke in strokes if len(stroke.points) > 1]
    lines = [stroke.points for stroke in strokes if not stroke.is_closed]
    tried = [(stroke.points, True) for stroke in strokes if stroke.is_closed]
    tried += [(line, False) for line in chained(lines)]
    rings, still_open = [], []
    for points, is_closed in tried:
        closed = closed_ring(points, is_closed)
        if closed:
            rings.append(closed)
        else:
            still_open.append(points)
    return rings, still_open


def _strokes(entity: DXFGraphic, mm_per_unit: float, where: str) -> list[Stroke]:
    """Read one entity; none for a polyline that is a mesh or has no vertex."""
    try:
        points, is_closed = _READERS[entity.dxftype()](entity, mm_per_unit)
    except (ValueError, TypeError, ArithmeticError, LookupError, RecursionError) as error:
        if isinstance(error, PatternFileError):
            raise
        raise PatternFileError(
            f"A line of {where} ({entity.dxftype()}) cannot be followed. Draw it anew."
        ) from error
    return [Stroke(_scaled(points, mm_per_unit, where), is_closed)] if points else []


def _scaled(points: Sequence[Point], mm_per_unit: float, where: str) -> Line:
    line = [(x * mm_per_unit, y * mm_per_unit) for x, y in points]
    refuse_far(line, where)
    return line


def _xy(place: Sequence[float]) -> Point:
    return (float(place[0]), float(place[1]))


def _line(entity: DXFGraphic, _: float) -> tuple[Line, bool]:
    return [_xy(entity.dxf.start), _xy(entity.dxf.end)], False


def _spot(entity: DXFGraphic, _: float) -> tuple[Line, bool]:
    return [_xy(entity.dxf.location)], False


def _arc(entity: Arc | Circle, mm_per_unit: float) -> tuple[Line, bool]:
    is_circle = not isinstance(entity, Arc)
    start = 0.0 if is_circle else math.radians(entity.dxf.start_angle)
    end = 2 * math.pi if is_circle else math.radians(entity.dxf.end_angle)
    points = _arc_points(_xy(entity.dxf.center), entity.dxf.radius, start, end, mm_per_unit)
    return _in_world(entity, points[:-1] if is_circle else points), is_circle


def _arc_points(centre: Point, radius: float, start: float, end: float, mm_per_unit: float) -> Line:
    """Points of an anticlockwise arc, both ends included."""
    radius_mm = abs(radius) * mm_per_unit
    if not radius_mm < FARTHEST_MM:
        raise PatternFileError(
            "An arc has a radius of over a kilometre. Check the unit, or redraw it."
        )
    angle = (end - start) % (2 * math.pi) or 2 * math.pi
    steps = max(1, math.ceil(angle * math.sqrt(radius_mm / (8 * FLATTENED_MM))))
    turns = [start + angle * step / steps for step in range(steps + 1)]
    return [(centre[0] + radius * math.cos(t), centre[1] + radius * math.sin(t)) for t in turns]


def _curve(entity: Ellipse | Spline, mm_per_unit: float) -> tuple[Line, bool]:
    steering = entity.control_points if isinstance(entity, Spline) else [entity.dxf.major_axis]
    _scaled([_xy(point) for point in steering], mm_per_unit, "a curve")
    return [_xy(point) for point in entity.flattening(FLATTENED_MM / mm_per_unit)], False


def _polyline(entity: LWPolyline | Polyline, mm_per_unit: float) -> tuple[Line, bool]:
    if isinstance(entity, LWPolyline):
        corners = [(float(x), float(y), float(b)) for x, y, b in entity.get_points("xyb")]
        return _in_world(entity, _bulged(corners, entity.closed, mm_per_unit)), entity.closed
    if entity.is_polygon_mesh or entity.is_poly_face_mesh:
        return [], False
    corners = [
        (*_xy(vertex.dxf.location), float(vertex.dxf.get("bulge", 0.0)))
        for vertex in entity.vertices
        if not vertex.dxf.get("flags", 0) & SPLINE_FRAME
    ]
    points = _bulged(corners, entity.is_closed, mm_per_unit)
    return (points if entity.is_3d_polyline else _in_world(entity, points)), entity.is_closed


def _bulged(
    corners: Sequence[tuple[float, float, float]], is_closed: bool, mm_per_unit: float
) -> Line:
    points: Line = []
    for index, (x, y, bulge) in enumerate(corners):
        points.append((x, y))
        is_last = index == len(corners) - 1
        if bulge and not (is_last and not is_closed):
            following = corners[(index + 1) % len(corners)][:2]
            points += _bulge((x, y), following, bulge, mm_per_unit)
    return points


def _bulge(start: Point, end: Point, bulge: float, mm_per_unit: float) -> Line:
    """The points of a bulge between its ends, without them."""
    if start == end or not math.isfinite(bulge):
        return []
    centre, first, last, radius = bulge_to_arc(start, end, bulge)
    inner = _arc_points(_xy(centre), radius, first, last, mm_per_unit)[1:-1]
    return inner if bulge > 0 else inner[::-1]


def _in_world(entity: DXFGraphic, points: Line) -> Line:
    """Points of a flat entity drawn in its own plane, as a mirrored one is."""
    plane = entity.ocs()
    if not plane.transform:
        return points
    return [_xy(plane.to_wcs((x, y, 0.0))) for x, y in points]


_READERS: dict[str, Callable[[Any, float], tuple[Line, bool]]] = {
    "LINE": _line,
    "POINT": _spot,
    "ARC": _arc,
    "CIRCLE": _arc,
    "ELLIPSE": _curve,
    "SPLINE": _curve,
    "POLYLINE": _polyline,
    "LWPOLYLINE": _polyline,
}

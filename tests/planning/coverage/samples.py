"""Problems with a known answer, made so that the answer is certain."""

import cmath
import itertools
import math
import random
from dataclasses import replace

from shapely import LineString, Polygon
from shapely.ops import split

from planning.coverage.problem import Outline, Panel, Piece, Placement, Problem

RECTANGLE = ((0.0, 0.0), (400.0, 0.0), (400.0, 600.0), (0.0, 600.0))
SHIRT = (
    (0.0, 0.0),
    (520.0, 0.0),
    (530.0, 480.0),
    (480.0, 500.0),
    (450.0, 690.0),
    (330.0, 720.0),
    (265.0, 690.0),
    (200.0, 720.0),
    (80.0, 690.0),
    (50.0, 500.0),
    (0.0, 480.0),
)
L_SHAPE = (
    (0.0, 0.0),
    (400.0, 0.0),
    (400.0, 200.0),
    (200.0, 200.0),
    (200.0, 600.0),
    (0.0, 600.0),
)


def box(wide: float, high: float, x: float = 0.0, y: float = 0.0) -> Outline:
    return ((x, y), (x + wide, y), (x + wide, y + high), (x, y + high))


def panel(outline: Outline = RECTANGLE, id: str = "p0", **facts) -> Panel:
    return Panel(id=id, garment=facts.pop("garment", "shirt"), outline=outline, **facts)


def piece(outline: Outline, id: str = "side", **facts) -> Piece:
    return Piece(id=id, outline=outline, **facts)


def lying(
    piece_: Piece,
    panel_: Panel,
    x: float,
    y: float,
    *,
    copy: int = 0,
    turn: float = 0.0,
    mirrored: bool = False,
) -> Placement:
    """A placement worked out by complex numbers, apart from any code of the room."""
    place = []
    for px, py in piece_.outline:
        spot = complex(-px if mirrored else px, py) * _turn(turn) + complex(x, y)
        place.append((spot.real, spot.imag))
    return Placement(piece_.id, copy, panel_.id, mirrored, turn, (x, y), tuple(place))


def _turn(degrees: float) -> complex:
    quarter = {0.0: 1, 90.0: 1j, 180.0: -1, 270.0: -1j}
    if degrees in quarter:
        return complex(quarter[degrees])
    return cmath.exp(1j * math.radians(degrees))


def cut_up(seed: int, pieces: int, load: float, **rules) -> tuple[Problem, tuple[Placement, ...]]:
    """A problem made by cutting panels into pieces, and the lay it was made from (truth: covers).

    Panels are cut by straight lines; each part is taken in until the pieces fill ``load`` of the
    usable cloth and the gap between them is kept.
    """
    dice = random.Random(seed)
    clearance, edge = rules.get("clearance_mm", 2.0), rules.get("edge_margin_mm", 5.0)
    panels = [panel(SHIRT, "back", garment="a"), panel(RECTANGLE, "front", garment="b")]
    parts: list[tuple[Panel, Polygon]] = [
        (each, Polygon(each.outline).buffer(-edge - 0.05, join_style="mitre")) for each in panels
    ]
    while len(parts) < pieces:
        parts.sort(key=lambda each: -each[1].area)
        each, largest = parts.pop(0)
        parts += [(each, part) for part in _halved(largest, dice)]
    found, lay = [], []
    usable = sum(Polygon(each.outline).buffer(-edge).area for each in panels)
    for number, (each, part) in enumerate(parts):
        inner = part.buffer(-clearance / 2 - 0.05, join_style="mitre")
        wanted = (load * usable / sum(p.area for _, p in parts)) * part.area
        shape = _taken_in(inner, wanted)
        x, y = shape.centroid.x, shape.centroid.y
        is_mirrored = bool(rules.get("mirrored")) and number % 2 == 0
        ring = [(px - x, py - y) for px, py in shape.exterior.coords[:-1]]
        outline = tuple((-px if is_mirrored else px, py) for px, py in ring)
        made = piece(outline, f"piece {number}", mirrored=int(is_mirrored))
        found.append(made)
        lay.append(lying(made, each, x, y, mirrored=is_mirrored))
    one_way = bool(rules.get("one_way"))
    problem = Problem(
        tuple(replace(each, one_way=one_way) for each in panels),
        tuple(found),
        clearance_mm=clearance,
        edge_margin_mm=edge,
    )
    return problem, tuple(lay)


def _taken_in(shape: Polygon, area: float) -> Polygon:
    """The shape with its edge moved inwards until no more than the area is left."""
    low, high = 0.0, 200.0
    for _ in range(40):
        middle = (low + high) / 2
        if shape.buffer(-middle, join_style="mitre").area > area:
            low = middle
        else:
            high = middle
    inner = shape.buffer(-high, join_style="mitre").simplify(0.01)
    return max(getattr(inner, "geoms", [inner]), key=lambda part: part.area)


def _halved(shape: Polygon, dice: random.Random) -> list[Polygon]:
    left, low, right, high = shape.bounds
    for _ in itertools.count():
        share = dice.uniform(0.35, 0.65)
        lean = dice.uniform(-0.15, 0.15)
        if right - left > high - low:
            x = left + share * (right - left)
            line = LineString([(x - lean * 50, low - 9), (x + lean * 50, high + 9)])
        else:
            y = low + share * (high - low)
            line = LineString([(left - 9, y - lean * 50), (right + 9, y + lean * 50)])
        parts = [part for part in split(shape, line).geoms if isinstance(part, Polygon)]
        parts = [part for part in parts if part.area > 400]
        if len(parts) == 2:
            return parts
    raise AssertionError

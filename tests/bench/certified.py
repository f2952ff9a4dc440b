"""Problems whose answer is certain, made by cutting garment-like panels into pieces.

The truth is *covers*: the lay that the cloth was cut into comes with each problem and is verified
where it is made. The load is the area of the pieces at their cut lines, as a share of the cloth
inside the margins and clear of flaws; the gaps come on top. It is reached in two ways: pieces are
taken in all round, or parts of the panels are left out as well (`spare`). Lengths in mm.
"""

import itertools
import math
import random
from collections.abc import Iterator
from dataclasses import dataclass, replace

from shapely import LineString, Polygon, affinity, get_coordinates
from shapely.geometry.base import BaseGeometry
from shapely.ops import split

from inventory.measuring.shapes import outline_from
from planning.coverage.problem import (
    Match,
    Outline,
    Panel,
    Piece,
    Pin,
    Placement,
    Problem,
    Repeat,
    Spot,
)
from planning.coverage.verify import faults_of
from tests.planning.coverage.samples import lying

ROUNDING_MM = 0.02
EDGE_MM, FLAW_MM, GAP_MM = 5.0, 3.0, 2.0  # the margins a problem has where none are named
HALF_MM = GAP_MM / 2 + ROUNDING_MM
STRIPE_MM = 60.0
SHAPES: dict[str, dict[str, float]] = {
    "shirt-body": {
        "chest_width": 560,
        "hem_width": 540,
        "shoulder_width": 450,
        "length": 740,
        "armhole_depth": 240,
        "neck_width": 180,
        "neck_depth": 80,
    },
    "sleeve": {"top_width": 430, "cuff_width": 260, "length": 600, "cap_height": 120},
    "trouser-leg": {
        "waist_width": 240,
        "hip_width": 310,
        "hem_width": 230,
        "rise": 270,
        "length": 1000,
        "crotch_extension": 60,
    },
    "skirt-gore": {"waist_width": 180, "hem_width": 360, "length": 620},
    "trapezium": {"top_width": 300, "bottom_width": 420, "length": 560},
    "rectangle": {"width": 400, "length": 600},
}


@dataclass(frozen=True, slots=True)
class Ways:
    """What makes a problem other than the plain one."""

    curved: float = 0.0  # share of the cuts that are curved
    spare: bool = False
    flaws: int = 0  # on each panel
    mirrored: bool = False
    one_way: bool = False
    listed: float = 0.0  # share of the pieces bound to the garment they were cut from
    stripes: int = 0  # pairs of pieces whose stripes meet
    pins: int = 0


@dataclass(frozen=True, slots=True)
class Certified:
    """A problem and a lay that keeps all its rules."""

    name: str
    problem: Problem
    lay: tuple[Placement, ...]
    load: float


@dataclass(frozen=True, slots=True)
class Part:
    """A part of a panel, with its half of the gap still on it."""

    panel: int
    shape: Polygon


PLAIN = Ways()


def cut_from_cloth(
    seed: int, pieces: int, load: float, panels: int = 2, ways: Ways = PLAIN
) -> Certified:
    """The problem of one seed; the same seed gives the same problem."""
    dice = random.Random(seed)
    cloth = [_panel(number, dice, ways) for number in range(panels)]
    parts = _parted(cloth, max(pieces, int(pieces / load)) if ways.spare else pieces, ways, dice)
    dice.shuffle(parts)
    cloth, parts = _flawed(cloth, parts[:pieces], ways, dice)
    usable = sum(_usable(panel).area for panel in cloth)
    share = min(1.0, load * usable / sum(_piece_shape(part.shape).area for part in parts))
    made = [
        _made(number, cloth[part.panel], _taken_in(_piece_shape(part.shape), share), ways, dice)
        for number, part in enumerate(parts)
    ]
    lay = tuple(placement for _, placement in made)
    problem = Problem(tuple(cloth), tuple(piece for piece, _ in made))
    problem = _striped(problem, lay, ways, dice)
    problem = replace(problem, pin=tuple(_pin(place, dice) for place in lay[: ways.pins]))
    for fault in faults_of(problem, lay):
        raise AssertionError(f"seed {seed}: {fault.text}")
    real = sum(Polygon(piece.outline).area for piece, _ in made) / usable
    return Certified(f"seed {seed}: {pieces} pieces, {panels} panels", problem, lay, real)


def _panel(number: int, dice: random.Random, ways: Ways) -> Panel:
    shape = dice.choice(sorted(SHAPES))
    measures = {key: round(mm * dice.uniform(0.9, 1.1)) for key, mm in SHAPES[shape].items()}
    return Panel(
        f"panel {number}",
        f"garment {number}",
        outline_from(shape, measures),
        one_way=ways.one_way,
        repeat=Repeat(STRIPE_MM, None, (0.0, 0.0)) if ways.stripes else None,
    )


def _usable(panel: Panel) -> BaseGeometry:
    cloth: BaseGeometry = Polygon(panel.outline).buffer(-EDGE_MM)
    for flaw in panel.flaws:
        cloth = cloth.difference(Polygon(flaw).buffer(FLAW_MM))
    return cloth


def _piece_shape(part: Polygon) -> Polygon:
    """The part less its half of the gap."""
    return max(_polygons(part.buffer(-HALF_MM, join_style="mitre")), key=lambda p: p.area)


def _parted(cloth: list[Panel], wanted: int, ways: Ways, dice: random.Random) -> list[Part]:
    """The panels inside their margins, the largest part cut across again and again."""
    out = HALF_MM - EDGE_MM - ROUNDING_MM
    parts = [
        Part(number, Polygon(panel.outline).buffer(out, join_style="mitre"))
        for number, panel in enumerate(cloth)
    ]
    while len(parts) < wanted:
        parts.sort(key=lambda part: -part.shape.area)
        largest = parts.pop(0)
        parts += [Part(largest.panel, half) for half in _halved(largest.shape, ways, dice)]
    return parts


def _halved(shape: Polygon, ways: Ways, dice: random.Random) -> list[Polygon]:
    """The shape cut in two, across its longer side, by a line or a shallow bow."""
    ring = [(float(x), float(y)) for x, y in get_coordinates(shape.minimum_rotated_rectangle)]
    sides = sorted((math.dist(a, b), a, b) for a, b in itertools.pairwise(ring[:3]))
    wide, (_, a, b) = sides[0][0], sides[1]
    along = math.atan2(b[1] - a[1], b[0] - a[0])
    middle = ((ring[0][0] + ring[2][0]) / 2, (ring[0][1] + ring[2][1]) / 2)
    while True:
        off = dice.uniform(-0.15, 0.15) * sides[1][0]
        at = (middle[0] + off * math.cos(along), middle[1] + off * math.sin(along))
        bow = dice.uniform(-0.2, 0.2) * wide if dice.random() < ways.curved else 0.0
        turn = along + math.pi / 2 + math.radians(dice.uniform(-12, 12))
        halves = list(_polygons(split(shape, _cut(at, turn, wide, bow))))
        if len(halves) == 2 and all(_is_worth_it(half, shape) for half in halves):
            return halves


def _is_worth_it(half: Polygon, shape: Polygon) -> bool:
    """Whether a half is one piece still when its part of the gap is taken off, and not small."""
    kept = list(_polygons(half.buffer(-HALF_MM - 8, join_style="mitre")))
    return len(kept) == 1 and half.area > 0.25 * shape.area


def _cut(at: tuple[float, float], turn: float, wide: float, bow: float) -> LineString:
    """A line through a point, `bow` off it there and bending back over the width of the shape."""
    cos, sin = math.cos(turn), math.sin(turn)
    steps = range(-16, 17) if bow else (-16, 16)
    spots = [(step / 8 * wide, bow * (1 - (step / 8) ** 2)) for step in steps]
    return LineString([(at[0] + u * cos - v * sin, at[1] + u * sin + v * cos) for u, v in spots])


def _flawed(
    cloth: list[Panel], parts: list[Part], ways: Ways, dice: random.Random
) -> tuple[list[Panel], list[Part]]:
    """Flaws that bite into corners of the parts, and the parts less what they bite off."""
    for number, panel in enumerate(cloth):
        own = [part for part in parts if part.panel == number]
        for _ in range(ways.flaws if own else 0):
            x, y, *_ = dice.choice(list(dice.choice(own).shape.exterior.coords))
            spot = affinity.translate(_round(dice.uniform(5, 14)), x, y)
            bitten = spot.buffer(FLAW_MM + ROUNDING_MM - HALF_MM)
            rest = [
                Part(
                    part.panel, max(_polygons(part.shape.difference(bitten)), key=lambda p: p.area)
                )
                if part.panel == number
                else part
                for part in parts
            ]
            if all(not part.shape.interiors for part in rest):
                parts = rest
                panel = replace(panel, flaws=(*panel.flaws, _ring(spot)))
        cloth[number] = panel
    return cloth, parts


def _round(radius_mm: float) -> Polygon:
    turns = [2 * math.pi * step / 12 for step in range(12)]
    return Polygon([(radius_mm * math.cos(t), radius_mm * math.sin(t)) for t in turns])


def _taken_in(shape: Polygon, share: float) -> Polygon:
    """The shape with its edge moved inwards until no more than that share of it is left."""
    low, high = 0.0, 100.0
    for _ in range(30):
        middle = (low + high) / 2
        if shape.buffer(-middle, join_style="mitre").area > share * shape.area:
            low = middle
        else:
            high = middle
    inner = shape.buffer(-high, join_style="mitre") if share < 1.0 else shape
    return max(_polygons(inner.simplify(0.01)), key=lambda part: part.area)


def _made(
    number: int, panel: Panel, shape: Polygon, ways: Ways, dice: random.Random
) -> tuple[Piece, Placement]:
    """The piece of a shape in a frame of its own, and where it lies."""
    middle = shape.centroid
    turn = dice.choice((0.0, 90.0, 180.0, 270.0))
    is_mirrored = ways.mirrored and number % 2 == 0
    own = affinity.rotate(affinity.translate(shape, -middle.x, -middle.y), -turn, origin=(0, 0))
    if is_mirrored:
        own = affinity.scale(own, -1, 1, origin=(0, 0))
    grain = 90.0 - turn
    piece = Piece(
        f"piece {number}",
        _ring(own),
        grain_deg=(180.0 - grain if is_mirrored else grain) % 360,
        mirrored=int(is_mirrored),
        garments=(panel.garment,) if dice.random() < ways.listed else None,
    )
    return piece, lying(piece, panel, middle.x, middle.y, turn=turn, mirrored=is_mirrored)


def _striped(
    problem: Problem, lay: tuple[Placement, ...], ways: Ways, dice: random.Random
) -> Problem:
    """Pairs of pieces with a spot on each that lies at the same place of the stripe."""
    order = list(lay)
    dice.shuffle(order)
    pairs = [_meeting(a, b) for a, b in zip(order[::2], order[1::2], strict=False)]
    return replace(problem, match=tuple(pairs[: ways.stripes]))


def _meeting(a: Placement, b: Placement) -> Match:
    (_, ay), (bx, by) = a.translation, b.translation
    rise = (ay - by + STRIPE_MM / 2) % STRIPE_MM - STRIPE_MM / 2
    return Match(
        Spot(a.piece, a.copy, (0.0, 0.0)), Spot(b.piece, b.copy, _on_piece(b, bx, by + rise))
    )


def _pin(place: Placement, dice: random.Random) -> Pin:
    x, y = place.translation
    landed = (x + dice.uniform(-3, 3), y + dice.uniform(-3, 3))
    return Pin(place.piece, place.copy, place.panel, (0.0, 0.0), landed)


def _on_piece(place: Placement, x: float, y: float) -> tuple[float, float]:
    """The spot of a laid piece that lies on this point of its panel, in the piece's own frame."""
    turn = math.radians(-place.rotation_deg)
    dx, dy = x - place.translation[0], y - place.translation[1]
    u, v = dx * math.cos(turn) - dy * math.sin(turn), dx * math.sin(turn) + dy * math.cos(turn)
    return (-u if place.mirrored else u, v)


def _ring(shape: Polygon) -> Outline:
    return tuple((float(x), float(y)) for x, y, *_ in shape.exterior.coords[:-1])


def _polygons(shape: BaseGeometry) -> Iterator[Polygon]:
    for part in getattr(shape, "geoms", [shape]):
        if isinstance(part, Polygon) and not part.is_empty:
            yield part

"""One pattern piece as geometry for a page: path data and positions in millimetres, y downwards.

The page gives colours and words; nothing here carries style. The grain arrow points along
``grain_deg``, as arrows on panels do, so that on cloth with a pile both arrows point the same way.
"""

import math
from dataclasses import dataclass

from shapely import LineString, MultiLineString, Point, Polygon
from shapely.geometry.base import BaseGeometry

from planning.drafting.pieces import DraftPiece, Notch
from planning.drafting.rings import Point as Place
from planning.drafting.svg_paths import path_data, view_box

MARGIN_MM = 4.0
LEAST_TICK_MM = 3.0
DOUBLE_GAP_MM = 3.0
GRAIN_SHARE = 0.6  # of the piece's length along the grain
HEAD_SHARE = 0.08  # of the arrow: its head


@dataclass(frozen=True)
class Spot:
    """A named position on the drawing, y downwards."""

    name: str
    x: float
    y: float


@dataclass(frozen=True)
class PieceDrawing:
    """Everything a page needs to draw a piece to scale; ``view_box`` counts millimetres."""

    view_box: str
    width_mm: float
    height_mm: float
    cut_path: str
    seam_path: str
    opening_path: str
    grain_path: str
    notch_path: str
    line_paths: tuple[tuple[str, str], ...]
    marks: tuple[Spot, ...]
    edge_labels: tuple[Spot, ...]
    middle: Spot

    @property
    def dot_mm(self) -> float:
        """The radius of a dot that is easy to see and hides little, whatever the size."""
        return max(self.width_mm, self.height_mm) / 130

    @property
    def text_mm(self) -> float:
        """The height of letters that can be read on a phone when the piece fills its width."""
        return max(self.width_mm, self.height_mm) / 32


def drawing_of(piece: DraftPiece) -> PieceDrawing:
    """Return the drawing of one piece, its cutting line inside the viewBox with a small margin."""
    box = view_box(piece.cut_line, MARGIN_MM)
    wide, tall = (float(number) for number in box.split()[2:])
    inside = Polygon(piece.seam_line).representative_point()
    return PieceDrawing(
        view_box=box,
        width_mm=wide,
        height_mm=tall,
        cut_path=path_data(piece.cut_line, closed=True),
        seam_path=path_data(piece.seam_line, closed=True),
        opening_path=path_data(piece.points_of(piece.opening)) if piece.opening else "",
        grain_path=_grain_path(piece),
        notch_path=" ".join(_ticks(piece, notch) for notch in piece.notches),
        line_paths=tuple((line.name, path_data(line.points)) for line in piece.lines),
        marks=tuple(Spot(mark.name, mark.at[0], -mark.at[1]) for mark in piece.marks),
        edge_labels=tuple(_edge_label(piece, index) for index in range(len(piece.edges))),
        middle=Spot(piece.name, round(inside.x, 2), round(-inside.y, 2)),
    )


def _edge_label(piece: DraftPiece, index: int) -> Spot:
    edge = piece.edges[index]
    half = LineString(piece.points_of(edge)).interpolate(0.5, normalized=True)
    return Spot(edge.name, round(half.x, 2), round(-half.y, 2))


def _grain_path(piece: DraftPiece) -> str:
    """An arrow along the grain through the widest inside of the piece, with an open head."""
    shape = Polygon(piece.seam_line)
    middle = shape.centroid if shape.contains(shape.centroid) else shape.representative_point()
    heading = math.radians(piece.grain_deg)
    ux, uy = math.cos(heading), math.sin(heading)
    reach = shape.length
    ray = LineString(
        [
            (middle.x - reach * ux, middle.y - reach * uy),
            (middle.x + reach * ux, middle.y + reach * uy),
        ]
    )
    inside = _part_through(shape.intersection(ray), middle)
    start = inside.interpolate((1 - GRAIN_SHARE) / 2, normalized=True)
    end = inside.interpolate((1 + GRAIN_SHARE) / 2, normalized=True)
    head_mm = HEAD_SHARE * start.distance(end)
    barbs = [
        (end.x - head_mm * (ux + side * uy / 2), end.y - head_mm * (uy - side * ux / 2))
        for side in (1, -1)
    ]
    shaft = path_data([(start.x, start.y), (end.x, end.y)])
    return f"{shaft} {path_data([barbs[0], (end.x, end.y), barbs[1]])}"


def _part_through(cut: BaseGeometry, middle: Point) -> BaseGeometry:
    parts = cut.geoms if isinstance(cut, MultiLineString) else [cut]
    return min(parts, key=lambda part: float(part.distance(middle)))


def _ticks(piece: DraftPiece, notch: Notch) -> str:
    """One tick from the seam line to the cutting line, or two side by side."""
    along, outward = _directions(piece, notch.at)
    gap = Polygon(piece.cut_line).exterior.distance(Point(notch.at))
    long = max(gap, LEAST_TICK_MM)
    shifts = (-DOUBLE_GAP_MM / 2, DOUBLE_GAP_MM / 2) if notch.is_double else (0.0,)
    feet = [(notch.at[0] + s * along[0], notch.at[1] + s * along[1]) for s in shifts]
    return " ".join(
        path_data([(x, y), (x + long * outward[0], y + long * outward[1])]) for x, y in feet
    )


def _directions(piece: DraftPiece, at: Place) -> tuple[Place, Place]:
    """Return the unit headings along the seam line at a place and outward from it."""
    ring = piece.seam_line
    index = min(range(len(ring)), key=lambda i: math.dist(ring[i], at))
    before, after = ring[index - 1], ring[(index + 1) % len(ring)]
    span = math.dist(before, after)
    along = ((after[0] - before[0]) / span, (after[1] - before[1]) / span)
    return along, (along[1], -along[0])

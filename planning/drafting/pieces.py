"""What a pattern is once drafted: pieces, sizes and the names of their places, in millimetres.

Rings are anticlockwise, not closed, y upwards, seen on the right side of the cloth. The seam line
is what is sewn and graded; the cutting line lies outside it by the seam allowance. Nothing here
draws or decides anything.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from planning.drafting.errors import SeamNameError
from planning.drafting.rings import Point, Ring, length_mm
from planning.drafting.sewing import Part, Seam

DETAIL_PLACE = "detail place"  # the mark of a place for a pocket, a badge or a monogram
EYE = "eye"  # the mark that says a piece belongs to a face


@dataclass(frozen=True)
class Edge:
    """A named stretch of the seam line, from one vertex forward (anticlockwise) to another."""

    name: str
    start: int
    end: int


@dataclass(frozen=True)
class Notch:
    """A place on the seam line that meets the notch of the same name on the other piece."""

    name: str
    at: Point
    is_double: bool = False


@dataclass(frozen=True)
class Mark:
    """A named point inside a piece: an eye, the nose, the place of a joint."""

    name: str
    at: Point


@dataclass(frozen=True)
class PlacementLine:
    """A named line inside a piece that another piece is sewn to, such as the foot of an ear."""

    name: str
    points: tuple[Point, ...]


@dataclass(frozen=True)
class DraftPiece:
    """One pattern piece; ``count`` copies in all, the last ``mirrored`` of them cut mirror-image.

    ``grain_deg`` is the way the lengthwise grain runs on the piece, anticlockwise from +x; a pile
    strokes down against it. ``opening`` is the stretch left unsewn for turning and stuffing.
    """

    name: str
    seam_line: Ring
    cut_line: Ring
    count: int
    mirrored: int
    grain_deg: float
    notches: tuple[Notch, ...] = ()
    marks: tuple[Mark, ...] = ()
    lines: tuple[PlacementLine, ...] = ()
    edges: tuple[Edge, ...] = ()
    opening: Edge | None = None
    labels: tuple[str, ...] = ()

    def points_of(self, edge: Edge) -> tuple[Point, ...]:
        """Return the vertices of one edge, both ends included."""
        if edge.start < edge.end:
            return self.seam_line[edge.start : edge.end + 1]
        return self.seam_line[edge.start :] + self.seam_line[: edge.end + 1]

    def stretch(self, name: str) -> tuple[Point, ...]:
        """Return the points of the edge or placement line called ``name``.

        Raises SeamNameError when the piece has neither.
        """
        for edge in self.edges:
            if edge.name == name:
                return self.points_of(edge)
        for line in self.lines:
            if line.name == name:
                return line.points
        raise SeamNameError(f"The piece “{self.name}” has no edge or line called “{name}”.")

    def stretch_mm(self, name: str) -> float:
        """Return the length of an edge or placement line, measured along it."""
        return length_mm(self.stretch(name))


@dataclass(frozen=True)
class DraftSize:
    """All pieces of one finished size. ``notes`` say what a maker should know of this size.

    ``width_mm`` is the finished width, where it is known.
    """

    name: str
    height_mm: float
    pieces: tuple[DraftPiece, ...]
    seam_allowance_mm: float
    width_mm: float | None = None
    notes: tuple[str, ...] = ()

    def __iter__(self) -> Iterator[DraftPiece]:
        return iter(self.pieces)

    def piece(self, name: str) -> DraftPiece:
        """Return the piece called ``name``; raises SeamNameError when there is none."""
        for piece in self.pieces:
            if piece.name == name:
                return piece
        raise SeamNameError(f"No piece of this size is called “{name}”.")


@dataclass(frozen=True)
class DraftPattern:
    """A pattern with its sizes, smallest first; its seams and parts hold for all of them."""

    key: str
    name: str
    description: str
    sizes: tuple[DraftSize, ...]
    seams: tuple[Seam, ...] = ()
    parts: tuple[Part, ...] = ()

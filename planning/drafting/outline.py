"""Putting a piece together: edges drawn one after another become a ring with named stretches.

Each edge starts where the one before it ended. A notch is put where two edges of one curve meet, so
that the stretches between notches can be walked one by one.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from planning.drafting.allowance import cut_line_of
from planning.drafting.curves import Line
from planning.drafting.pieces import DraftPiece, Edge, Mark, Notch, PlacementLine
from planning.drafting.rings import Point, Ring, length_mm, point_along

ROUNDED = 4  # decimals of a millimetre kept


@dataclass(frozen=True)
class Drawn:
    """One edge as drawn, and the notch at its end if there is one."""

    name: str
    line: Line
    notch: str = ""
    is_double: bool = False


@dataclass(frozen=True)
class Making:
    """What a piece is besides its outline."""

    name: str
    count: int
    mirrored: int
    grain_deg: float = 90.0
    opening: str = ""
    marks: tuple[Mark, ...] = ()
    lines: tuple[PlacementLine, ...] = ()


def split_line(line: Line, *at_mm: float) -> list[Line]:
    """Cut a line at distances along it, smallest first; parts share their cut points.

    >>> split_line([(0.0, 0.0), (4.0, 0.0)], 1.0)
    [[(0.0, 0.0), (1.0, 0.0)], [(1.0, 0.0), (4.0, 0.0)]]
    """
    parts: list[Line] = []
    rest, gone_mm = line, 0.0
    for cut_mm in at_mm:
        head, rest = _cut(rest, cut_mm - gone_mm)
        gone_mm = cut_mm
        parts.append(head)
    return [*parts, rest]


def _cut(line: Line, at_mm: float) -> tuple[Line, Line]:
    cut = point_along(line, at_mm)
    head, walked_mm = [line[0]], 0.0
    for index in range(1, len(line)):
        walked_mm += length_mm(line[index - 1 : index + 1])
        if walked_mm >= at_mm:
            break
        head.append(line[index])
    tail = [point for point in line[len(head) :] if point != cut]
    return [*head, cut], [cut, *tail]


def made(drawn: Sequence[Drawn], making: Making, allowance_mm: float) -> DraftPiece:
    """Return the piece whose seam line is the edges of ``drawn`` in order, anticlockwise."""
    ring: list[Point] = []
    spans: list[tuple[Drawn, int]] = []
    for edge in drawn:
        spans.append((edge, len(ring)))
        ring += edge.line[:-1]
    seam_line = tuple(_rounded(point) for point in ring)
    starts = [start for _, start in spans]
    ends = [*starts[1:], 0]
    edges = tuple(
        Edge(edge.name, start, end) for (edge, start), end in zip(spans, ends, strict=True)
    )
    return DraftPiece(
        name=making.name,
        seam_line=seam_line,
        cut_line=_rounded_ring(cut_line_of(seam_line, allowance_mm)),
        count=making.count,
        mirrored=making.mirrored,
        grain_deg=making.grain_deg,
        notches=tuple(
            Notch(edge.notch, seam_line[end], edge.is_double)
            for (edge, _), end in zip(spans, ends, strict=True)
            if edge.notch
        ),
        marks=making.marks,
        lines=making.lines,
        edges=edges,
        opening=next((edge for edge in edges if edge.name == making.opening), None),
        labels=(_cutting_words(making),),
    )


def _cutting_words(making: Making) -> str:
    plain = making.count - making.mirrored
    if not making.mirrored:
        return f"Cut {making.count}."
    return f"Cut {making.count}: {plain} as drawn, {making.mirrored} turned over."


def _rounded(point: Point) -> Point:
    return (round(point[0], ROUNDED), round(point[1], ROUNDED))


def _rounded_ring(ring: Ring) -> Ring:
    return tuple(_rounded(point) for point in ring)

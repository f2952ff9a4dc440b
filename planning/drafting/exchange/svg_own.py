"""Reading back a piece that this program wrote: a group marked ``data-piece``.

The group's attributes say what no drawing can: the name, how many to cut, the named edges. Where
the lines are is read from the lines themselves, so a piece that was moved, turned or turned over in
a drawing program is still right. Coordinates count from the group's own origin.
"""

import json
import math
from collections.abc import Iterable
from xml.etree.ElementTree import Element

from planning.drafting.exchange.chains import closed_ring, heading_deg
from planning.drafting.exchange.checked import clean_name, refuse_unsound
from planning.drafting.exchange.found import FoundPiece, PatternFileError
from planning.drafting.exchange.svg_safety import local
from planning.drafting.exchange.svg_shapes import (
    SHAPES,
    Affine,
    Stroke,
    affine_of,
    joined,
    moved,
    strokes_of,
)
from planning.drafting.exchange.svg_walk import Shown
from planning.drafting.pieces import Edge, Mark, Notch, PlacementLine
from planning.drafting.rings import Ring

MOST_COPIES = 999
TURNED_DEG = 0.1  # the arrow was turned against what the attribute says
TURNED_OVER = "The piece was turned over in the drawing, so its named edges were left out."


def own_piece(shown: Shown) -> FoundPiece:
    """Return the piece of one group; raises PatternFileError when a part of it is missing."""
    group = shown.element
    name = clean_name(group.get("data-piece", "")) or "piece"
    place = f"the piece “{name}”"
    parts = _Parts(group, shown.to_mm, place)
    cut, is_turned = parts.ring("cut")
    seam, _ = parts.ring("seam")
    for ring in (cut, seam):
        refuse_unsound(ring, place)
    edges = () if is_turned else _edges(group, len(seam), place)
    count, mirrored = (_number(group, key, place) for key in ("data-count", "data-mirrored"))
    if not (1 <= count <= MOST_COPIES and 0 <= mirrored <= count):
        raise PatternFileError(f"How many to cut of {place} is not between 1 and {MOST_COPIES}.")
    return FoundPiece(
        name=name,
        size=clean_name(group.get("data-size", "")),
        outline=cut,
        line="cut",
        seam_line=seam,
        count=count,
        mirrored=mirrored,
        grain_deg=parts.grain_deg(),
        has_grain=True,
        notches=tuple(parts.notches()),
        marks=tuple(parts.marks()),
        lines=tuple(parts.lines()),
        notes=(TURNED_OVER,) if is_turned else (),
        edges=edges,
        opening=next((e for e in edges if e.name == group.get("data-opening")), None),
    )


class _Parts:
    """The marked children of a group, their points in millimetres from the group's origin."""

    def __init__(self, group: Element, to_mm: Affine, place: str) -> None:
        self.group, self.place = group, place
        a, b, c, d, *_ = to_mm
        self.turn: Affine = (a, b, c, d, 0.0, 0.0)
        self.parts = [part for part in group if local(part.tag) in SHAPES]

    def ring(self, line: str) -> tuple[Ring, bool]:
        strokes = [s for part in self._marked("data-line", line) for s in self._strokes(part)]
        closed = closed_ring(strokes[0].points, strokes[0].is_closed) if strokes else None
        if closed is None:
            raise PatternFileError(f"The {line} line of {self.place} is missing or open.")
        return closed.ring, closed.was_clockwise

    def notches(self) -> Iterable[Notch]:
        for part in self._marked("data-notch"):
            feet = [stroke.points[0] for stroke in self._strokes(part)]
            if feet:
                at = (sum(x for x, _ in feet) / len(feet), sum(y for _, y in feet) / len(feet))
                yield Notch(clean_name(part.get("data-notch", "")), at, len(feet) > 1)

    def marks(self) -> Iterable[Mark]:
        for part in self._marked("data-mark"):
            centre = (self._coordinate(part, "cx"), self._coordinate(part, "cy"))
            yield Mark(
                clean_name(part.get("data-mark", "")), moved([centre], self._affine(part))[0]
            )

    def lines(self) -> Iterable[PlacementLine]:
        for part in self._marked("data-placement"):
            for stroke in self._strokes(part):
                name = clean_name(part.get("data-placement", ""))
                yield PlacementLine(name, tuple(stroke.points))

    def grain_deg(self) -> float:
        """The way of the drawn arrow; to the last digit as written if it was not turned."""
        shafts = [s for part in self._marked("data-line", "grain") for s in self._strokes(part)]
        if not shafts:
            raise PatternFileError(f"The grain line of {self.place} is missing.")
        drawn = heading_deg(shafts[0].points[0], shafts[0].points[-1])
        said = _float(self.group.get("data-grain-deg", ""))
        is_turned = abs((drawn - said + 180) % 360 - 180) > TURNED_DEG
        return drawn if is_turned or math.isnan(said) else said

    def _marked(self, key: str, value: str | None = None) -> list[Element]:
        return [p for p in self.parts if p.get(key) is not None and value in (None, p.get(key))]

    def _strokes(self, part: Element) -> list[Stroke]:
        return strokes_of(part, self._affine(part), self.place)

    def _affine(self, part: Element) -> Affine:
        return joined(self.turn, affine_of(part.get("transform", ""), self.place))

    def _coordinate(self, part: Element, name: str) -> float:
        number = _float(part.get(name, ""))
        if not math.isfinite(number):
            raise PatternFileError(f"A mark of {self.place} has no place.")
        return number


def _edges(group: Element, corners: int, place: str) -> tuple[Edge, ...]:
    try:
        rows = json.loads(group.get("data-edges", "[]"))
        edges = tuple(Edge(clean_name(name), int(start), int(end)) for name, start, end in rows)
    except (ValueError, TypeError, AttributeError, RecursionError, OverflowError) as error:
        raise PatternFileError(f"The named edges of {place} cannot be read.") from error
    if not all(0 <= edge.start < corners and 0 <= edge.end < corners for edge in edges):
        return ()  # the seam line was redrawn
    return edges


def _number(group: Element, key: str, place: str) -> int:
    text = group.get(key, "")
    if not (text.isascii() and text.isdigit() and len(text) < 6):
        raise PatternFileError(f"“{text[:20]}” is no number of copies, in {place}.")
    return int(text)


def _float(text: str) -> float:
    try:
        return float(text)
    except ValueError:
        return math.nan

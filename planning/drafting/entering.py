"""From what a maker typed to a pattern piece: fold, pen, allowance, in that order.

The order matters. A half is mirrored first, because its fold edge has neither allowance nor pen.
A traced line runs outside its template by a stated amount, so it is taken in by that much before
anything else is read from it. Then the line is either what is sewn, or what is cut.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from shapely import Polygon
from shapely.validation import explain_validity

from planning.drafting.folding import unfolded
from planning.drafting.moving_in import moved_in
from planning.drafting.outline import Drawn, Making, made
from planning.drafting.pieces import DraftPiece
from planning.drafting.rings import Ring, signed_area_mm2
from planning.drafting.tracing import LARGEST_MM, Side
from shared.errors import OutlineError

LEAST_AREA_MM2 = 100.0  # a square of one centimetre: nothing smaller is a piece of a keepsake


@dataclass(frozen=True)
class Entry:
    """One piece as entered. ``fold`` is the number of the edge on the fold, from 0.

    ``outside_mm`` is how far the entered line runs outside the template; ``has_allowance`` says
    that the line is cut along, not sewn along.
    """

    sides: tuple[Side, ...]
    making: Making
    fold: int | None = None
    outside_mm: float = 0.0
    has_allowance: bool = False


def entered(entry: Entry, allowance_mm: float) -> DraftPiece:
    """Return the piece; raises OutlineError with the place where it is no piece.

    >>> from planning.drafting.basic_shapes import basic_sides
    >>> sides = basic_sides("rectangle", {"width": 40, "length": 60})
    >>> piece = entered(Entry(sides, Making("patch", 1, 0), has_allowance=True), 6.0)
    >>> piece.stretch_mm("bottom")
    28.0
    """
    sides = tuple(entry.sides)
    if entry.fold is not None:
        sides = unfolded(sides, entry.fold)
    checked(sides)
    sides = moved_in(_anticlockwise(sides), entry.outside_mm)
    if not entry.has_allowance:
        return made(_drawn(sides), entry.making, allowance_mm)
    sewn = moved_in(sides, allowance_mm)
    cut_line = ring_of(sides)
    checked(sewn)
    return replace(made(_drawn(sewn), entry.making, 0.0), cut_line=cut_line)


def ring_of(sides: Sequence[Side]) -> Ring:
    """Return the ring that the edges make, each edge's last point left to the next."""
    return tuple((x, y) for side in sides for x, y in side.line[:-1])


def checked(sides: Sequence[Side]) -> None:
    """Raise OutlineError unless the edges make one simple ring of a sensible size."""
    ring = ring_of(sides)
    if len(set(ring)) < 3:
        raise OutlineError("An outline needs at least three corners.")
    shape = Polygon(ring)
    if not shape.is_valid:
        raise OutlineError(f"The outline crosses or touches itself{_where(shape)}.")
    if shape.area < LEAST_AREA_MM2:
        raise OutlineError("The outline has next to no area. Check the corners and the unit.")
    left, low, right, high = shape.bounds
    if max(right - left, high - low) > LARGEST_MM:
        raise OutlineError(f"A piece may be {LARGEST_MM / 10:g} cm long at most. Check the unit.")


def _where(shape: Polygon) -> str:
    found = explain_validity(shape).partition("[")[2].rstrip("]").split()
    if len(found) != 2:
        return ""
    return f" near {float(found[0]) / 10:.1f} cm across, {float(found[1]) / 10:.1f} cm up"


def _anticlockwise(sides: tuple[Side, ...]) -> tuple[Side, ...]:
    if signed_area_mm2(ring_of(sides)) > 0:
        return sides
    return tuple(Side(side.name, side.line[::-1]) for side in reversed(sides))


def _drawn(sides: Sequence[Side]) -> list[Drawn]:
    return [Drawn(side.name, list(side.line)) for side in sides]

"""Left and right hands: pieces that are not their own mirror image, cut all facing one way.

A pair of such pieces needs one copy turned over. A piece is looked at as it lies on the cloth, its
grain kept: it may be turned half round, never a quarter.
"""

from collections.abc import Collection, Iterable
from dataclasses import dataclass

from shapely import LinearRing, Polygon

from planning.drafting.pieces import DraftPiece
from planning.drafting.rings import Ring, bounds_mm, mirrored
from planning.drafting.shapes import moved

ALIKE_MM = 1.0
STEP_MM = 2.0  # between the places at which two cutting lines are compared
GAP_SHARE = 0.15  # of the width of a piece: the room between two copies in a picture


@dataclass(frozen=True)
class HandFault:
    """A handed piece whose ``count`` copies all face one way."""

    piece: str
    count: int
    text: str


def is_handed(piece: DraftPiece) -> bool:
    """Say whether turning the piece over gives another shape than turning it half round or not.

    Compared with its grain upright, centre on centre, within a Hausdorff distance of 1 mm.
    """
    upright = tuple(moved(list(piece.cut_line), (0.0, 0.0), 90 - piece.grain_deg))
    own = _centred(upright)
    others = (_centred(mirrored(upright), turn) for turn in (0, 180))
    return all(own.hausdorff_distance(other) > ALIKE_MM for other in others)


def hand_faults(
    pieces: Iterable[DraftPiece], same_hand: Collection[str] = ()
) -> tuple[HandFault, ...]:
    """Return a fault for each handed piece of several copies that all face one way.

    Pieces named in ``same_hand`` are meant to: the sections of a ball, for instance.
    """
    return tuple(
        HandFault(piece.name, piece.count, _text(piece))
        for piece in pieces
        if piece.count > 1 and piece.mirrored in (0, piece.count)
        if piece.name not in same_hand and is_handed(piece)
    )


def hand_picture(piece: DraftPiece) -> tuple[tuple[Ring, ...], tuple[Ring, ...]]:
    """Return two cutting lines that both face the way they are cut, and two that make a pair.

    Side by side from (0, 0) to the right and up, with a gap.
    """
    plain, turned = piece.cut_line, mirrored(piece.cut_line)
    as_cut = turned if piece.mirrored == piece.count else plain
    return _side_by_side(as_cut, as_cut), _side_by_side(plain, turned)


def _text(piece: DraftPiece) -> str:
    return (
        f"All {piece.count} copies of “{piece.name}” face the same way, and it has a left and a "
        f"right. Cut {piece.count // 2} of them turned over, or say that they are meant alike."
    )


def _centred(ring: Ring, turn_deg: float = 0.0) -> LinearRing:
    middle = Polygon(ring).centroid
    around = moved(list(ring), (0.0, 0.0), turn_deg, about=(middle.x, middle.y))
    return LinearRing(around).segmentize(STEP_MM)


def _side_by_side(first: Ring, second: Ring) -> tuple[Ring, Ring]:
    left, _, right, _ = bounds_mm(first)
    wide = right - left
    return _at(first, 0.0), _at(second, wide * (1 + GAP_SHARE))


def _at(ring: Ring, x_mm: float) -> Ring:
    left, low, _, _ = bounds_mm(ring)
    return tuple((x - left + x_mm, y - low) for x, y in ring)

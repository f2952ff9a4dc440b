"""Left and right: which pieces have a hand, and whether their copies would all face one way.

A piece has a hand unless, turned over, it can lie on the cloth as it did before with its grain
still along the grain. Two left arms are the mistake this module is for.
"""

from shapely import Polygon
from shapely.affinity import rotate, scale, translate

from planning.drafting.pieces import DraftPiece

SAME_MM = 1.6  # hand-drawn patterns are held to 1/16 in (Threads no. 200, "10 Patternwork Skills")


def is_handed(piece: DraftPiece) -> bool:
    """Say whether the piece differs from itself turned over, half-turns allowed."""
    upright = rotate(Polygon(piece.seam_line), 90 - piece.grain_deg, origin=(0, 0))
    upright = _centred(upright)
    turned_over = _centred(scale(upright, -1, 1, origin=(0, 0)))
    half_turned = _centred(rotate(turned_over, 180, origin=(0, 0)))
    return all(
        upright.exterior.hausdorff_distance(other.exterior) > SAME_MM
        for other in (turned_over, half_turned)
    )


def all_face_one_way(piece: DraftPiece) -> bool:
    """Say whether several copies of a piece with a hand are all cut the same way round."""
    return piece.count > 1 and piece.mirrored in (0, piece.count) and is_handed(piece)


def one_way_words(piece: DraftPiece) -> str:
    """Return the sentence that goes with the picture of the mistake."""
    return (
        f"All {piece.count} copies of “{piece.name}” would face one way: it is not the same turned "
        f"over, so it needs left and right copies."
    )


def _centred(shape: Polygon) -> Polygon:
    left, low, right, high = shape.bounds
    return translate(shape, -(left + right) / 2, -(low + high) / 2)

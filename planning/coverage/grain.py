"""Which turns lay a piece's grain right, in a frame where every panel's grain points along +x.

The one reading of the grain rule for the search and the proofs; `verify` has its own.
"""

from planning.coverage.problem import Piece

type Turn = tuple[float, float]  # from and to, in degrees


def upright_deg(piece: Piece, mirrored: bool) -> float:
    """The turn that brings the grain of the piece, mirrored or not, to point along +x.

    >>> upright_deg(Piece("ear", (), grain_deg=90), mirrored=False)
    -90.0
    """
    return -(180.0 - piece.grain_deg if mirrored else piece.grain_deg)


def turns_of(piece: Piece, one_way: bool) -> tuple[Turn, ...]:
    """The ranges of turns allowed to an upright piece.

    >>> turns_of(Piece("ear", (), grain_tolerance_deg=3), one_way=False)
    ((-3.0, 3.0), (177.0, 183.0))
    """
    tolerance = piece.grain_tolerance_deg
    leans = (-45.0, 45.0) if piece.bias else (0.0,)
    halves = (0.0,) if one_way else (0.0, 180.0)
    if tolerance >= (180.0 if one_way else 90.0):
        return ((0.0, 360.0),)
    centres = [half + lean for half in halves for lean in leans]
    return tuple((centre - tolerance, centre + tolerance) for centre in centres)

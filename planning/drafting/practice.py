"""Rules of thumb that makers use, with no institution behind them; each says so.

They advise and never forbid: a pattern that fails one is usable, and its notes say why it is hard.
"""

from collections.abc import Iterable

from planning.drafting.pieces import DraftPiece
from planning.drafting.rings import bounds_mm, widths_across

FEWEST_KINDS = 6  # common practice, no source: fewer kinds of piece give a flat shape
TURNABLE_MM = 30.0  # from memory, unconfirmed: narrower limbs are turned with a rod and patience
LIMBS = ("arm outer", "leg")
_SLICES = 25


def too_few_kinds(names: Iterable[str]) -> bool:
    """Say whether pieces of these names are fewer kinds than a good round shape needs.

    Common practice, no source: about six kinds or more.

    >>> too_few_kinds(["front", "back", "ear", "ear"])
    True
    """
    return len(set(names)) < FEWEST_KINDS


def narrowest_mm(piece: DraftPiece) -> float:
    """Return the least width across a limb on the seam line, between its rounded ends."""
    _, low, _, high = bounds_mm(piece.seam_line)
    tall = high - low
    heights = [low + tall * (0.12 + 0.70 * step / _SLICES) for step in range(_SLICES + 1)]
    return min(widths_across(piece.seam_line, heights))


def turning_notes(pieces: tuple[DraftPiece, ...]) -> tuple[str, ...]:
    """Return a sentence for each limb that is too narrow to turn easily."""
    return tuple(
        f"The {piece.name} is {int(narrowest_mm(piece))} mm wide at its narrowest: under "
        f"{TURNABLE_MM:.0f} mm a limb is hard to turn. Take thin cloth or a longer opening."
        for piece in pieces
        if piece.name in LIMBS and narrowest_mm(piece) < TURNABLE_MM
    )

"""How much stuffing a drafted size takes, part by part, from the area of its cloth.

Limbs and ears are two flat sheets blown up; head and body hold a share of the most a skin of that
area could hold. Volumes are within a fifth at best, masses within a third: the density of toy
stuffing has no institutional figure. A maker who weighs the filling of one part knows better.
"""

import math
from collections.abc import Sequence

from planning.drafting.pieces import DraftPiece, DraftSize
from planning.drafting.rings import bounds_mm, signed_area_mm2
from planning.drafting.sewing import Part as Part

ROUND_SHARE = 0.87  # of the ball with the same skin; reference figure 0.85 to 0.9 for shaped parts
VOLUME_SPREAD = 0.20  # Robin's formula against Paulsen's disc is 14 % low; 20 % taken

# Kilograms per cubic metre, from memory, unconfirmed. One public anchor: a bed pillow of polyester
# fibre is about 18.6 (GSA item description A-A-54095, 1990: 680 g in 20 by 26 in, Robin's volume).
FIRMNESS_KG_M3 = {"soft": 15.0, "medium": 25.0, "firm": 40.0}


def flat_part_volume_mm3(width_mm: float, height_mm: float) -> float:
    """Return the most that two flat rectangles sewn together can hold, the narrower side first.

    A. C. Robin, "Paper Bag Problem", Mathematics Today, June 2004, 104-107. Sides are swapped when
    the width is the longer.

    >>> round(flat_part_volume_mm3(100, 100) / 1e6, 3)
    0.191
    """
    w, h = sorted((width_mm, height_mm))
    return w**3 * (h / (math.pi * w) - 0.142 * (1 - 10 ** (-h / w)))


def round_part_volume_mm3(skin_mm2: float) -> float:
    """Return what a shaped skin of this area holds: a share of the ball with the same skin.

    No skin holds more than its ball, S^1.5 / (6 sqrt(pi)).
    """
    return float(ROUND_SHARE * skin_mm2**1.5 / (6 * math.sqrt(math.pi)))


def part_volume_mm3(size: DraftSize, part: Part) -> float:
    """Return the volume of one copy of a part, from the areas inside the seam lines."""
    if part.is_flat:
        return _flat(size.piece(part.pieces[0][0]))
    skin_mm2 = sum(n * signed_area_mm2(size.piece(name).seam_line) for name, n in part.pieces)
    return round_part_volume_mm3(skin_mm2)


def stuffing_volume_mm3(size: DraftSize, parts: Sequence[Part]) -> float:
    """Return the volume of all stuffed parts of a size.

    Raises SeamNameError when a part names a piece the size does not have.
    """
    return sum(part.how_many * part_volume_mm3(size, part) for part in parts)


def _flat(piece: DraftPiece) -> float:
    _, low, _, high = bounds_mm(piece.seam_line)
    tall_mm = high - low
    return flat_part_volume_mm3(signed_area_mm2(piece.seam_line) / tall_mm, tall_mm)

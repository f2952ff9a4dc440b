"""The seams of the rabbit: the bear's, but for lined ears and a tail."""

from planning.drafting.animal_seams import (
    animal_seams,
    bear_parts,
    ear_to_head,
    own,
    seam,
)
from planning.drafting.sewing import Part, Seam
from planning.drafting.stance import Stance

_EARS = tuple(
    seam(f"ear, {edge}", ("ear outer", edge), ("ear lining", edge), copies=2)
    for edge in ("outer curve", "inner curve")
)
_TAIL = (own("tail", "rim, first half"), own("tail", "rim, second half"))
_BY_HAND = (
    own("tail", "opening", by_hand=True),
    *(ear_to_head(ear, hand) for hand in ("right", "left") for ear in ("ear outer", "ear lining")),
)


def rabbit_seams(stance: Stance) -> tuple[Seam, ...]:
    """Return the seams of a rabbit; both layers of an ear are sewn on in one go."""
    return animal_seams(stance, (*_EARS, *_TAIL), _BY_HAND)


def rabbit_parts(stance: Stance) -> tuple[Part, ...]:
    """Return the stuffed parts of a rabbit; its ears are left flat."""
    return (*bear_parts(stance), Part("tail", (("tail", 2),), 1, is_flat=True))

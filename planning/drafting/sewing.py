"""How pieces are joined: seams sew stretches of seam line together, and stuffed parts come of it.

Which edges meet is data, because interchange files do not carry it (ASTM D6673, clause 1).
"""

from dataclasses import dataclass


@dataclass(frozen=True)
class Stretch:
    """An edge or placement line of a piece, sewn ``times`` over in this seam."""

    piece: str
    name: str
    times: int = 1


@dataclass(frozen=True)
class Seam:
    """Side A sewn to side B, ``copies`` times on one keepsake.

    A may be longer than B by ``ease_pct`` (least, most). A seam ``by_hand`` is closed last.
    """

    name: str
    a: tuple[Stretch, ...]
    b: tuple[Stretch, ...]
    ease_pct: tuple[float, float] = (0.0, 0.0)
    copies: int = 1
    by_hand: bool = False


@dataclass(frozen=True)
class Part:
    """A stuffed part: how often each piece goes into one of it, and how many of it there are.

    A ``flat`` part is two sheets of the first piece's outline; any other is a round skin.
    """

    name: str
    pieces: tuple[tuple[str, int], ...]
    how_many: int
    is_flat: bool

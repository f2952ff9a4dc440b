"""Walking the seams: both sides of every sewn pair, measured along the seam line and compared.

Lengths are compared section by section between notches, never on the cutting line. The 1 mm
tolerance is this project's own for drafted patterns; hand-drawn ones are held to 1.5 mm, near the
1/16 inch (1.6 mm) of Threads no. 200, Dec 2018/Jan 2019, "10 Patternwork Skills".
"""

from collections.abc import Sequence
from dataclasses import dataclass

from planning.drafting.pieces import DraftSize
from planning.drafting.sewing import Seam, Stretch

TOLERANCE_MM = 1.0
HAND_DRAWN_TOLERANCE_MM = 1.5


@dataclass(frozen=True)
class SeamWalk:
    """One walked seam. ``difference_mm`` is A less B; ``ok`` says whether the ease allows it.

    ``a`` and ``b`` are the stretches on either side, so that a failing seam can name the place.
    """

    name: str
    a_mm: float
    b_mm: float
    difference_mm: float
    ease_pct: tuple[float, float]
    ok: bool
    a: tuple[Stretch, ...] = ()
    b: tuple[Stretch, ...] = ()

    @property
    def too_long(self) -> tuple[str, float]:
        """The side that is too long where they do not meet, “A” or “B”, and by how many mm."""
        least, most = (self.b_mm * pct / 100 for pct in self.ease_pct)
        if self.difference_mm > most:
            return "A", self.difference_mm - most
        return "B", least - self.difference_mm

    @property
    def text(self) -> str:
        """Say how the two sides meet and, where they do not, which side is too long by how much."""
        if self.ok and abs(self.difference_mm) < 0.05:
            return f"{self.name}: both sides are {self.a_mm:.1f} mm long."
        which = "longer" if self.difference_mm > 0 else "shorter"
        end = "as the ease allows." if self.ok else "more than the ease allows."
        return (
            f"{self.name}: {self.a_mm:.1f} mm against {self.b_mm:.1f} mm, "
            f"{abs(self.difference_mm):.1f} mm {which}, {end}{self._place}"
        )

    @property
    def _place(self) -> str:
        if self.ok or not (self.a and self.b):
            return ""
        a, b = _side_words(self.a), _side_words(self.b)
        side, over_mm = self.too_long
        long, short = (a, b) if side == "A" else (b, a)
        return f" {long} is {over_mm:.1f} mm too long for {short}."


def _side_words(side: tuple[Stretch, ...]) -> str:
    """Name a side in words, as in: “neck” of “body front” (2 times) with “nape” of “gusset”."""
    return " with ".join(
        f"“{each.name}” of “{each.piece}”" + (f" ({each.times} times)" if each.times > 1 else "")
        for each in side
    )


def walk(
    size: DraftSize, seams: Sequence[Seam], tolerance_mm: float = TOLERANCE_MM
) -> tuple[SeamWalk, ...]:
    """Walk every seam of a size.

    Raises SeamNameError when a seam names a piece, edge or line the size does not have.
    """
    return tuple(walk_seam(size, seam, tolerance_mm) for seam in seams)


def walk_seam(size: DraftSize, seam: Seam, tolerance_mm: float = TOLERANCE_MM) -> SeamWalk:
    """Walk one seam: A less B must lie within the ease, give or take the tolerance."""
    a_mm, b_mm = side_mm(size, seam.a), side_mm(size, seam.b)
    least, most = (b_mm * pct / 100 for pct in seam.ease_pct)
    difference_mm = a_mm - b_mm
    ok = least - tolerance_mm <= difference_mm <= most + tolerance_mm
    return SeamWalk(seam.name, a_mm, b_mm, difference_mm, seam.ease_pct, ok, seam.a, seam.b)


def side_mm(size: DraftSize, side: tuple[Stretch, ...]) -> float:
    """Return the length of one side of a seam along the seam line."""
    return sum(s.times * size.piece(s.piece).stretch_mm(s.name) for s in side)


def unsewn_edges(size: DraftSize, seams: tuple[Seam, ...]) -> tuple[tuple[str, str], ...]:
    """Return (piece, edge) for each edge that is in no seam and is no opening."""
    sewn = {(each.piece, each.name) for seam in seams for each in (*seam.a, *seam.b)}
    return tuple(
        (piece.name, edge.name)
        for piece in size
        for edge in piece.edges
        if (piece.name, edge.name) not in sewn and edge != piece.opening
    )

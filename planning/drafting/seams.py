"""Walking the seams: both sides of every sewn pair, measured along the seam line and compared.

Lengths are compared section by section between notches, never on the cutting line. The 1 mm
tolerance is this project's own for drafted patterns; hand-drawn ones are commonly held to 1.6 mm
(Threads no. 200, Dec 2018/Jan 2019, "10 Patternwork Skills").
"""

from dataclasses import dataclass

from planning.drafting.bear_seams import SEAMS
from planning.drafting.pieces import DraftSize
from planning.drafting.sewing import Seam, Stretch

TOLERANCE_MM = 1.0


@dataclass(frozen=True)
class SeamWalk:
    """One walked seam. ``difference_mm`` is A less B; ``ok`` says whether the ease allows it."""

    name: str
    a_mm: float
    b_mm: float
    difference_mm: float
    ease_pct: tuple[float, float]
    ok: bool

    @property
    def text(self) -> str:
        """Say in one sentence how the two sides meet."""
        if self.ok and abs(self.difference_mm) < 0.05:
            return f"{self.name}: both sides are {self.a_mm:.1f} mm long."
        which = "longer" if self.difference_mm > 0 else "shorter"
        end = "as the ease allows." if self.ok else "more than the ease allows."
        return (
            f"{self.name}: {self.a_mm:.1f} mm against {self.b_mm:.1f} mm, "
            f"{abs(self.difference_mm):.1f} mm {which}, {end}"
        )


def walk(
    size: DraftSize, seams: tuple[Seam, ...] = SEAMS, tolerance_mm: float = TOLERANCE_MM
) -> tuple[SeamWalk, ...]:
    """Walk every seam of a size; without ``seams``, those of the built-in bear.

    Raises SeamNameError when a seam names a piece, edge or line the size does not have.
    """
    return tuple(walk_seam(size, seam, tolerance_mm) for seam in seams)


def walk_seam(size: DraftSize, seam: Seam, tolerance_mm: float = TOLERANCE_MM) -> SeamWalk:
    """Walk one seam: A less B must lie within the ease, give or take the tolerance."""
    a_mm, b_mm = side_mm(size, seam.a), side_mm(size, seam.b)
    least, most = (b_mm * pct / 100 for pct in seam.ease_pct)
    difference_mm = a_mm - b_mm
    ok = least - tolerance_mm <= difference_mm <= most + tolerance_mm
    return SeamWalk(seam.name, a_mm, b_mm, difference_mm, seam.ease_pct, ok)


def side_mm(size: DraftSize, side: tuple[Stretch, ...]) -> float:
    """Return the length of one side of a seam along the seam line."""
    return sum(s.times * size.piece(s.piece).stretch_mm(s.name) for s in side)

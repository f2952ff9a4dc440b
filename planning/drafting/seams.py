"""Walking the seams: both sides of every sewn pair, measured along the seam line and compared.

Lengths are compared section by section between notches, never on the cutting line. Ease is how much
longer side A may be than side B, in percent. The 1 mm tolerance is this project's own for drafted
patterns; hand-drawn ones are commonly held to 1.6 mm (Threads no. 200, 2018/19, "10 Patternwork
Skills").
"""

from dataclasses import dataclass

from planning.drafting.pieces import DraftSize

TOLERANCE_MM = 1.0


@dataclass(frozen=True)
class Stretch:
    """An edge or placement line of a piece, sewn ``times`` over in this seam."""

    piece: str
    name: str
    times: int = 1


@dataclass(frozen=True)
class Seam:
    """Side A sewn to side B; A may be longer by ``ease_pct`` (least, most)."""

    name: str
    a: tuple[Stretch, ...]
    b: tuple[Stretch, ...]
    ease_pct: tuple[float, float] = (0.0, 0.0)


@dataclass(frozen=True)
class SeamWalk:
    """One walked seam. ``difference_mm`` is A less B; ``ok`` says whether it is within the ease."""

    name: str
    a_mm: float
    b_mm: float
    difference_mm: float
    ease_pct: tuple[float, float]
    ok: bool


def walk_seam(size: DraftSize, seam: Seam, tolerance_mm: float = TOLERANCE_MM) -> SeamWalk:
    """Walk one seam. Raises SeamNameError when it names a place the size does not have."""
    a_mm, b_mm = _side_mm(size, seam.a), _side_mm(size, seam.b)
    least, most = (b_mm * pct / 100 for pct in seam.ease_pct)
    difference_mm = a_mm - b_mm
    ok = least - tolerance_mm <= difference_mm <= most + tolerance_mm
    return SeamWalk(seam.name, a_mm, b_mm, difference_mm, seam.ease_pct, ok)


def walk(size: DraftSize, seams: tuple[Seam, ...] | None = None) -> tuple[SeamWalk, ...]:
    """Walk every seam of a size; without ``seams``, those of the built-in bear."""
    return tuple(walk_seam(size, seam) for seam in (SEAMS if seams is None else seams))


def _side_mm(size: DraftSize, stretches: tuple[Stretch, ...]) -> float:
    return sum(s.times * size.piece(s.piece).stretch_mm(s.name) for s in stretches)


def _pair(name: str, a: tuple[str, str], b: tuple[str, str]) -> Seam:
    return Seam(name, (Stretch(*a),), (Stretch(*b),))


_GUSSET = tuple(
    _pair(f"gusset, {of_side}, {hand}", ("head side", of_side), ("head gusset", f"{of_gusset}, {hand}"))
    for hand, names in (
        ("right", ("crown to nape", "brow to crown", "nose to brow")),
        ("left", ("nape to crown", "crown to brow", "brow to nose")),
    )
    for of_side, of_gusset in zip(
        ("nape to crown", "crown to brow", "brow to nose"), names, strict=True
    )
)

_SIDES = tuple(
    _pair(f"body {front}", ("body front", front), ("body back", back))
    for front, back in (
        ("side, shoulder to neck", "side, neck to shoulder"),
        ("side, hip to shoulder", "side, shoulder to hip"),
        ("side, seat to hip", "side, hip to seat"),
    )
)

_ARMS = (
    *(
        _pair(f"arm {edge}", ("arm outer", edge), ("arm inner", edge))
        for edge in ("front", "back, lower", "opening", "back, upper")
    ),
    _pair("paw rim", ("arm outer", "paw"), ("paw pad", "rim")),
    _pair("paw to wrist", ("arm inner", "wrist"), ("paw pad", "wrist")),
)

SEAMS: tuple[Seam, ...] = (
    *_GUSSET,
    *_SIDES,
    Seam(
        "neck",
        (Stretch("body front", "neck", 2), Stretch("body back", "neck", 2)),
        (Stretch("head side", "neck", 2), Stretch("head gusset", "nape")),
    ),
    *_ARMS,
    Seam("sole, right half", (Stretch("leg", "foot"),), (Stretch("sole", "right half"),)),
    Seam("sole, left half", (Stretch("leg", "foot"),), (Stretch("sole", "left half"),)),
    Seam(
        "ear to head, right",
        (Stretch("ear", "foot"),),
        (Stretch("head side", "ear"), Stretch("head gusset", "ear, right")),
        ease_pct=(0.0, 5.0),
    ),
    Seam(
        "ear to head, left",
        (Stretch("ear", "foot"),),
        (Stretch("head side", "ear"), Stretch("head gusset", "ear, left")),
        ease_pct=(0.0, 5.0),
    ),
)

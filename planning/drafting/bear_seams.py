"""The seams of the built-in bear, in the order they are sewn: head, body, limbs, then by hand."""

from planning.drafting.sewing import Seam, Stretch

EAR_EASE_PCT = (0.0, 5.0)  # from memory, unconfirmed: an ear's foot may be eased up to 5 %

# The side of the head, and the same stretch on the right and on the left of the gusset.
_GUSSET = (
    ("brow to nose", "nose to brow, right", "brow to nose, left"),
    ("crown to brow", "brow to crown, right", "crown to brow, left"),
    ("nape to crown", "crown to nape, right", "nape to crown, left"),
)
_BODY_SIDES = (
    ("side, shoulder to neck", "side, neck to shoulder"),
    ("side, hip to shoulder", "side, shoulder to hip"),
    ("side, seat to hip", "side, hip to seat"),
)


def _seam(name: str, a: tuple[str, str], b: tuple[str, str], copies: int = 1) -> Seam:
    return Seam(name, (Stretch(*a),), (Stretch(*b),), copies=copies)


def _own(piece: str, edge: str, copies: int = 1, by_hand: bool = False) -> Seam:
    """A seam between a piece and its mirrored copy."""
    side = (Stretch(piece, edge),)
    return Seam(f"{piece}, {edge}", side, side, copies=copies, by_hand=by_hand)


def _ear_to_head(hand: str) -> Seam:
    return Seam(
        f"ear to head, {hand}",
        (Stretch("ear", "foot"),),
        (Stretch("head side", "ear"), Stretch("head gusset", f"ear, {hand}")),
        ease_pct=EAR_EASE_PCT,
        by_hand=True,
    )


_HEAD = (
    _own("ear", "outer curve", copies=2),
    _own("ear", "inner curve", copies=2),
    _own("head side", "chin"),
    *(_seam(f"gusset, {s}, right", ("head side", s), ("head gusset", r)) for s, r, _ in _GUSSET),
    *(_seam(f"gusset, {s}, left", ("head side", s), ("head gusset", x)) for s, _, x in _GUSSET),
)
_BODY = (
    _own("body front", "centre front, upper"),
    _own("body front", "centre front, lower"),
    _own("body back", "centre back, upper"),
    _own("body back", "centre back, lower"),
    *(_seam(f"body, {f}", ("body front", f), ("body back", b), copies=2) for f, b in _BODY_SIDES),
    Seam(
        "neck",
        (Stretch("body front", "neck", 2), Stretch("body back", "neck", 2)),
        (Stretch("head side", "neck", 2), Stretch("head gusset", "nape")),
    ),
)
_LIMBS = (
    _seam("wrist", ("arm inner", "wrist"), ("paw pad", "wrist"), copies=2),
    *(
        _seam(f"arm, {edge}", ("arm outer", edge), ("arm inner", edge), copies=2)
        for edge in ("front", "back, lower", "back, upper")
    ),
    _seam("paw", ("arm outer", "paw"), ("paw pad", "rim"), copies=2),
    _own("leg", "front", copies=2),
    _own("leg", "back, lower", copies=2),
    _own("leg", "back, upper", copies=2),
    _seam("sole, right half", ("leg", "foot"), ("sole", "right half"), copies=2),
    _seam("sole, left half", ("leg", "foot"), ("sole", "left half"), copies=2),
)
_BY_HAND = (
    _own("body back", "centre back, opening", by_hand=True),
    Seam(
        "arm, opening",
        (Stretch("arm outer", "opening"),),
        (Stretch("arm inner", "opening"),),
        copies=2,
        by_hand=True,
    ),
    _own("leg", "opening", copies=2, by_hand=True),
    _ear_to_head("right"),
    _ear_to_head("left"),
)

SEAMS: tuple[Seam, ...] = (*_HEAD, *_BODY, *_LIMBS, *_BY_HAND)

"""The seams of bear and rabbit, in the order they are sewn: head, body, limbs, then by hand."""

from planning.drafting.sewing import Part, Seam, Stretch
from planning.drafting.stance import Stance

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

BODY_PARTS = (
    Part("body", (("body front", 2), ("body back", 2)), 1, is_flat=False),
    Part("head", (("head side", 2), ("head gusset", 1)), 1, is_flat=False),
    Part("arm", (("arm outer", 1), ("arm inner", 1), ("paw pad", 1)), 2, is_flat=True),
    Part("leg", (("leg", 2), ("sole", 1)), 2, is_flat=True),
)


def bear_seams(stance: Stance) -> tuple[Seam, ...]:
    """Return the seams of a bear."""
    ears = (own("ear", "outer curve", copies=2), own("ear", "inner curve", copies=2))
    onto = tuple(ear_to_head("ear", hand) for hand in ("right", "left"))
    return animal_seams(stance, ears, onto)


def bear_parts(stance: Stance) -> tuple[Part, ...]:
    """Return the stuffed parts of a bear; its ears are left flat."""
    if not stance.is_sitting:
        return BODY_PARTS
    body = Part("body", (("body front", 2), ("body back", 2), ("seat", 1)), 1, is_flat=False)
    return (body, *BODY_PARTS[1:])


def animal_seams(
    stance: Stance, ears: tuple[Seam, ...], by_hand: tuple[Seam, ...]
) -> tuple[Seam, ...]:
    """Return every seam of an animal with the ears and the last hand-sewn seams given."""
    return (*ears, *_HEAD, *_body(stance), *_LIMBS, *_OPENINGS, *by_hand)


def seam(name: str, a: tuple[str, str], b: tuple[str, str], copies: int = 1) -> Seam:
    """A seam between one edge and another."""
    return Seam(name, (Stretch(*a),), (Stretch(*b),), copies=copies)


def own(piece: str, edge: str, copies: int = 1, by_hand: bool = False) -> Seam:
    """A seam between a piece and its mirrored copy."""
    side = (Stretch(piece, edge),)
    return Seam(f"{piece}, {edge}", side, side, copies=copies, by_hand=by_hand)


def ear_to_head(ear: str, hand: str) -> Seam:
    """The foot of an ear sewn across the gusset seam."""
    return Seam(
        f"{ear} to head, {hand}",
        (Stretch(ear, "foot"),),
        (Stretch("head side", "ear"), Stretch("head gusset", f"ear, {hand}")),
        ease_pct=EAR_EASE_PCT,
        by_hand=True,
    )


def _body(stance: Stance) -> tuple[Seam, ...]:
    return (
        own("body front", "centre front, upper"),
        own("body front", "centre front, lower"),
        own("body back", "centre back, upper"),
        own("body back", "centre back, lower"),
        *(
            seam(f"body, {f}", ("body front", f), ("body back", b), copies=2)
            for f, b in _BODY_SIDES
        ),
        *(_SEAT if stance.is_sitting else ()),
        *(_NECK_ASIDE if stance.is_aside else _NECK),
    )


_HEAD = (
    own("head side", "chin"),
    *(seam(f"gusset, {s}, right", ("head side", s), ("head gusset", r)) for s, r, _ in _GUSSET),
    *(seam(f"gusset, {s}, left", ("head side", s), ("head gusset", x)) for s, _, x in _GUSSET),
)
_SEAT = tuple(
    seam(f"seat, {end}, {hand}", (f"body {end}", "seat"), ("seat", f"{end}, {hand}"))
    for end in ("front", "back")
    for hand in ("right", "left")
)
_NECK = (
    Seam(
        "neck",
        (Stretch("body front", "neck", 2), Stretch("body back", "neck", 2)),
        (Stretch("head side", "neck", 2), Stretch("head gusset", "nape")),
    ),
)
# From the chin round to the nape: the long way over one front and the short way, each the same half
# of the neck. Where the head is turned by so much, one front and one back give up to the other.
_NECK_ASIDE = (
    Seam(
        "neck, chin to nape over the shoulder it looks to",
        (
            Stretch("body front", "neck, side"),
            Stretch("body back", "neck, side"),
            Stretch("body back", "neck, centre", 2),
        ),
        (Stretch("head side", "neck"), Stretch("head gusset", "nape, left")),
    ),
    Seam(
        "neck, chin to nape over the other shoulder",
        (
            Stretch("body front", "neck, centre", 2),
            Stretch("body front", "neck, side"),
            Stretch("body back", "neck, side"),
        ),
        (Stretch("head side", "neck"), Stretch("head gusset", "nape, right")),
    ),
)
_LIMBS = (
    seam("wrist", ("arm inner", "wrist"), ("paw pad", "wrist"), copies=2),
    *(
        seam(f"arm, {edge}", ("arm outer", edge), ("arm inner", edge), copies=2)
        for edge in ("front", "back, lower", "back, upper")
    ),
    seam("paw", ("arm outer", "paw"), ("paw pad", "rim"), copies=2),
    own("leg", "front", copies=2),
    own("leg", "back, lower", copies=2),
    own("leg", "back, upper", copies=2),
    seam("sole, right half", ("leg", "foot"), ("sole", "right half"), copies=2),
    seam("sole, left half", ("leg", "foot"), ("sole", "left half"), copies=2),
)
_OPENINGS = (
    own("body back", "centre back, opening", by_hand=True),
    Seam(
        "arm, opening",
        (Stretch("arm outer", "opening"),),
        (Stretch("arm inner", "opening"),),
        copies=2,
        by_hand=True,
    ),
    own("leg", "opening", copies=2, by_hand=True),
)

"""The heart: two halves in front, two behind, and a band all round that makes it full.

Every half may come from another garment. Each band is a straight strip as long as the edge it is
sewn to; it turns the corner at the dip and at the point by its end seams.
"""

from planning.drafting.curves import Line, smooth
from planning.drafting.errors import DraftError
from planning.drafting.openings import opened_between
from planning.drafting.outline import Drawn, Making, made, split_line
from planning.drafting.pieces import DETAIL_PLACE, DraftPiece, DraftSize, Mark
from planning.drafting.rings import length_mm
from planning.drafting.sewing import Part, Seam, Stretch

SMALLEST_MM, LARGEST_MM = 100.0, 500.0
BAND_SHARE = 0.22  # of the height: how wide the band is
SIDE_SHARE = 0.52  # of the outer edge from the point up: where lower and upper band meet
DIP = 0.79  # of the height: where the lobes part
CENTRE_STEPS = 32
OPENING = (0.30, 0.60)  # of the centre back from the dip down
WIDEST_OPENING = (0.14, 0.86)

# The right half as shares of the height, from the point up and round to the dip.
_OUTER = (
    (0.0, 0.0),
    (0.215, 0.205),
    (0.40, 0.415),
    (0.515, 0.63),
    (0.505, 0.83),
    (0.40, 0.963),
    (0.265, 1.0),
    (0.115, 0.952),
    (0.0, DIP),
)
WIDTH_SHARE = 1.05  # of the height: both halves across


def heart(height_mm: float, seam_allowance_mm: float = 6.0) -> DraftSize:
    """Draft a heart by its height from the point to the top.

    Raises DraftError outside 100 to 500 mm, OutlineError for a negative allowance.
    """
    heart_fits(height_mm)
    outer, centre = half_lines(height_mm)
    whole_mm, wide = length_mm(outer), BAND_SHARE * height_mm
    cuts = (SIDE_SHARE / 2, SIDE_SHARE, (1 + SIDE_SHARE) / 2)
    rim = split_line(outer, *(share * whole_mm for share in cuts))
    rim_mm = [length_mm(part) for part in rim]
    pieces = (
        _front(height_mm, rim, centre, seam_allowance_mm),
        _back(rim, centre, seam_allowance_mm),
        _band("lower band", rim_mm[:2], wide, ("point", "side"), seam_allowance_mm),
        _band("upper band", rim_mm[2:], wide, ("side", "dip"), seam_allowance_mm),
    )
    return DraftSize(
        name=f"{height_mm / 10:g} cm",
        height_mm=height_mm,
        pieces=pieces,
        seam_allowance_mm=seam_allowance_mm,
        width_mm=WIDTH_SHARE * height_mm,
        notes=("Clip the allowance at the dip up to the seam, or the dip will pucker.",),
    )


def heart_fits(height_mm: float) -> None:
    """Raise DraftError unless a heart can have this height."""
    if not SMALLEST_MM <= height_mm <= LARGEST_MM:
        raise DraftError(
            f"The heart can be {SMALLEST_MM:g} to {LARGEST_MM:g} mm high, not {height_mm:g} mm."
        )


def half_lines(height_mm: float) -> tuple[Line, Line]:
    """Return the outer edge of the right half (point to dip) and its centre (dip to point)."""
    marked = [(x * height_mm, y * height_mm) for x, y in _OUTER]
    outer = smooth(marked, start_deg=47, end_deg=238)
    centre = [(0.0, marked[-1][1] * (1 - step / CENTRE_STEPS)) for step in range(CENTRE_STEPS)]
    return outer, [*centre, marked[0]]


def _front(height_mm: float, rim: list[Line], centre: Line, allowance_mm: float) -> DraftPiece:
    place = Mark(DETAIL_PLACE, (0.26 * height_mm, 0.66 * height_mm))
    return made(
        [*_rim_edges(rim), Drawn("centre", centre)],
        Making("heart front", count=2, mirrored=1, marks=(place,)),
        allowance_mm,
    )


def _back(rim: list[Line], centre: Line, allowance_mm: float) -> DraftPiece:
    upper, opening, lower = opened_between(centre, OPENING, WIDEST_OPENING)
    return made(
        [
            *_rim_edges(rim),
            Drawn("centre, upper", upper, "opening, upper end"),
            Drawn("centre, opening", opening, "opening, lower end"),
            Drawn("centre, lower", lower),
        ],
        Making("heart back", count=2, mirrored=1, opening="centre, opening"),
        allowance_mm,
    )


def _rim_edges(rim: list[Line]) -> tuple[Drawn, ...]:
    """The outer edge of a half, from the point to the dip."""
    return (
        Drawn("side, lower", rim[0], "middle of the side"),
        Drawn("side, upper", rim[1], "side", is_double=True),
        Drawn("lobe, outer", rim[2], "middle of the lobe"),
        Drawn("lobe, inner", rim[3]),
    )


def _band(
    name: str,
    halves_mm: list[float],
    wide: float,
    ends: tuple[str, str],
    allowance_mm: float,
) -> DraftPiece:
    """A strip lying along x, its first end to the left, each long edge in two halves."""
    middle, long = halves_mm[0], sum(halves_mm)
    return made(
        [
            Drawn("front, first half", [(0.0, 0.0), (middle, 0.0)], "middle"),
            Drawn("front, second half", [(middle, 0.0), (long, 0.0)]),
            Drawn(f"{ends[1]} end", [(long, 0.0), (long, wide)]),
            Drawn("back, second half", [(long, wide), (middle, wide)], "middle"),
            Drawn("back, first half", [(middle, wide), (0.0, wide)]),
            Drawn(f"{ends[0]} end", [(0.0, wide), (0.0, 0.0)]),
        ],
        Making(name, count=2, mirrored=1, grain_deg=0.0),
        allowance_mm,
    )


def _own(piece: str, edge: str, by_hand: bool = False) -> Seam:
    side = (Stretch(piece, edge),)
    return Seam(f"{piece}, {edge}", side, side, by_hand=by_hand)


HEART_SEAMS = (
    _own("heart front", "centre"),
    _own("heart back", "centre, upper"),
    _own("heart back", "centre, lower"),
    Seam(
        "bands at the side",
        (Stretch("lower band", "side end"),),
        (Stretch("upper band", "side end"),),
        copies=2,
    ),
    _own("lower band", "point end"),
    _own("upper band", "dip end"),
    *(
        Seam(
            f"{face}, {edge}",
            (Stretch(f"heart {face}", edge),),
            (Stretch(band, f"{face}, {half} half"),),
            copies=2,
        )
        for face in ("front", "back")
        for edge, band, half in (
            ("side, lower", "lower band", "first"),
            ("side, upper", "lower band", "second"),
            ("lobe, outer", "upper band", "first"),
            ("lobe, inner", "upper band", "second"),
        )
    ),
    _own("heart back", "centre, opening", by_hand=True),
)
HEART_PARTS = (
    Part(
        "heart",
        (("heart front", 2), ("heart back", 2), ("lower band", 2), ("upper band", 2)),
        1,
        is_flat=False,
    ),
)

"""What a keepsake of one size will take and come to, each figure with its range and its source.

Estimates help to choose and to shop; none of them decides whether the cloth is enough. Where a
figure rests on memory or habit, its certainty says so.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from planning.drafting.errors import DraftError
from planning.drafting.pieces import EYE, DraftPiece, DraftSize
from planning.drafting.rings import signed_area_mm2
from planning.drafting.seams import side_mm
from planning.drafting.sewing import Part, Seam
from planning.drafting.stuffing import FIRMNESS_KG_M3, VOLUME_SPREAD, stuffing_volume_mm3

Certainty = Literal["published", "trade figure", "common practice", "from memory"]

HEIGHT_SPREAD = 0.05  # this project's own allowance until a practice keepsake has been measured
WIDTH_SPREAD = 0.10
DENSITY_SPREAD = 0.15  # besides the spread of the volume
THREAD_SPREAD = 0.10  # tables give 2.5 where the formula gives 2.8 (textilecalculator.com)
THREAD_WASTE = (0.10, 0.15)  # apparelscience.com: 10 to 15 % is lost in ends and changes
EYE_SHARES = (0.10, 0.13, 0.155)  # of the side of the head's square; common practice, no source


@dataclass(frozen=True)
class Estimate:
    """A likely figure with its low and high ends, in ``unit``, and where it comes from."""

    name: str
    low: float
    likely: float
    high: float
    unit: str
    source: str
    certainty: Certainty


def finished_height(size: DraftSize) -> Estimate:
    """Return the height the size is named by, ears not counted."""
    return _spread(
        "finished height",
        size.height_mm,
        HEIGHT_SPREAD,
        "mm",
        "The measures it is drafted from; soft stuffing gives less height, firm stuffing more.",
        "from memory",
    )


def finished_width(size: DraftSize) -> Estimate | None:
    """Return the width, arms hanging at the sides, or nothing where it is not known."""
    if size.width_mm is None:
        return None
    return _spread(
        "finished width",
        size.width_mm,
        WIDTH_SPREAD,
        "mm",
        "The measures it is drafted from, limbs at their stuffed thickness.",
        "from memory",
    )


def stuffing_volume(size: DraftSize, parts: Sequence[Part]) -> Estimate:
    """Return the volume of the stuffed parts in litres.

    Raises SeamNameError when a part names a piece the size does not have.
    """
    return _spread(
        "stuffing volume",
        stuffing_volume_mm3(size, parts) / 1e6,
        VOLUME_SPREAD,
        "litres",
        "Flat parts: A. C. Robin, Paper Bag Problem, Mathematics Today, June 2004. Round parts: "
        "0.87 of the ball with the same skin.",
        "published",
    )


def stuffing_mass(size: DraftSize, parts: Sequence[Part], firmness: str = "medium") -> Estimate:
    """Return the mass of polyester stuffing in grams: soft, medium or firm.

    Raises DraftError for another firmness.
    """
    if firmness not in FIRMNESS_KG_M3:
        known = ", ".join(FIRMNESS_KG_M3)
        raise DraftError(f"“{firmness}” is no firmness of stuffing. Choose one of: {known}.")
    likely_g = stuffing_volume_mm3(size, parts) / 1e6 * FIRMNESS_KG_M3[firmness]
    return Estimate(
        f"stuffing, {firmness}",
        likely_g * (1 - VOLUME_SPREAD) * (1 - DENSITY_SPREAD),
        likely_g,
        likely_g * (1 + VOLUME_SPREAD) * (1 + DENSITY_SPREAD),
        "g",
        f"{FIRMNESS_KG_M3[firmness]:g} kg/m³ by feel; a bed pillow is about 18.6 (GSA A-A-54095, "
        "1990). Weigh the filling of one part to know your own.",
        "from memory",
    )


def thread_ratio(thickness_mm: float, stitch_mm: float) -> float:
    """Return how much thread a lockstitch takes for each length of seam, both threads together.

    C = 2 + 2 T S with T the thickness of all layers and S stitches per length (stitch type 301;
    textilecalculations.com, textiletechinsight.com). Raises DraftError unless both are positive.

    >>> thread_ratio(1.0, 2.5)
    2.8
    """
    if thickness_mm <= 0 or stitch_mm <= 0:
        raise DraftError("Thickness and stitch length must both be more than nothing.")
    return 2 + 2 * thickness_mm / stitch_mm


def seam_length_mm(size: DraftSize, seams: Sequence[Seam], by_hand: bool = False) -> float:
    """Return how much seam is sewn by machine, or with ``by_hand`` closed by hand."""
    return sum(
        seam.copies * max(side_mm(size, seam.a), side_mm(size, seam.b))
        for seam in seams
        if seam.by_hand is by_hand
    )


def thread_length(
    size: DraftSize, seams: Sequence[Seam], thickness_mm: float = 1.0, stitch_mm: float = 2.0
) -> Estimate:
    """Return metres of machine thread, each seam sewn once; ``thickness_mm`` is of both layers."""
    bare_m = seam_length_mm(size, seams) / 1000 * thread_ratio(thickness_mm, stitch_mm)
    least, most = (bare_m * (1 + waste) for waste in THREAD_WASTE)
    return Estimate(
        "thread",
        least * (1 - THREAD_SPREAD),
        (least + most) / 2,
        most * (1 + THREAD_SPREAD),
        "m",
        "Lockstitch 301: 2 + 2 × thickness ÷ stitch length (textilecalculations.com), and 10 to "
        "15 % for ends (apparelscience.com). Sewn twice takes twice as much.",
        "trade figure",
    )


def interfacing_area(size: DraftSize) -> Estimate:
    """Return square centimetres of interfacing if every piece is backed.

    From pieces cut to the seam line without a gap, over pieces cut to the cutting line, to a
    quarter more for the gaps between them.
    """
    to_seam = sum(p.count * signed_area_mm2(p.seam_line) for p in size) / 100
    to_cut = sum(p.count * signed_area_mm2(p.cut_line) for p in size) / 100
    source = "The pieces' own areas; a quarter for the gaps between them."
    return Estimate("interfacing", to_seam, to_cut, 1.25 * to_cut, "cm²", source, "common practice")


def eye_diameter(size: DraftSize) -> Estimate | None:
    """Return the range of eye diameters that suit the head, embroidered or set in.

    The head is the piece that carries the mark of an eye; without one there is no face.
    """
    head = next((piece for piece in size if _has_eye(piece)), None)
    if head is None:
        return None
    side_mm = math.sqrt(signed_area_mm2(head.seam_line))
    low, likely, high = (share * side_mm for share in EYE_SHARES)
    source = "A tenth to a seventh of the head from its side: common practice, no source."
    return Estimate("eyes", low, likely, high, "mm", source, "common practice")


def _has_eye(piece: DraftPiece) -> bool:
    return any(mark.name == EYE for mark in piece.marks)


def estimates_of(
    size: DraftSize,
    seams: Sequence[Seam],
    parts: Sequence[Part],
    firmness: str = "medium",
    thickness_mm: float = 1.0,
    stitch_mm: float = 2.0,
) -> tuple[Estimate, ...]:
    """Return every estimate there is ground for, in the order of a shopping list.

    A size whose stuffed parts are not named gets none for its stuffing, for its pieces do not say
    what becomes round of them; without named seams there is none for thread.
    """
    stuffing = [stuffing_volume(size, parts), stuffing_mass(size, parts, firmness)] if parts else []
    thread = [thread_length(size, seams, thickness_mm, stitch_mm)] if seams else []
    found = [
        finished_height(size),
        finished_width(size),
        *stuffing,
        *thread,
        interfacing_area(size),
        eye_diameter(size),
    ]
    return tuple(estimate for estimate in found if estimate)


def _spread(
    name: str, likely: float, share: float, unit: str, source: str, certainty: Certainty
) -> Estimate:
    return Estimate(
        name, likely * (1 - share), likely, likely * (1 + share), unit, source, certainty
    )

"""The built-in bear, drafted from its body measures at any height and in three characters.

Seam lines are in proportion to the height; the allowance is added afterwards at its constant width.
"""

from planning.drafting.bear_arm import arm
from planning.drafting.bear_body import body
from planning.drafting.bear_head import head
from planning.drafting.bear_leg import leg
from planning.drafting.measures import measures_of
from planning.drafting.pieces import DraftSize
from planning.drafting.practice import turning_notes

SEAM_ALLOWANCE_MM = 6.0


def bear(
    height_mm: float, character: str = "classic", seam_allowance_mm: float = SEAM_ALLOWANCE_MM
) -> DraftSize:
    """Draft one bear, standing ``height_mm`` tall from sole to crown without the ears.

    Raises DraftError for a height outside 150 to 500 mm or an unknown character, OutlineError for
    a negative allowance and CutLineCrosses for one too wide for the bear.
    """
    m = measures_of(height_mm, character)
    top = head(m, seam_allowance_mm)
    pieces = (
        *body(m, top.neck_mm, seam_allowance_mm),
        *top.pieces,
        *arm(m, seam_allowance_mm),
        *leg(m, seam_allowance_mm),
    )
    return DraftSize(
        name=f"{height_mm / 10:g} cm",
        height_mm=height_mm,
        pieces=pieces,
        seam_allowance_mm=seam_allowance_mm,
        character=character,
        notes=turning_notes(pieces),
    )

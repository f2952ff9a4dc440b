"""The bear, drafted from its body measures at any height, in three characters and every stance.

Seam lines are in proportion to the height; the allowance is added afterwards at its constant width.
"""

from planning.drafting.arm import arm
from planning.drafting.bear_head import bear_head
from planning.drafting.body import body
from planning.drafting.leg import leg
from planning.drafting.measures import BodyMeasures, measures_of
from planning.drafting.pieces import DraftSize
from planning.drafting.practice import turning_notes
from planning.drafting.stance import Stance

SEAM_ALLOWANCE_MM = 6.0


def bear(
    height_mm: float,
    character: str = "classic",
    seam_allowance_mm: float = SEAM_ALLOWANCE_MM,
    stance: Stance | None = None,
) -> DraftSize:
    """Draft one bear: sole to crown when it stands, seat to crown when it sits, ears left out.

    Raises DraftError for a height outside 150 to 500 mm or an unknown character, OutlineError for
    a negative allowance and CutLineCrosses for one too wide for the bear.
    """
    stance = stance or Stance()
    m = measures_of(height_mm, character, stance)
    top = bear_head(m, stance, seam_allowance_mm)
    pieces = (
        *body(m, top.neck_mm, stance, seam_allowance_mm),
        *top.pieces,
        *arm(m, seam_allowance_mm),
        *leg(m, seam_allowance_mm),
    )
    return DraftSize(
        name=f"{height_mm / 10:g} cm",
        height_mm=height_mm,
        pieces=pieces,
        seam_allowance_mm=seam_allowance_mm,
        width_mm=animal_width_mm(m),
        notes=(*stance_notes(m, stance), *turning_notes(pieces)),
    )


def animal_width_mm(m: BodyMeasures) -> float:
    """Return the width across body and both arms hanging at its sides."""
    return m.body_width_mm + 2 * m.arm_width_mm


def stance_notes(m: BodyMeasures, stance: Stance) -> tuple[str, ...]:
    """Say what the pose and the face ask of the maker."""
    notes = []
    if stance.is_sitting:
        notes.append(
            "The height is that of the sitting animal, from the seat to the crown; with its legs "
            f"under it, it would stand {m.height_mm / 10:.0f} cm tall. Join the legs at the marks "
            "in front of the sides, soles forwards, so that it rests on the flat seat."
        )
    if stance.is_aside:
        notes.append(
            "The face looks aside: set the chin seam at the notch on the neck of one body front, "
            "and the middle of the nape at the notch of the body back on the other side. The side "
            "whose front you take is the side it looks to."
        )
    return tuple(notes)

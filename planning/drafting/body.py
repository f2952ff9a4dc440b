"""The body: two fronts, two backs and, for an animal that sits, a flat oval seat.

The width of each gore at the neck is found so that the four neck edges equal the neck of the head;
the length of the back is found so that its side edge equals the front's. For a face aside the neck
has notches, moved round it, for the chin and for the nape.
"""

from collections.abc import Callable

from scipy.optimize import brentq

from planning.drafting.curves import Line, ellipse_perimeter_mm, smooth
from planning.drafting.gores import Gore, back_gore, front_gore
from planning.drafting.measures import BodyMeasures
from planning.drafting.openings import opened_between
from planning.drafting.outline import Drawn, Making, made, split_line
from planning.drafting.pieces import DETAIL_PLACE, DraftPiece, Mark
from planning.drafting.rings import length_mm
from planning.drafting.seat import seat
from planning.drafting.stance import TURN_DEG, Stance

FRONT_OF_GIRTH = 0.54  # the tummy takes a little more of the girth than the back
SHOULDER_SHARE = 0.25  # of the side edge from the neck down: the notch at the arm
HIP_SHARE = {"standing": 0.66, "sitting": 0.84}  # the notch at the leg
LEG_INSET = {"standing": 0.05, "sitting": 0.16}  # of the body's width, from the side forwards
SEAT_CUT = 0.31  # of the body's width: what a flat seat takes off the length of a gore
OPENING = (0.30, 0.64)  # of the centre-back edge from the seat up: the usual opening
WIDEST_OPENING = (0.14, 0.80)


def body(
    m: BodyMeasures, neck_mm: float, stance: Stance, allowance_mm: float
) -> tuple[DraftPiece, ...]:
    """Draft the body round a neck opening of ``neck_mm`` in all."""
    front, back = _gores(m, neck_mm, stance)
    turn_mm = neck_mm * TURN_DEG / 360 if stance.is_aside else 0.0
    pieces = (
        _front(m, front, stance, turn_mm, allowance_mm),
        _back(back, stance, turn_mm, allowance_mm),
    )
    if not stance.is_sitting:
        return pieces
    return (*pieces, seat(m, length_mm(front.seat), length_mm(back.seat), allowance_mm))


def _gores(m: BodyMeasures, neck_mm: float, stance: Stance) -> tuple[Gore, Gore]:
    front_neck = _neck(FRONT_OF_GIRTH * neck_mm / 2, _front_neck)
    back_neck = _neck((1 - FRONT_OF_GIRTH) * neck_mm / 2, _back_neck)
    length = _gore_length_mm(m, stance)
    wide = _quarter_girth_mm(m, 1 - FRONT_OF_GIRTH)
    front = front_gore(front_neck, _quarter_girth_mm(m, FRONT_OF_GIRTH), length, stance.is_sitting)
    side_mm = length_mm(front.side)

    def excess(back_length_mm: float) -> float:
        back = back_gore(back_neck, wide, back_length_mm, stance.is_sitting)
        return length_mm(back.side) - side_mm

    back_length = float(brentq(excess, 0.7 * length, 1.4 * length, xtol=1e-9))
    return front, back_gore(back_neck, wide, back_length, stance.is_sitting)


def _gore_length_mm(m: BodyMeasures, stance: Stance) -> float:
    """Return the length of a gore: half the girth of an egg of the body's length and width.

    The neck takes away the top of the egg, a flat seat its bottom, and the curved edges are longer
    than the middle.
    """
    half_girth = ellipse_perimeter_mm(m.body_length_mm / 2, m.body_width_mm / 2) / 2
    whole = half_girth - 0.27 * m.body_width_mm
    return whole - SEAT_CUT * m.body_width_mm if stance.is_sitting else whole


def _quarter_girth_mm(m: BodyMeasures, share: float) -> float:
    return share * ellipse_perimeter_mm(m.body_width_mm / 2, m.body_depth_mm / 2) / 2


def _neck(target_mm: float, shape: Callable[[float], Line]) -> Line:
    """Return the neck edge of a gore, its lower end at height 0, of the length asked for."""

    def excess(width_mm: float) -> float:
        return length_mm(shape(width_mm)) - target_mm

    return shape(float(brentq(excess, 0.5 * target_mm, target_mm, xtol=1e-9)))


def _front_neck(width_mm: float) -> Line:
    """From the side to the centre front, which lies lower."""
    side, centre = (0.40 * width_mm, 0.0), (-0.60 * width_mm, -0.16 * width_mm)
    return smooth([side, centre], start_deg=204, end_deg=172)


def _back_neck(width_mm: float) -> Line:
    """From the centre back to the side."""
    centre, side = (0.60 * width_mm, 0.0), (-0.40 * width_mm, 0.0)
    return smooth([centre, side], start_deg=188, end_deg=164)


def _front(
    m: BodyMeasures, gore: Gore, stance: Stance, turn_mm: float, allowance_mm: float
) -> DraftPiece:
    side_mm = length_mm(gore.side)
    hip_share = HIP_SHARE[stance.pose]
    parts = split_line(gore.side, (1 - hip_share) * side_mm, (1 - SHOULDER_SHARE) * side_mm)
    belly = split_line(gore.centre, length_mm(gore.centre) / 2)
    shoulder, hip = parts[1][-1], parts[0][-1]
    arm_x = shoulder[0] - LEG_INSET["standing"] * m.body_width_mm
    leg_x = hip[0] - LEG_INSET[stance.pose] * m.body_width_mm
    chest = belly[0][len(belly[0]) * 2 // 3]
    return made(
        [
            *_front_neck_edges(gore.neck, turn_mm),
            Drawn("centre front, upper", belly[0], "tummy"),
            Drawn("centre front, lower", belly[1]),
            *_seat_edge(gore),
            Drawn("side, seat to hip", parts[0], "hip", is_double=True),
            Drawn("side, hip to shoulder", parts[1], "shoulder"),
            Drawn("side, shoulder to neck", parts[2]),
        ],
        Making(
            "body front",
            count=2,
            mirrored=1,
            marks=(
                Mark("arm joint", (arm_x, shoulder[1])),
                Mark("leg joint", (leg_x, hip[1])),
                Mark(DETAIL_PLACE, ((chest[0] + arm_x) / 2, chest[1])),
            ),
        ),
        allowance_mm,
    )


def _back(gore: Gore, stance: Stance, turn_mm: float, allowance_mm: float) -> DraftPiece:
    side_mm = length_mm(gore.side)
    parts = split_line(gore.side, SHOULDER_SHARE * side_mm, HIP_SHARE[stance.pose] * side_mm)
    lower, opening, upper = opened_between(gore.centre, OPENING, WIDEST_OPENING)
    return made(
        [
            *_back_neck_edges(gore.neck, turn_mm),
            Drawn("side, neck to shoulder", parts[0], "shoulder"),
            Drawn("side, shoulder to hip", parts[1], "hip", is_double=True),
            Drawn("side, hip to seat", parts[2]),
            *_seat_edge(gore),
            Drawn("centre back, lower", lower, "opening, lower end"),
            Drawn("centre back, opening", opening, "opening, upper end"),
            Drawn("centre back, upper", upper),
        ],
        Making("body back", count=2, mirrored=1, opening="centre back, opening"),
        allowance_mm,
    )


def _seat_edge(gore: Gore) -> tuple[Drawn, ...]:
    return (Drawn("seat", gore.seat),) if gore.seat else ()


def _front_neck_edges(neck: Line, turn_mm: float) -> tuple[Drawn, ...]:
    if not turn_mm:
        return (Drawn("neck", neck),)
    side, centre = split_line(neck, length_mm(neck) - turn_mm)
    return Drawn("neck, side", side, "chin, face aside"), Drawn("neck, centre", centre)


def _back_neck_edges(neck: Line, turn_mm: float) -> tuple[Drawn, ...]:
    if not turn_mm:
        return (Drawn("neck", neck),)
    centre, side = split_line(neck, turn_mm)
    return Drawn("neck, centre", centre, "nape, face aside"), Drawn("neck, side", side)

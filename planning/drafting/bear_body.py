"""The body: two fronts with a tummy, two backs with a hollow waist and a rounded seat.

Four gores meet at a point under the seat. The width of each at the neck is found so that the four
neck edges equal the neck of the head; the length of the back is found so that its side edge equals
the front's.
"""

from collections.abc import Callable

from scipy.optimize import brentq

from planning.drafting.curves import Line, ellipse_perimeter_mm, smooth
from planning.drafting.measures import BodyMeasures
from planning.drafting.outline import Drawn, Making, made, split_line
from planning.drafting.pieces import DraftPiece, Mark
from planning.drafting.rings import length_mm

FRONT_OF_GIRTH = 0.54  # the tummy takes a little more of the girth than the back
SHOULDER_SHARE = 0.25  # of the side edge from the neck down: the notch at the arm
HIP_SHARE = 0.66  # the notch at the leg
OPENING = (0.36, 0.70)  # of the centre-back edge from the neck down


def body(m: BodyMeasures, neck_mm: float, allowance_mm: float) -> tuple[DraftPiece, ...]:
    """Draft body front and body back round a neck opening of ``neck_mm`` in all."""
    front_neck = _neck(FRONT_OF_GIRTH * neck_mm / 2, _front_neck)
    back_neck = _neck((1 - FRONT_OF_GIRTH) * neck_mm / 2, _back_neck)
    length = _gore_length_mm(m)
    front_side, front_centre = _front_lines(m, front_neck, length)
    side_mm = length_mm(front_side)

    def excess(back_length_mm: float) -> float:
        return length_mm(_back_lines(m, back_neck, back_length_mm)[0]) - side_mm

    back_length = float(brentq(excess, 0.7 * length, 1.4 * length, xtol=1e-9))
    back_side, back_centre = _back_lines(m, back_neck, back_length)
    return (
        _front(m, _raised(front_neck, length), front_side, front_centre, allowance_mm),
        _back(m, _raised(back_neck, back_length), back_side, back_centre, allowance_mm),
    )


def _gore_length_mm(m: BodyMeasures) -> float:
    """Return the length of a gore: half the girth of an egg of the body's length and width.

    The neck takes away the top of the egg, and the curved edges are longer than the middle.
    """
    half_girth = ellipse_perimeter_mm(m.body_length_mm / 2, m.body_width_mm / 2) / 2
    return half_girth - 0.27 * m.body_width_mm


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


def _raised(line: Line, by_mm: float) -> Line:
    return [(x, y + by_mm) for x, y in line]


def _front_lines(m: BodyMeasures, neck: Line, length: float) -> tuple[Line, Line]:
    """Return side (seat to neck) and centre front (neck to seat)."""
    wide = _quarter_girth_mm(m, FRONT_OF_GIRTH)
    seat = (-0.02 * wide, 0.0)
    side_top, centre_top = _raised(neck, length)[0], _raised(neck, length)[-1]
    side = smooth(
        [
            seat,
            (0.33 * wide, 0.16 * length),
            (0.44 * wide, 0.38 * length),
            (0.40 * wide, 0.62 * length),
            (0.31 * wide, 0.84 * length),
            side_top,
        ],
        start_deg=40,
        end_deg=114,
    )
    centre = smooth(
        [
            centre_top,
            (-0.42 * wide, 0.80 * length),
            (-0.52 * wide, 0.60 * length),
            (-0.56 * wide, 0.38 * length),
            (-0.42 * wide, 0.15 * length),
            seat,
        ],
        start_deg=262,
        end_deg=310,
    )
    return side, centre


def _back_lines(m: BodyMeasures, neck: Line, length: float) -> tuple[Line, Line]:
    """Return side (neck to seat) and centre back (seat to neck)."""
    wide = _quarter_girth_mm(m, 1 - FRONT_OF_GIRTH)
    seat = (0.04 * wide, 0.0)
    centre_top, side_top = _raised(neck, length)[0], _raised(neck, length)[-1]
    side = smooth(
        [
            side_top,
            (-0.33 * wide, 0.84 * length),
            (-0.42 * wide, 0.62 * length),
            (-0.46 * wide, 0.38 * length),
            (-0.34 * wide, 0.15 * length),
            seat,
        ],
        start_deg=254,
        end_deg=312,
    )
    centre = smooth(
        [
            seat,
            (0.46 * wide, 0.135 * length),
            (0.60 * wide, 0.30 * length),
            (0.52 * wide, 0.48 * length),
            (0.45 * wide, 0.66 * length),
            (0.46 * wide, 0.84 * length),
            centre_top,
        ],
        start_deg=42,
        end_deg=98,
    )
    return side, centre


def _front(
    m: BodyMeasures, neck: Line, side: Line, centre: Line, allowance_mm: float
) -> DraftPiece:
    side_mm = length_mm(side)
    parts = split_line(side, (1 - HIP_SHARE) * side_mm, (1 - SHOULDER_SHARE) * side_mm)
    belly = split_line(centre, length_mm(centre) / 2)
    shoulder, hip = parts[1][-1], parts[0][-1]
    inset = 0.05 * m.body_width_mm
    return made(
        [
            Drawn("neck", neck),
            Drawn("centre front, upper", belly[0], "tummy"),
            Drawn("centre front, lower", belly[1]),
            Drawn("side, seat to hip", parts[0], "hip", is_double=True),
            Drawn("side, hip to shoulder", parts[1], "shoulder"),
            Drawn("side, shoulder to neck", parts[2]),
        ],
        Making(
            "body front",
            count=2,
            mirrored=1,
            marks=(
                Mark("arm joint", (shoulder[0] - inset, shoulder[1])),
                Mark("leg joint", (hip[0] - inset, hip[1])),
            ),
        ),
        allowance_mm,
    )


def _back(m: BodyMeasures, neck: Line, side: Line, centre: Line, allowance_mm: float) -> DraftPiece:
    side_mm, centre_mm = length_mm(side), length_mm(centre)
    parts = split_line(side, SHOULDER_SHARE * side_mm, HIP_SHARE * side_mm)
    back = split_line(centre, (1 - OPENING[1]) * centre_mm, (1 - OPENING[0]) * centre_mm)
    return made(
        [
            Drawn("neck", neck),
            Drawn("side, neck to shoulder", parts[0], "shoulder"),
            Drawn("side, shoulder to hip", parts[1], "hip", is_double=True),
            Drawn("side, hip to seat", parts[2]),
            Drawn("centre back, lower", back[0], "opening, lower end"),
            Drawn("centre back, opening", back[1], "opening, upper end"),
            Drawn("centre back, upper", back[2]),
        ],
        Making("body back", count=2, mirrored=1, opening="centre back, opening"),
        allowance_mm,
    )

"""The arm: an outer piece, and an inner piece cut across at the wrist for a paw pad.

The inner arm and the paw are the outer arm's own outline, cut apart along one curve, so their
lengths agree by construction.
"""

from planning.drafting.curves import STEPS, Line, smooth, smooth_loop, stretch_of
from planning.drafting.measures import BodyMeasures, flat_width_mm
from planning.drafting.openings import opened
from planning.drafting.outline import Drawn, Making, made
from planning.drafting.pieces import DETAIL_PLACE, DraftPiece, Mark
from planning.drafting.rings import bounds_mm

# Shares of the flat width (x) and of the length (y), anticlockwise from the shoulder; the paw
# reaches forward, to the left.
_OUTLINE = (
    (0.00, 1.000),
    (-0.36, 0.930),
    (-0.50, 0.760),
    (-0.44, 0.540),
    (-0.46, 0.340),  # front of the wrist
    (-0.60, 0.190),
    (-0.54, 0.050),
    (-0.22, 0.000),
    (0.12, 0.070),
    (0.28, 0.230),  # back of the wrist
    (0.355, 0.390),  # lower end of the usual opening
    (0.490, 0.740),  # upper end of the usual opening
    (0.37, 0.920),
)
_FRONT_WRIST, _BACK_WRIST = 4, 9
_USUAL_OPENING = (STEPS, 2 * STEPS)  # corners of the back edge, counted from the wrist
_WIDEST_OPENING = (2, 22)


def arm(m: BodyMeasures, allowance_mm: float) -> tuple[DraftPiece, ...]:
    """Draft outer arm, inner arm and paw pad."""
    wide, long = flat_width_mm(m.arm_width_mm), m.arm_length_mm
    loop = arm_outline(wide, long)
    joint = Mark("arm joint", (0.0, 0.86 * long))
    return (
        _outer(loop, joint, allowance_mm),
        _inner(loop, joint, allowance_mm),
        _paw(loop, allowance_mm),
    )


def arm_outline(wide: float, long: float) -> Line:
    """Return the closed outline of an arm this wide and long (mm), paw down and to the left."""
    return smooth_loop([(x * wide, y * long) for x, y in _OUTLINE])


def _outer(loop: Line, joint: Mark, allowance_mm: float) -> DraftPiece:
    return made(
        [
            Drawn("front", stretch_of(loop, 0, _FRONT_WRIST), "front of wrist"),
            Drawn("paw", stretch_of(loop, _FRONT_WRIST, _BACK_WRIST), "back of wrist"),
            *_back(loop),
        ],
        Making("arm outer", count=2, mirrored=1, opening="opening", marks=(joint,)),
        allowance_mm,
    )


def _inner(loop: Line, joint: Mark, allowance_mm: float) -> DraftPiece:
    return made(
        [
            Drawn("wrist", _wrist(loop)),
            *_back(loop),
            Drawn("front", stretch_of(loop, 0, _FRONT_WRIST)),
        ],
        Making("arm inner", count=2, mirrored=1, opening="opening", marks=(joint,)),
        allowance_mm,
    )


def _back(loop: Line) -> tuple[Drawn, ...]:
    back = stretch_of(loop, _BACK_WRIST, len(_OUTLINE))
    lower, opening, upper = opened(back, _USUAL_OPENING, _WIDEST_OPENING)
    return (
        Drawn("back, lower", lower, "opening, lower end"),
        Drawn("opening", opening, "opening, upper end"),
        Drawn("back, upper", upper, "shoulder"),
    )


def _paw(loop: Line, allowance_mm: float) -> DraftPiece:
    return made(
        [
            Drawn("rim", stretch_of(loop, _FRONT_WRIST, _BACK_WRIST)),
            Drawn("wrist", list(reversed(_wrist(loop)))),
        ],
        Making("paw pad", count=2, mirrored=1, marks=(_detail_place(loop),)),
        allowance_mm,
    )


def _wrist(loop: Line) -> Line:
    """Return the curve across the wrist, front to back, arched up the arm."""
    front = stretch_of(loop, _FRONT_WRIST, _BACK_WRIST)[0]
    back = stretch_of(loop, _FRONT_WRIST, _BACK_WRIST)[-1]
    return smooth([front, back], start_deg=12, end_deg=322)


def _detail_place(loop: Line) -> Mark:
    """The middle of the paw, for a monogram or a badge."""
    rim = stretch_of(loop, _FRONT_WRIST, _BACK_WRIST)
    left, low, right, high = bounds_mm(rim)
    return Mark(DETAIL_PLACE, ((left + right) / 2, (low + high) / 2))

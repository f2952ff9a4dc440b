"""The four gores of a body as lines: a tummy in front, a hollow waist and a rounded seat behind.

Standing, all four meet at a point under the seat. Sitting, they end on the rim of a flat seat, each
with an arched lower edge, so that the rim lies level once they are sewn.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from planning.drafting.curves import Line, smooth
from planning.drafting.rings import Point


@dataclass(frozen=True)
class Gore:
    """The lines of one gore; ``seat`` is its edge on the seat piece, empty where it has none.

    A front runs neck, centre, seat, side; a back runs neck, side, seat, centre.
    """

    neck: Line
    side: Line
    centre: Line
    seat: Line


def front_gore(neck: Line, wide: float, length: float, is_sitting: bool) -> Gore:
    """Return the front of a body: its neck's lower end at height 0, lifted to ``length``."""
    neck = raised(neck, length)
    if is_sitting:
        return _sitting_front(neck, wide, length)
    seat = (-0.02 * wide, 0.0)
    side = [(0.33, 0.16), (0.44, 0.38), (0.40, 0.62), (0.31, 0.84)]
    centre = [(-0.42, 0.80), (-0.52, 0.60), (-0.56, 0.38), (-0.42, 0.15)]
    return Gore(
        neck,
        smooth([seat, *_at(side, wide, length), neck[0]], start_deg=40, end_deg=114),
        smooth([neck[-1], *_at(centre, wide, length), seat], start_deg=262, end_deg=310),
        [],
    )


def back_gore(neck: Line, wide: float, length: float, is_sitting: bool) -> Gore:
    """Return the back of a body, as ``front_gore`` does the front."""
    neck = raised(neck, length)
    if is_sitting:
        return _sitting_back(neck, wide, length)
    seat = (0.04 * wide, 0.0)
    side = [(-0.33, 0.84), (-0.42, 0.62), (-0.46, 0.38), (-0.34, 0.15)]
    centre = [(0.46, 0.135), (0.60, 0.30), (0.52, 0.48), (0.45, 0.66), (0.46, 0.84)]
    return Gore(
        neck,
        smooth([neck[-1], *_at(side, wide, length), seat], start_deg=254, end_deg=312),
        smooth([seat, *_at(centre, wide, length), neck[0]], start_deg=42, end_deg=98),
        [],
    )


def _sitting_front(neck: Line, wide: float, length: float) -> Gore:
    low_centre, low_side = (-0.40 * wide, 0.0), (0.34 * wide, 0.0)
    side = [(0.46, 0.16), (0.50, 0.36), (0.42, 0.62), (0.31, 0.84)]
    centre = [(-0.42, 0.80), (-0.53, 0.58), (-0.60, 0.34), (-0.53, 0.13)]
    return Gore(
        neck,
        smooth([low_side, *_at(side, wide, length), neck[0]], start_deg=62, end_deg=114),
        smooth([neck[-1], *_at(centre, wide, length), low_centre], start_deg=262, end_deg=302),
        smooth([low_centre, low_side], start_deg=37, end_deg=327),
    )


def _sitting_back(neck: Line, wide: float, length: float) -> Gore:
    low_side, low_centre = (-0.34 * wide, 0.0), (0.44 * wide, 0.0)
    side = [(-0.33, 0.84), (-0.43, 0.62), (-0.51, 0.36), (-0.46, 0.16)]
    centre = [(0.60, 0.12), (0.68, 0.28), (0.57, 0.48), (0.46, 0.68), (0.46, 0.85)]
    return Gore(
        neck,
        smooth([neck[-1], *_at(side, wide, length), low_side], start_deg=254, end_deg=298),
        smooth([low_centre, *_at(centre, wide, length), neck[0]], start_deg=60, end_deg=98),
        smooth([low_side, low_centre], start_deg=33, end_deg=325),
    )


def _at(shares: Sequence[Point], wide: float, length: float) -> list[Point]:
    return [(x * wide, y * length) for x, y in shares]


def raised(line: Line, by_mm: float) -> Line:
    return [(x, y + by_mm) for x, y in line]

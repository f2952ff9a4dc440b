"""Smooth curves for drafting: splines through the points a drafter would mark, and ellipses.

A spline is sampled with the same number of steps at every size, so a pattern twice as tall is the
same drawing twice as large. Splines are cubic and run by chord length (C. de Boor, "A Practical
Guide to Splines", 1978).
"""

import math
from collections.abc import Sequence
from typing import Literal

import numpy as np
import numpy.typing as npt
from scipy.interpolate import CubicSpline

from planning.drafting.rings import Point

STEPS = 8  # straight steps from one marked point to the next

Line = list[Point]


def smooth(
    points: Sequence[Point], start_deg: float | None = None, end_deg: float | None = None
) -> Line:
    """Return a smooth line through ``points``, leaving and arriving at the stated headings.

    Headings are in degrees anticlockwise from +x; without one the line ends unbent.
    """
    marked: npt.NDArray[np.float64] = np.asarray(points, dtype=float)
    ends = (_end_condition(start_deg), _end_condition(end_deg))
    return _sampled(CubicSpline(_chord(marked), marked, bc_type=ends), marked)


def smooth_loop(points: Sequence[Point]) -> Line:
    """Return a smooth closed line through ``points``, its first point repeated at the end."""
    marked: npt.NDArray[np.float64] = np.asarray([*points, points[0]], dtype=float)
    return _sampled(CubicSpline(_chord(marked), marked, bc_type="periodic"), marked)


def stretch_of(loop: Line, start: int, end: int) -> Line:
    """Return the part of a sampled line between two of its marked points, counted from 0."""
    return loop[start * STEPS : end * STEPS + 1]


def ellipse_perimeter_mm(a_mm: float, b_mm: float) -> float:
    """Return the perimeter of an ellipse with half-axes ``a_mm`` and ``b_mm``.

    Ramanujan's first formula ("Modular equations and approximations to pi", Quarterly Journal of
    Mathematics 45, 1914): within 1 in 10 000 down to axes of 2 to 5, exact for the circle.

    >>> round(ellipse_perimeter_mm(10, 10) / 20, 6)
    3.141593
    """
    return math.pi * (3 * (a_mm + b_mm) - math.sqrt((3 * a_mm + b_mm) * (a_mm + 3 * b_mm)))


def _end_condition(
    heading_deg: float | None,
) -> tuple[Literal[1, 2], npt.NDArray[np.float64]]:
    """Fix the first derivative at an end to a heading, or else the second to nothing."""
    if heading_deg is None:
        return (2, np.zeros(2))
    heading = math.radians(heading_deg)
    return (1, np.array([math.cos(heading), math.sin(heading)]))


def _chord(marked: npt.NDArray[np.float64]) -> npt.NDArray[np.float64]:
    steps = np.hypot(*np.diff(marked, axis=0).T)
    return np.concatenate(([0.0], np.cumsum(steps)))


def _sampled(spline: CubicSpline, marked: npt.NDArray[np.float64]) -> Line:
    knots = _chord(marked)
    spans = [
        np.linspace(a, b, STEPS, endpoint=False) for a, b in zip(knots, knots[1:], strict=False)
    ]
    sampled = spline(np.concatenate([*spans, knots[-1:]]))
    return [(float(x), float(y)) for x, y in sampled]

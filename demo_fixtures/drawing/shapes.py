"""Drawing aids for garment outlines, in millimetres, y downwards as in a picture."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

Point = tuple[float, float]


def curve(points: Sequence[Point], per_step: int = 10, closed: bool = False) -> list[Point]:
    """A smooth path through all the points."""
    ring = (
        [points[-1], *points, points[0], points[1]] if closed else [points[0], *points, points[-1]]
    )
    path = np.array(ring, dtype=float)
    t = np.linspace(0, 1, per_step, endpoint=False)[:, None]
    pieces = [_span(path[i : i + 4], t) for i in range(len(path) - 3)]
    ends = [] if closed else [path[-1:]]
    return [(float(x), float(y)) for x, y in np.concatenate(pieces + ends)]


def _span(p: np.ndarray, t: np.ndarray) -> np.ndarray:
    """One stretch of a Catmull-Rom curve, between its second and third point."""
    return 0.5 * (
        2 * p[1]
        + (p[2] - p[0]) * t
        + (2 * p[0] - 5 * p[1] + 4 * p[2] - p[3]) * t**2
        + (3 * p[1] - p[0] - 3 * p[2] + p[3]) * t**3
    )


def mirrored(points: Sequence[Point]) -> list[Point]:
    """Left for right."""
    return [(-x, y) for x, y in points]


def symmetric(right_side: Sequence[Point]) -> list[Point]:
    """The closed outline whose right half is given from top to bottom."""
    return [*right_side, *reversed(mirrored(right_side))]


def limb(spine: Sequence[Point], half_widths: Sequence[float]) -> list[Point]:
    """A sleeve, leg or strip around its centre line; half a width for each point of the line."""
    path = np.array(spine, dtype=float)
    step = np.gradient(path, axis=0)
    step /= np.linalg.norm(step, axis=1, keepdims=True)
    across = np.column_stack([-step[:, 1], step[:, 0]])
    half = np.array(half_widths, dtype=float)[:, None]
    ring = np.concatenate([path + across * half, (path - across * half)[::-1]])
    return [(float(x), float(y)) for x, y in ring]


def widths(ends: Sequence[float], count: int) -> list[float]:
    """Half widths spread evenly along a limb."""
    return [
        float(w) for w in np.interp(np.linspace(0, 1, count), np.linspace(0, 1, len(ends)), ends)
    ]


def circle(centre: Point, radius: float, count: int = 28) -> list[Point]:
    """A round outline."""
    angles = np.linspace(0, 2 * np.pi, count, endpoint=False)
    return [
        (centre[0] + radius * float(np.cos(a)), centre[1] + radius * float(np.sin(a)))
        for a in angles
    ]


def box(left: float, top: float, right: float, bottom: float) -> list[Point]:
    """An upright rectangle."""
    return [(left, top), (right, top), (right, bottom), (left, bottom)]


def moved(points: Sequence[Point], by: Point, turn_deg: float = 0.0) -> list[Point]:
    """The points turned about the origin, then shifted."""
    angle = np.deg2rad(turn_deg)
    cos, sin = float(np.cos(angle)), float(np.sin(angle))
    return [(x * cos - y * sin + by[0], x * sin + y * cos + by[1]) for x, y in points]

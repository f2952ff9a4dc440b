"""Turning a part every way over the gauge: the narrowest round well that would still take it.

A part that leans towards the deep corner fits where it would not upright. For every tilt and turn
the part is lowered until it touches the rim plane, pushed just far enough from the slanted floor,
and shifted to where its outermost point is nearest the middle. The last is a convex problem with
one unknown: along the part's own line of symmetry, or where the floor binds, along its edge.
"""

from collections.abc import Callable
from itertools import product

import numpy as np
import numpy.typing as npt

from planning.safety.gauge import Gauge
from planning.safety.parts import Cloud, Part

Numbers = npt.NDArray[np.float64]

TILT_STEP_DEG, TURN_STEP_DEG, SPIN_STEP_DEG = 4.0, 12.0, 12.0
STARTS = 4  # coarse poses that are then refined
FINEST_DEG = 0.05
COARSE_THIRDS, FINE_THIRDS = 22, 30  # thirds taken off the bracket: 2/3 to the 30th is 5e-6


def narrowest_radius_mm(part: Part, gauge: Gauge) -> float:
    """Return the least radius of a well, floor as in ``gauge``, that would take the part."""
    cloud = part.points()
    poses = _coarse_poses(part.is_round)
    radii = _radii(cloud, poses, gauge, COARSE_THIRDS)
    best = poses[np.argsort(radii)[:STARTS]]
    return min(_refined(cloud, pose, gauge, part.is_round) for pose in best)


def _coarse_poses(is_round: bool) -> Numbers:
    """Tilt, turn and spin in degrees. Mirror symmetry of the well halves the turns."""
    tilts = np.arange(0, 180 + TILT_STEP_DEG / 2, TILT_STEP_DEG * (1 if is_round else 1.5))
    turns = np.arange(0, 180 + TURN_STEP_DEG / 2, TURN_STEP_DEG)
    spins = np.array([0.0]) if is_round else np.arange(0, 180, SPIN_STEP_DEG)
    return np.array(list(product(tilts, turns, spins)))


def _refined(cloud: Cloud, pose: Numbers, gauge: Gauge, is_round: bool) -> float:
    """Follow the neighbours of a pose downhill with ever smaller steps."""
    step = TILT_STEP_DEG
    around = np.array(list(product((-1, 0, 1), (-1, 0, 1), (0,) if is_round else (-1, 0, 1))))
    least = float("inf")
    while step > FINEST_DEG:
        near = pose + step * around
        radii = _radii(cloud, near, gauge, FINE_THIRDS)
        best = int(radii.argmin())
        if radii[best] < least - 1e-9:
            least, pose = float(radii[best]), near[best]
        else:
            step /= 2
    return least


def _radii(cloud: Cloud, poses: Numbers, gauge: Gauge, thirds: int) -> Numbers:
    """Return for each pose the least well radius, the part shifted as well as can be."""
    x, y, z = np.moveaxis(_turned(cloud, poses), 1, 0)
    down = z - z.min(axis=1, keepdims=True)
    floor = (down - gauge.middle_mm - x).max(axis=1)  # the least shift towards the deep side
    turn = np.radians(poses[:, 1])
    along_x, along_y = np.cos(turn), np.sin(turn)

    def on_axis(s: Numbers) -> Numbers:
        return _outermost(x, y, s * along_x, s * along_y)

    def on_floor(s: Numbers) -> Numbers:
        return _outermost(x, y, floor, s)

    reach = np.hypot(x, y).max(axis=1)
    free = _least(on_axis, -reach, reach, thirds)
    pushed = _least(on_floor, -reach, reach, thirds)
    return np.where(free * along_x >= floor, on_axis(free), on_floor(pushed))


def _outermost(x: Numbers, y: Numbers, shift_x: Numbers, shift_y: Numbers) -> Numbers:
    squares = (x + shift_x[:, None]) ** 2 + (y + shift_y[:, None]) ** 2
    outermost: Numbers = np.sqrt(squares.max(axis=1))
    return outermost


def _least(
    function: Callable[[Numbers], Numbers], low: Numbers, high: Numbers, thirds: int
) -> Numbers:
    """Return where each of many convex functions is least, by thirds."""
    for _ in range(thirds):
        third = (high - low) / 3
        left, right = low + third, high - third
        keep_left = function(left) < function(right)
        low, high = np.where(keep_left, low, left), np.where(keep_left, right, high)
    return (low + high) / 2


def _turned(cloud: Cloud, poses: Numbers) -> Numbers:
    """Spin about the part's own axis, tilt that axis, then turn about the gauge's axis."""
    tilt, turn, spin = np.radians(poses).T
    px, py, pz = cloud.T
    x = np.cos(spin)[:, None] * px - np.sin(spin)[:, None] * py
    y = np.sin(spin)[:, None] * px + np.cos(spin)[:, None] * py
    leaning = np.cos(tilt)[:, None] * x + np.sin(tilt)[:, None] * pz
    z = np.cos(tilt)[:, None] * pz - np.sin(tilt)[:, None] * x
    return np.stack(
        [
            np.cos(turn)[:, None] * leaning - np.sin(turn)[:, None] * y,
            np.sin(turn)[:, None] * leaning + np.cos(turn)[:, None] * y,
            z,
        ],
        axis=1,
    )

"""How laid-out cloth rises and falls: soft swells, folds, crumples, pulls and old pressed creases.

Heights are in millimetres over the table at each dot. The look follows how cloth behaves: it
bends easily one way at a time, so folds are long ridges with sharp crests, not round bumps.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

import numpy as np
from scipy.ndimage import gaussian_filter

import demo_fixtures.drawing.noise as chance
from demo_fixtures.drawing.noise import Field, between, turned

Point = tuple[float, float]


@dataclass(frozen=True)
class Pull:
    """One fold drawn by hand: from, to, its width and height, and how much it bows."""

    start: Point
    end: Point
    width_mm: float = 14.0
    height_mm: float = 4.0
    bow_mm: float = 0.0


@dataclass(frozen=True)
class Drape:
    """How a cloth lies: the strength of each kind of unevenness, and the folds drawn by hand."""

    swell_mm: float = 3.0
    fold_mm: float = 2.2
    fold_deg: float = 90.0
    fold_length_mm: float = 220.0
    fold_width_mm: float = 42.0
    crumple_mm: float = 0.5
    crumple_size_mm: float = 26.0
    pulls: Sequence[Pull] = field(default_factory=tuple)
    creases: Sequence[tuple[Point, Point]] = field(default_factory=tuple)
    crease_mm: float = 1.3
    seed: int = 1


def noise(x: Field, y: Field, feature_x: float, feature_y: float, seed: int) -> Field:
    """Chance without kinks."""
    return chance.noise(x, y, feature_x, feature_y, seed, curved=True)


def height_of(drape: Drape, x: Field, y: Field, dots_per_mm: float) -> Field:
    """The height of the cloth at each dot."""
    warp_x = x + 14 * noise(x, y, 150, 150, drape.seed + 1)
    warp_y = y + 14 * noise(x, y, 150, 150, drape.seed + 2)
    height = drape.swell_mm * noise(warp_x, warp_y, 240, 240, drape.seed + 3)
    height = height + drape.fold_mm * _folds(drape, warp_x, warp_y)
    height = height + drape.crumple_mm * _crumples(drape, warp_x, warp_y)
    for number, pull in enumerate(drape.pulls):
        height = height + _pull(pull, x, y, drape.seed + 50 + number)
    for number, (start, end) in enumerate(drape.creases):
        height = height + _crease(start, end, x, y, drape.seed + 90 + number) * drape.crease_mm
    return np.asarray(gaussian_filter(height, 1.1 * dots_per_mm), dtype=np.float32)


def _folds(drape: Drape, x: Field, y: Field) -> Field:
    """Long ridges in one main direction, here and there, with a second, weaker direction."""
    total = np.zeros_like(x)
    for turn, strength, step in ((-12.0, 1.0, 0), (17.0, 0.7, 20)):
        along, across = turned(x, y, drape.fold_deg + turn)
        seed = drape.seed + 5 + step
        ridge = noise(along, across, drape.fold_length_mm, drape.fold_width_mm, seed)
        crest = 1 - np.sqrt(np.abs(ridge) + 0.02) * 1.1
        where = between(-0.5, 1.3, noise(along, across, 260, 190, seed + 1))
        total += strength * (0.75 * ridge + 0.9 * crest) * where
    return total


def _crumples(drape: Drape, x: Field, y: Field) -> Field:
    """Small sharp-edged dents where the cloth was squeezed."""
    total = np.zeros_like(x)
    size = drape.crumple_size_mm
    for number, angle in enumerate((20.0, 75.0, 130.0)):
        along, across = turned(x, y, angle)
        seed = drape.seed + 60 + number
        dent = noise(along, across, size * 3.0, size, seed)
        total += -np.abs(dent) * between(-0.2, 1.4, noise(x, y, 130, 130, seed + 9))
    return total + 0.25 * noise(x, y, size, size, drape.seed + 70)


def _pull(pull: Pull, x: Field, y: Field, seed: int) -> Field:
    dx, dy = pull.end[0] - pull.start[0], pull.end[1] - pull.start[1]
    length = float(np.hypot(dx, dy))
    t = ((x - pull.start[0]) * dx + (y - pull.start[1]) * dy) / length**2
    across = ((y - pull.start[1]) * dx - (x - pull.start[0]) * dy) / length
    across = across - pull.bow_mm * 4 * t * (1 - t) + 2.5 * noise(x, y, 60, 60, seed)
    width = pull.width_mm * (0.55 + 0.6 * np.clip(t, 0, 1))
    taper = between(-0.02, 0.25, t) * between(1.1, 0.45, t)
    ridge = np.exp(-((np.abs(across) / width) ** 1.4)) - 0.45 * np.exp(
        -(((across - 1.7 * width) / (1.3 * width)) ** 2)
    )
    return np.asarray(pull.height_mm * taper * ridge, dtype=np.float32)


def _crease(start: Point, end: Point, x: Field, y: Field, seed: int) -> Field:
    """The line left by years in a folded pile: a low ridge, fainter in places."""
    dx, dy = end[0] - start[0], end[1] - start[1]
    length = float(np.hypot(dx, dy))
    t = ((x - start[0]) * dx + (y - start[1]) * dy) / length**2
    across = ((y - start[1]) * dx - (x - start[0]) * dy) / length
    across = across + 1.5 * noise(x, y, 90, 90, seed)
    patchy = between(-1.6, 0.8, noise(x, y, 110, 110, seed + 1))
    ends = between(-0.01, 0.04, t) * between(1.01, 0.96, t)
    return np.asarray(np.exp(-np.abs(across) / 5.0) * patchy * ends, dtype=np.float32)

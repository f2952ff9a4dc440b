"""Smooth chance, always the same for the same seed: the raw stuff of cloth, wood and light.

A tile is a square of noise that repeats without a visible join, so that any picture size can
be read from it. Every tile has mean 0 and spread 1. Nothing here knows about cloth.
"""

from __future__ import annotations

from functools import lru_cache
from typing import Any, Literal

import numpy as np
from numpy.typing import NDArray
from PIL import Image
from scipy.ndimage import gaussian_filter, map_coordinates, spline_filter

Field = NDArray[np.floating[Any]]

TILE_SIDE = 512
CELLS_PER_FEATURE = 4.0


@lru_cache(maxsize=64)
def tile(seed: int) -> Field:
    """A repeating square of blurred white noise, about `CELLS_PER_FEATURE` cells to a feature."""
    rng = np.random.default_rng(seed)
    raw = rng.standard_normal((TILE_SIDE, TILE_SIDE)).astype(np.float32)
    soft = gaussian_filter(raw, CELLS_PER_FEATURE / 2.5, mode="wrap")
    return np.asarray((soft - soft.mean()) / soft.std(), dtype=np.float32)


@lru_cache(maxsize=64)
def _curved_tile(seed: int) -> Field:
    """The tile as spline coefficients, for reading without corners between its cells."""
    return np.asarray(spline_filter(tile(seed), 3, mode="grid-wrap"), dtype=np.float32)


def noise(
    x: Field, y: Field, feature_x: float, feature_y: float, seed: int, curved: bool = False
) -> Field:
    """Noise read at the points (x, y); features are about as wide and high as asked.

    `curved` reads it without kinks, which heights need: a kink in a height is an edge in light.
    """
    rows = y * np.float32(CELLS_PER_FEATURE / feature_y) + np.float32((seed * 37) % 509)
    columns = x * np.float32(CELLS_PER_FEATURE / feature_x) + np.float32((seed * 91) % 503)
    source = _curved_tile(seed) if curved else tile(seed)
    order: Literal[1, 3] = 3 if curved else 1
    places = np.stack([rows, columns])
    read = map_coordinates(source, places, order=order, mode="grid-wrap", prefilter=False)
    return np.asarray(read, dtype=np.float32)


def layered(x: Field, y: Field, feature: float, seed: int, layers: int = 3) -> Field:
    """Several sizes of noise on top of each other, each half the size and strength of the last."""
    total = np.zeros_like(x)
    for layer in range(layers):
        size = feature / 2**layer
        total += noise(x, y, size, size, seed + 101 * layer) / np.float32(2**layer)
    return total


def turned(x: Field, y: Field, angle_deg: float) -> tuple[Field, Field]:
    """The same points, seen from axes turned by the angle."""
    angle = np.deg2rad(angle_deg)
    cos, sin = np.float32(np.cos(angle)), np.float32(np.sin(angle))
    return x * cos + y * sin, y * cos - x * sin


def resized(field: Field, height: int, width: int) -> Field:
    """The field drawn smoothly onto another grid."""
    picture = Image.fromarray(np.ascontiguousarray(field, dtype=np.float32))
    return np.asarray(picture.resize((width, height), Image.Resampling.BICUBIC), dtype=np.float32)


def between(low: float, high: float, value: Field) -> Field:
    """0 below `low`, 1 above `high`, and a smooth rise between the two."""
    t = np.clip((value - low) / (high - low), 0, 1)
    return np.asarray(t * t * (3 - 2 * t), dtype=np.float32)

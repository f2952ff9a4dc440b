"""What every cloth answers: its colour, its relief and how it throws light back.

A cloth is a function of u (across the grain) and v (along it), in millimetres, and of how many dots
of the picture make a millimetre. Colours are in linear light.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from demo_fixtures.drawing.noise import Field


@dataclass(frozen=True)
class Surface:
    """One cloth, seen at each dot of the picture."""

    colour: Field
    relief_mm: Field
    gloss: float = 0.0
    sheen: float = 0.0
    opacity: Field | None = None


Cloth = Callable[[Field, Field, float], Surface]
"""u in mm, v in mm, dots per mm -> surface."""


def linear(hex_colour: str) -> Field:
    """A colour as written on a page ('#aabbcc'), in linear light."""
    text = hex_colour.lstrip("#")
    srgb = np.array([int(text[i : i + 2], 16) / 255 for i in (0, 2, 4)], dtype=np.float32)
    return np.asarray(
        np.where(srgb <= 0.04045, srgb / 12.92, ((srgb + 0.055) / 1.055) ** 2.4), dtype=np.float32
    )


def mixed(low: Field, high: Field, share: Field) -> Field:
    """`low` where the share is 0, `high` where it is 1."""
    return np.asarray(low + (high - low) * share[..., None], dtype=np.float32)

"""Denim, satin and gauze from above."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from demo_fixtures.drawing.cloth import Surface, linear, mixed
from demo_fixtures.drawing.noise import Field, layered, noise
from demo_fixtures.drawing.prints import scattered


@dataclass(frozen=True)
class Denim:
    """Indigo warp over a white weft, with the diagonal, the streaks and the pale wear of years."""

    dark: str = "#2f3d58"
    pale: str = "#8fa3bd"
    seed: int = 3

    def __call__(self, u: Field, v: Field, dots_per_mm: float) -> Surface:
        """The surface at the given points of the cloth."""
        streak = noise(u, v, 0.9, 70, self.seed) + 0.7 * noise(u, v, 2.6, 200, self.seed + 1)
        diagonal = np.sin((u * 0.8 + v) * np.float32(2 * np.pi / 1.15) + 0.8 * noise(u, v, 3, 3, 8))
        near = float(np.clip((dots_per_mm - 1.6) / 2, 0.12, 1))
        wear = 0.27 + 0.055 * streak + 0.1 * diagonal * np.float32(near)
        wear = wear + 0.07 * layered(u, v, 120, self.seed + 2) + 0.09 * noise(u, v, 0.8, 0.8, 17)
        colour = mixed(linear(self.dark), linear(self.pale), np.clip(wear, 0, 1))
        relief = 0.05 * diagonal * np.float32(near) + 0.02 * noise(u, v, 1, 1, self.seed + 4)
        return Surface(colour, np.asarray(relief, dtype=np.float32), 0.0, 0.04)


@dataclass(frozen=True)
class Satin:
    """Long floats that lie smooth and throw back the light."""

    colour: str
    gloss: float = 0.55
    sheen: float = 0.1
    seed: int = 4

    def __call__(self, u: Field, v: Field, dots_per_mm: float) -> Surface:
        """The surface at the given points of the cloth."""
        streak = 1 + 0.02 * noise(u, v, 0.7, 60, self.seed) + 0.012 * noise(u, v, 30, 0.6, 9)
        colour = linear(self.colour) * np.asarray(streak, dtype=np.float32)[..., None]
        return Surface(colour, 0.006 * noise(u, v, 2, 14, self.seed + 2), self.gloss, self.sheen)


@dataclass(frozen=True)
class Gauze:
    """Open double gauze, puckered into small soft cells."""

    colour: str
    print_colour: str | None = None
    seed: int = 6

    def __call__(self, u: Field, v: Field, dots_per_mm: float) -> Surface:
        """The surface at the given points of the cloth."""
        sway_u = u + 2.2 * noise(u, v, 30, 30, self.seed)
        sway_v = v + 2.2 * noise(u, v, 30, 30, self.seed + 1)
        cell = np.sin(sway_u * np.float32(np.pi / 9)) * np.sin(sway_v * np.float32(np.pi / 9))
        crinkle = noise(u, v, 5, 9, self.seed + 2)
        relief = 0.35 * np.abs(cell) + 0.22 * crinkle
        thin = 1 + 0.05 * noise(u, v, 0.8, 25, self.seed + 3) + 0.05 * noise(u, v, 25, 0.8, 11)
        colour = linear(self.colour) * np.asarray(thin, dtype=np.float32)[..., None]
        if self.print_colour:
            colour = scattered(colour, u, v, self.print_colour, 42, 5.0, self.seed)
        return Surface(colour, np.asarray(relief, dtype=np.float32), 0.0, 0.06)

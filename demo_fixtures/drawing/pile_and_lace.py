"""Velvet, fleece and lace from above."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from demo_fixtures.drawing.cloth import Surface, linear
from demo_fixtures.drawing.noise import Field, between, layered, noise


@dataclass(frozen=True)
class Velvet:
    """Upright pile: dark where it faces the eye, light where it turns away or was stroked."""

    colour: str
    seed: int = 14

    def __call__(self, u: Field, v: Field, dots_per_mm: float) -> Surface:
        """The surface at the given points of the cloth."""
        stroke = layered(u, v, 90, self.seed) + 0.7 * noise(u, v, 25, 160, self.seed + 1)
        pile = noise(u, v, 0.7, 1.1, self.seed + 2)
        tint = 0.78 + 0.09 * stroke + 0.07 * pile
        colour = linear(self.colour) * np.clip(tint, 0.15, 2).astype(np.float32)[..., None]
        return Surface(colour, 0.03 * pile, 0.0, 2.4)


@dataclass(frozen=True)
class Fleece:
    """Brushed knit with a short curly pile."""

    colour: str
    curl_mm: float = 3.0
    seed: int = 15

    def __call__(self, u: Field, v: Field, dots_per_mm: float) -> Surface:
        """The surface at the given points of the cloth."""
        curl = noise(u, v, self.curl_mm, self.curl_mm, self.seed)
        fine = noise(u, v, 1.1, 1.1, self.seed + 1)
        tint = 0.9 + 0.07 * curl + 0.05 * fine + 0.04 * layered(u, v, 60, self.seed + 2)
        colour = linear(self.colour) * np.asarray(tint, dtype=np.float32)[..., None]
        relief = 0.3 * np.abs(curl) + 0.08 * fine
        return Surface(colour, np.asarray(relief, dtype=np.float32), 0.0, 0.5)


@dataclass(frozen=True)
class Lace:
    """A hexagon net carrying flowers and leaves; the ground shows through its openings."""

    colour: str
    flower_mm: float = 46.0
    net_mm: float = 2.6
    seed: int = 16

    def __call__(self, u: Field, v: Field, dots_per_mm: float) -> Surface:
        """The surface at the given points of the cloth."""
        net = self._net(u, v)
        solid = self._flowers(u, v, self.flower_mm, self.seed)
        solid = np.maximum(solid, self._flowers(u + 19, v + 31, self.flower_mm * 0.55, 5))
        thread = np.maximum(solid, net * 0.5)
        stitch = noise(u, v, 0.7, 2.2, self.seed + 1)
        tint = 1 - 0.1 * (1 - solid) + 0.05 * stitch * solid
        colour = linear(self.colour) * np.asarray(tint, dtype=np.float32)[..., None]
        relief = 0.35 * solid + 0.05 * stitch
        return Surface(
            colour, np.asarray(relief, dtype=np.float32), 0.08, 0.1, np.clip(thread, 0, 1)
        )

    def _net(self, u: Field, v: Field) -> Field:
        total = np.full_like(u, -3.0)
        for angle in (0.0, 60.0, 120.0):
            turn = np.deg2rad(angle)
            wave = np.cos(
                (u * np.cos(turn) + v * np.sin(turn)) * np.float32(2 * np.pi / self.net_mm)
            )
            total = np.maximum(total, wave)
        return between(0.55, 0.9, np.asarray(total, dtype=np.float32))

    def _flowers(self, u: Field, v: Field, every: float, seed: int) -> Field:
        row = np.floor(v / (every * 0.9))
        u = u + 0.5 * every * np.mod(row, 2)
        column = np.floor(u / every)
        chance = np.mod(np.sin(column * 12.9898 + row * 78.233 + seed) * 43758.5453, 1)
        du = u - (column + 0.5) * every - (chance - 0.5) * 0.2 * every
        dv = v - (row + 0.5) * every * 0.9 + (chance - 0.5) * 0.2 * every
        angle = np.arctan2(dv, du) + chance * 6.3
        distance = np.hypot(du, dv)
        petal = every * (0.3 + 0.09 * np.cos(6 * angle))
        flower = between(0.4, -0.4, distance - petal)
        vein = between(0.35, 0.0, np.abs(np.mod(angle * 6 / (2 * np.pi), 1) - 0.5) * distance - 0.3)
        ring = between(0.7, 0.2, np.abs(distance - every * 0.1))
        leaf = between(0.4, -0.4, np.hypot(du * 0.45 + dv * 0.2, dv * 1.3) - every * 0.16)
        holes = np.maximum(vein * between(3, 5, distance), ring)
        return np.asarray(np.maximum(flower * (1 - 0.75 * holes), leaf * 0), dtype=np.float32)

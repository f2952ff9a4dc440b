"""Small printed sprigs on any cloth."""

from __future__ import annotations

import numpy as np

from demo_fixtures.drawing.cloth import Cloth, Surface, linear, mixed
from demo_fixtures.drawing.noise import Field, between, noise


def scattered(
    colour: Field, u: Field, v: Field, hex_colour: str, every_mm: float, radius_mm: float, seed: int
) -> Field:
    """Small printed sprigs strewn over the cloth, each turned its own way."""
    i = np.floor(u / every_mm)
    j = np.floor(v / every_mm + 0.5 * np.mod(i, 2))
    chance = np.mod(np.sin(i * 12.9898 + j * 78.233 + seed) * 43758.5453, 1)
    turn = np.asarray(chance * 2 * np.pi, dtype=np.float32)
    du = u - (i + 0.5) * every_mm - (chance - 0.5) * every_mm * 0.3
    dv = v - (j + 0.5 - 0.5 * np.mod(i, 2)) * every_mm - (turn - 3) * every_mm * 0.05
    angle = np.arctan2(dv, du) + turn
    petal = radius_mm * (0.62 + 0.38 * np.cos(5 * angle))
    distance = np.hypot(du, dv)
    inside = between(0.35, -0.35, distance - petal) - between(0.4, -0.2, distance - radius_mm * 0.2)
    wear = 0.85 + 0.1 * noise(u, v, 1.2, 1.2, seed + 77)
    return mixed(colour, linear(hex_colour), np.clip(inside * wear, 0, 1))


def printed(base: Cloth, hex_colour: str, every_mm: float, radius_mm: float, seed: int) -> Cloth:
    """Any cloth with sprigs printed on it."""

    def cloth(u: Field, v: Field, dots_per_mm: float) -> Surface:
        under = base(u, v, dots_per_mm)
        colour = scattered(under.colour, u, v, hex_colour, every_mm, radius_mm, seed)
        return Surface(colour, under.relief_mm, under.gloss, under.sheen, under.opacity)

    return cloth

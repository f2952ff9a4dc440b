"""What the garments lie on: an oiled oak table or a bench covered with undyed linen."""

from __future__ import annotations

import numpy as np

from demo_fixtures.drawing.cloth import Surface, linear, mixed
from demo_fixtures.drawing.noise import Field, between, layered, noise
from demo_fixtures.drawing.weave import Bands, Weave

LINEN = Weave(
    warp=Bands("#c8beac"),
    weft=Bands("#d3cabb"),
    pitch_mm=0.75,
    slub=0.05,
    fade=0.02,
    seed=210,
)
COTTON_SHEET = Weave(
    warp=Bands("#e6e1d6"), weft=Bands("#ece8de"), pitch_mm=0.4, slub=0.03, fade=0.015, seed=230
)


def oak(base: str = "#9c7753", dark: str = "#513826", plank_mm: float = 168.0, seed: int = 300):
    """An oak table top, planks along x."""

    def cloth(u: Field, v: Field, dots_per_mm: float) -> Surface:
        plank = np.floor(v / plank_mm)
        inside = v - plank * plank_mm
        chance = np.mod(np.sin(plank * 91.17 + seed) * 4375.85, 1).astype(np.float32)
        along = u + chance * 3000
        across = inside + chance * 700
        share = _grain(along, across, seed) + 0.36 * (chance - 0.5)
        colour = mixed(linear(base), linear(dark), np.clip(share, 0, 1))
        warm = 1 + 0.06 * layered(along, across, 300, seed + 7)
        warm = warm * (1 + 0.05 * layered(u, v, 420, seed + 8))
        gap = between(1.5, 0.3, np.minimum(inside, plank_mm - inside))
        colour = colour * (warm * (1 - 0.7 * gap))[..., None]
        pores = noise(along, across, 9, 0.9, seed + 3)
        edge = np.minimum(inside, plank_mm - inside)
        relief = -0.03 * between(0.8, 1.6, pores) - 0.9 * np.exp(-edge / 1.4)
        return Surface(colour, np.asarray(relief, dtype=np.float32), 0.05, 0.0)

    return cloth


def _grain(along: Field, across: Field, seed: int) -> Field:
    """How dark the wood is, 0 to 1: year rings cut at a slant, fibres, pores."""
    swing = 26 * noise(along, across, 900, 130, seed) + 5 * noise(along, across, 260, 60, seed + 1)
    ring = np.mod((across + swing) / 13.0, 1)
    year = between(0.0, 0.75, ring) * between(1.0, 0.86, ring)
    fibre = noise(along, across, 70, 1.4, seed + 2)
    streak = noise(along, across, 380, 7, seed + 4)
    pores = between(0.9, 1.9, noise(along, across, 14, 0.9, seed + 3))
    share = 0.30 + 0.17 * (year - 0.5) + 0.045 * fibre + 0.05 * streak + 0.22 * pores
    return np.asarray(share, dtype=np.float32)

"""Knitted cloth from above: jersey, rib, and sweater knit with cables."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from demo_fixtures.drawing.cloth import Surface, linear
from demo_fixtures.drawing.noise import Field, between, layered, noise
from demo_fixtures.drawing.weave import Bands


@dataclass(frozen=True)
class Jersey:
    """Fine knit: columns of loops so small that they show as faint upright lines."""

    colour: str
    wale_mm: float = 0.8
    heather: float = 0.03
    bands: Bands | None = None
    seed: int = 11

    def __call__(self, u: Field, v: Field, dots_per_mm: float) -> Surface:
        """The surface at the given points of the cloth."""
        u = u + 0.25 * noise(u, v, 8, 60, self.seed)
        near = float(np.clip((self.wale_mm * dots_per_mm - 1.5) / 3, 0.08, 1))
        column = np.cos(u * np.float32(2 * np.pi / self.wale_mm))
        loop = np.cos((v + 0.35 * np.abs(column)) * np.float32(2 * np.pi / (self.wale_mm * 0.75)))
        knit = (0.6 * column + 0.4 * loop) * np.float32(near)
        tint = 1 + self.heather * noise(u, v, 0.7, 3.5, self.seed + 1) + 0.07 * knit
        tint = tint + 0.025 * layered(u, v, 130, self.seed + 3)
        base = self.bands.at(v) if self.bands else linear(self.colour)
        colour = base * np.asarray(tint, dtype=np.float32)[..., None]
        relief = 0.05 * knit + 0.02 * noise(u, v, 1.5, 1.5, self.seed + 2)
        return Surface(colour, np.asarray(relief, dtype=np.float32), 0.0, 0.08)


@dataclass(frozen=True)
class Rib:
    """Upright ridges with deep grooves, as at cuffs and neckbands."""

    colour: str
    pitch_mm: float = 2.6
    depth_mm: float = 0.35
    seed: int = 12

    def __call__(self, u: Field, v: Field, dots_per_mm: float) -> Surface:
        """The surface at the given points of the cloth."""
        u = u + 0.2 * self.pitch_mm * noise(u, v, 20, 60, self.seed)
        wave = 0.5 + 0.5 * np.cos(u * np.float32(2 * np.pi / self.pitch_mm))
        ridge = np.sqrt(wave)
        tint = 0.72 + 0.28 * ridge + 0.04 * noise(u, v, 0.8, 2.0, self.seed + 1)
        colour = linear(self.colour) * np.asarray(tint, dtype=np.float32)[..., None]
        relief = self.depth_mm * ridge + 0.02 * noise(u, v, 1.2, 1.2, self.seed + 2)
        return Surface(colour, np.asarray(relief, dtype=np.float32), 0.0, 0.1)


@dataclass(frozen=True)
class SweaterKnit:
    """Stocking stitch big enough to count, with cables on request."""

    colour: str
    stitch_mm: float = 4.6
    row_mm: float = 3.4
    cable_every_mm: float = 0.0
    cable_width_mm: float = 34.0
    fleck: float = 0.05
    bands: Bands | None = None
    seed: int = 13

    def __call__(self, u: Field, v: Field, dots_per_mm: float) -> Surface:
        """The surface at the given points of the cloth."""
        u = u + 0.5 * noise(u, v, 30, 70, self.seed)
        v = v + 0.5 * noise(u, v, 70, 30, self.seed + 1)
        stitch = self._stitches(u, v)
        relief = 0.7 * stitch
        if self.cable_every_mm:
            stitch, relief = self._with_cables(u, v, stitch, relief)
        hair = noise(u, v, 0.8, 0.8, self.seed + 2)
        tint = 0.42 + 0.58 * stitch + self.fleck * hair + 0.03 * layered(u, v, 90, self.seed + 3)
        base = self.bands.at(v) if self.bands else linear(self.colour)
        colour = base * np.asarray(tint, dtype=np.float32)[..., None]
        relief = relief + 0.05 * hair
        return Surface(colour, np.asarray(relief, dtype=np.float32), 0.0, 0.14)

    def _stitches(self, u: Field, v: Field) -> Field:
        fu = np.mod(u / self.stitch_mm, 1) - 0.5
        side = np.abs(fu)
        lean = v / self.row_mm - side * 1.5
        fv = np.mod(lean, 1) - 0.5
        strand = np.sqrt(np.clip(1 - (fv * 1.85) ** 2, 0, 1))
        leg = np.sqrt(np.clip(1 - ((side - 0.25) * 3.7) ** 2, 0, 1))
        return np.asarray(strand * leg, dtype=np.float32)

    def _with_cables(self, u: Field, v: Field, stitch: Field, relief: Field) -> tuple[Field, Field]:
        centre = np.mod(u + self.cable_every_mm / 2, self.cable_every_mm) - self.cable_every_mm / 2
        half = self.cable_width_mm / 2
        inside = between(half, half - 1.5, np.abs(centre))
        best = np.full_like(u, -1.0)
        tone = np.zeros_like(u)
        for strand in range(2):
            phase = v * np.float32(2 * np.pi / (self.cable_width_mm * 2.1)) + strand * np.pi
            middle = 0.42 * half * np.sin(phase)
            slope = np.cos(phase)
            offset = (centre - middle) / (0.56 * half)
            body = np.sqrt(np.clip(1 - offset**2, 0, 1)) * (0.8 + 0.3 * slope)
            loops = self._stitches(offset * self.stitch_mm * 1.5, v + centre * slope * 0.5)
            tone = np.where(body > best, 0.62 * loops + 0.38 * np.clip(body, 0, 1), tone)
            best = np.maximum(best, body)
        gutter = between(half + 4, half + 1, np.abs(centre)) * (1 - inside)
        stitch = stitch * (1 - inside) * (1 - 0.45 * gutter) + tone * inside
        rope = 2.4 * np.clip(best, 0, 1.1) + 0.6 * tone
        relief = relief * (1 - inside) + (rope - 0.8 * gutter) * inside - 0.6 * gutter
        return np.asarray(stitch, dtype=np.float32), np.asarray(relief, dtype=np.float32)

"""Woven cloth from above, thread by thread where the picture is near enough.

Threads finer than two dots of the picture melt into their mixed colour, as they do in a camera.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

import numpy as np

from demo_fixtures.drawing.cloth import Cloth, Surface, linear, mixed
from demo_fixtures.drawing.noise import Field, layered, noise, turned


@dataclass(frozen=True)
class Bands:
    """Threads of several colours in order: the ground, then (start, width, colour) bands, in mm."""

    ground: str
    repeat_mm: float = 100.0
    bands: Sequence[tuple[float, float, str]] = field(default_factory=tuple)

    def at(self, t_mm: Field) -> Field:
        """The colour of the thread lying at t."""
        phase = np.mod(t_mm, self.repeat_mm)
        colour = np.broadcast_to(linear(self.ground), (*t_mm.shape, 3))
        for start, width, hex_colour in self.bands:
            inside = np.clip((width / 2 - np.abs(phase - start - width / 2)) / 0.25 + 0.5, 0, 1)
            colour = mixed(colour, linear(hex_colour), inside)
        return np.asarray(colour, dtype=np.float32)


@dataclass(frozen=True)
class Weave:
    """A woven cloth: warp and weft colours, thread pitch, and how the threads cross."""

    warp: Bands
    weft: Bands
    pitch_mm: float = 0.35
    twill: int = 0
    """0 for plain weave, else the number of threads in one step of the diagonal."""
    warp_share: float = 0.5
    slub: float = 0.06
    fuzz: float = 0.0
    gloss: float = 0.0
    sheen: float = 0.05
    fade: float = 0.03
    seed: int = 1

    def __call__(self, u: Field, v: Field, dots_per_mm: float) -> Surface:
        """The surface at the given points of the cloth."""
        u, v = self._brushed(u, v, dots_per_mm)
        near = float(np.clip((self.pitch_mm * dots_per_mm - 2.0) / 2.5, 0, 1))
        warp = self.warp.at(u) * self._slubs(u, v)[..., None]
        weft = self.weft.at(v) * self._slubs(v, u, 7)[..., None]
        share = np.full_like(u, self.warp_share)
        relief = 0.012 * noise(u, v, 1.2, 1.2, self.seed + 5)
        if near > 0:
            top, bump = self._crossing(u, v)
            share = share + (top - share) * np.float32(0.78 * near)
            relief = relief + bump * np.float32(0.3 * self.pitch_mm * near)
            shade = 1 - np.float32(0.42 * near) * (1 - bump)
            warp, weft = warp * shade[..., None], weft * shade[..., None]
        colour = mixed(weft, warp, share)
        if self.fuzz > 0:
            nap = noise(u, v, 0.7, 2.6, self.seed + 33)
            colour = colour * (1 + 0.3 * self.fuzz * nap)[..., None]
        colour = colour * (1 + self.fade * layered(u, v, 160, self.seed + 9))[..., None]
        return Surface(colour, relief, self.gloss, self.sheen + self.fuzz * 1.4)

    def _brushed(self, u: Field, v: Field, dots_per_mm: float) -> tuple[Field, Field]:
        if self.fuzz <= 0:
            return u, v
        blur = np.float32(self.fuzz)
        return (
            u + blur * noise(u, v, 1.4, 1.4, self.seed + 31),
            v + blur * noise(u, v, 1.4, 1.4, self.seed + 32),
        )

    def _slubs(self, across: Field, along: Field, shift: int = 0) -> Field:
        pitch = max(self.pitch_mm, 0.3)
        fine = noise(across, along, pitch * 1.4, 45 * pitch, self.seed + shift)
        broad = noise(across, along, pitch * 6, 260 * pitch, self.seed + shift + 1)
        return np.asarray(1 + self.slub * (fine + 0.28 * broad), dtype=np.float32)

    def _crossing(self, u: Field, v: Field) -> tuple[Field, Field]:
        """Which thread lies on top (1 warp, 0 weft), and how high it stands (0 to 1)."""
        sway = 0.12 * self.pitch_mm
        u = u + sway * noise(u, v, 1.5, 12, self.seed + 41)
        v = v + sway * noise(u, v, 12, 1.5, self.seed + 42)
        i, j = np.floor(u / self.pitch_mm), np.floor(v / self.pitch_mm)
        across, along = u / self.pitch_mm - i - 0.5, v / self.pitch_mm - j - 0.5
        if self.twill:
            top = (np.mod(i + j, self.twill) != 0).astype(np.float32)
        else:
            top = np.mod(i + j, 2).astype(np.float32)
        round_warp = np.sqrt(np.clip(1 - (across * 1.9) ** 2, 0, 1))
        round_weft = np.sqrt(np.clip(1 - (along * 1.9) ** 2, 0, 1))
        dip = 1 - 0.9 * np.where(top > 0, along, across) ** 2 * (1 if self.twill else 2)
        bump = np.where(top > 0, round_warp, round_weft) * dip
        return top, np.asarray(bump, dtype=np.float32)


@dataclass(frozen=True)
class Turned:
    """A cloth cut at a slant, as ties are."""

    base: Cloth
    turn_deg: float

    def __call__(self, u: Field, v: Field, dots_per_mm: float) -> Surface:
        """The surface at the given points of the cloth."""
        return self.base(*turned(u, v, self.turn_deg), dots_per_mm)

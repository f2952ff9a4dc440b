"""What years leave on cloth: stains and worn places; and what hands add: a sprig, rubbery print."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from demo_fixtures.drawing.cloth import Cloth, Surface, linear, mixed
from demo_fixtures.drawing.noise import Field, between, layered, noise


@dataclass(frozen=True)
class Stained:
    """A cloth with one old spill: a faint middle and a darker, wandering tide line."""

    base: Cloth
    u_mm: float
    v_mm: float
    radius_mm: float
    colour: str = "#8a6a3f"
    strength: float = 0.75

    def __call__(self, u: Field, v: Field, dots_per_mm: float) -> Surface:
        """The surface at the given points of the cloth."""
        under = self.base(u, v, dots_per_mm)
        wander = (
            0.15 * self.radius_mm * noise(u, v, self.radius_mm * 1.6, self.radius_mm * 1.6, 501)
        )
        wander = wander + 0.9 * noise(u, v, 9, 9, 502)
        reach = np.hypot((u - self.u_mm) * 0.9, v - self.v_mm) + wander
        inside = between(self.radius_mm + 0.8, self.radius_mm - 1.6, reach)
        tide = np.exp(-(((reach - self.radius_mm + 1.6) / 2.8) ** 2))
        body = 0.48 + 0.20 * layered(u, v, 26, 503)
        share = np.clip(self.strength * (inside * body + 0.30 * tide * inside), 0, 0.9)
        tint = 0.45 * linear(self.colour) + 0.75 * under.colour * linear(self.colour) ** 0.4
        return replace(under, colour=mixed(under.colour, tint, share))


@dataclass(frozen=True)
class Worn:
    """A cloth rubbed thin in one place: paler, with the crossing threads showing."""

    base: Cloth
    u_mm: float
    v_mm: float
    reach_u_mm: float
    reach_v_mm: float
    pale: str = "#cfc2b4"

    def __call__(self, u: Field, v: Field, dots_per_mm: float) -> Surface:
        """The surface at the given points of the cloth."""
        under = self.base(u, v, dots_per_mm)
        reach = np.hypot((u - self.u_mm) / self.reach_u_mm, (v - self.v_mm) / self.reach_v_mm)
        reach = reach + 0.13 * layered(u, v, 40, 511)
        rubbed = between(1.0, 0.25, reach)
        ladder = between(0.0, 1.2, noise(u, v, 11, 0.9, 513))
        strands = between(0.2, 1.3, noise(u, v, 0.8, 9, 514)) * between(0.5, 0.95, rubbed)
        share = np.clip(rubbed * (0.12 + 0.10 * ladder + 0.30 * strands), 0, 0.6)
        colour = mixed(under.colour, linear(self.pale), np.asarray(share, dtype=np.float32))
        dip = under.relief_mm - 0.5 * rubbed
        return replace(under, colour=colour, relief_mm=np.asarray(dip, dtype=np.float32))


@dataclass(frozen=True)
class RubberyPrint:
    """A raised plastic print of a sun over waves, cracked by many washes."""

    base: Cloth
    u_mm: float
    v_mm: float
    radius_mm: float
    sun: str = "#d9902f"
    wave: str = "#e9e3d2"

    def __call__(self, u: Field, v: Field, dots_per_mm: float) -> Surface:
        """The surface at the given points of the cloth."""
        under = self.base(u, v, dots_per_mm)
        du, dv = u - self.u_mm, v - self.v_mm
        sun = between(0.5, -0.5, np.hypot(du, dv) - self.radius_mm)
        sun = sun * between(-0.4, 0.4, self.radius_mm * 0.28 - dv)
        wave = np.zeros_like(u)
        for row in range(3):
            line = dv - self.radius_mm * (0.48 + 0.27 * row) - 4.5 * np.sin(du / 11 + row * 1.4)
            ends = between(0.5, -0.5, np.abs(du) - self.radius_mm * (1.25 - 0.22 * row))
            wave = np.maximum(wave, between(0.5, -0.5, np.abs(line) - 4.2) * ends)
        crack = between(1.15, 1.6, noise(u, v, 15, 1.5, 521))
        crack = np.maximum(crack, between(1.3, 1.7, noise(u, v, 1.5, 11, 523)))
        crack = crack * between(-0.8, 0.8, noise(u, v, 60, 60, 525))
        colour = mixed(under.colour, linear(self.sun), sun * (1 - 0.9 * crack))
        colour = mixed(colour, linear(self.wave), wave * (1 - 0.9 * crack))
        relief = under.relief_mm + 0.22 * np.maximum(sun, wave) * (1 - crack)
        return replace(under, colour=colour, relief_mm=np.asarray(relief, dtype=np.float32))


@dataclass(frozen=True)
class Embroidered:
    """Satin-stitch leaves on a curved stem, worked on any cloth."""

    base: Cloth
    u_mm: float
    v_mm: float
    size_mm: float
    thread: str = "#334a80"
    leaves: Sequence[tuple[float, float, float]] = (
        (-0.42, 0.18, -50),
        (0.40, 0.02, 48),
        (-0.34, -0.30, -38),
        (0.30, -0.42, 34),
        (0.0, -0.72, 0),
    )

    def __call__(self, u: Field, v: Field, dots_per_mm: float) -> Surface:
        """The surface at the given points of the cloth."""
        under = self.base(u, v, dots_per_mm)
        du, dv = (u - self.u_mm) / self.size_mm, (v - self.v_mm) / self.size_mm
        height = np.zeros_like(u)
        lines = np.zeros_like(u)
        for x, y, lean in self.leaves:
            angle = np.deg2rad(lean)
            along = (du - x) * np.sin(angle) - (dv - y) * np.cos(angle)
            across = (du - x) * np.cos(angle) + (dv - y) * np.sin(angle)
            ragged = 0.006 * noise(u, v, 0.5, 0.5, 531)
            edge = 0.17 * np.clip(1 - (along / 0.34) ** 2, 0, 1) ** 0.8 + ragged
            inside = between(0.02, -0.02, np.abs(across) - edge) * (np.abs(along) < 0.34)
            slant = (along - 0.9 * np.abs(across)) * self.size_mm
            lines = np.where(inside > 0.5, np.sin(slant * np.float32(2 * np.pi / 0.55)), lines)
            dome = np.sqrt(np.clip(1 - (across / (edge + 1e-3)) ** 2, 0, 1))
            height = np.maximum(height, inside * (0.35 + 0.65 * dome))
        stem = np.abs(du - 0.05 * np.sin(dv * 4)) - 0.026
        on_stem = between(0.02, -0.01, stem) * between(0.02, -0.02, np.abs(dv + 0.02) - 0.62)
        lines = np.where(height > 0.05, lines, np.sin((du + dv) * self.size_mm * 8))
        height = np.maximum(height, on_stem * 0.8)
        tint = (0.95 + 0.38 * lines + 0.5 * (height - 0.5)).astype(np.float32)
        cover = np.clip(height * 6, 0, 1)
        colour = mixed(under.colour, linear(self.thread) * tint[..., None], cover)
        shade = 1 - 0.22 * between(0.0, 0.5, height) * (1 - cover)
        relief = under.relief_mm + 0.55 * height + 0.05 * lines * cover
        return replace(
            under, colour=colour * shade[..., None], relief_mm=np.asarray(relief, np.float32)
        )

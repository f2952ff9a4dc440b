"""What woven cloth looks like from above, thread by thread where the picture is near enough.

Every cloth is a function of u (across the grain) and v (along it), in millimetres, and answers
with a `Surface`: colour in linear light, relief in millimetres, and how it throws light back.
Threads finer than two dots of the picture melt into their mixed colour, as they do in a camera.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field

import numpy as np

from demo_fixtures.noise import Field, between, layered, noise, turned


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


@dataclass(frozen=True)
class Turned:
    """A cloth cut at a slant, as ties are."""

    base: Cloth
    turn_deg: float

    def __call__(self, u: Field, v: Field, dots_per_mm: float) -> Surface:
        """The surface at the given points of the cloth."""
        return self.base(*turned(u, v, self.turn_deg), dots_per_mm)


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

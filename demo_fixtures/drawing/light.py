"""Daylight from a window at the upper left, and what a camera does with it afterwards."""

from __future__ import annotations

import numpy as np
from PIL import Image
from scipy.ndimage import gaussian_filter

from demo_fixtures.drawing.cloth import Surface
from demo_fixtures.drawing.noise import Field

LAMP = np.array([-0.50, -0.56, 0.66], dtype=np.float32)
WARM = np.array([1.05, 1.0, 0.93], dtype=np.float32)
COOL = np.array([0.94, 0.99, 1.08], dtype=np.float32)
AMBIENT = 0.31


def lit(surface: Surface, height_mm: Field, dots_per_mm: float, strength: float = 1.0) -> Field:
    """The colour of the surface under the lamp, given the height of the cloth at each dot."""
    normal = _normal(height_mm * np.float32(strength) + surface.relief_mm, dots_per_mm)
    facing = np.clip(normal @ LAMP, 0, None) / LAMP[2]
    hollow = np.clip(1 + _hollow(height_mm, dots_per_mm) * strength, 0.55, 1.15)
    key = (facing * (1 - AMBIENT))[..., None] * WARM
    fill = (AMBIENT * hollow)[..., None] * COOL
    colour = surface.colour * (key + fill)
    if surface.sheen:
        graze = (1 - normal[..., 2]) * np.float32(surface.sheen)
        colour = colour * (1 + graze * (0.4 + facing))[..., None]
    if surface.gloss:
        colour = (
            colour * (1 - 0.25 * min(surface.gloss, 1)) + _shine(normal, surface)[..., None] * WARM
        )
    return np.asarray(colour, dtype=np.float32)


def _normal(height_mm: Field, dots_per_mm: float) -> Field:
    down, right = np.gradient(height_mm)
    slope = np.float32(dots_per_mm)
    normal = np.dstack([-right * slope, -down * slope, np.ones_like(height_mm)])
    return np.asarray(normal / np.linalg.norm(normal, axis=2, keepdims=True), dtype=np.float32)


def _hollow(height_mm: Field, dots_per_mm: float) -> Field:
    """Below zero in valleys, above zero on crests: less sky is seen from a valley."""
    near = gaussian_filter(height_mm, 7 * dots_per_mm)
    return np.asarray(np.clip((height_mm - near) * 0.16, -0.5, 0.2), dtype=np.float32)


def _shine(normal: Field, surface: Surface) -> Field:
    steeper = normal * np.array([1.7, 1.7, 1.0], dtype=np.float32)
    steeper = steeper / np.linalg.norm(steeper, axis=2, keepdims=True)
    half = LAMP / np.linalg.norm(LAMP) + np.array([0, 0, 1], dtype=np.float32)
    half = half / np.linalg.norm(half)
    facing = np.clip(steeper @ half, 0, 1)
    tone = surface.colour.mean(axis=2)
    return np.asarray(
        surface.gloss * (0.30 + 0.7 * tone) * (0.75 * facing**18 + 0.30 * facing**5), np.float32
    )


def developed(picture: Field, seed: int, exposure: float = 1.0) -> Image.Image:
    """The finished photograph: light fall-off, tone curve, grain."""
    height, width = picture.shape[:2]
    y, x = np.mgrid[-1 : 1 : height * 1j, -1 : 1 : width * 1j].astype(np.float32)
    window = 1.06 - 0.11 * x - 0.09 * y
    vignette = 1 - 0.17 * np.clip((x**2 + y**2) / 2, 0, 1) ** 1.4
    light = np.clip(picture * (window * vignette * exposure)[..., None], 0, None)
    toned = light * (1 + 0.10 * light) / (1 + 0.22 * light)
    srgb = np.where(toned <= 0.0031308, toned * 12.92, 1.055 * toned ** (1 / 2.4) - 0.055)
    grey = srgb.mean(axis=2, keepdims=True)
    srgb = grey + 0.86 * (srgb - grey)
    srgb = srgb + 0.028 * np.sin((np.clip(srgb, 0, 1) - 0.5) * 2 * np.pi) * 0.9
    rng = np.random.default_rng(seed)
    grain = gaussian_filter(rng.standard_normal((height, width)).astype(np.float32), 0.7)
    srgb = srgb + (0.013 * (1.15 - np.clip(srgb.mean(axis=2), 0, 1)) * grain)[..., None]
    dots = np.clip(srgb * 255 + 0.5, 0, 255).astype(np.uint8)
    return Image.fromarray(dots)

"""A table top in millimetres on which parts of garments are laid one after another.

Each part has an outline, a cloth and a thickness; it follows the folds of the whole garment,
throws a soft shadow on what lies under it and rounds off at its edges. Lines on a part are
seams (a groove), stitches (dashes of thread) or plain drawn lines.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field, replace

import numpy as np
from PIL import Image, ImageDraw
from scipy.ndimage import distance_transform_edt, gaussian_filter
from scipy.spatial import cKDTree

from demo_fixtures.drawing.cloth import Cloth, Surface, linear
from demo_fixtures.drawing.folds import Drape, height_of
from demo_fixtures.drawing.light import lit
from demo_fixtures.drawing.noise import Field, between, noise, resized, turned
from demo_fixtures.drawing.shapes import Point

Outline = Sequence[Point]
Window = tuple[slice, slice]
COARSE = 3
"""Folds and edge distances are worked out on a grid this many times coarser."""


@dataclass(frozen=True)
class Line:
    """A seam, a row of stitches or a hem on a part."""

    points: Outline
    kind: str = "seam"
    """"seam" (groove), "stitch" (thread dashes), "pucker" (gathers beside a hidden seam)."""
    colour: str = "#ffffff"
    width_mm: float = 1.2
    depth_mm: float = 0.9


@dataclass(frozen=True)
class Part:
    """One piece of cloth lying on the table."""

    outline: Outline
    cloth: Cloth
    grain_deg: float = 0.0
    spine: Outline = ()
    thickness_mm: float = 1.6
    round_mm: float = 5.0
    shadow: float = 0.55
    shadow_mm: float = 5.0
    tone: float = 1.0
    fold_share: float = 1.0
    wobble_mm: float = 3.0
    fuzz_mm: float = 0.0
    lines: Sequence[Line] = field(default_factory=tuple)
    uv_shift: Point = (0.0, 0.0)
    flush: Sequence[Outline] = field(default_factory=tuple)
    """Neighbours sewn on without a step: no rounded edge and no shadow where they meet."""


@dataclass
class Scene:
    """The picture being built, in linear light."""

    width_mm: float
    height_mm: float
    dots_per_mm: float
    seed: int
    drape: Drape

    def __post_init__(self) -> None:
        rows = round(self.height_mm * self.dots_per_mm)
        columns = round(self.width_mm * self.dots_per_mm)
        y, x = np.mgrid[0:rows, 0:columns].astype(np.float32)
        self.x: Field = (x + 0.5) / np.float32(self.dots_per_mm)
        self.y: Field = (y + 0.5) / np.float32(self.dots_per_mm)
        coarse_x, coarse_y = self.x[::COARSE, ::COARSE], self.y[::COARSE, ::COARSE]
        height = height_of(self.drape, coarse_x, coarse_y, self.dots_per_mm / COARSE)
        self.folds: Field = resized(height, rows, columns)
        slopes = np.gradient(self.folds)
        self.slope_x: Field = np.asarray(slopes[1]) * np.float32(self.dots_per_mm)
        self.slope_y: Field = np.asarray(slopes[0]) * np.float32(self.dots_per_mm)
        self.picture: Field = np.zeros((rows, columns, 3), dtype=np.float32)

    def cover(self, ground: Cloth, height_mm: Field | None = None, turn_deg: float = 0) -> None:
        """Lay the table itself."""
        u, v = turned(self.x, self.y, turn_deg)
        height = np.zeros_like(self.x) if height_mm is None else height_mm
        self.picture = lit(ground(u, v, self.dots_per_mm), height, self.dots_per_mm)

    def shade_under(self, parts: Sequence[Part], lift_mm: float) -> None:
        """The soft shadow of the whole garment on the table."""
        whole = np.zeros(self.x.shape, dtype=np.float32)
        for part in parts:
            whole = np.maximum(whole, self._mask(part.outline, part.wobble_mm))
        for reach, strength in ((1.0, 0.50), (3.0, 0.42), (9.0, 0.26)):
            self._darken(whole, lift_mm * reach * 0.7, lift_mm * reach, strength)

    def lay(self, part: Part) -> None:
        """Put one part on top of what lies there already."""
        mask = self._mask(part.outline, part.wobble_mm, part.fuzz_mm)
        rows, columns = np.nonzero(mask > 0.003)
        if rows.size == 0:
            return
        margin = round(24 * self.dots_per_mm)
        window = (
            slice(max(rows.min() - margin, 0), rows.max() + margin),
            slice(max(columns.min() - margin, 0), columns.max() + margin),
        )
        calm = self._calm(part)
        if part.shadow:
            offset = part.shadow_mm
            self._darken(mask, offset * 0.55, offset * 0.6, part.shadow * 0.7, window, calm)
            self._darken(mask, offset * 1.2, offset * 1.6, part.shadow * 0.5, window, calm)
        self._paint(part, mask[window], calm[window], window)

    def _calm(self, part: Part) -> Field:
        """1 where the part is sewn on flush, falling softly to 0 elsewhere."""
        calm = np.zeros_like(self.x)
        for outline in part.flush:
            calm = np.maximum(calm, self._mask(outline, part.wobble_mm))
        if not part.flush:
            return calm
        small = gaussian_filter(calm[::COARSE, ::COARSE], 9.0 * self.dots_per_mm / COARSE)
        return np.clip(1.9 * resized(small, *calm.shape) - 0.1, 0, 1)

    def _paint(self, part: Part, mask: Field, calm: Field, window: Window) -> None:
        u, v = self._cloth_place(part, window)
        surface = part.cloth(u, v, self.dots_per_mm)
        height = self.folds[window] * np.float32(part.fold_share)
        height = height + self._edge(mask, part) * (1 - calm) + part.thickness_mm * calm
        groove, thread = self._drawn_lines(part, window)
        colour = lit(surface, height + groove, self.dots_per_mm)
        colour = colour * np.float32(part.tone) * (1 + 0.16 * np.clip(groove, -1.5, 0))[..., None]
        for shade, cover in thread:
            colour = colour * (1 - cover[..., None]) + linear(shade) * 0.95 * cover[..., None]
        alpha = mask if surface.opacity is None else mask * surface.opacity
        under = self.picture[window]
        self.picture[window] = under * (1 - alpha[..., None]) + colour * alpha[..., None]

    def _cloth_place(self, part: Part, window: Window) -> tuple[Field, Field]:
        """Where on the cloth each dot lies: along the spine, or by the grain; folds displace it."""
        x = self.x[window] + 2.2 * self.slope_x[window] * part.fold_share
        y = self.y[window] + 2.2 * self.slope_y[window] * part.fold_share
        x = x + 2.0 * noise(x, y, 190, 190, self.seed + 3)
        y = y + 2.0 * noise(x, y, 190, 190, self.seed + 4)
        if part.spine:
            u, v = along_spine(part.spine, x, y)
        else:
            u, v = turned(x, y, part.grain_deg)
        return u + np.float32(part.uv_shift[0]), v + np.float32(part.uv_shift[1])

    def _edge(self, mask: Field, part: Part) -> Field:
        inside = distance_transform_edt(mask > 0.5).astype(np.float32)
        distance = gaussian_filter(inside, 0.7 * self.dots_per_mm) / self.dots_per_mm
        rounded = np.sqrt(np.clip(1 - (1 - np.clip(distance / part.round_mm, 0, 1)) ** 2, 0, 1))
        edge = gaussian_filter(part.thickness_mm * rounded, 0.9 * self.dots_per_mm)
        return np.asarray(edge, dtype=np.float32)

    def _drawn_lines(self, part: Part, window: Window) -> tuple[Field, list[tuple[str, Field]]]:
        groove = np.zeros_like(self.x[window])
        thread: list[tuple[str, Field]] = []
        for line in part.lines:
            if line.kind == "stitch":
                thread.append((line.colour, self._stitches(line, window, part.wobble_mm)))
                groove -= 0.25 * gaussian_filter(thread[-1][1], 0.8 * self.dots_per_mm)
                continue
            drawn = self._stroke(line, window, part.wobble_mm)
            if line.kind == "seam":
                soft = gaussian_filter(drawn, 0.6 * line.width_mm * self.dots_per_mm)
                groove -= line.depth_mm * soft / max(float(soft.max()), 1e-6)
            groove += self._puckers(drawn, window, line)
        return groove, thread

    def _puckers(self, drawn: Field, window: Window, line: Line) -> Field:
        near = 1 - (drawn[::COARSE, ::COARSE] > 0.3)
        distance = distance_transform_edt(near).astype(np.float32) * COARSE / self.dots_per_mm
        reach = resized(np.exp(-distance / 7.0), *drawn.shape)
        strength = 0.5 if line.kind == "pucker" else 0.16
        ripple = noise(self.x[window], self.y[window], 11, 11, self.seed + 61)
        return np.asarray(strength * line.depth_mm * reach * ripple, dtype=np.float32)

    def _swayed(self, points: Outline, wobble_mm: float) -> list[Point]:
        """Cloth edges are never drawn with a ruler: points are added and pushed about a little."""
        dense = densified(points, 5.0)
        x = np.array([p[0] for p in dense], dtype=np.float32)
        y = np.array([p[1] for p in dense], dtype=np.float32)
        push = np.float32(wobble_mm)
        for size, share in ((150.0, 1.0), (45.0, 0.3)):
            x = x + push * share * noise(x, y, size, size, self.seed + 21)
            y = y + push * share * noise(x, y, size, size, self.seed + 22)
        row = np.clip(y * self.dots_per_mm, 0, self.x.shape[0] - 1).astype(int)
        column = np.clip(x * self.dots_per_mm, 0, self.x.shape[1] - 1).astype(int)
        follow = min(1.0, wobble_mm) * 2.0
        x = x - follow * np.clip(self.slope_x[row, column], -0.7, 0.7)
        y = y - follow * np.clip(self.slope_y[row, column], -0.7, 0.7)
        return [(float(a), float(b)) for a, b in zip(x, y, strict=True)]

    def _mask(self, outline: Outline, wobble_mm: float, fuzz_mm: float = 0.0) -> Field:
        closed = [*outline, outline[0]]
        ring = [(2 * x, 2 * y) for x, y in map(self._dot, self._swayed(closed, wobble_mm))]
        image = Image.new("L", (2 * self.x.shape[1], 2 * self.x.shape[0]), 0)
        ImageDraw.Draw(image).polygon(ring, fill=255)
        mask = np.asarray(image.reduce(2), dtype=np.float32) / 255
        if fuzz_mm:
            soft = gaussian_filter(mask, fuzz_mm * self.dots_per_mm)
            hair = 0.5 + np.clip(0.2 * noise(self.x, self.y, 1.2, 1.2, self.seed + 71), -0.34, 0.34)
            return between(-0.12, 0.12, soft - hair)
        return np.asarray(gaussian_filter(mask, 0.8), dtype=np.float32)

    def _dot(self, point: Point) -> Point:
        return point[0] * self.dots_per_mm, point[1] * self.dots_per_mm

    def _stroke(self, line: Line, window: Window, wobble_mm: float) -> Field:
        image = Image.new("L", (self.x.shape[1], self.x.shape[0]), 0)
        points = [self._dot(p) for p in self._swayed(line.points, wobble_mm)]
        width = max(1, round(line.width_mm * self.dots_per_mm))
        ImageDraw.Draw(image).line(points, fill=255, width=width, joint="curve")
        return np.asarray(image, dtype=np.float32)[window] / 255

    def _stitches(self, line: Line, window: Window, wobble_mm: float) -> Field:
        image = Image.new("L", (self.x.shape[1], self.x.shape[0]), 0)
        draw = ImageDraw.Draw(image)
        points = densified(self._swayed(line.points, wobble_mm), 0.7)
        width = max(1, round(line.width_mm * self.dots_per_mm))
        for first, second in zip(points[:-1:4], points[3::4], strict=False):
            draw.line([self._dot(first), self._dot(second)], fill=235, width=width)
        soft = gaussian_filter(np.asarray(image, dtype=np.float32)[window] / 255, 0.5)
        return np.asarray(soft, dtype=np.float32)

    def _darken(
        self,
        mask: Field,
        shift_mm: float,
        blur_mm: float,
        strength: float,
        window: Window | None = None,
        calm: Field | None = None,
    ) -> None:
        window = window or (slice(0, mask.shape[0]), slice(0, mask.shape[1]))
        step = round(shift_mm * self.dots_per_mm)
        moved = np.zeros_like(mask)
        moved[step:, step:] = mask[: mask.shape[0] - step, : mask.shape[1] - step]
        small = moved[window][::COARSE, ::COARSE]
        soft = gaussian_filter(small, blur_mm * self.dots_per_mm / COARSE)
        shadow = resized(soft, *moved[window].shape) * np.float32(strength)
        if calm is not None:
            shadow = shadow * (1 - calm[window])
        tint = np.array([1.0, 0.97, 0.92], dtype=np.float32)
        self.picture[window] *= 1 - np.clip(shadow, 0, 1)[..., None] * tint


def densified(points: Outline, step_mm: float) -> list[Point]:
    """The same path with a point at least every `step_mm`."""
    dense: list[Point] = [points[0]]
    for (x0, y0), (x1, y1) in zip(points, points[1:], strict=False):
        count = max(1, int(np.hypot(x1 - x0, y1 - y0) // step_mm))
        dense += [
            (x0 + (x1 - x0) * k / count, y0 + (y1 - y0) * k / count) for k in range(1, count + 1)
        ]
    return dense


def along_spine(spine: Outline, x: Field, y: Field) -> tuple[Field, Field]:
    """(signed distance from the spine, distance along it), for cloth that bends with a limb."""
    path = np.array(densified(spine, 4.0), dtype=np.float64)
    step = np.gradient(path, axis=0)
    step /= np.linalg.norm(step, axis=1, keepdims=True)
    length = np.concatenate([[0], np.cumsum(np.linalg.norm(np.diff(path, axis=0), axis=1))])
    coarse = np.column_stack([x[::COARSE, ::COARSE].ravel(), y[::COARSE, ::COARSE].ravel()])
    _, nearest = cKDTree(path).query(coarse)
    offset = coarse - path[nearest]
    along = length[nearest] + (offset * step[nearest]).sum(axis=1)
    across = offset[:, 0] * step[nearest, 1] - offset[:, 1] * step[nearest, 0]
    shape = x[::COARSE, ::COARSE].shape
    u = gaussian_filter(across.reshape(shape), 1.0).astype(np.float32)
    v = gaussian_filter(along.reshape(shape), 1.0).astype(np.float32)
    return resized(u, *x.shape), resized(v, *x.shape)


def toned(surface: Surface, share: float) -> Surface:
    """The same cloth, darker or lighter."""
    return replace(surface, colour=surface.colour * np.float32(share))

"""One photograph of one garment: how it lies, on what, and how the camera sees it.

A blank sheet of A4 may lie beside it, at true scale, so that lengths can be read from the picture.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field, replace

import numpy as np
from PIL import Image

from demo_fixtures.drawing.cloth import Cloth
from demo_fixtures.drawing.folds import Drape, Pull, height_of
from demo_fixtures.drawing.light import developed
from demo_fixtures.drawing.scene import Part, Scene
from demo_fixtures.drawing.shapes import Point, moved
from demo_fixtures.drawing.weave import Bands, Weave
from demo_fixtures.garments.placing import arranged

LONG_SIDE, SHORT_SIDE = 1200, 900
FINER = 2
"""Pictures are worked out this many times finer and then made smaller, as a lens would."""
PAPER = Weave(Bands("#f1efe8"), Bands("#f1efe8"), slub=0.0, fade=0.006, seed=77)
A4_MM = (210.0, 297.0)


@dataclass(frozen=True)
class Photo:
    """One picture: a garment, how it lies, and the table it lies on."""

    name: str
    parts: Sequence[Part]
    width_mm: float
    ground: Cloth
    drape: Drape
    at: Point
    turn_deg: float = 0.0
    upright: bool = False
    ground_turn_deg: float = 0.0
    ground_drape: Drape | None = None
    lift_mm: float = 7.0
    exposure: float = 1.0
    sheet: tuple[Point, float] | None = None
    """Where the middle of a blank A4 sheet lies, and its turn in degrees."""
    tilt: Sequence[float] = field(default_factory=lambda: (0.008, 0.004, 0.011, 0.006))
    seed: int = 1


def drawn(photo: Photo, finer: float = FINER) -> Image.Image:
    """The photograph at its final size."""
    across, down = (SHORT_SIDE, LONG_SIDE) if photo.upright else (LONG_SIDE, SHORT_SIDE)
    dots_per_mm = across * finer / photo.width_mm
    height_mm = photo.width_mm * down / across
    drape = replace(photo.drape, pulls=_placed_pulls(photo), creases=_placed_creases(photo))
    scene = Scene(photo.width_mm, height_mm, dots_per_mm, photo.seed, drape)
    ground = photo.ground_drape
    relief = None if ground is None else height_of(ground, scene.x, scene.y, dots_per_mm)
    scene.cover(photo.ground, relief, photo.ground_turn_deg)
    if photo.sheet:
        _lay_sheet(scene, *photo.sheet)
    parts = arranged(list(photo.parts), photo.at, photo.turn_deg)
    big = [p for p in parts if _spread(p) > 0.06 * photo.width_mm and p.shadow > 0]
    scene.shade_under(big, photo.lift_mm)
    for part in parts:
        scene.lay(part)
    return _seen(developed(scene.picture, photo.seed, photo.exposure), photo, (across, down))


def _placed_pulls(photo: Photo) -> list[Pull]:
    placed = []
    for pull in photo.drape.pulls:
        start, end = moved([pull.start, pull.end], photo.at, photo.turn_deg)
        placed.append(replace(pull, start=start, end=end))
    return placed


def _placed_creases(photo: Photo) -> list[tuple[Point, Point]]:
    pairs = [moved(list(crease), photo.at, photo.turn_deg) for crease in photo.drape.creases]
    return [(start, end) for start, end in pairs]


def _spread(part: Part) -> float:
    x = [p[0] for p in part.outline]
    y = [p[1] for p in part.outline]
    return max(max(x) - min(x), max(y) - min(y))


def _lay_sheet(scene: Scene, centre: Point, turn_deg: float) -> None:
    """A blank sheet of A4, so that lengths can be read from the picture."""
    across, down = A4_MM[0] / 2, A4_MM[1] / 2
    corners = [(-across, -down), (across, -down), (across, down), (-across, down)]
    outline = moved(corners, centre, turn_deg)
    sheet = Part(
        outline, PAPER, thickness_mm=0.3, round_mm=1.5, shadow=0, wobble_mm=0, fold_share=0
    )
    scene.shade_under([sheet], 1.6)
    scene.lay(sheet)


def _seen(picture: Image.Image, photo: Photo, size: tuple[int, int]) -> Image.Image:
    """The picture as a hand-held camera sees it: a very slightly leaning frame."""
    width, height = picture.size
    a, b, c, d = photo.tilt
    source = [
        (a * width, b * height),
        (width * (1 - b), c * height),
        (width * (1 - d), height * (1 - a)),
        (c * width, height * (1 - d)),
    ]
    target = [(0, 0), (size[0], 0), (size[0], size[1]), (0, size[1])]
    rows, answers = [], []
    for (sx, sy), (tx, ty) in zip(source, target, strict=True):
        rows += [[tx, ty, 1, 0, 0, 0, -sx * tx, -sx * ty], [0, 0, 0, tx, ty, 1, -sy * tx, -sy * ty]]
        answers += [sx, sy]
    solved = np.linalg.solve(np.array(rows), np.array(answers))
    smooth = picture.reduce(FINER) if picture.size[0] >= FINER * size[0] else picture
    scale = picture.size[0] / smooth.size[0]
    data = [float(k) / (scale if i < 6 else 1) for i, k in enumerate(solved)]
    return smooth.transform(size, Image.Transform.PERSPECTIVE, data, Image.Resampling.BICUBIC)

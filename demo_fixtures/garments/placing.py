"""Parts that many garments share, and how a whole garment is put on the table."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from demo_fixtures.drawing.cloth import Cloth
from demo_fixtures.drawing.scene import Line, Part
from demo_fixtures.drawing.shapes import Point, curve, limb, mirrored, moved, widths


def both(part: Part) -> list[Part]:
    """The part and its mirror image."""
    return [
        replace(
            part,
            outline=mirrored(part.outline),
            spine=mirrored(part.spine) if part.spine else (),
            grain_deg=-part.grain_deg,
            lines=[replace(line, points=mirrored(line.points)) for line in part.lines],
        ),
        part,
    ]


def with_mirrored(lines: list[Line]) -> list[Line]:
    """The lines of a right half, and their mirror images on the left."""
    return [*lines, *(replace(line, points=mirrored(line.points)) for line in lines)]


def behind_neck(points: list[Point], cloth: Cloth, tone: float = 0.55) -> Part:
    """The inside of the back that shows through a neckline, in its shade."""
    outline = curve(points, 6, closed=True)
    return Part(outline, cloth, tone=tone, shadow=0.2, fold_share=0.3, wobble_mm=1)


def strip(path: list[Point], half_mm: float, cloth: Cloth, **look: Any) -> Part:
    """A band of binding or ribbing along a path, its ribs across the path."""
    spine = curve(path, 8)
    band: dict[str, Any] = {
        "thickness_mm": 1.8,
        "round_mm": 3.0,
        "shadow": 0.4,
        "shadow_mm": 2.0,
        "wobble_mm": 1.5,
    }
    return Part(limb(spine, [half_mm] * len(spine)), cloth, spine=spine, **(band | look))


def sleeve_from(
    cloth: Cloth, path: list[Point], half: list[float], tip: Point, lean: Point, **look: Any
) -> Part:
    """A right sleeve: from the shoulder tip over `lean`, then along its outer edge to the wrist."""
    spine = curve(path, 9)
    ring = limb(spine, widths(half, len(spine)))
    under, outer = ring[: len(spine)], ring[len(spine) :][::-1]
    top = curve([(tip[0] * 0.84, tip[1] * 0.7), tip, lean, *outer[8::6], outer[-1]], 6)
    base: dict[str, Any] = {
        "thickness_mm": 5,
        "round_mm": 13,
        "shadow": 0.5,
        "shadow_mm": 7,
        "wobble_mm": 4,
    }
    return Part([*top, *reversed(under)], cloth, spine=spine, **(base | look))


def small_sleeve(
    cloth: Cloth, path: list[Point], half: list[float], tip: Point, lean: Point
) -> Part:
    """A baby's sleeve from the shoulder tip to the wrist."""
    spine = curve(path, 8)
    ring = limb(spine, widths(half, len(spine)))
    under, outer = ring[: len(spine)], ring[len(spine) :][::-1]
    top = curve([(tip[0] * 0.82, tip[1] * 0.7), tip, lean, *outer[5::5], outer[-1]], 6)
    return Part(
        [*top, *reversed(under)],
        cloth,
        spine=spine,
        thickness_mm=4.0,
        round_mm=10,
        shadow=0.5,
        shadow_mm=5,
        wobble_mm=2.5,
    )


def arranged(parts: list[Part], at: Point, turn_deg: float) -> list[Part]:
    """The whole garment turned and shifted to its place on the table."""
    return [
        replace(
            part,
            outline=moved(part.outline, at, turn_deg),
            spine=moved(part.spine, at, turn_deg) if part.spine else (),
            grain_deg=part.grain_deg + turn_deg,
            uv_shift=part.uv_shift
            if part.spine
            else anchored(at, part.grain_deg + turn_deg, part.uv_shift),
            flush=[moved(outline, at, turn_deg) for outline in part.flush],
            lines=[replace(line, points=moved(line.points, at, turn_deg)) for line in part.lines],
        )
        for part in parts
    ]


def anchored(at: Point, grain_deg: float, shift: Point) -> Point:
    """The shift that makes cloth measures count from the garment's own origin."""
    ((x, y),) = moved([at], (0.0, 0.0), -grain_deg)
    return shift[0] - x, shift[1] - y

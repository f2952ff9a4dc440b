"""A long fringed scarf doubled over on itself."""

from __future__ import annotations

from demo_fixtures.drawing.cloth import Cloth
from demo_fixtures.drawing.scene import Part
from demo_fixtures.drawing.shapes import Point, curve, limb, widths
from demo_fixtures.garments.placing import strip


def scarf(cloth: Cloth, yarn: Cloth) -> list[Part]:
    """A long scarf doubled over on itself, fringed at both ends."""
    under = curve([(-116, -322), (-84, -60), (-140, 160), (-206, 350)], 12)
    over = curve([(-118, -326), (-20, -120), (84, 120), (170, 366)], 12)
    parts: list[Part] = []
    for spine in (under, over):
        half = widths([104, 110, 112, 114], len(spine))
        parts += _fringe(spine, half[-1], yarn)
        parts.append(
            Part(
                limb(spine, half),
                cloth,
                spine=spine,
                thickness_mm=7,
                round_mm=16,
                shadow=0.6,
                shadow_mm=9,
                wobble_mm=5,
                fuzz_mm=0.9,
            )
        )
    return parts


def _fringe(spine: list[Point], half: float, yarn: Cloth) -> list[Part]:
    end, near = spine[-1], spine[-3]
    dx, dy = end[0] - near[0], end[1] - near[1]
    length = (dx * dx + dy * dy) ** 0.5
    dx, dy = dx / length, dy / length
    strands: list[Part] = []
    for number in range(22):
        offset = half * (number / 10.5 - 1) * 0.97
        sway = 7.0 * ((number * 37 % 11) / 5 - 1)
        start = (end[0] - dy * offset - 6 * dx, end[1] + dx * offset - 6 * dy)
        reach = 58 + (number * 53 % 13)
        tip = (start[0] + dx * reach + dy * sway, start[1] + dy * reach - dx * sway)
        middle = ((start[0] + tip[0]) / 2 + dy * sway * 0.3, (start[1] + tip[1]) / 2)
        strands.append(
            strip(
                [start, middle, tip],
                2.9,
                yarn,
                thickness_mm=3,
                round_mm=3,
                shadow=0.5,
                shadow_mm=3,
                fold_share=0,
            )
        )
    return strands

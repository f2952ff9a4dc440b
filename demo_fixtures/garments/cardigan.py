"""A hand-knitted baby cardigan lying face up."""

from __future__ import annotations

from typing import Any

from demo_fixtures.drawing.cloth import Cloth
from demo_fixtures.drawing.scene import Line, Part
from demo_fixtures.drawing.shapes import box, curve, mirrored, symmetric
from demo_fixtures.garments.buttons import button
from demo_fixtures.garments.placing import behind_neck, both, small_sleeve, strip, with_mirrored


def cardigan(knit: Cloth, rib: Cloth, button_colour: str) -> list[Part]:
    """A hand-knitted cardigan for a newborn, 270 mm long."""
    sleeve = small_sleeve(
        knit, [(126, 86), (170, 142), (200, 204)], [50, 44, 36], (116, 18), (154, 46)
    )
    cuff = strip([(197, 200), (205, 216), (211, 230)], 31, rib, thickness_mm=3.2, round_mm=5)
    side = [(116.0, 18.0), (112.0, 60.0), (134.0, 112.0), (134.0, 180.0), (136.0, 248.0)]
    half = [(0.0, 104.0), *curve([(8, 100), (30, 52), (48, 0)], 6), *curve(side, 7), (0.0, 250.0)]
    arm = curve([(116, 18), (112, 60), (134, 112)], 8)
    lines = [Line(arm, "seam", depth_mm=1.1, width_mm=2.2)]
    lines = with_mirrored(lines)
    cap = [(80.0, 0.0), (130.0, 8.0), (180.0, 66.0), (170.0, 122.0), (128.0, 122.0), (96.0, 80.0)]
    look: dict[str, Any] = {"thickness_mm": 5.5, "round_mm": 11, "shadow": 0.5, "wobble_mm": 3}
    body = Part(symmetric(half), knit, lines=lines, fuzz_mm=0.6, flush=[cap, mirrored(cap)], **look)
    back = behind_neck(
        [(-50, 0), (-26, -12), (0, -15), (26, -12), (50, 0), (26, 60), (0, 108), (-26, 60)],
        knit,
        0.58,
    )
    welt = Part(
        box(-137, 246, 137, 282), rib, thickness_mm=4.5, round_mm=8, shadow=0.5, wobble_mm=3
    )
    left_band = strip(
        [(2, -17), (-30, -14), (-51, 2), (-36, 52), (-11, 104), (-4, 180), (-4, 281)],
        9,
        rib,
        thickness_mm=3,
    )
    right_band = strip(
        [(-2, -17), (30, -14), (51, 2), (36, 52), (11, 104), (6, 180), (6, 281)],
        9.5,
        rib,
        thickness_mm=3.4,
        shadow=0.6,
    )
    parts = [
        *both(sleeve),
        *both(cuff),
        back,
        body,
        welt,
        left_band,
        right_band,
    ]
    for y in (112, 150, 188, 226, 264):
        parts += button((6.0, float(y)), 6.4, button_colour)
    return parts

"""A velvet skirt of six gores, and a silk tie."""

from __future__ import annotations

from dataclasses import replace

from demo_fixtures.drawing.cloth import Cloth
from demo_fixtures.drawing.scene import Line, Part
from demo_fixtures.drawing.shapes import curve, limb, mirrored, symmetric, widths
from demo_fixtures.garments.buttons import dome_button


def velvet_skirt(velvet: Cloth, band: Cloth) -> list[Part]:
    """An A-line skirt of six gores on a waistband."""
    half = [
        (0.0, 6.0),
        *curve([(186, 0), (240, 150), (300, 360), (372, 640)], 9),
        *curve([(372, 640), (280, 672), (140, 692), (0, 698)], 7),
    ]
    gores = [
        Line(
            curve([(62, 10), (90, 240), (122, 460), (146, 684)], 8),
            "seam",
            depth_mm=2.0,
            width_mm=2,
        )
    ]
    gores += [replace(g, points=mirrored(g.points)) for g in gores]
    hem = Line(
        curve(
            [(-366, 616), (-280, 648), (-140, 668), (0, 674), (140, 668), (280, 648), (366, 616)], 6
        ),
        "pucker",
        depth_mm=1.8,
    )
    return [
        Part(
            symmetric(half),
            velvet,
            thickness_mm=6,
            round_mm=15,
            shadow=0.55,
            shadow_mm=8,
            wobble_mm=6,
            lines=[*gores, hem],
        ),
        Part(
            curve([(-190, -36), (0, -30), (190, -36)], 8)
            + curve([(188, 8), (0, 15), (-188, 8)], 8),
            band,
            grain_deg=90,
            thickness_mm=3.5,
            round_mm=6,
            shadow=0.5,
            wobble_mm=2,
        ),
        *dome_button((170.0, -12.0), 7.0, "#3b2a2c"),
    ]


def tie(silk: Cloth) -> list[Part]:
    """A silk tie laid in a loose S."""
    spine = curve(
        [
            (-300, -180),
            (-60, -226),
            (150, -170),
            (196, -40),
            (60, 40),
            (-160, 66),
            (-232, 170),
            (-90, 262),
            (160, 250),
            (330, 210),
        ],
        12,
    )
    half = widths([17, 17, 16, 16, 17, 19, 23, 29, 36, 42], len(spine))
    ring = limb(spine, half)
    count = len(spine)
    end, near = spine[-1], spine[-3]
    dx, dy = end[0] - near[0], end[1] - near[1]
    scale = 42 / (dx * dx + dy * dy) ** 0.5
    tip = (end[0] + dx * scale, end[1] + dy * scale)
    outline = [*ring[:count], tip, *ring[count:]]
    return [
        Part(
            outline,
            silk,
            spine=spine,
            thickness_mm=4,
            round_mm=9,
            shadow=0.6,
            shadow_mm=6,
            wobble_mm=2,
        )
    ]

"""A crossed-front day dress lying face up."""

from __future__ import annotations

from typing import Any

from demo_fixtures.drawing.cloth import Cloth
from demo_fixtures.drawing.scene import Line, Part
from demo_fixtures.drawing.shapes import box, curve, mirrored, symmetric
from demo_fixtures.garments.placing import behind_neck, both, sleeve_from, strip, with_mirrored

SIDE = [
    (186.0, 28.0),
    (176.0, 90.0),
    (186.0, 150.0),
    (222.0, 214.0),
    (196.0, 330.0),
    (176.0, 396.0),
]
HALF = [*curve([(0, 210), (40, 110), (72, -4)], 7), *curve(SIDE, 8), (0.0, 400.0)]
SKIRT = [
    (0.0, 392.0),
    *curve([(176, 388), (226, 520), (290, 760), (352, 1030)], 9),
    *curve([(352, 1030), (260, 1062), (120, 1080), (0, 1084)], 7),
]
ARM = curve([(186, 28), (176, 90), (186, 150), (222, 214)], 8)
CAP = [
    (150.0, 6.0),
    (206.0, 14.0),
    (300.0, 100.0),
    (270.0, 214.0),
    (220.0, 220.0),
    (150.0, 150.0),
]
EDGE = [(x - 6, y + 4) for x, y in curve([(-72, -4), (-30, 120), (60, 260), (150, 372)], 8)]
HEM = curve(
    [(-346, 1012), (-260, 1042), (-120, 1060), (0, 1064), (120, 1060), (260, 1042), (346, 1012)], 6
)
WRAP = [
    *curve([(-72, -4), (-30, 120), (60, 260), (150, 372)], 8),
    (176.0, 398.0),
    (-176.0, 398.0),
    *mirrored(curve(SIDE[::-1], 8)[2:]),
]


def day_dress(cloth: Cloth, thread: str) -> list[Part]:
    """A crossed-front dress with short sleeves, a tied waist and a full skirt."""
    sleeve = sleeve_from(
        cloth, [(212, 150), (258, 200), (296, 250)], [92, 92, 94], (186, 28), (250, 62), wobble_mm=5
    )
    hem = Line(HEM, "pucker", depth_mm=2.4)
    waist = [Line([(-176, 398), (0, 404), (176, 398)], "pucker", depth_mm=6)]
    lines = [Line(ARM, "seam", depth_mm=1.3), Line(ARM, "pucker", depth_mm=3)]
    lines = with_mirrored(lines)
    back = behind_neck(
        [(-72, 0), (-36, -26), (0, -32), (36, -26), (72, 0), (38, 120), (0, 212), (-38, 120)],
        cloth,
        0.5,
    )
    look: dict[str, Any] = {
        "thickness_mm": 4,
        "round_mm": 11,
        "shadow": 0.5,
        "shadow_mm": 6,
        "wobble_mm": 5,
    }
    tie_a, tie_b = (
        [(150.0, 398.0), (196.0, 470.0), (214.0, 580.0)],
        [(150.0, 398.0), (226.0, 448.0), (262.0, 540.0)],
    )
    return [
        *both(sleeve),
        back,
        Part(symmetric(SKIRT), cloth, lines=[hem, *waist], **look),
        Part(
            symmetric(HALF),
            cloth,
            lines=lines,
            flush=[CAP, mirrored(CAP), box(-176, 380, 176, 440)],
            **look,
        ),
        Part(
            WRAP,
            cloth,
            grain_deg=8,
            lines=[Line(EDGE, "stitch", thread, 0.5), Line(EDGE, "pucker", depth_mm=2)],
            flush=[mirrored(CAP), box(-176, 380, 176, 440)],
            **look,
        ),
        strip([(-178, 396), (0, 404), (178, 396)], 15, cloth, shadow=0.5, thickness_mm=2.6),
        strip(tie_b, 12, cloth, shadow=0.6, shadow_mm=4),
        strip(tie_a, 12, cloth, shadow=0.6, shadow_mm=4),
    ]

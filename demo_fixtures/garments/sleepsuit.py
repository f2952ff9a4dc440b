"""A newborn's sleepsuit with feet and poppers, lying face up."""

from __future__ import annotations

from dataclasses import replace

from demo_fixtures.drawing.cloth import Cloth
from demo_fixtures.drawing.scene import Line, Part
from demo_fixtures.drawing.shapes import curve, mirrored, symmetric
from demo_fixtures.garments.buttons import popper
from demo_fixtures.garments.placing import behind_neck, both, small_sleeve, strip, with_mirrored

OUTER = [
    (112.0, 20.0),
    (106.0, 58.0),
    (124.0, 116.0),
    (116.0, 200.0),
    (118.0, 280.0),
    (132.0, 350.0),
    (128.0, 425.0),
    (116.0, 468.0),
]
FOOT = [
    (118.0, 486.0),
    (136.0, 520.0),
    (120.0, 548.0),
    (80.0, 552.0),
    (52.0, 528.0),
    (46.0, 480.0),
]
INNER = [(40.0, 430.0), (26.0, 372.0), (0.0, 338.0)]
HALF = [*curve([(0, 34), (26, 26), (50, -2)], 6), *curve(OUTER + FOOT + INNER, 7)]
ARM = curve([(112, 20), (106, 58), (124, 116)], 8)
ANKLE = curve([(118, 474), (92, 466), (64, 470), (43, 472)], 6)
TOE = curve([(128, 508), (100, 492), (72, 494), (50, 506)], 6)
CAP = [(80.0, 0.0), (126.0, 10.0), (170.0, 70.0), (160.0, 120.0), (120.0, 120.0), (90.0, 80.0)]
OPENING = [
    (-4.0, 34.0),
    (-4.0, 180.0),
    (-2.0, 290.0),
    (14.0, 352.0),
    (38.0, 410.0),
    (56.0, 462.0),
]
PATH = curve(OPENING, 8)


def sleepsuit(cloth: Cloth, rib: Cloth, thread: str) -> list[Part]:
    """A newborn's sleepsuit, 540 mm from neck to toe."""
    sleeve = small_sleeve(
        cloth, [(118, 82), (168, 140), (200, 215)], [44, 38, 30], (112, 20), (146, 50)
    )
    cuff = strip([(199, 212), (204, 226), (209, 240)], 27, rib)
    sides = [
        Line(ARM, "seam", depth_mm=0.7),
        Line([(x - 4, y) for x, y in ARM], "stitch", thread, 0.45),
        Line(ANKLE, "seam", depth_mm=0.8),
        Line(TOE, "seam", depth_mm=0.8),
        Line([(x, y - 4) for x, y in ANKLE], "stitch", thread, 0.45),
    ]
    sides = with_mirrored(sides)
    body = Part(
        symmetric(HALF),
        cloth,
        thickness_mm=5,
        round_mm=13,
        shadow=0.5,
        lines=sides,
        wobble_mm=3,
        flush=[CAP, mirrored(CAP)],
    )
    placket = strip(OPENING, 9, cloth, thickness_mm=1.4, shadow=0.45)
    placket = replace(
        placket,
        lines=[
            Line([(x + 6, y) for x, y in PATH], "stitch", thread, 0.45),
            Line([(x - 6, y) for x, y in PATH], "stitch", thread, 0.45),
            Line(PATH, "pucker", depth_mm=1.2),
        ],
    )
    back_neck = behind_neck(
        [(-50, -2), (-28, -14), (0, -18), (28, -14), (50, -2), (30, 24), (0, 34), (-30, 24)],
        cloth,
        0.62,
    )
    band_back = strip([(-52, 0), (-30, -15), (0, -20), (30, -15), (52, 0)], 5.5, rib)
    band_front = strip(
        [(-52, -2), (-44, 14), (-26, 29), (0, 36), (26, 29), (44, 14), (52, -2)], 6.5, rib
    )
    parts = [*both(sleeve), *both(cuff), back_neck, band_back, body, placket, band_front]
    for index in range(4, len(PATH), 6):
        parts += popper(PATH[index], 4.6)
    return parts

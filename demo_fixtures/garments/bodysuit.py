"""A baby's bodysuit lying face up."""

from __future__ import annotations

from demo_fixtures.drawing.cloth import Cloth
from demo_fixtures.drawing.scene import Line, Part
from demo_fixtures.drawing.shapes import curve, mirrored, symmetric
from demo_fixtures.garments.buttons import popper
from demo_fixtures.garments.placing import behind_neck, both, small_sleeve, strip, with_mirrored

OUTER = [
    (108.0, 16.0),
    (100.0, 58.0),
    (116.0, 108.0),
    (112.0, 190.0),
    (118.0, 262.0),
    (122.0, 292.0),
]
LEG = [(122.0, 292.0), (92.0, 322.0), (62.0, 366.0), (44.0, 402.0), (0.0, 404.0)]
HALF = [*curve([(0, 44), (30, 36), (58, -2)], 6), *curve(OUTER, 7), *curve(LEG, 7)]
ARM = curve([(108, 16), (100, 58), (116, 108)], 8)
LAP = curve([(60, 0), (78, 38), (102, 84)], 6)
CAP = [(80.0, 0.0), (120.0, 8.0), (160.0, 60.0), (150.0, 112.0), (112.0, 112.0), (88.0, 70.0)]


def bodysuit(cloth: Cloth, rib: Cloth, thread: str) -> list[Part]:
    """A short-sleeved bodysuit with lapped shoulders and poppers below."""
    sleeve = small_sleeve(
        cloth, [(112, 78), (146, 112), (172, 142)], [44, 42, 40], (108, 16), (140, 34)
    )
    hem = strip([(165, 134), (171, 142), (175, 148)], 40.5, rib, thickness_mm=2.0)
    lines = [
        Line(ARM, "seam", depth_mm=0.7),
        Line([(x - 4, y) for x, y in ARM], "stitch", thread, 0.45),
        Line(LAP, "seam", depth_mm=0.8),
        Line([(x - 5, y + 2) for x, y in LAP], "stitch", thread, 0.4),
    ]
    lines = with_mirrored(lines)
    body = Part(
        symmetric(HALF),
        cloth,
        thickness_mm=4,
        round_mm=12,
        shadow=0.5,
        lines=lines,
        wobble_mm=3,
        flush=[CAP, mirrored(CAP)],
    )
    back = behind_neck(
        [(-58, -2), (-30, -16), (0, -20), (30, -16), (58, -2), (30, 34), (0, 44), (-30, 34)],
        cloth,
        0.62,
    )
    parts = [
        *both(sleeve),
        *both(hem),
        back,
        strip([(-58, 0), (-30, -17), (0, -21), (30, -17), (58, 0)], 5.5, rib),
        body,
        strip([(-60, -4), (-50, 16), (-30, 36), (0, 45), (30, 36), (50, 16), (60, -4)], 6, rib),
        *both(strip([(124, 290), (92, 322), (62, 366), (44, 404)], 5, rib)),
        strip([(-46, 398), (0, 401), (46, 398)], 9, cloth),
    ]
    for x in (-30, 0, 30):
        parts += popper((x, 399.0), 4.6)
    return parts

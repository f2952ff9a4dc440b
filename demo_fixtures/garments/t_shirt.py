"""A T-shirt lying face up."""

from __future__ import annotations

from dataclasses import replace

from demo_fixtures.drawing.cloth import Cloth
from demo_fixtures.drawing.scene import Line, Part
from demo_fixtures.drawing.shapes import curve, mirrored, symmetric
from demo_fixtures.garments.placing import behind_neck, both, sleeve_from, strip, with_mirrored

CUT = [(x, y) for x, y in ((424.0, 204.0), (280.0, 332.0))]
HALF = [
    *curve([(0, 62), (48, 48), (88, -2)], 7),
    *curve([(218, 36), (208, 110), (216, 180), (262, 250)], 8),
    *curve([(262, 250), (256, 420), (260, 600), (264, 704)], 8),
    (0.0, 710.0),
]
ARM = curve([(218, 36), (208, 110), (216, 180), (262, 250)], 8)
HEM = [(-262.0, 684.0), (0.0, 690.0), (262.0, 684.0)]
CAP = [
    (170.0, 6.0),
    (236.0, 20.0),
    (340.0, 120.0),
    (310.0, 250.0),
    (258.0, 256.0),
    (180.0, 180.0),
]


def t_shirt(jersey: Cloth, rib: Cloth, thread: str) -> list[Part]:
    """A short-sleeved T-shirt."""
    sleeve = sleeve_from(
        jersey,
        [(250, 160), (306, 216), (352, 270)],
        [98, 96, 94],
        (218, 36),
        (288, 76),
        wobble_mm=5,
    )
    lines = [Line(ARM, "seam", depth_mm=1.5), Line(ARM, "pucker", depth_mm=2)]
    lines = with_mirrored(lines)
    lines += [
        Line(HEM, "stitch", thread, 0.6),
        Line([(x, y + 4) for x, y in HEM], "stitch", thread, 0.6),
        Line(HEM, "pucker", depth_mm=1.8),
    ]
    sleeve = replace(
        sleeve,
        lines=[
            Line([(x - 14, y - 14) for x, y in CUT], "stitch", thread, 0.6),
            Line([(x - 14, y - 14) for x, y in CUT], "pucker", depth_mm=3),
        ],
    )
    back = behind_neck(
        [(-88, -2), (-44, -22), (0, -28), (44, -22), (88, -2), (48, 46), (0, 60), (-48, 46)],
        jersey,
        0.55,
    )
    return [
        *both(sleeve),
        back,
        strip([(-90, 0), (-44, -24), (0, -30), (44, -24), (90, 0)], 9, rib),
        Part(
            symmetric(HALF),
            jersey,
            thickness_mm=4,
            round_mm=11,
            shadow=0.5,
            shadow_mm=6,
            lines=lines,
            wobble_mm=5,
            flush=[CAP, mirrored(CAP)],
        ),
        strip([(-92, -6), (-78, 26), (-46, 53), (0, 64), (46, 53), (78, 26), (92, -6)], 10, rib),
    ]

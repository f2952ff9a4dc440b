"""A crew-neck jumper lying face up."""

from __future__ import annotations

from demo_fixtures.drawing.cloth import Cloth
from demo_fixtures.drawing.scene import Line, Part
from demo_fixtures.drawing.shapes import curve, mirrored, symmetric
from demo_fixtures.garments.placing import behind_neck, both, sleeve_from, strip, with_mirrored

HALF = [
    *curve([(0, 66), (50, 50), (92, 0)], 7),
    *curve([(236, 48), (226, 120), (238, 200), (288, 274)], 8),
    *curve([(288, 274), (284, 420), (288, 560), (276, 630)], 8),
    (0.0, 634.0),
]
ARM = curve([(236, 48), (226, 120), (238, 200), (288, 274)], 8)
CAP = [
    (180.0, 10.0),
    (256.0, 30.0),
    (350.0, 140.0),
    (340.0, 270.0),
    (286.0, 280.0),
    (200.0, 200.0),
]


WELT = [
    *curve([(-278, 624), (0, 630), (278, 624)], 8),
    *curve([(262, 712), (0, 718), (-262, 712)], 8),
]


def jumper(knit: Cloth, rib: Cloth) -> list[Part]:
    """A crew-neck jumper with deep ribbing."""
    sleeve = sleeve_from(
        knit,
        [(262, 190), (346, 340), (396, 490), (410, 630)],
        [112, 108, 98, 80, 62],
        (236, 48),
        (316, 104),
        thickness_mm=9,
        round_mm=18,
        wobble_mm=6,
        fuzz_mm=0.9,
    )
    cuff = strip(
        [(407, 622), (414, 662), (416, 704)], 52, rib, thickness_mm=7, round_mm=11, wobble_mm=3
    )
    lines = [Line(ARM, "seam", depth_mm=2.0, width_mm=4)]
    lines = with_mirrored(lines)
    body = Part(
        symmetric(HALF),
        knit,
        thickness_mm=8,
        round_mm=17,
        shadow=0.5,
        lines=lines,
        wobble_mm=5,
        fuzz_mm=0.9,
        flush=[CAP, mirrored(CAP)],
    )
    back = behind_neck(
        [(-92, 0), (-46, -24), (0, -30), (46, -24), (92, 0), (48, 50), (0, 66), (-48, 50)],
        knit,
        0.55,
    )
    welt = Part(
        WELT,
        rib,
        thickness_mm=8,
        round_mm=13,
        shadow=0.5,
        wobble_mm=4,
    )
    return [
        *both(sleeve),
        *both(cuff),
        back,
        strip(
            [(-94, 2), (-48, -26), (0, -33), (48, -26), (94, 2)],
            13,
            rib,
            thickness_mm=6,
            round_mm=9,
        ),
        body,
        welt,
        _neck_rib(rib),
    ]


def _neck_rib(rib: Cloth) -> Part:
    return strip(
        [(-96, -4), (-80, 28), (-46, 56), (0, 68), (46, 56), (80, 28), (96, -4)],
        15,
        rib,
        thickness_mm=6.5,
        round_mm=10,
        shadow=0.5,
    )

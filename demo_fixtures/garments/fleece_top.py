"""A fleece top with a half zip, lying face up."""

from __future__ import annotations

from demo_fixtures.drawing.cloth import Cloth
from demo_fixtures.drawing.fine_cloth import Satin
from demo_fixtures.drawing.scene import Line, Part
from demo_fixtures.drawing.shapes import box, curve, mirrored, symmetric
from demo_fixtures.garments.placing import both, sleeve_from, strip, with_mirrored

HALF = [
    *curve([(0, 40), (40, 30), (84, 0)], 7),
    *curve([(232, 46), (222, 120), (234, 196), (286, 268)], 8),
    *curve([(286, 268), (280, 440), (284, 600), (282, 690)], 8),
    (0.0, 696.0),
]
ARM = curve([(232, 46), (222, 120), (234, 196), (286, 268)], 8)
CAP = [
    (180.0, 10.0),
    (256.0, 30.0),
    (350.0, 140.0),
    (340.0, 266.0),
    (282.0, 274.0),
    (200.0, 200.0),
]
COLLAR = curve(
    [(-96, -58), (0, -72), (96, -58), (94, 22), (40, 46), (0, 52), (-40, 46), (-94, 22)],
    7,
    closed=True,
)


def fleece_top(fleece: Cloth, trim: Cloth, zip_cloth: Cloth) -> list[Part]:
    """A fleece top with a stand collar and a half zip."""
    sleeve = sleeve_from(
        fleece,
        [(258, 186), (338, 336), (382, 490), (392, 650)],
        [110, 106, 96, 84, 66],
        (232, 46),
        (306, 100),
        thickness_mm=9,
        round_mm=18,
        wobble_mm=5,
        fuzz_mm=1.6,
    )
    cuff = strip([(391, 640), (392, 656), (393, 672)], 64, trim, thickness_mm=4, round_mm=6)
    lines = [Line(ARM, "seam", depth_mm=2.2, width_mm=4)]
    lines = with_mirrored(lines)
    body = Part(
        symmetric(HALF),
        fleece,
        thickness_mm=8,
        round_mm=17,
        shadow=0.5,
        lines=lines,
        wobble_mm=5,
        fuzz_mm=1.6,
        flush=[CAP, mirrored(CAP)],
    )
    pocket = Part(
        box(76, 214, 196, 232), trim, thickness_mm=2.2, round_mm=4, shadow=0.5, shadow_mm=3
    )
    return [
        *both(sleeve),
        *both(cuff),
        body,
        Part(
            COLLAR,
            fleece,
            thickness_mm=9,
            round_mm=15,
            shadow=0.5,
            wobble_mm=3,
            fuzz_mm=1.6,
            fold_share=0.6,
        ),
        strip([(-96, 0), (-50, 38), (0, 48), (50, 38), (96, 0)], 5, trim),
        *_zip(zip_cloth),
        pocket,
        Part(
            box(-284, 678, 284, 704),
            trim,
            grain_deg=90,
            thickness_mm=4,
            round_mm=7,
            shadow=0.4,
            wobble_mm=5,
        ),
    ]


def _zip(zip_cloth: Cloth) -> list[Part]:
    tape = Part(
        box(-15, -66, 15, 268),
        zip_cloth,
        thickness_mm=1.6,
        round_mm=4,
        shadow=0.45,
        shadow_mm=3,
        fold_share=0.2,
        wobble_mm=1,
    )
    teeth = [
        Part(
            box(-3.2, y, 3.2, y + 2.2),
            Satin("#4b4a47", gloss=0.4),
            thickness_mm=0.8,
            round_mm=0.8,
            shadow=0,
            fold_share=0,
            wobble_mm=0,
        )
        for y in range(-48, 262, 4)
    ]
    pull = Part(
        box(-4, -64, 5, -34),
        Satin("#8d8c86", gloss=1.2),
        thickness_mm=2,
        round_mm=2,
        shadow=0.7,
        shadow_mm=2.5,
        fold_share=0,
        wobble_mm=0,
    )
    return [tape, *teeth, pull]

"""A pair of jeans lying face up."""

from __future__ import annotations

from demo_fixtures.drawing.cloth import Cloth
from demo_fixtures.drawing.scene import Line, Part
from demo_fixtures.drawing.shapes import box, curve, symmetric
from demo_fixtures.garments.buttons import dome_button
from demo_fixtures.garments.placing import both, with_mirrored

OUTER = [
    (204.0, 40.0),
    (226.0, 150.0),
    (240.0, 260.0),
    (252.0, 520.0),
    (262.0, 800.0),
    (270.0, 1040.0),
]
INNER = [(70.0, 1048.0), (58.0, 800.0), (36.0, 560.0), (6.0, 318.0), (0.0, 306.0)]
HALF = [(0.0, 46.0), *curve(OUTER, 9), *curve(INNER, 9)]
SEAM = [(x - 6, y) for x, y in curve(OUTER, 9)]
POCKET = curve([(196, 122), (160, 128), (122, 96), (110, 44)], 8)
HEM = [(68.0, 1026.0), (268.0, 1020.0)]
INSEAM = curve([(3, 322), (41, 560), (64, 800), (76, 1044)], 9)
FLY = curve([(34, 48), (35, 150), (30, 200), (2, 236)], 8)
BAG = [*POCKET, (196.0, 44.0)]


def jeans(denim: Cloth, pale: Cloth, thread: str, metal: str) -> list[Part]:
    """Jeans with yoke-less front, fly, curved pockets, rivets and a turned hem."""
    lines = [
        Line(SEAM, "pucker", depth_mm=2.5),
        Line(SEAM[:46], "stitch", thread, 1.0),
        Line(POCKET, "seam", depth_mm=2.4, width_mm=2),
        Line([(x - 4, y + 4) for x, y in POCKET], "stitch", thread, 1.0),
        Line([(x - 9, y + 9) for x, y in POCKET], "stitch", thread, 1.0),
        Line(HEM, "stitch", thread, 1.0),
        Line(HEM, "pucker", depth_mm=4),
        Line(INSEAM, "seam", depth_mm=1.6),
    ]
    lines = with_mirrored(lines)
    lines += [
        Line(FLY, "stitch", thread, 1.0),
        Line([(x - 5, y - 2) for x, y in FLY], "stitch", thread, 1.0),
        Line([(0, 46), (1, 200), (0, 306)], "seam", depth_mm=2.6, width_mm=2),
    ]
    body = Part(
        symmetric(HALF),
        denim,
        thickness_mm=6,
        round_mm=13,
        shadow=0.6,
        shadow_mm=8,
        lines=lines,
        wobble_mm=4,
    )
    return [
        body,
        *both(
            Part(
                BAG,
                denim,
                grain_deg=6,
                thickness_mm=-1.6,
                round_mm=5,
                shadow=0,
                tone=0.66,
                wobble_mm=4,
            )
        ),
        *_jeans_waist(denim, pale, thread, metal),
        *[
            p
            for x, y in ((190, 116), (114, 56), (-190, 116), (-114, 56))
            for p in dome_button((float(x), float(y)), 3.6, metal)
        ],
    ]


def _jeans_waist(denim: Cloth, pale: Cloth, thread: str, metal: str) -> list[Part]:
    inside = curve([(-196, 6), (0, 14), (196, 6)], 8) + curve([(196, 30), (0, 42), (-196, 30)], 8)
    band = curve([(-206, 8), (-100, 18), (0, 22), (100, 18), (206, 8)], 6)
    band += curve([(205, 46), (100, 54), (0, 57), (-100, 54), (-205, 46)], 6)
    rim = curve([(-200, 14), (0, 27), (200, 14)], 10) + curve([(199, 41), (0, 52), (-199, 41)], 10)
    loops = [
        Part(
            box(x - 6, 6, x + 6, 64),
            denim,
            thickness_mm=2.4,
            round_mm=3,
            shadow=0.65,
            shadow_mm=3,
            wobble_mm=2,
            fold_share=0.4,
            lines=[Line([(x + s, 8), (x + s, 62)], "stitch", thread, 0.8) for s in (-3.4, 3.4)],
        )
        for x in (-132, 132)
    ]
    return [
        Part(
            inside,
            pale,
            grain_deg=90,
            tone=0.55,
            thickness_mm=2,
            shadow=0.3,
            fold_share=0.4,
            wobble_mm=2,
        ),
        Part(
            band,
            denim,
            grain_deg=90,
            thickness_mm=3.4,
            round_mm=5,
            shadow=0.55,
            shadow_mm=4,
            wobble_mm=2,
            fold_share=0.5,
            lines=[Line([*rim, rim[0]], "stitch", thread, 1.0), Line(rim, "pucker", depth_mm=2)],
        ),
        *loops,
        *dome_button((14.0, 39.0), 8.5, metal),
    ]

"""The collar of a shirt, buttoned to the neck."""

from __future__ import annotations

from demo_fixtures.drawing.cloth import Cloth
from demo_fixtures.drawing.scene import Line, Part
from demo_fixtures.drawing.shapes import curve, mirrored

BAND = curve(
    [
        (-70, -32),
        (-62, 8),
        (-34, 42),
        (0, 62),
        (34, 42),
        (62, 8),
        (70, -32),
        (84, -12),
        (78, 30),
        (44, 70),
        (6, 88),
        (-6, 88),
        (-44, 70),
        (-78, 30),
        (-84, -12),
    ],
    6,
)
FALL = curve(
    [
        (-84, -10),
        (-76, -36),
        (-42, -60),
        (0, -68),
        (42, -60),
        (76, -36),
        (84, -10),
        (74, -24),
        (40, -46),
        (0, -53),
        (-40, -46),
        (-74, -24),
    ],
    6,
)
LEAF = [
    *curve([(3, 64), (34, 40), (60, 8), (70, -32), (80, -40), (96, -18), (110, 22), (116, 52)], 6),
    (92, 132),
    *curve([(92, 132), (52, 96), (3, 64)], 6),
]
INNER = [
    *curve([(108, 24), (109, 52)], 3),
    (90, 122),
    *curve([(90, 122), (52, 88), (12, 64)], 6),
]


def collar(cloth: Cloth, thread: str) -> list[Part]:
    """The buttoned collar: stand, fall and both leaves."""
    leaves = [
        Part(
            points,
            cloth,
            grain_deg=turn,
            thickness_mm=3.4,
            round_mm=6,
            shadow=0.6,
            shadow_mm=5,
            fold_share=0.35,
            wobble_mm=1.6,
            lines=[Line(stitch, "stitch", thread, 0.6), Line(stitch, "pucker")],
        )
        for points, stitch, turn in ((mirrored(LEAF), mirrored(INNER), 62), (LEAF, INNER, -62))
    ]
    return [
        Part(
            FALL,
            cloth,
            grain_deg=90,
            thickness_mm=3,
            round_mm=5,
            shadow=0.3,
            fold_share=0.3,
            wobble_mm=1,
        ),
        Part(
            BAND,
            cloth,
            grain_deg=90,
            thickness_mm=1.8,
            round_mm=4,
            shadow=0.3,
            fold_share=0.3,
            wobble_mm=1,
        ),
        *leaves,
    ]


def inside_of_neck(cloth: Cloth, thread: str) -> list[Part]:
    """The back and the collar stand, seen through the neckline."""
    back = curve(
        [(-84, 10), (-74, -26), (-40, -47), (0, -53), (40, -47), (74, -26), (84, 10), (0, 70)], 8
    )
    stand = curve(
        [
            (-76, -18),
            (-42, -40),
            (0, -47),
            (42, -40),
            (76, -18),
            (70, 12),
            (36, -4),
            (0, -9),
            (-36, -4),
            (-70, 12),
        ],
        8,
    )
    return [
        Part(back, cloth, thickness_mm=2, shadow=0.3, tone=0.5, fold_share=0.4, wobble_mm=1),
        Part(
            stand,
            cloth,
            grain_deg=90,
            thickness_mm=1.5,
            shadow=0.2,
            tone=0.72,
            fold_share=0.3,
            wobble_mm=1,
            lines=[Line(stand[50:76], "stitch", thread, 0.7)],
        ),
    ]

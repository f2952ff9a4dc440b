"""A plain service jacket lying face up; no badge, no number."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from demo_fixtures.drawing.cloth import Cloth
from demo_fixtures.drawing.scene import Line, Part
from demo_fixtures.drawing.shapes import box, curve, limb, mirrored, widths
from demo_fixtures.garments.buttons import dome_button
from demo_fixtures.garments.placing import both, strip

SPINE = curve([(268, 180), (332, 340), (366, 510), (372, 680)], 10)
HALF = [
    (-24.0, 330.0),
    *curve([(0, 320), (40, 190), (84, -4)], 7),
    (170.0, 18.0),
    *curve([(244, 42), (232, 110), (240, 190), (296, 262)], 8),
    *curve([(296, 262), (274, 420), (286, 600), (300, 756)], 8),
    *curve([(300, 756), (180, 768), (40, 772), (-24, 764)], 5),
]
ARM = curve([(244, 42), (232, 110), (240, 190), (296, 262)], 8)
DART = curve([(128, 250), (122, 380), (130, 540)], 6)
CAP = [
    (180.0, 6.0),
    (260.0, 26.0),
    (350.0, 140.0),
    (340.0, 260.0),
    (292.0, 268.0),
    (210.0, 190.0),
]


def uniform_jacket(wool: Cloth, lining: Cloth, thread: str, metal: str) -> list[Part]:
    """A service jacket with lapels, flapped pockets and shoulder straps, buttoned."""
    ring = limb(SPINE, widths([104, 100, 92, 82, 74], len(SPINE)))
    under, outer = ring[: len(SPINE)], ring[len(SPINE) :][::-1]
    sleeve = Part(
        [*curve([(190, 26), (244, 42), (306, 90), *outer[8::6], outer[-1]], 6), *reversed(under)],
        wool,
        spine=SPINE,
        thickness_mm=7,
        round_mm=16,
        shadow_mm=8,
        wobble_mm=3,
        lines=[Line(limb(SPINE[-8:], [74] * 8)[:1] + [(300, 610), (444, 614)], "pucker")],
    )
    lines = [
        Line(ARM, "seam", depth_mm=2.2),
        Line(DART, "seam", depth_mm=1.3),
        Line([(-18, 340), (-18, 758)], "stitch", thread, 0.6),
    ]
    look: dict[str, Any] = {
        "thickness_mm": 5.5,
        "round_mm": 10,
        "shadow": 0.6,
        "shadow_mm": 6,
        "wobble_mm": 2.5,
    }
    right = Part(HALF, wool, lines=lines, flush=[CAP], **look)
    left = replace(
        right,
        outline=mirrored(HALF),
        flush=[mirrored(CAP)],
        lines=[replace(s, points=mirrored(s.points)) for s in lines],
    )
    inside = Part(
        curve(
            [
                (-106, 10),
                (-66, -46),
                (0, -66),
                (66, -46),
                (106, 10),
                (44, 200),
                (0, 330),
                (-44, 200),
            ],
            6,
            closed=True,
        ),
        lining,
        tone=0.75,
        shadow=0.2,
        fold_share=0.5,
        wobble_mm=1,
    )
    parts = [
        *both(sleeve),
        inside,
        right,
        left,
        *_lapels(wool, thread),
        *_straps(wool, thread, metal),
        *_jacket_pockets(wool, thread, metal),
    ]
    for y in (350, 444, 538, 632):
        parts += dome_button((-2.0, float(y)), 10.5, metal)
    return parts


def _lapels(wool: Cloth, thread: str) -> list[Part]:
    lapel = [
        (-4.0, 328.0),
        *curve([(4, 310), (38, 190), (66, 92), (84, 24)], 6),
        (116.0, 72.0),
        (176.0, 116.0),
        *curve([(176, 116), (140, 204), (76, 284), (-4, 328)], 6),
    ]
    collar = [
        *curve([(0, -62), (48, -54), (84, -26), (104, 16), (112, 66)], 6),
        (146.0, 84.0),
        (158.0, 64.0),
        *curve([(158, 64), (140, 14), (108, -36), (60, -72), (0, -82)], 6),
    ]
    full = [*collar, *reversed(mirrored(collar))]
    look: dict[str, Any] = {
        "thickness_mm": 4.5,
        "round_mm": 6,
        "shadow": 0.65,
        "shadow_mm": 6,
        "wobble_mm": 1.5,
        "fold_share": 0.4,
    }
    edge = Line(curve([(167, 119), (133, 200), (71, 277)], 6), "stitch", thread, 0.6)
    return [
        Part(
            mirrored(lapel),
            wool,
            grain_deg=14,
            lines=[replace(edge, points=mirrored(edge.points))],
            **look,
        ),
        Part(lapel, wool, grain_deg=-14, lines=[edge], **look),
        Part(full, wool, grain_deg=90, **look),
    ]


def _straps(wool: Cloth, thread: str, metal: str) -> list[Part]:
    path = [(246.0, 46.0), (190.0, 24.0), (138.0, 8.0)]
    strap = strip(path, 20, wool, thickness_mm=3, round_mm=4, shadow=0.55, shadow_mm=3.5)
    spine = curve(path, 8)
    rim = limb(spine[1:-1], [16] * (len(spine) - 2))
    strap = replace(strap, lines=[Line([*rim, rim[0]], "stitch", thread, 0.6)])
    return [
        *both(strap),
        *dome_button((150.0, 12.0), 6.5, metal),
        *dome_button((-150.0, 12.0), 6.5, metal),
    ]


def _jacket_pockets(wool: Cloth, thread: str, metal: str) -> list[Part]:
    parts: list[Part] = []
    for left, top, right, bottom in ((86, 216, 214, 330), (92, 500, 258, 668)):
        sides = [(left + 5, top), (left + 5, bottom - 5), (right - 5, bottom - 5), (right - 5, top)]
        bag = Part(
            box(left, top, right, bottom),
            wool,
            thickness_mm=2.6,
            round_mm=4,
            shadow=0.5,
            shadow_mm=4,
            wobble_mm=2,
            lines=[Line(sides, "stitch", thread, 0.6)],
        )
        at = ((left + right) / 2, top + 43.0)
        parts += [*both(bag), *both(_flap(wool, thread, left, right, top))]
        parts += [*dome_button(at, 6.5, metal), *dome_button((-at[0], at[1]), 6.5, metal)]
    return parts


def _flap(wool: Cloth, thread: str, left: float, right: float, top: float) -> Part:
    middle, deep = (left + right) / 2, top + 52
    edge = [
        (left - 4, top - 8),
        (right + 4, top - 8),
        (right + 4, deep - 10),
        (middle, deep + 6),
        (left - 4, deep - 10),
    ]
    rim = [(left, top - 4), (left, deep - 12), (middle, deep), (right, deep - 12), (right, top - 4)]
    return Part(
        edge,
        wool,
        thickness_mm=3,
        round_mm=4.5,
        shadow=0.65,
        shadow_mm=5,
        wobble_mm=2,
        lines=[Line(rim, "stitch", thread, 0.6)],
    )

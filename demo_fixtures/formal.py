"""Clothes for great days lying face up: wedding dress, uniform jacket, velvet skirt, tie."""

from __future__ import annotations

from dataclasses import replace

from demo_fixtures.babywear import both, small_sleeve, strip
from demo_fixtures.cloth import Cloth, Satin
from demo_fixtures.scene import Line, Part
from demo_fixtures.shapes import Point, box, circle, curve, limb, mirrored, symmetric, widths


def dome_button(at: Point, radius: float, colour: str) -> list[Part]:
    """A plain domed metal button."""
    return [
        Part(
            circle(at, radius),
            Satin(colour, gloss=1.3, sheen=0),
            thickness_mm=radius * 0.6,
            round_mm=radius,
            shadow=0.8,
            shadow_mm=2.2,
            fold_share=0,
            wobble_mm=0,
        )
    ]


def wedding_dress(satin: Cloth, lace: Cloth, lining: Cloth) -> list[Part]:
    """Satin skirt with a lace bodice, lace sleeves and a lace border at the hem."""
    sleeve = small_sleeve(
        lace,
        [(184, 92), (226, 200), (254, 320), (262, 430)],
        [66, 60, 52, 42],
        (194, 14),
        (232, 58),
    )
    under_sleeve = replace(sleeve, cloth=lining, tone=0.86, thickness_mm=1, shadow=0.4)
    bodice = [
        (0.0, 108.0),
        *curve([(8, 100), (60, 66), (112, 74), (128, 30)], 7),
        *curve([(150, -8), (196, 14), (188, 90), (206, 150), (186, 240), (160, 338)], 8),
        *curve([(160, 338), (90, 362), (0, 384)], 6),
    ]
    sheer = [
        *curve([(0, 40), (50, 24), (92, -22)], 6),
        *curve([(150, -8), (196, 14), (188, 90), (130, 70)], 6),
        *curve([(112, 78), (60, 70), (0, 110)], 6),
    ]
    skirt = [
        (0.0, 372.0),
        *curve([(160, 330), (214, 480), (300, 760), (392, 1060), (470, 1290)], 10),
        *curve([(470, 1290), (400, 1338), (250, 1372), (100, 1392), (0, 1396)], 8),
    ]
    hem = curve([(462, 1252), (396, 1300), (248, 1334), (100, 1354), (0, 1358)], 8)
    low = curve([(470, 1290), (400, 1338), (250, 1372), (100, 1392), (0, 1396)], 8)
    border_ring = [*mirrored(hem), *hem[::-1], *low, *mirrored(low)[::-1]]
    waist = curve([(-160, 338), (-90, 362), (0, 384), (90, 362), (160, 338)], 6)
    darts = [Line([(74, 130), (70, 240), (62, 366)], "seam", depth_mm=0.4)]
    darts += [replace(d, points=mirrored(d.points)) for d in darts]
    body = symmetric(bodice)
    behind = Part(
        symmetric(
            [
                *curve([(0, 2), (50, -6), (92, -26)], 6),
                (150.0, -10.0),
                (180.0, 60.0),
                (120.0, 130.0),
            ]
        ),
        lining,
        tone=0.72,
        thickness_mm=1,
        shadow=0.3,
        wobble_mm=2,
    )
    return [
        behind,
        *both(under_sleeve),
        *both(sleeve),
        Part(
            symmetric(skirt),
            satin,
            thickness_mm=5,
            round_mm=16,
            shadow=0.5,
            shadow_mm=8,
            wobble_mm=7,
        ),
        Part(border_ring, lace, thickness_mm=1.0, round_mm=4, shadow=0.15, wobble_mm=7),
        Part(symmetric(sheer), lace, thickness_mm=0.8, round_mm=3, shadow=0.2, wobble_mm=2),
        Part(
            body,
            satin,
            thickness_mm=4,
            round_mm=11,
            shadow=0.45,
            wobble_mm=2,
            fold_share=0.6,
            lines=darts,
        ),
        Part(body, lace, thickness_mm=0.8, round_mm=3, shadow=0.0, wobble_mm=2, fold_share=0.6),
        strip(waist, 13, satin, thickness_mm=2.6, round_mm=6, shadow=0.5, wobble_mm=2),
    ]


def uniform_jacket(wool: Cloth, lining: Cloth, thread: str, metal: str) -> list[Part]:
    """A plain service jacket with lapels, flapped pockets and shoulder straps; no badge, no number."""
    spine = curve([(268, 180), (332, 340), (366, 510), (372, 680)], 10)
    ring = limb(spine, widths([104, 100, 92, 82, 74], len(spine)))
    under, outer = ring[: len(spine)], ring[len(spine) :][::-1]
    sleeve = Part(
        [*curve([(190, 26), (244, 42), (306, 90), *outer[8::6], outer[-1]], 6), *reversed(under)],
        wool,
        spine=spine,
        thickness_mm=7,
        round_mm=16,
        shadow_mm=8,
        wobble_mm=3,
        lines=[Line(limb(spine[-8:], [74] * 8)[:1] + [(300, 610), (444, 614)], "pucker")],
    )
    half = [
        (-24.0, 330.0),
        *curve([(0, 320), (40, 190), (84, -4)], 7),
        (170.0, 18.0),
        *curve([(244, 42), (232, 110), (240, 190), (296, 262)], 8),
        *curve([(296, 262), (274, 420), (286, 600), (300, 756)], 8),
        *curve([(300, 756), (180, 768), (40, 772), (-24, 764)], 5),
    ]
    arm = curve([(244, 42), (232, 110), (240, 190), (296, 262)], 8)
    dart = curve([(128, 250), (122, 380), (130, 540)], 6)
    lines = [
        Line(arm, "seam", depth_mm=2.2),
        Line(dart, "seam", depth_mm=1.3),
        Line([(-18, 340), (-18, 758)], "stitch", thread, 0.6),
    ]
    cap = [
        (180.0, 6.0),
        (260.0, 26.0),
        (350.0, 140.0),
        (340.0, 260.0),
        (292.0, 268.0),
        (210.0, 190.0),
    ]
    look = {"thickness_mm": 5.5, "round_mm": 10, "shadow": 0.6, "shadow_mm": 6, "wobble_mm": 2.5}
    right = Part(half, wool, lines=lines, flush=[cap], **look)
    left = replace(
        right,
        outline=mirrored(half),
        flush=[mirrored(cap)],
        lines=[replace(s, points=mirrored(s.points)) for s in lines],
    )
    inside = Part(
        curve(
            [(-92, 6), (-60, -48), (0, -66), (60, -48), (92, 6), (44, 200), (0, 330), (-44, 200)],
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
        *curve([(4, 310), (38, 190), (66, 92)], 6),
        (92.0, 74.0),
        (150.0, 118.0),
        *curve([(150, 118), (116, 206), (60, 284), (-4, 328)], 6),
    ]
    collar = [
        *curve([(0, -62), (48, -54), (84, -26), (104, 16), (112, 66)], 6),
        (146.0, 84.0),
        (158.0, 64.0),
        *curve([(158, 64), (140, 14), (108, -36), (60, -72), (0, -82)], 6),
    ]
    full = [*collar, *reversed(mirrored(collar))]
    look = {
        "thickness_mm": 4.5,
        "round_mm": 6,
        "shadow": 0.65,
        "shadow_mm": 6,
        "wobble_mm": 1.5,
        "fold_share": 0.4,
    }
    edge = Line(curve([(142, 122), (110, 202), (57, 278)], 6), "stitch", thread, 0.6)
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
        bag = Part(
            box(left, top, right, bottom),
            wool,
            thickness_mm=2.6,
            round_mm=4,
            shadow=0.5,
            shadow_mm=4,
            wobble_mm=2,
            lines=[
                Line(
                    [
                        (left + 5, top),
                        (left + 5, bottom - 5),
                        (right - 5, bottom - 5),
                        (right - 5, top),
                    ],
                    "stitch",
                    thread,
                    0.6,
                )
            ],
        )
        middle = (left + right) / 2
        deep = top + 52
        flap = Part(
            [
                (left - 4, top - 8),
                (right + 4, top - 8),
                (right + 4, deep - 10),
                (middle, deep + 6),
                (left - 4, deep - 10),
            ],
            wool,
            thickness_mm=3,
            round_mm=4.5,
            shadow=0.65,
            shadow_mm=5,
            wobble_mm=2,
            lines=[
                Line(
                    [
                        (left, top - 4),
                        (left, deep - 12),
                        (middle, deep),
                        (right, deep - 12),
                        (right, top - 4),
                    ],
                    "stitch",
                    thread,
                    0.6,
                )
            ],
        )
        parts += [*both(bag), *both(flap)]
        parts += dome_button((middle, deep - 9.0), 6.5, metal) + dome_button(
            (-middle, deep - 9.0), 6.5, metal
        )
    return parts


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

"""Clothes for great days lying face up: wedding dress, silk blouse, uniform jacket, velvet skirt, tie."""

from __future__ import annotations

from dataclasses import replace

from demo_fixtures.babywear import both, strip
from demo_fixtures.cloth import Cloth, Satin
from demo_fixtures.scene import Line, Part
from demo_fixtures.shapes import Point, box, circle, curve, limb, mirrored, symmetric, widths
from demo_fixtures.shirts import button


def dome_button(at: Point, radius: float, colour: str) -> list[Part]:
    """A plain domed metal button."""
    return [Part(circle(at, radius), Satin(colour, gloss=1.3, sheen=0), thickness_mm=radius * 0.6,
                 round_mm=radius, shadow=0.8, shadow_mm=2.2, fold_share=0, wobble_mm=0)]


def wedding_dress(satin: Cloth, lace: Cloth, lining: Cloth) -> list[Part]:
    """Satin skirt with a lace bodice, lace sleeves and a lace border at the hem."""
    arm = curve([(150, 60), (218, 190), (252, 320), (262, 430)], 8)
    sleeve_ring = limb(arm, widths([70, 62, 52, 42], len(arm)))
    sleeve = Part(sleeve_ring, lace, spine=arm, thickness_mm=2.0, round_mm=8, shadow=0.35, wobble_mm=3)
    under_sleeve = replace(sleeve, cloth=lining, tone=0.86, thickness_mm=1, shadow=0.4)
    bodice = [(0.0, 108.0), *curve([(8, 100), (60, 66), (112, 74), (128, 30)], 7),
              *curve([(150, -8), (196, 14), (188, 90), (206, 150), (186, 240), (160, 338)], 8),
              *curve([(160, 338), (90, 362), (0, 384)], 6)]
    sheer = [*curve([(0, 40), (50, 24), (92, -22)], 6), *curve([(150, -8), (196, 14), (188, 90),
             (130, 70)], 6), *curve([(112, 78), (60, 70), (0, 110)], 6)]
    skirt = [(0.0, 372.0), *curve([(160, 330), (214, 480), (300, 760), (392, 1060), (470, 1290)], 10),
             *curve([(470, 1290), (400, 1338), (250, 1372), (100, 1392), (0, 1396)], 8)]
    hem = curve([(462, 1252), (396, 1300), (248, 1334), (100, 1354), (0, 1358)], 8)
    low = curve([(470, 1290), (400, 1338), (250, 1372), (100, 1392), (0, 1396)], 8)
    border_ring = [*mirrored(hem), *hem[::-1], *low, *mirrored(low)[::-1]]
    waist = curve([(-160, 338), (-90, 362), (0, 384), (90, 362), (160, 338)], 6)
    darts = [Line([(74, 130), (70, 240), (62, 366)], "seam", depth_mm=1.4)]
    darts += [replace(d, points=mirrored(d.points)) for d in darts]
    body = symmetric(bodice)
    behind = Part(symmetric([*curve([(0, -6), (50, -16), (92, -26)], 6), (150.0, -10.0), (180.0, 60.0), (120.0, 130.0)]),
                  lining, tone=0.72, thickness_mm=1, shadow=0.3, wobble_mm=2)
    return [
        behind,
        *both(under_sleeve), *both(sleeve),
        Part(symmetric(skirt), satin, thickness_mm=5, round_mm=16, shadow=0.5, shadow_mm=8, wobble_mm=7),
        Part(border_ring, lace, thickness_mm=1.0, round_mm=4, shadow=0.15, wobble_mm=7),
        Part(symmetric(sheer), lace, thickness_mm=0.8, round_mm=3, shadow=0.2, wobble_mm=2),
        Part(body, satin, thickness_mm=4, round_mm=11, shadow=0.45, wobble_mm=2, fold_share=0.6, lines=darts),
        Part(body, lace, thickness_mm=0.8, round_mm=3, shadow=0.0, wobble_mm=2, fold_share=0.6),
        strip(waist, 13, satin, thickness_mm=2.6, round_mm=6, shadow=0.5, wobble_mm=2),
    ]


def blouse(silk: Cloth, thread: str, pearl: str) -> list[Part]:
    """A silk blouse with gathered sleeves and a tied bow at the neck."""
    spine = curve([(250, 170), (335, 320), (378, 470), (386, 610)], 9)
    ring = limb(spine, widths([104, 106, 104, 100, 84, 62], len(spine)))
    under, outer = ring[: len(spine)], ring[len(spine) :][::-1]
    sleeve = Part([*curve([(170, 18), (206, 34), (276, 84), *outer[8::6], outer[-1]], 6), *reversed(under)],
                  silk, spine=spine, thickness_mm=5, round_mm=13, shadow_mm=7, wobble_mm=6,
                  lines=[Line([under[-1], outer[-1]], "pucker", depth_mm=5)])
    cuff = strip([(385, 604), (386, 632), (385, 660)], 54, silk, thickness_mm=3, shadow=0.5)
    half = [*curve([(0, 88), (36, 66), (66, -2)], 6), (140.0, 12.0),
            *curve([(206, 34), (196, 100), (206, 170), (258, 240)], 7),
            *curve([(258, 240), (250, 400), (258, 560), (262, 672)], 7),
            *curve([(262, 672), (150, 684), (0, 688)], 5)]
    arm = curve([(206, 34), (196, 100), (206, 170), (258, 240)], 7)
    hem = curve([(260, 662), (150, 674), (0, 678)], 6)
    tucks = [Line(curve([(x, 40), (x + 3, 160), (x + 2, 300)], 6), "seam", depth_mm=1.3)
             for x in (46.0, 64.0, 82.0)]
    lines = [Line(arm, "seam", depth_mm=1.3), Line(arm, "pucker", depth_mm=3), *tucks,
             Line(hem, "stitch", thread, 0.5), Line(hem, "pucker", depth_mm=1)]
    lines += [replace(s, points=mirrored(s.points)) for s in lines]
    cap = [(160.0, 0.0), (226.0, 20.0), (320.0, 120.0), (300.0, 240.0), (256.0, 246.0), (180.0, 180.0)]
    body = Part(symmetric(half), silk, thickness_mm=4, round_mm=11, shadow=0.5, lines=lines, wobble_mm=6,
                flush=[cap, mirrored(cap)])
    back = Part(curve([(-70, 0), (-34, -32), (0, -38), (34, -32), (70, 0), (36, 70), (0, 92), (-36, 70)], 6,
                      closed=True), silk, tone=0.5, shadow=0.2, fold_share=0.3, wobble_mm=1)
    placket = Part(box(-13, 84, 13, 684), silk, thickness_mm=1.4, round_mm=3, shadow=0.4, shadow_mm=2.5,
                   wobble_mm=6)
    parts = [*both(sleeve), *both(cuff), back, body, placket]
    for y in (190, 280, 370, 460, 550, 640):
        parts += button((0.0, float(y)), 5.2, pearl)
    return [*parts, *_neck_bow(silk)]


def _neck_bow(silk: Cloth) -> list[Part]:
    look = {"thickness_mm": 5, "round_mm": 9, "shadow": 0.6, "shadow_mm": 5, "wobble_mm": 3}
    tail_a = curve([(6, 92), (34, 170), (44, 270), (60, 380)], 8)
    tail_b = curve([(-4, 92), (-36, 160), (-50, 250), (-46, 340)], 8)
    loop = curve([(4, 86), (40, 52), (92, 44), (116, 74), (96, 108), (44, 104)], 8, closed=True)
    collar = [(-72.0, 4.0), (-62.0, -26.0), (-34.0, -46.0), (0.0, -52.0), (34.0, -46.0), (62.0, -26.0), (72.0, 4.0)]
    sides = [(72.0, -8.0), (58.0, 40.0), (30.0, 70.0), (2.0, 90.0)]
    return [
        strip(collar, 15, silk, thickness_mm=5, round_mm=10),
        strip(sides, 15, silk, **look), strip(mirrored(sides), 15, silk, **look),
        Part(limb(tail_a, widths([15, 22, 30, 34], len(tail_a))), silk, spine=tail_a, **look),
        Part(limb(tail_b, widths([15, 20, 28, 32], len(tail_b))), silk, spine=tail_b, **look),
        Part(loop, silk, grain_deg=70, **look), Part(mirrored(loop), silk, grain_deg=-70, **look),
        Part(curve([(-16, 74), (12, 70), (20, 90), (14, 108), (-12, 110), (-20, 92)], 6, closed=True), silk,
             **look),
    ]


def uniform_jacket(wool: Cloth, lining: Cloth, thread: str, metal: str) -> list[Part]:
    """A plain service jacket with lapels, flapped pockets and shoulder straps; no badge, no number."""
    spine = curve([(268, 180), (332, 340), (366, 510), (372, 680)], 10)
    ring = limb(spine, widths([104, 100, 92, 82, 74], len(spine)))
    under, outer = ring[: len(spine)], ring[len(spine) :][::-1]
    sleeve = Part([*curve([(190, 26), (244, 42), (306, 90), *outer[8::6], outer[-1]], 6), *reversed(under)],
                  wool, spine=spine, thickness_mm=7, round_mm=16, shadow_mm=8, wobble_mm=3,
                  lines=[Line(limb(spine[-8:], [74] * 8)[:1] + [(300, 610), (444, 614)], "pucker")])
    half = [(-24.0, 330.0), *curve([(0, 320), (40, 190), (84, -4)], 7), (170.0, 18.0),
            *curve([(244, 42), (232, 110), (240, 190), (296, 262)], 8),
            *curve([(296, 262), (274, 420), (286, 600), (300, 756)], 8),
            *curve([(300, 756), (180, 768), (40, 772), (-24, 764)], 5)]
    arm = curve([(244, 42), (232, 110), (240, 190), (296, 262)], 8)
    dart = curve([(128, 250), (122, 380), (130, 540)], 6)
    lines = [Line(arm, "seam", depth_mm=2.2), Line(dart, "seam", depth_mm=1.3),
             Line([(-18, 340), (-18, 758)], "stitch", thread, 0.6)]
    cap = [(180.0, 6.0), (260.0, 26.0), (350.0, 140.0), (340.0, 260.0), (292.0, 268.0), (210.0, 190.0)]
    look = {"thickness_mm": 5.5, "round_mm": 10, "shadow": 0.6, "shadow_mm": 6, "wobble_mm": 2.5}
    right = Part(half, wool, lines=lines, flush=[cap], **look)
    left = replace(right, outline=mirrored(half), flush=[mirrored(cap)],
                   lines=[replace(s, points=mirrored(s.points)) for s in lines])
    inside = Part(curve([(-92, 6), (-60, -48), (0, -66), (60, -48), (92, 6), (44, 200), (0, 330), (-44, 200)],
                        6, closed=True), lining, tone=0.75, shadow=0.2, fold_share=0.5, wobble_mm=1)
    parts = [*both(sleeve), inside, right, left, *_lapels(wool, thread), *_straps(wool, thread, metal),
             *_jacket_pockets(wool, thread, metal)]
    for y in (350, 444, 538, 632):
        parts += dome_button((-2.0, float(y)), 10.5, metal)
    return parts


def _lapels(wool: Cloth, thread: str) -> list[Part]:
    lapel = [(-4.0, 328.0), *curve([(4, 310), (38, 190), (66, 92)], 6), (92.0, 74.0), (150.0, 118.0),
             *curve([(150, 118), (116, 206), (60, 284), (-4, 328)], 6)]
    collar = [*curve([(0, -62), (48, -54), (84, -26), (104, 16), (112, 66)], 6), (146.0, 84.0), (158.0, 64.0),
              *curve([(158, 64), (140, 14), (108, -36), (60, -72), (0, -82)], 6)]
    full = [*collar, *reversed(mirrored(collar))]
    look = {"thickness_mm": 4.5, "round_mm": 6, "shadow": 0.65, "shadow_mm": 6, "wobble_mm": 1.5,
            "fold_share": 0.4}
    edge = Line(curve([(142, 122), (110, 202), (57, 278)], 6), "stitch", thread, 0.6)
    return [
        Part(mirrored(lapel), wool, grain_deg=14, lines=[replace(edge, points=mirrored(edge.points))], **look),
        Part(lapel, wool, grain_deg=-14, lines=[edge], **look),
        Part(full, wool, grain_deg=90, **look),
    ]


def _straps(wool: Cloth, thread: str, metal: str) -> list[Part]:
    path = [(246.0, 46.0), (190.0, 24.0), (138.0, 8.0)]
    strap = strip(path, 20, wool, thickness_mm=3, round_mm=4, shadow=0.55, shadow_mm=3.5)
    spine = curve(path, 8)
    rim = limb(spine[1:-1], [16] * (len(spine) - 2))
    strap = replace(strap, lines=[Line([*rim, rim[0]], "stitch", thread, 0.6)])
    return [*both(strap), *dome_button((150.0, 12.0), 6.5, metal), *dome_button((-150.0, 12.0), 6.5, metal)]


def _jacket_pockets(wool: Cloth, thread: str, metal: str) -> list[Part]:
    parts: list[Part] = []
    for left, top, right, bottom in ((86, 216, 214, 330), (92, 500, 258, 668)):
        bag = Part(box(left, top, right, bottom), wool, thickness_mm=2.6, round_mm=4, shadow=0.5,
                   shadow_mm=4, wobble_mm=2,
                   lines=[Line([(left + 5, top), (left + 5, bottom - 5), (right - 5, bottom - 5),
                                (right - 5, top)], "stitch", thread, 0.6)])
        middle = (left + right) / 2
        deep = top + 52
        flap = Part([(left - 4, top - 8), (right + 4, top - 8), (right + 4, deep - 10), (middle, deep + 6),
                     (left - 4, deep - 10)], wool, thickness_mm=3, round_mm=4.5, shadow=0.65, shadow_mm=5,
                    wobble_mm=2, lines=[Line([(left, top - 4), (left, deep - 12), (middle, deep),
                                              (right, deep - 12), (right, top - 4)], "stitch", thread, 0.6)])
        parts += [*both(bag), *both(flap)]
        parts += dome_button((middle, deep - 9.0), 6.5, metal) + dome_button((-middle, deep - 9.0), 6.5, metal)
    return parts


def velvet_skirt(velvet: Cloth, band: Cloth) -> list[Part]:
    """An A-line skirt of six gores on a waistband."""
    half = [(0.0, 6.0), *curve([(186, 0), (240, 150), (300, 360), (372, 640)], 9),
            *curve([(372, 640), (280, 672), (140, 692), (0, 698)], 7)]
    gores = [Line(curve([(62, 10), (90, 240), (122, 460), (146, 684)], 8), "seam", depth_mm=2.0, width_mm=2)]
    gores += [replace(g, points=mirrored(g.points)) for g in gores]
    hem = Line(curve([(-366, 616), (-280, 648), (-140, 668), (0, 674), (140, 668), (280, 648), (366, 616)], 6),
               "pucker", depth_mm=1.8)
    return [
        Part(symmetric(half), velvet, thickness_mm=6, round_mm=15, shadow=0.55, shadow_mm=8, wobble_mm=6,
             lines=[*gores, hem]),
        Part(curve([(-190, -36), (0, -30), (190, -36)], 8) + curve([(188, 8), (0, 15), (-188, 8)], 8), band,
             grain_deg=90, thickness_mm=3.5, round_mm=6, shadow=0.5, wobble_mm=2),
        *dome_button((170.0, -12.0), 7.0, "#3b2a2c"),
    ]


def tie(silk: Cloth) -> list[Part]:
    """A silk tie laid in a loose S."""
    spine = curve([(-300, -180), (-60, -226), (150, -170), (196, -40), (60, 40), (-160, 66), (-232, 170),
                   (-90, 262), (160, 250), (330, 210)], 12)
    half = widths([17, 17, 16, 16, 17, 19, 23, 29, 36, 42], len(spine))
    ring = limb(spine, half)
    count = len(spine)
    end, near = spine[-1], spine[-3]
    dx, dy = end[0] - near[0], end[1] - near[1]
    scale = 42 / (dx * dx + dy * dy) ** 0.5
    tip = (end[0] + dx * scale, end[1] + dy * scale)
    outline = [*ring[:count], tip, *ring[count:]]
    return [Part(outline, silk, spine=spine, thickness_mm=4, round_mm=9, shadow=0.6, shadow_mm=6, wobble_mm=2)]

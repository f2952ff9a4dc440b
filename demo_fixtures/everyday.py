"""Everyday clothes lying face up: jeans, jumper, fleece, dress, scarf, T-shirt."""

from __future__ import annotations

from dataclasses import replace

from demo_fixtures.babywear import both, strip
from demo_fixtures.cloth import Cloth, Satin
from demo_fixtures.formal import dome_button
from demo_fixtures.scene import Line, Part
from demo_fixtures.shapes import Point, box, curve, limb, mirrored, symmetric, widths


def sleeve_from(
    cloth: Cloth, path: list[Point], half: list[float], tip: Point, lean: Point, **look: float
) -> Part:
    """A right sleeve: from the shoulder tip over `lean`, then along its outer edge to the wrist."""
    spine = curve(path, 9)
    ring = limb(spine, widths(half, len(spine)))
    under, outer = ring[: len(spine)], ring[len(spine) :][::-1]
    top = curve([(tip[0] * 0.84, tip[1] * 0.7), tip, lean, *outer[8::6], outer[-1]], 6)
    base = {"thickness_mm": 5, "round_mm": 13, "shadow": 0.5, "shadow_mm": 7, "wobble_mm": 4}
    return Part([*top, *reversed(under)], cloth, spine=spine, **(base | look))


def jeans(denim: Cloth, pale: Cloth, thread: str, metal: str) -> list[Part]:
    """Jeans with yoke-less front, fly, curved pockets, rivets and a turned hem."""
    outer = [
        (204.0, 40.0),
        (226.0, 150.0),
        (240.0, 260.0),
        (252.0, 520.0),
        (262.0, 800.0),
        (270.0, 1040.0),
    ]
    inner = [(70.0, 1048.0), (58.0, 800.0), (36.0, 560.0), (6.0, 318.0), (0.0, 306.0)]
    half = [(0.0, 46.0), *curve(outer, 9), *curve(inner, 9)]
    seam = [(x - 6, y) for x, y in curve(outer, 9)]
    pocket = curve([(196, 122), (160, 128), (122, 96), (110, 44)], 8)
    hem = [(68.0, 1026.0), (268.0, 1020.0)]
    inseam = curve([(3, 322), (41, 560), (64, 800), (76, 1044)], 9)
    lines = [
        Line(seam, "pucker", depth_mm=2.5),
        Line(seam[:46], "stitch", thread, 1.0),
        Line(pocket, "seam", depth_mm=2.4, width_mm=2),
        Line([(x - 4, y + 4) for x, y in pocket], "stitch", thread, 1.0),
        Line([(x - 9, y + 9) for x, y in pocket], "stitch", thread, 1.0),
        Line(hem, "stitch", thread, 1.0),
        Line(hem, "pucker", depth_mm=4),
        Line(inseam, "seam", depth_mm=1.6),
    ]
    lines += [replace(s, points=mirrored(s.points)) for s in lines]
    fly = curve([(34, 48), (35, 150), (30, 200), (2, 236)], 8)
    lines += [
        Line(fly, "stitch", thread, 1.0),
        Line([(x - 5, y - 2) for x, y in fly], "stitch", thread, 1.0),
        Line([(0, 46), (1, 200), (0, 306)], "seam", depth_mm=2.6, width_mm=2),
    ]
    body = Part(
        symmetric(half),
        denim,
        thickness_mm=6,
        round_mm=13,
        shadow=0.6,
        shadow_mm=8,
        lines=lines,
        wobble_mm=4,
    )
    bag = [*pocket, (196.0, 44.0)]
    return [
        body,
        *both(
            Part(
                bag,
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
    half = [
        *curve([(0, 66), (50, 50), (92, 0)], 7),
        *curve([(236, 48), (226, 120), (238, 200), (288, 274)], 8),
        *curve([(288, 274), (284, 420), (288, 560), (276, 630)], 8),
        (0.0, 634.0),
    ]
    arm = curve([(236, 48), (226, 120), (238, 200), (288, 274)], 8)
    lines = [Line(arm, "seam", depth_mm=2.0, width_mm=4)]
    lines += [replace(s, points=mirrored(s.points)) for s in lines]
    cap = [
        (180.0, 10.0),
        (256.0, 30.0),
        (350.0, 140.0),
        (340.0, 270.0),
        (286.0, 280.0),
        (200.0, 200.0),
    ]
    body = Part(
        symmetric(half),
        knit,
        thickness_mm=8,
        round_mm=17,
        shadow=0.5,
        lines=lines,
        wobble_mm=5,
        fuzz_mm=0.9,
        flush=[cap, mirrored(cap)],
    )
    back = Part(
        curve(
            [(-92, 0), (-46, -24), (0, -30), (46, -24), (92, 0), (48, 50), (0, 66), (-48, 50)],
            6,
            closed=True,
        ),
        knit,
        tone=0.55,
        shadow=0.2,
        fold_share=0.3,
        wobble_mm=1,
    )
    welt = Part(
        curve([(-278, 624), (0, 630), (278, 624)], 8)
        + curve([(262, 712), (0, 718), (-262, 712)], 8),
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
        strip(
            [(-96, -4), (-80, 28), (-46, 56), (0, 68), (46, 56), (80, 28), (96, -4)],
            15,
            rib,
            thickness_mm=6.5,
            round_mm=10,
            shadow=0.5,
        ),
    ]


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
    half = [
        *curve([(0, 40), (40, 30), (84, 0)], 7),
        *curve([(232, 46), (222, 120), (234, 196), (286, 268)], 8),
        *curve([(286, 268), (280, 440), (284, 600), (282, 690)], 8),
        (0.0, 696.0),
    ]
    arm = curve([(232, 46), (222, 120), (234, 196), (286, 268)], 8)
    lines = [Line(arm, "seam", depth_mm=2.2, width_mm=4)]
    lines += [replace(s, points=mirrored(s.points)) for s in lines]
    cap = [
        (180.0, 10.0),
        (256.0, 30.0),
        (350.0, 140.0),
        (340.0, 266.0),
        (282.0, 274.0),
        (200.0, 200.0),
    ]
    body = Part(
        symmetric(half),
        fleece,
        thickness_mm=8,
        round_mm=17,
        shadow=0.5,
        lines=lines,
        wobble_mm=5,
        fuzz_mm=1.6,
        flush=[cap, mirrored(cap)],
    )
    collar = curve(
        [(-96, -58), (0, -72), (96, -58), (94, 22), (40, 46), (0, 52), (-40, 46), (-94, 22)],
        7,
        closed=True,
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
    pocket = Part(
        box(76, 214, 196, 232), trim, thickness_mm=2.2, round_mm=4, shadow=0.5, shadow_mm=3
    )
    return [
        *both(sleeve),
        *both(cuff),
        body,
        Part(
            collar,
            fleece,
            thickness_mm=9,
            round_mm=15,
            shadow=0.5,
            wobble_mm=3,
            fuzz_mm=1.6,
            fold_share=0.6,
        ),
        strip([(-96, 0), (-50, 38), (0, 48), (50, 38), (96, 0)], 5, trim),
        Part(
            box(-15, -66, 15, 268),
            zip_cloth,
            thickness_mm=1.6,
            round_mm=4,
            shadow=0.45,
            shadow_mm=3,
            fold_share=0.2,
            wobble_mm=1,
        ),
        *teeth,
        pull,
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


def day_dress(cloth: Cloth, thread: str) -> list[Part]:
    """A crossed-front dress with short sleeves, a tied waist and a full skirt."""
    sleeve = sleeve_from(
        cloth, [(212, 150), (258, 200), (296, 250)], [92, 92, 94], (186, 28), (250, 62), wobble_mm=5
    )
    side = [
        (186.0, 28.0),
        (176.0, 90.0),
        (186.0, 150.0),
        (222.0, 214.0),
        (196.0, 330.0),
        (176.0, 396.0),
    ]
    half = [*curve([(0, 210), (40, 110), (72, -4)], 7), *curve(side, 8), (0.0, 400.0)]
    skirt = [
        (0.0, 392.0),
        *curve([(176, 388), (226, 520), (290, 760), (352, 1030)], 9),
        *curve([(352, 1030), (260, 1062), (120, 1080), (0, 1084)], 7),
    ]
    arm = curve([(186, 28), (176, 90), (186, 150), (222, 214)], 8)
    hem = Line(
        curve(
            [
                (-346, 1012),
                (-260, 1042),
                (-120, 1060),
                (0, 1064),
                (120, 1060),
                (260, 1042),
                (346, 1012),
            ],
            6,
        ),
        "pucker",
        depth_mm=2.4,
    )
    waist = [Line([(-176, 398), (0, 404), (176, 398)], "pucker", depth_mm=6)]
    lines = [Line(arm, "seam", depth_mm=1.3), Line(arm, "pucker", depth_mm=3)]
    lines += [replace(s, points=mirrored(s.points)) for s in lines]
    cap = [
        (150.0, 6.0),
        (206.0, 14.0),
        (300.0, 100.0),
        (270.0, 214.0),
        (220.0, 220.0),
        (150.0, 150.0),
    ]
    wrap = [
        *curve([(-72, -4), (-30, 120), (60, 260), (150, 372)], 8),
        (176.0, 398.0),
        (-176.0, 398.0),
        *mirrored(curve(side[::-1], 8)[2:]),
    ]
    edge = [(x - 6, y + 4) for x, y in curve([(-72, -4), (-30, 120), (60, 260), (150, 372)], 8)]
    back = Part(
        curve(
            [(-72, 0), (-36, -26), (0, -32), (36, -26), (72, 0), (38, 120), (0, 212), (-38, 120)],
            6,
            closed=True,
        ),
        cloth,
        tone=0.5,
        shadow=0.2,
        fold_share=0.3,
        wobble_mm=1,
    )
    look = {"thickness_mm": 4, "round_mm": 11, "shadow": 0.5, "shadow_mm": 6, "wobble_mm": 5}
    tie_a, tie_b = (
        [(150.0, 398.0), (196.0, 470.0), (214.0, 580.0)],
        [(150.0, 398.0), (226.0, 448.0), (262.0, 540.0)],
    )
    return [
        *both(sleeve),
        back,
        Part(symmetric(skirt), cloth, lines=[hem, *waist], **look),
        Part(
            symmetric(half),
            cloth,
            lines=lines,
            flush=[cap, mirrored(cap), box(-176, 380, 176, 440)],
            **look,
        ),
        Part(
            wrap,
            cloth,
            grain_deg=8,
            lines=[Line(edge, "stitch", thread, 0.5), Line(edge, "pucker", depth_mm=2)],
            flush=[mirrored(cap), box(-176, 380, 176, 440)],
            **look,
        ),
        strip([(-178, 396), (0, 404), (178, 396)], 15, cloth, shadow=0.5, thickness_mm=2.6),
        strip(tie_b, 12, cloth, shadow=0.6, shadow_mm=4),
        strip(tie_a, 12, cloth, shadow=0.6, shadow_mm=4),
    ]


def scarf(cloth: Cloth, yarn: Cloth) -> list[Part]:
    """A long scarf doubled over on itself, fringed at both ends."""
    under = curve([(-116, -322), (-84, -60), (-140, 160), (-206, 350)], 12)
    over = curve([(-118, -326), (-20, -120), (84, 120), (170, 366)], 12)
    parts: list[Part] = []
    for spine in (under, over):
        half = widths([104, 110, 112, 114], len(spine))
        parts += _fringe(spine, half[-1], yarn)
        parts.append(
            Part(
                limb(spine, half),
                cloth,
                spine=spine,
                thickness_mm=7,
                round_mm=16,
                shadow=0.6,
                shadow_mm=9,
                wobble_mm=5,
                fuzz_mm=0.9,
            )
        )
    return parts


def _fringe(spine: list[Point], half: float, yarn: Cloth) -> list[Part]:
    end, near = spine[-1], spine[-3]
    dx, dy = end[0] - near[0], end[1] - near[1]
    length = (dx * dx + dy * dy) ** 0.5
    dx, dy = dx / length, dy / length
    strands: list[Part] = []
    for number in range(22):
        offset = half * (number / 10.5 - 1) * 0.97
        sway = 7.0 * ((number * 37 % 11) / 5 - 1)
        start = (end[0] - dy * offset - 6 * dx, end[1] + dx * offset - 6 * dy)
        reach = 58 + (number * 53 % 13)
        tip = (start[0] + dx * reach + dy * sway, start[1] + dy * reach - dx * sway)
        middle = ((start[0] + tip[0]) / 2 + dy * sway * 0.3, (start[1] + tip[1]) / 2)
        strands.append(
            strip(
                [start, middle, tip],
                2.9,
                yarn,
                thickness_mm=3,
                round_mm=3,
                shadow=0.5,
                shadow_mm=3,
                fold_share=0,
            )
        )
    return strands


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
    cut = [(x, y) for x, y in ((424.0, 204.0), (280.0, 332.0))]
    half = [
        *curve([(0, 62), (48, 48), (88, -2)], 7),
        *curve([(218, 36), (208, 110), (216, 180), (262, 250)], 8),
        *curve([(262, 250), (256, 420), (260, 600), (264, 704)], 8),
        (0.0, 710.0),
    ]
    arm = curve([(218, 36), (208, 110), (216, 180), (262, 250)], 8)
    hem = [(-262.0, 684.0), (0.0, 690.0), (262.0, 684.0)]
    lines = [Line(arm, "seam", depth_mm=1.5), Line(arm, "pucker", depth_mm=2)]
    lines += [replace(s, points=mirrored(s.points)) for s in lines]
    lines += [
        Line(hem, "stitch", thread, 0.6),
        Line([(x, y + 4) for x, y in hem], "stitch", thread, 0.6),
        Line(hem, "pucker", depth_mm=1.8),
    ]
    cap = [
        (170.0, 6.0),
        (236.0, 20.0),
        (340.0, 120.0),
        (310.0, 250.0),
        (258.0, 256.0),
        (180.0, 180.0),
    ]
    sleeve = replace(
        sleeve,
        lines=[
            Line([(x - 14, y - 14) for x, y in cut], "stitch", thread, 0.6),
            Line([(x - 14, y - 14) for x, y in cut], "pucker", depth_mm=3),
        ],
    )
    back = Part(
        curve(
            [(-88, -2), (-44, -22), (0, -28), (44, -22), (88, -2), (48, 46), (0, 60), (-48, 46)],
            6,
            closed=True,
        ),
        jersey,
        tone=0.55,
        shadow=0.2,
        fold_share=0.3,
        wobble_mm=1,
    )
    return [
        *both(sleeve),
        back,
        strip([(-90, 0), (-44, -24), (0, -30), (44, -24), (90, 0)], 9, rib),
        Part(
            symmetric(half),
            jersey,
            thickness_mm=4,
            round_mm=11,
            shadow=0.5,
            shadow_mm=6,
            lines=lines,
            wobble_mm=5,
            flush=[cap, mirrored(cap)],
        ),
        strip([(-92, -6), (-78, 26), (-46, 53), (0, 64), (46, 53), (78, 26), (92, -6)], 10, rib),
    ]

"""Baby clothes lying face up: sleepsuit with feet and poppers, bodysuit, cardigan, muslin, blanket."""

from __future__ import annotations

from dataclasses import replace

from demo_fixtures.cloth import Cloth, Satin
from demo_fixtures.scene import Line, Part
from demo_fixtures.shapes import Point, box, circle, curve, limb, mirrored, symmetric, widths
from demo_fixtures.shirts import button


def popper(at: Point, radius: float = 5.0) -> list[Part]:
    """A press fastener: a ring with a dimple."""
    metal = Satin("#e8e6e0", gloss=0.9, sheen=0)
    return [
        Part(
            circle(at, radius),
            metal,
            thickness_mm=1.2,
            round_mm=2.0,
            shadow=0.7,
            shadow_mm=1.3,
            fold_share=0,
            wobble_mm=0,
        ),
        Part(
            circle(at, radius * 0.52),
            metal,
            thickness_mm=-0.9,
            round_mm=1.6,
            shadow=0,
            fold_share=0,
            tone=0.86,
            wobble_mm=0,
        ),
    ]


def both(part: Part) -> list[Part]:
    """The part and its mirror image."""
    return [
        replace(
            part,
            outline=mirrored(part.outline),
            spine=mirrored(part.spine) if part.spine else (),
            grain_deg=-part.grain_deg,
            lines=[replace(line, points=mirrored(line.points)) for line in part.lines],
        ),
        part,
    ]


def strip(path: list[Point], half_mm: float, cloth: Cloth, **look: float) -> Part:
    """A band of binding or ribbing along a path, its ribs across the path."""
    spine = curve(path, 8)
    band = {"thickness_mm": 1.8, "round_mm": 3.0, "shadow": 0.4, "shadow_mm": 2.0, "wobble_mm": 1.5}
    return Part(limb(spine, [half_mm] * len(spine)), cloth, spine=spine, **(band | look))


def small_sleeve(
    cloth: Cloth, path: list[Point], half: list[float], tip: Point, lean: Point
) -> Part:
    """A baby's sleeve from the shoulder tip to the wrist."""
    spine = curve(path, 8)
    ring = limb(spine, widths(half, len(spine)))
    under, outer = ring[: len(spine)], ring[len(spine) :][::-1]
    top = curve([(tip[0] * 0.82, tip[1] * 0.7), tip, lean, *outer[5::5], outer[-1]], 6)
    return Part(
        [*top, *reversed(under)],
        cloth,
        spine=spine,
        thickness_mm=4.0,
        round_mm=10,
        shadow=0.5,
        shadow_mm=5,
        wobble_mm=2.5,
    )


def sleepsuit(cloth: Cloth, rib: Cloth, thread: str) -> list[Part]:
    """A newborn's sleepsuit, 540 mm from neck to toe."""
    sleeve = small_sleeve(
        cloth, [(118, 82), (168, 140), (200, 215)], [44, 38, 30], (112, 20), (146, 50)
    )
    cuff = strip([(199, 212), (204, 226), (209, 240)], 27, rib)
    outer = [
        (112.0, 20.0),
        (106.0, 58.0),
        (124.0, 116.0),
        (116.0, 200.0),
        (118.0, 280.0),
        (132.0, 350.0),
        (128.0, 425.0),
        (116.0, 468.0),
    ]
    foot = [
        (118.0, 486.0),
        (136.0, 520.0),
        (120.0, 548.0),
        (80.0, 552.0),
        (52.0, 528.0),
        (46.0, 480.0),
    ]
    inner = [(40.0, 430.0), (26.0, 372.0), (0.0, 338.0)]
    half = [*curve([(0, 34), (26, 26), (50, -2)], 6), *curve(outer + foot + inner, 7)]
    arm = curve([(112, 20), (106, 58), (124, 116)], 8)
    ankle = curve([(118, 474), (92, 466), (64, 470), (43, 472)], 6)
    toe = curve([(128, 508), (100, 492), (72, 494), (50, 506)], 6)
    leg = curve([(0, 338), (20, 374), (33, 430), (40, 474)], 6)
    sides = [
        Line(arm, "seam", depth_mm=0.7),
        Line([(x - 4, y) for x, y in arm], "stitch", thread, 0.45),
        Line(ankle, "seam", depth_mm=0.8),
        Line(toe, "seam", depth_mm=0.8),
        Line([(x, y - 4) for x, y in ankle], "stitch", thread, 0.45),
    ]
    sides += [replace(s, points=mirrored(s.points)) for s in sides]
    cap = [(80.0, 0.0), (126.0, 10.0), (170.0, 70.0), (160.0, 120.0), (120.0, 120.0), (90.0, 80.0)]
    body = Part(
        symmetric(half),
        cloth,
        thickness_mm=5,
        round_mm=13,
        shadow=0.5,
        lines=sides,
        wobble_mm=3,
        flush=[cap, mirrored(cap)],
    )
    opening = [
        (-4.0, 34.0),
        (-4.0, 180.0),
        (-2.0, 290.0),
        (14.0, 352.0),
        (38.0, 410.0),
        (56.0, 462.0),
    ]
    path = curve(opening, 8)
    placket = strip(opening, 9, cloth, thickness_mm=1.4, shadow=0.45)
    placket = replace(
        placket,
        lines=[
            Line([(x + 6, y) for x, y in path], "stitch", thread, 0.45),
            Line([(x - 6, y) for x, y in path], "stitch", thread, 0.45),
            Line(path, "pucker", depth_mm=1.2),
        ],
    )
    back_neck = Part(
        curve(
            [(-50, -2), (-28, -14), (0, -18), (28, -14), (50, -2), (30, 24), (0, 34), (-30, 24)],
            6,
            closed=True,
        ),
        cloth,
        tone=0.62,
        shadow=0.2,
        fold_share=0.3,
        wobble_mm=1,
    )
    band_back = strip([(-52, 0), (-30, -15), (0, -20), (30, -15), (52, 0)], 5.5, rib)
    band_front = strip(
        [(-52, -2), (-44, 14), (-26, 29), (0, 36), (26, 29), (44, 14), (52, -2)], 6.5, rib
    )
    parts = [*both(sleeve), *both(cuff), back_neck, band_back, body, placket, band_front]
    for index in range(4, len(path), 6):
        parts += popper(path[index], 4.6)
    return parts


def bodysuit(cloth: Cloth, rib: Cloth, thread: str) -> list[Part]:
    """A short-sleeved bodysuit with lapped shoulders and poppers below."""
    sleeve = small_sleeve(
        cloth, [(112, 78), (146, 112), (172, 142)], [44, 42, 40], (108, 16), (140, 34)
    )
    hem = strip([(165, 134), (171, 142), (175, 148)], 40.5, rib, thickness_mm=2.0)
    outer = [
        (108.0, 16.0),
        (100.0, 58.0),
        (116.0, 108.0),
        (112.0, 190.0),
        (118.0, 262.0),
        (122.0, 292.0),
    ]
    leg = [(122.0, 292.0), (92.0, 322.0), (62.0, 366.0), (44.0, 402.0), (0.0, 404.0)]
    half = [*curve([(0, 44), (30, 36), (58, -2)], 6), *curve(outer, 7), *curve(leg, 7)]
    arm = curve([(108, 16), (100, 58), (116, 108)], 8)
    lap = curve([(60, 0), (78, 38), (102, 84)], 6)
    lines = [
        Line(arm, "seam", depth_mm=0.7),
        Line([(x - 4, y) for x, y in arm], "stitch", thread, 0.45),
        Line(lap, "seam", depth_mm=0.8),
        Line([(x - 5, y + 2) for x, y in lap], "stitch", thread, 0.4),
    ]
    lines += [replace(s, points=mirrored(s.points)) for s in lines]
    cap = [(80.0, 0.0), (120.0, 8.0), (160.0, 60.0), (150.0, 112.0), (112.0, 112.0), (88.0, 70.0)]
    body = Part(
        symmetric(half),
        cloth,
        thickness_mm=4,
        round_mm=12,
        shadow=0.5,
        lines=lines,
        wobble_mm=3,
        flush=[cap, mirrored(cap)],
    )
    back = Part(
        curve(
            [(-58, -2), (-30, -16), (0, -20), (30, -16), (58, -2), (30, 34), (0, 44), (-30, 34)],
            6,
            closed=True,
        ),
        cloth,
        tone=0.62,
        shadow=0.2,
        fold_share=0.3,
        wobble_mm=1,
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


def cardigan(knit: Cloth, rib: Cloth, button_colour: str) -> list[Part]:
    """A hand-knitted cardigan for a newborn, 270 mm long."""
    sleeve = small_sleeve(
        knit, [(126, 86), (170, 142), (200, 204)], [50, 44, 36], (116, 18), (154, 46)
    )
    cuff = strip([(197, 200), (205, 216), (211, 230)], 31, rib, thickness_mm=3.2, round_mm=5)
    side = [(116.0, 18.0), (112.0, 60.0), (134.0, 112.0), (134.0, 180.0), (136.0, 248.0)]
    half = [(0.0, 104.0), *curve([(8, 100), (30, 52), (48, 0)], 6), *curve(side, 7), (0.0, 250.0)]
    arm = curve([(116, 18), (112, 60), (134, 112)], 8)
    lines = [Line(arm, "seam", depth_mm=1.1, width_mm=2.2)]
    lines += [replace(s, points=mirrored(s.points)) for s in lines]
    cap = [(80.0, 0.0), (130.0, 8.0), (180.0, 66.0), (170.0, 122.0), (128.0, 122.0), (96.0, 80.0)]
    look = {"thickness_mm": 5.5, "round_mm": 11, "shadow": 0.5, "wobble_mm": 3}
    body = Part(symmetric(half), knit, lines=lines, fuzz_mm=0.6, flush=[cap, mirrored(cap)], **look)
    back = Part(
        curve(
            [(-50, 0), (-26, -12), (0, -15), (26, -12), (50, 0), (26, 60), (0, 108), (-26, 60)],
            6,
            closed=True,
        ),
        knit,
        tone=0.58,
        shadow=0.2,
        fold_share=0.3,
        wobble_mm=1,
    )
    welt = Part(
        box(-137, 246, 137, 282), rib, thickness_mm=4.5, round_mm=8, shadow=0.5, wobble_mm=3
    )
    left_band = strip(
        [(-50, -2), (-32, 52), (-8, 104), (-4, 180), (-4, 281)], 9, rib, thickness_mm=3
    )
    right_band = strip(
        [(0, -16), (30, -13), (52, 0), (36, 52), (10, 104), (6, 180), (6, 281)],
        9.5,
        rib,
        thickness_mm=3.4,
        shadow=0.6,
    )
    parts = [
        *both(sleeve),
        *both(cuff),
        back,
        body,
        welt,
        left_band,
        strip([(0, -16), (-30, -13), (-52, 0)], 9, rib, thickness_mm=3),
        right_band,
    ]
    for y in (112, 150, 188, 226, 264):
        parts += button((6.0, float(y)), 6.4, button_colour)
    return parts


def muslin(cloth: Cloth, thread: str) -> list[Part]:
    """A square of gauze with one corner turned back."""
    ring = [
        (-330.0, -322.0),
        (0.0, -328.0),
        (326.0, -324.0),
        (332.0, 0.0),
        (326.0, 190.0),
        (200.0, 316.0),
        (0.0, 324.0),
        (-324.0, 328.0),
        (-332.0, 0.0),
        (-330.0, -322.0),
    ]
    hem = [(x * 0.965, y * 0.965) for x, y in ring]
    turned_back = [(326.0, 190.0), (200.0, 316.0), (186.0, 196.0), (206.0, 184.0)]
    flap_hem = [(312.0, 188.0), (205.0, 192.0), (196.0, 300.0)]
    return [
        Part(
            ring,
            cloth,
            thickness_mm=1.8,
            round_mm=5,
            shadow=0.5,
            wobble_mm=4,
            lines=[Line(hem, "stitch", thread, 0.5), Line(hem, "pucker", depth_mm=2.5)],
        ),
        Part(
            turned_back,
            cloth,
            grain_deg=90,
            thickness_mm=3.5,
            round_mm=8,
            shadow=0.65,
            tone=0.97,
            wobble_mm=3,
            lines=[Line(flap_hem, "stitch", thread, 0.5), Line(flap_hem, "pucker", depth_mm=2)],
        ),
    ]


def blanket(knit: Cloth, binding: Cloth) -> list[Part]:
    """A cot blanket folded in four, its satin edge showing."""
    under = [
        (-286.0, -216.0),
        (-280.0, -222.0),
        (0.0, -224.0),
        (290.0, -220.0),
        (298.0, -212.0),
        (300.0, 0.0),
        (297.0, 222.0),
        (0.0, 232.0),
        (-294.0, 224.0),
    ]
    upper = [
        (-299.0, -220.0),
        (-290.0, -230.0),
        (0.0, -234.0),
        (282.0, -228.0),
        (291.0, -218.0),
        (292.0, 0.0),
        (288.0, 204.0),
        (0.0, 212.0),
        (-296.0, 206.0),
    ]
    low = [(297.0, 222.0), (0.0, 231.0), (-294.0, 223.0)]
    edge = [(289.0, 200.0), (0.0, 208.0), (-297.0, 202.0)]
    look = {
        "thickness_mm": 9,
        "round_mm": 15,
        "shadow": 0.55,
        "shadow_mm": 7,
        "wobble_mm": 3,
        "fuzz_mm": 0.8,
    }
    return [
        Part(under, knit, **look),
        strip(low, 17, binding, thickness_mm=4, round_mm=8, wobble_mm=3),
        Part(upper, knit, **look),
        strip(edge, 18, binding, thickness_mm=4, round_mm=8, wobble_mm=3),
    ]

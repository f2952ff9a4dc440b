"""A man's shirt lying face up: fronts, placket, sleeves with cuffs, collar, pocket, buttons."""

from __future__ import annotations

from dataclasses import dataclass

from demo_fixtures.drawing.cloth import Cloth
from demo_fixtures.drawing.scene import Line, Part
from demo_fixtures.drawing.shapes import Point, box, curve, limb, mirrored, widths
from demo_fixtures.garments.buttons import button
from demo_fixtures.garments.placing import with_mirrored
from demo_fixtures.garments.shirt_collar import collar, inside_of_neck


@dataclass(frozen=True)
class ShirtCut:
    """What makes one shirt differ from another."""

    cloth: Cloth
    thread: str
    button: str = "#ece7dc"
    arm_right: tuple[Point, ...] = ((258, 168), (320, 330), (368, 500), (390, 690))
    arm_left: tuple[Point, ...] = ((-258, 168), (-314, 330), (-352, 500), (-360, 690))
    pocket: bool = True
    sleeves: Cloth | None = None


SIDE = [(290.0, 262.0), (281.0, 420.0), (284.0, 600.0), (292.0, 700.0)]


TAIL = [(292.0, 700.0), (270.0, 765.0), (205.0, 800.0), (100.0, 812.0), (0.0, 814.0)]


ARMHOLE = [(236.0, 42.0), (222.0, 110.0), (232.0, 190.0), (290.0, 262.0)]


def shirt(cut: ShirtCut) -> list[Part]:
    """Every part of the shirt in the order it is laid down."""
    arms = _arm(cut, cut.arm_right, 1) + _arm(cut, cut.arm_left, -1)
    return (
        arms
        + inside_of_neck(cut.cloth, cut.thread)
        + _fronts(cut)
        + _pocket(cut)
        + collar(cut.cloth, cut.thread)
        + _buttons(cut)
    )


def _arm(cut: ShirtCut, path: tuple[Point, ...], side: int) -> list[Part]:
    spine = curve(path, 12)
    half = widths([104, 99, 92, 85, 77, 66], len(spine))
    cloth = cut.sleeves or cut.cloth
    ring = limb(spine, half)
    under, outer = ring[: len(spine)], ring[len(spine) :][::-1]
    if side < 0:
        under, outer = outer, under
    tip = (side * 234.0, 42.0)
    lean = (
        tip[0] + 0.46 * (outer[9][0] - tip[0]) + side * 7,
        tip[1] + 0.40 * (outer[9][1] - tip[1]),
    )
    top = curve([(side * 190.0, 30.0), tip, lean, *outer[9::6], outer[-1]], 6)
    sleeve = [*top, *reversed(under), (side * 235.0, 210.0)]
    end, before = spine[-1], spine[-4]
    dx, dy = end[0] - before[0], end[1] - before[1]
    length = (dx * dx + dy * dy) ** 0.5
    dx, dy = dx / length, dy / length
    line = [(end[0] + k * dx, end[1] + k * dy) for k in (-3, 15, 32, 50, 66)]
    cuff = limb(line, [62, 63, 63, 63, 60])
    inner = limb([(end[0] + k * dx, end[1] + k * dy) for k in (2, 20, 40, 61)], [58, 58, 58, 57])
    at = (end[0] + 32 * dx - side * 42 * dy, end[1] + 32 * dy + side * 42 * dx)
    return [
        Part(
            sleeve,
            cloth,
            spine=spine,
            thickness_mm=4.5,
            round_mm=12,
            shadow_mm=7,
            wobble_mm=4,
            lines=[Line([line[0], line[1]], "pucker")],
        ),
        Part(
            cuff,
            cut.cloth,
            spine=line,
            thickness_mm=3.2,
            round_mm=5,
            shadow=0.5,
            fold_share=0.5,
            wobble_mm=1.5,
            lines=[Line([*inner, inner[0]], "stitch", cut.thread, 0.7)],
        ),
        *button(at, 5.0, cut.button),
    ]


def _fronts(cut: ShirtCut) -> list[Part]:
    half = [
        *curve([(0.0, 78.0), (34.0, 64.0), (66.0, 38.0), (78.0, -2.0)], 6),
        (160.0, 17.0),
        *curve(ARMHOLE, 8),
        *curve([*SIDE, *TAIL[1:]], 8),
    ]
    hem = curve([(284, 698), (263, 757), (200, 791), (100, 803), (0, 805)], 8)
    arm = [(x - 9, y + 2) for x, y in curve(ARMHOLE, 8)]
    side = [(x - 4, y) for x, y in curve(SIDE, 6)]
    yoke = curve([(80, 38), (150, 58), (229, 88)], 8)
    seams = [
        Line(hem, "stitch", cut.thread, 0.6),
        Line(arm, "stitch", cut.thread, 0.6),
        Line(curve(ARMHOLE, 8), "seam", depth_mm=1.2),
        Line(side, "pucker"),
        Line(hem, "pucker"),
        Line(yoke, "seam", depth_mm=0.8),
        Line([(x, y + 3) for x, y in yoke], "stitch", cut.thread, 0.6),
    ]
    seams = with_mirrored(seams)
    cap = [
        (180.0, 10.0),
        (250.0, 30.0),
        (330.0, 150.0),
        (330.0, 250.0),
        (286.0, 268.0),
        (200.0, 200.0),
    ]
    edges = [Line([(x, 66), (x, 808)], "stitch", cut.thread, 0.6) for x in (-11.0, 11.0)]
    return [
        Part(
            [*half, *reversed(mirrored(half))],
            cut.cloth,
            thickness_mm=3.4,
            round_mm=9,
            shadow=0.5,
            shadow_mm=6,
            lines=seams,
            wobble_mm=4,
            flush=[cap, mirrored(cap)],
        ),
        Part(
            box(-17, 62, 17, 813),
            cut.cloth,
            uv_shift=(3.0, 5.0),
            thickness_mm=1.3,
            round_mm=2.5,
            shadow=0.35,
            shadow_mm=2.2,
            lines=[*edges, Line(edges[0].points, "pucker")],
            wobble_mm=4,
        ),
    ]


def _pocket(cut: ShirtCut) -> list[Part]:
    if not cut.pocket:
        return []
    flap = [(78, 218), (202, 218), (203, 330), (140, 362), (77, 330)]
    inner = [(81, 221), (81, 328), (140, 358), (199, 328), (199, 221)]
    top = [(80, 244), (200, 244)]
    lines = [
        Line(inner, "stitch", cut.thread, 0.6),
        Line(inner, "pucker"),
        Line(top, "stitch", cut.thread, 0.6),
    ]
    return [
        Part(
            flap,
            cut.cloth,
            thickness_mm=1.5,
            round_mm=2.5,
            shadow=0.4,
            shadow_mm=2.6,
            lines=lines,
            wobble_mm=4,
        )
    ]


def _buttons(cut: ShirtCut) -> list[Part]:
    parts: list[Part] = []
    for y in (78, 158, 248, 338, 428, 518, 608, 698):
        parts += button((0, y), 5.6, cut.button)
    return parts

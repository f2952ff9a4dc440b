"""A long wedding dress with lace bodice and sleeves, lying face up."""

from __future__ import annotations

from dataclasses import replace

from demo_fixtures.drawing.cloth import Cloth
from demo_fixtures.drawing.scene import Line, Part
from demo_fixtures.drawing.shapes import curve, mirrored, symmetric
from demo_fixtures.garments.placing import both, small_sleeve, strip

BODICE = [
    (0.0, 108.0),
    *curve([(8, 100), (60, 66), (112, 74), (128, 30)], 7),
    *curve([(150, -8), (196, 14), (188, 90), (206, 150), (186, 240), (160, 338)], 8),
    *curve([(160, 338), (90, 362), (0, 384)], 6),
]
SHEER = [
    *curve([(0, 40), (50, 24), (92, -22)], 6),
    *curve([(150, -8), (196, 14), (188, 90), (130, 70)], 6),
    *curve([(112, 78), (60, 70), (0, 110)], 6),
]
SKIRT = [
    (0.0, 372.0),
    *curve([(160, 330), (214, 480), (300, 760), (392, 1060), (470, 1290)], 10),
    *curve([(470, 1290), (400, 1338), (250, 1372), (100, 1392), (0, 1396)], 8),
]
HEM = curve([(462, 1252), (396, 1300), (248, 1334), (100, 1354), (0, 1358)], 8)
LOW = curve([(470, 1290), (400, 1338), (250, 1372), (100, 1392), (0, 1396)], 8)
WAIST = curve([(-160, 338), (-90, 362), (0, 384), (90, 362), (160, 338)], 6)
BODY = symmetric(BODICE)


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
    border_ring = [*mirrored(HEM), *HEM[::-1], *LOW, *mirrored(LOW)[::-1]]
    darts = [Line([(74, 130), (70, 240), (62, 366)], "seam", depth_mm=0.4)]
    darts += [replace(d, points=mirrored(d.points)) for d in darts]
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
            symmetric(SKIRT),
            satin,
            thickness_mm=5,
            round_mm=16,
            shadow=0.5,
            shadow_mm=8,
            wobble_mm=7,
        ),
        Part(border_ring, lace, thickness_mm=1.0, round_mm=4, shadow=0.15, wobble_mm=7),
        Part(symmetric(SHEER), lace, thickness_mm=0.8, round_mm=3, shadow=0.2, wobble_mm=2),
        Part(
            BODY,
            satin,
            thickness_mm=4,
            round_mm=11,
            shadow=0.45,
            wobble_mm=2,
            fold_share=0.6,
            lines=darts,
        ),
        Part(BODY, lace, thickness_mm=0.8, round_mm=3, shadow=0.0, wobble_mm=2, fold_share=0.6),
        strip(WAIST, 13, satin, thickness_mm=2.6, round_mm=6, shadow=0.5, wobble_mm=2),
    ]

"""A muslin square with a corner turned back, and a folded cot blanket."""

from __future__ import annotations

from typing import Any

from demo_fixtures.drawing.cloth import Cloth
from demo_fixtures.drawing.scene import Line, Part
from demo_fixtures.garments.placing import strip


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
    look: dict[str, Any] = {
        "thickness_mm": 9,
        "round_mm": 15,
        "shadow": 0.55,
        "shadow_mm": 7,
        "wobble_mm": 3,
        "fuzz_mm": 0.8,
    }
    return [
        Part(under, knit, **look),
        strip(low, 17, binding, thickness_mm=4, round_mm=8, wobble_mm=3, fold_share=0.4),
        Part(upper, knit, **look),
        strip(edge, 18, binding, thickness_mm=4, round_mm=8, wobble_mm=3, fold_share=0.4),
    ]

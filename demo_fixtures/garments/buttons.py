"""Buttons, domed metal buttons and press fasteners."""

from __future__ import annotations

from demo_fixtures.drawing.fine_cloth import Satin
from demo_fixtures.drawing.scene import Part
from demo_fixtures.drawing.shapes import Point, circle


def button(at: Point, radius: float, colour: str) -> list[Part]:
    """A four-hole button with its thread."""
    face = Satin(colour, gloss=0.5, sheen=0)
    holes = Satin("#5a5148", gloss=0, sheen=0)
    parts = [
        Part(
            circle(at, radius),
            face,
            thickness_mm=1.6,
            round_mm=radius * 0.3,
            shadow=0.75,
            shadow_mm=1.6,
            fold_share=0,
            wobble_mm=0,
        ),
        Part(
            circle(at, radius * 0.66),
            face,
            thickness_mm=-0.6,
            round_mm=1.2,
            shadow=0,
            fold_share=0,
            tone=0.94,
            wobble_mm=0,
        ),
    ]
    for dx, dy in ((-1, -1), (1, -1), (1, 1), (-1, 1)):
        centre = (at[0] + dx * radius * 0.2, at[1] + dy * radius * 0.2)
        parts.append(
            Part(
                circle(centre, radius * 0.11, 10),
                holes,
                thickness_mm=0,
                shadow=0,
                fold_share=0,
                wobble_mm=0,
            )
        )
    return parts


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

"""A few named rings, the angle inside a ring's corner, and every make of every kind."""

import math
from dataclasses import dataclass

from planning.drafting.library import KINDS, Kind
from planning.drafting.pieces import DraftPiece
from planning.drafting.rings import Ring

SQUARE: Ring = ((0.0, 0.0), (100.0, 0.0), (100.0, 100.0), (0.0, 100.0))
EL: Ring = ((0.0, 0.0), (60.0, 0.0), (60.0, 20.0), (20.0, 20.0), (20.0, 80.0), (0.0, 80.0))
BOW_TIE: Ring = ((0.0, 0.0), (10.0, 10.0), (10.0, 0.0), (0.0, 10.0))
# A slot 8 mm wide and 50 mm deep from the top.
SLOTTED: Ring = (
    (0.0, 0.0),
    (100.0, 0.0),
    (100.0, 100.0),
    (54.0, 100.0),
    (54.0, 50.0),
    (46.0, 50.0),
    (46.0, 100.0),
    (0.0, 100.0),
)


def circle(radius_mm: float, steps: int = 720) -> Ring:
    turns = [2 * math.pi * step / steps for step in range(steps)]
    return tuple((radius_mm * math.cos(t), radius_mm * math.sin(t)) for t in turns)


def corner_deg(piece: DraftPiece, edge_name: str) -> float:
    """The angle inside the piece at the corner where an edge begins."""
    ring = piece.seam_line
    at = next(edge.start for edge in piece.edges if edge.name == edge_name)
    before, here, after = ring[at - 1], ring[at], ring[(at + 1) % len(ring)]
    back = math.atan2(before[1] - here[1], before[0] - here[0])
    on = math.atan2(after[1] - here[1], after[0] - here[0])
    return math.degrees(back - on) % 360


@dataclass(frozen=True)
class Make:
    """A kind in one pose with one face."""

    key: str
    pose: str
    face: str

    @property
    def kind(self) -> Kind:
        return KINDS[self.key]

    def __str__(self) -> str:
        return f"{self.key}-{self.pose}-{self.face}"


ANIMALS = ("bear", "bear-baby", "bear-long", "rabbit")
EVERY_MAKE = tuple(
    Make(kind.key, pose, face)
    for kind in KINDS.values()
    for pose in kind.poses
    for face in kind.faces
)

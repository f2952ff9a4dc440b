"""Where the allowance of a seam is clipped: on the tight stretches of its curves.

Common practice, no source: into a hollow curve short clips are made so that the allowance can
spread, out of a full one small wedges are notched so that it can lie flat; one every 3 to 6 mm.
"""

import math
from collections.abc import Iterator
from dataclasses import dataclass

from planning.drafting.pieces import DraftPiece, Edge
from planning.drafting.rings import Point, Ring, length_mm, point_along

TIGHT_RADIUS_MM = 40.0  # common practice, no source
WIDEST_STEP_MM, USUAL_STEP_MM, CLOSEST_STEP_MM = 6.0, 4.5, 3.0
STRAIGHT = 1e-3  # radians; a vertex that turns less is no bend
CORNER_DEG = 45.0  # a sharper turn at one vertex is a corner, not a curve


@dataclass(frozen=True)
class Clips:
    """The clips of one edge, ``least`` to ``most`` of them on ``tight_mm`` of its length.

    ``inward``: the seam line is hollow there and clipped; otherwise it is full and notched out.
    ``spots`` are places on the seam line to draw them at.
    """

    edge: str
    tight_mm: float
    inward: bool
    least: int
    most: int
    spots: tuple[Point, ...]


def clips_of(piece: DraftPiece, edge: Edge) -> Clips:
    """Return the clips of one edge: of its hollow curves or of its full ones, the longer.

    An edge that bends nowhere with a radius under 40 mm has none.
    """
    return max(_both_ways(piece, edge), key=lambda clips: clips.tight_mm)


def clips_of_piece(piece: DraftPiece) -> tuple[Clips, ...]:
    """Return the clips of every edge that needs them; an edge that bends both ways comes twice."""
    return tuple(
        clips for edge in piece.edges for clips in _both_ways(piece, edge) if clips.tight_mm > 0
    )


def _both_ways(piece: DraftPiece, edge: Edge) -> tuple[Clips, Clips]:
    return _clips(piece, edge, inward=False), _clips(piece, edge, inward=True)


def _clips(piece: DraftPiece, edge: Edge, inward: bool) -> Clips:
    tight = list(_tight_parts(*_without_straight_vertices(piece, edge), inward))
    tight_mm = sum(end - start for start, end in tight)
    if tight_mm < CLOSEST_STEP_MM:  # too short to pull or to pucker
        tight, tight_mm = [], 0.0
    return Clips(
        edge=edge.name,
        tight_mm=tight_mm,
        inward=inward,
        least=math.ceil(tight_mm / WIDEST_STEP_MM),
        most=math.ceil(tight_mm / CLOSEST_STEP_MM),
        spots=_spots(piece.points_of(edge), tight, tight_mm),
    )


def _without_straight_vertices(piece: DraftPiece, edge: Edge) -> tuple[Ring, int, int]:
    """The ring and the edge's ends in it: a notch on a straight step would look like a flat."""
    ring, ends = piece.seam_line, (edge.start, edge.end)
    turns = (_turn(ring[at - 1], ring[at], ring[(at + 1) % len(ring)]) for at in range(len(ring)))
    kept = [at for at, turn in enumerate(turns) if at in ends or abs(turn) > STRAIGHT]
    return tuple(ring[at] for at in kept), kept.index(edge.start), kept.index(edge.end)


def _tight_parts(ring: Ring, start: int, end: int, inward: bool) -> Iterator[tuple[float, float]]:
    """The stretches, from and to along the edge, whose nearer vertex bends tightly that way."""
    around = len(ring)
    steps = (end - start) % around or around
    if steps == 1:  # straight
        return
    walked_mm = 0.0
    for step in range(steps):
        here, after = (start + step) % around, (start + step + 1) % around
        end_mm = walked_mm + math.dist(ring[here], ring[after])
        middle_mm = (walked_mm + end_mm) / 2
        for place, part in ((step, (walked_mm, middle_mm)), (step + 1, (middle_mm, end_mm))):
            # what turns at an end may be the corner between two edges: the next vertex counts
            inside = place if start == end else min(max(place, 1), steps - 1)
            bend = _bend(ring, (start + inside) % around)
            if abs(bend) > 1 / TIGHT_RADIUS_MM and (bend < 0) == inward:
                yield part
        walked_mm = end_mm


def _bend(ring: Ring, at: int) -> float:
    """Return one over the radius at a vertex, negative where the ring is hollow; 0 at a corner."""
    near = (ring[at - 1], ring[at], ring[(at + 1) % len(ring)])
    turn = _turn(*near)
    return 0.0 if abs(turn) > math.radians(CORNER_DEG) else turn / (length_mm(near) / 2)


def _turn(before: Point, here: Point, after: Point) -> float:
    """Return the turn at a vertex in radians, positive to the left."""
    ax, ay = here[0] - before[0], here[1] - before[1]
    bx, by = after[0] - here[0], after[1] - here[1]
    return math.atan2(ax * by - ay * bx, ax * bx + ay * by)


def _spots(
    line: tuple[Point, ...], tight: list[tuple[float, float]], tight_mm: float
) -> tuple[Point, ...]:
    """Places every 4.5 mm of the tight stretches, the same room left over at both ends."""
    how_many = math.ceil(tight_mm / USUAL_STEP_MM)
    over_mm = (tight_mm - (how_many - 1) * USUAL_STEP_MM) / 2
    wanted = [over_mm + step * USUAL_STEP_MM for step in range(how_many)]
    spots, gone_mm = [], 0.0
    for start, end in tight:
        while wanted and wanted[0] <= gone_mm + end - start:
            spots.append(point_along(line, start + wanted.pop(0) - gone_mm))
        gone_mm += end - start
    return tuple(spots)

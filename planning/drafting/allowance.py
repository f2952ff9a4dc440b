"""The seam allowance: a cutting line at one constant distance outside the seam line.

The offset is Shapely's buffer with round joins, so its length is L + 2 pi a and its area
A + L a + pi a² round any convex shape (Steiner's formula). It refuses an allowance that closes up
a slot of the seam line, because a scissor could not follow it. Nothing is ever scaled here: grading
scales the seam line and asks again.
"""

from shapely import LinearRing, LineString, Polygon, distance, points

from planning.drafting.errors import CutLineCrosses
from planning.drafting.rings import Ring, is_simple
from shared.errors import OutlineError

ARC_STEPS = 16  # straight steps to a quarter turn
SMOOTHING_MM = 0.02  # vertices nearer to a straight line than this are left out
DEEPEST = 2.0  # a slot deeper than two allowances is closed up, not bent round


def cut_line_of(seam_line: Ring, allowance_mm: float) -> Ring:
    """Return the ring ``allowance_mm`` outside ``seam_line``, anticlockwise.

    An allowance of 0 returns the seam line. Raises OutlineError for a ring that is not simple or
    a negative allowance, CutLineCrosses when the allowance runs into itself and fills a slot.
    """
    if not 0 <= allowance_mm < float("inf"):
        raise OutlineError("A seam allowance must be nothing or more.")
    if not is_simple(seam_line):
        raise OutlineError("The seam line crosses itself or has fewer than three corners.")
    if allowance_mm == 0:
        return seam_line
    grown = Polygon(seam_line).buffer(allowance_mm, quad_segs=ARC_STEPS, join_style="round")
    _refuse_filled_slots(seam_line, allowance_mm, grown)
    kept = LinearRing(grown.exterior.simplify(SMOOTHING_MM).coords)
    ring = list(kept.coords)[:-1]
    return tuple((x, y) for x, y in (ring if kept.is_ccw else reversed(ring)))


def _refuse_filled_slots(seam_line: Ring, allowance_mm: float, grown: Polygon) -> None:
    if grown.interiors:
        x, y = grown.interiors[0].coords[0]
        raise CutLineCrosses(_message(allowance_mm, x, y))
    rim = LineString(grown.exterior.coords)
    far = distance(points(seam_line), rim)
    worst = int(far.argmax())
    if far[worst] > DEEPEST * allowance_mm + SMOOTHING_MM:
        raise CutLineCrosses(_message(allowance_mm, *seam_line[worst]))


def _message(allowance_mm: float, x: float, y: float) -> str:
    return (
        f"A seam allowance of {allowance_mm:g} mm runs into itself near ({x:.0f}, {y:.0f}) mm. "
        "Take a narrower allowance or widen the gap there."
    )

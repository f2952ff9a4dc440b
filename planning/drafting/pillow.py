"""The pillow: one front, and two backs that overlap, so that the inner pillow can be taken out.

The overlap is sewn through with the sides. The edge of each back there is turned under twice: once
on its seam line, once on the hem line. Sizes go by the longer side; the front takes a shirt's own
button band upright.
"""

from planning.drafting.curves import Line
from planning.drafting.errors import DraftError
from planning.drafting.outline import Drawn, Making, made
from planning.drafting.pieces import DETAIL_PLACE, DraftPiece, DraftSize, Mark, PlacementLine
from planning.drafting.rings import Point
from planning.drafting.sewing import Part, Seam, Stretch

SMALLEST_MM, LARGEST_MM = 100.0, 500.0
WIDTH_SHARE = 0.80  # of the longer side
OVERLAP = (0.30, 0.54)  # from and to, as shares of the longer side, from below
HEM_SHARE, HEM_MOST_MM = 0.07, 20.0


def pillow(height_mm: float, seam_allowance_mm: float = 6.0) -> DraftSize:
    """Draft a pillow by its longer side.

    Raises DraftError outside 100 to 500 mm and OutlineError for a negative allowance.
    """
    pillow_fits(height_mm)
    wide = WIDTH_SHARE * height_mm
    low, high = OVERLAP[0] * height_mm, OVERLAP[1] * height_mm
    hem = min(HEM_SHARE * height_mm, HEM_MOST_MM)
    return DraftSize(
        name=f"{height_mm / 10:g} cm",
        height_mm=height_mm,
        pieces=(
            _front(wide, height_mm, low, high, seam_allowance_mm),
            _upper(wide, height_mm - low, high - low, hem, seam_allowance_mm),
            _lower(wide, high, high - low, hem, seam_allowance_mm),
        ),
        seam_allowance_mm=seam_allowance_mm,
        width_mm=wide,
        notes=(
            "The backs overlap, so nothing is left open: turn it through the overlap and put an "
            "inner pillow in, or stuff it and close the overlap by hand.",
        ),
    )


def pillow_fits(height_mm: float) -> None:
    """Raise DraftError unless a pillow can have this longer side."""
    if not SMALLEST_MM <= height_mm <= LARGEST_MM:
        raise DraftError(
            f"The pillow's longer side can be {SMALLEST_MM:g} to {LARGEST_MM:g} mm, "
            f"not {height_mm:g} mm."
        )


def _front(wide: float, tall: float, low: float, high: float, allowance_mm: float) -> DraftPiece:
    return made(
        [
            Drawn("bottom", _line((0, 0), (wide, 0))),
            Drawn("right side, lower", _line((wide, 0), (wide, low)), "overlap, lower end"),
            Drawn("right side, overlap", _line((wide, low), (wide, high)), "overlap, upper end"),
            Drawn("right side, upper", _line((wide, high), (wide, tall))),
            Drawn("top", _line((wide, tall), (0, tall))),
            Drawn("left side, upper", _line((0, tall), (0, high)), "overlap, upper end"),
            Drawn("left side, overlap", _line((0, high), (0, low)), "overlap, lower end"),
            Drawn("left side, lower", _line((0, low), (0, 0))),
        ],
        Making("front", 1, 0, marks=(Mark(DETAIL_PLACE, (wide / 2, tall / 2)),)),
        allowance_mm,
    )


def _upper(wide: float, tall: float, overlap: float, hem: float, allowance_mm: float) -> DraftPiece:
    """The upper back, its hem at the bottom, below the hem line at height 0."""
    return made(
        [
            Drawn("hem", _line((0, -hem), (wide, -hem))),
            Drawn("hem end, right", _line((wide, -hem), (wide, 0)), "overlap, lower end"),
            Drawn("right side, overlap", _line((wide, 0), (wide, overlap)), "overlap, upper end"),
            Drawn("right side, upper", _line((wide, overlap), (wide, tall))),
            Drawn("top", _line((wide, tall), (0, tall))),
            Drawn("left side, upper", _line((0, tall), (0, overlap)), "overlap, upper end"),
            Drawn("left side, overlap", _line((0, overlap), (0, 0)), "overlap, lower end"),
            Drawn("hem end, left", _line((0, 0), (0, -hem))),
        ],
        Making("upper back", 1, 0, lines=_hem_lines(wide, 0.0, hem)),
        allowance_mm,
    )


def _lower(wide: float, tall: float, overlap: float, hem: float, allowance_mm: float) -> DraftPiece:
    """The lower back, its hem at the top, above the hem line at height ``tall``."""
    start = tall - overlap
    return made(
        [
            Drawn("bottom", _line((0, 0), (wide, 0))),
            Drawn("right side, lower", _line((wide, 0), (wide, start)), "overlap, lower end"),
            Drawn("right side, overlap", _line((wide, start), (wide, tall)), "overlap, upper end"),
            Drawn("hem end, right", _line((wide, tall), (wide, tall + hem))),
            Drawn("hem", _line((wide, tall + hem), (0, tall + hem))),
            Drawn("hem end, left", _line((0, tall + hem), (0, tall)), "overlap, upper end"),
            Drawn("left side, overlap", _line((0, tall), (0, start)), "overlap, lower end"),
            Drawn("left side, lower", _line((0, start), (0, 0))),
        ],
        Making("lower back", 1, 0, lines=_hem_lines(wide, tall, -hem)),
        allowance_mm,
    )


def _hem_lines(wide: float, at: float, inward: float) -> tuple[PlacementLine, ...]:
    """The line a hem is folded on, the line its edge is sewn to, and where its ends come to lie."""
    return (
        PlacementLine("hem fold", ((0.0, at), (wide, at))),
        PlacementLine("hem sewn", ((0.0, at + inward), (wide, at + inward))),
        PlacementLine("hem end lies, right", ((wide, at), (wide, at + inward))),
        PlacementLine("hem end lies, left", ((0.0, at), (0.0, at + inward))),
    )


def _line(start: Point, end: Point) -> Line:
    return [start, end]


def _both(name: str, front: str, back: tuple[str, str]) -> tuple[Seam, ...]:
    return tuple(
        Seam(
            f"{name}, {hand}",
            (Stretch("front", f"{hand} side, {front}"),),
            (Stretch(back[0], f"{hand} side, {back[1]}"),),
        )
        for hand in ("right", "left")
    )


def _one(name: str, a: tuple[str, str], b: tuple[str, str]) -> Seam:
    return Seam(name, (Stretch(*a),), (Stretch(*b),))


_BACKS = ("upper back", "lower back")

PILLOW_SEAMS = (
    *(_one(f"{back}, hem", (back, "hem"), (back, "hem sewn")) for back in _BACKS),
    *(
        _one(
            f"{back}, hem end in the side, {hand}",
            (back, f"hem end, {hand}"),
            (back, f"hem end lies, {hand}"),
        )
        for back in _BACKS
        for hand in ("right", "left")
    ),
    _one("top", ("front", "top"), ("upper back", "top")),
    _one("bottom", ("front", "bottom"), ("lower back", "bottom")),
    *_both("side, upper", "upper", ("upper back", "upper")),
    *_both("side, lower", "lower", ("lower back", "lower")),
    *_both("side, overlap", "overlap", ("upper back", "overlap")),
    *_both("side, overlap, sewn again", "overlap", ("lower back", "overlap")),
)
PILLOW_PARTS = (
    Part("pillow", (("front", 1), ("upper back", 1), ("lower back", 1)), 1, is_flat=True),
)

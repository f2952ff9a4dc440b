"""Patterns leaving the program, and a piece that was read becoming a piece of a pattern."""

from dataclasses import replace

from shapely import LinearRing, Point, Polygon
from shapely.ops import nearest_points

from planning.drafting.allowance import cut_line_of
from planning.drafting.exchange.chains import closed_ring
from planning.drafting.exchange.dxf_write import dxf_of
from planning.drafting.exchange.found import FoundPiece, PatternFileError
from planning.drafting.exchange.svg_write import svg_of
from planning.drafting.pieces import DraftPiece, Notch
from planning.drafting.rings import Ring
from shared.errors import OutlineError

__all__ = ["dxf_of", "piece_from", "svg_of"]

MITRE_LIMIT = 2.0
DEEPEST = 4.0  # allowances from a cut corner of 29 degrees to its seam corner
DECIMALS = 4


def piece_from(found: FoundPiece, allowance_mm: float) -> DraftPiece:
    """Return a whole piece: a missing cut or seam line is drawn ``allowance_mm`` from the other.

    ``allowance_mm`` is not used where the file has both lines. Notches are carried onto the seam
    line. Raises PatternFileError, naming the piece, for an allowance that it has no room for.
    """
    cut, seam = _cut_and_seam(found, allowance_mm)
    has_own_seam = found.seam_line is not None or found.line == "seam"
    return DraftPiece(
        name=found.name,
        seam_line=seam,
        cut_line=cut,
        count=found.count,
        mirrored=found.mirrored,
        grain_deg=found.grain_deg,
        notches=tuple(_on_seam(notch, seam) for notch in found.notches),
        marks=found.marks,
        lines=found.lines,
        edges=found.edges if has_own_seam else (),
        opening=found.opening if has_own_seam else None,
        labels=(_cutting_words(found.count, found.mirrored),),
    )


def _cut_and_seam(found: FoundPiece, allowance_mm: float) -> tuple[Ring, Ring]:
    if found.seam_line is not None:
        return found.outline, found.seam_line
    if not 0 <= allowance_mm < float("inf"):
        raise PatternFileError("A seam allowance must be nothing or more.")
    if allowance_mm == 0:
        return found.outline, found.outline
    if found.line == "cut":
        return found.outline, _inside(found.outline, allowance_mm, found.name)
    try:
        return _rounded(cut_line_of(found.outline, allowance_mm)), found.outline
    except OutlineError as error:
        raise PatternFileError(f"The piece “{found.name}”: {error}") from error


def _inside(cut: Ring, allowance_mm: float, name: str) -> Ring:
    """The seam line inside a cut line; corners stay corners, as a maker would rule them."""
    inner = Polygon(cut).buffer(-allowance_mm, join_style="mitre", mitre_limit=MITRE_LIMIT)
    closed = None
    if isinstance(inner, Polygon) and not inner.is_empty:
        closed = closed_ring([(x, y) for x, y in inner.exterior.coords[:-1]], is_closed=True)
    if closed is None:
        raise PatternFileError(
            f"The piece “{name}” is too narrow for a seam allowance of {allowance_mm:g} mm inside "
            "its outline. Take a narrower allowance, or say that the outline is the seam line."
        )
    seam = LinearRing(closed.ring)
    worst = max(cut, key=lambda corner: seam.distance(Point(corner)))
    if seam.distance(Point(worst)) > DEEPEST * allowance_mm:
        raise PatternFileError(
            f"The piece “{name}” has a tip near ({worst[0]:.0f}, {worst[1]:.0f}) mm that is too "
            f"thin for a seam allowance of {allowance_mm:g} mm. Take a narrower allowance."
        )
    return _rounded(closed.ring)


def _on_seam(notch: Notch, seam: Ring) -> Notch:
    at, _ = nearest_points(LinearRing(seam), Point(notch.at))
    return replace(notch, at=(round(at.x, DECIMALS), round(at.y, DECIMALS)))


def _rounded(ring: Ring) -> Ring:
    return tuple((round(x, DECIMALS), round(y, DECIMALS)) for x, y in ring)


def _cutting_words(count: int, mirrored: int) -> str:
    if not mirrored:
        return f"Cut {count}."
    return f"Cut {count}: {count - mirrored} as drawn, {mirrored} turned over."

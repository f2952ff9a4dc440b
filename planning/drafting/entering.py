"""A maker's own piece drawn from what was typed in, or refused with the place to mend.

In this order: the outline is set in from the drawn line to the template, opened out over the fold,
and set in again to the seam line if it was measured on the cutting line. Nothing else is changed.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from shapely import Point as Place
from shapely import Polygon

from planning.drafting.entry import TWIN, EnteredNotch, Entry, EntryError, edge_names
from planning.drafting.entry_checks import LARGEST_MM, LEAST_MM2, check_copies, check_entry
from planning.drafting.entry_lines import outline_of, ring_of
from planning.drafting.errors import CutLineCrosses
from planning.drafting.insetting import inset
from planning.drafting.outline import Drawn, Making, made
from planning.drafting.pieces import DraftPiece, Mark, Notch
from planning.drafting.rings import Point, bounds_mm, length_mm, point_along, signed_area_mm2
from planning.drafting.unfolding import fold_of, mirror_image, off_fold_mm, unfolded
from planning.drafting.vertices import with_vertices
from shared.errors import OutlineError

ON_FOLD_MM = 0.5  # a mark so near to the fold lies on it
PAST_END_MM = 0.5  # a notch measured so little past the end of its edge lies at the end
SAME_VERTEX_MM = 0.01


@dataclass(frozen=True)
class _NotchPlace:
    """A notch on an edge of the whole seam line, ``at_mm`` from the edge's own start."""

    notch: EnteredNotch
    edge: str
    at_mm: float


def entered_piece(
    entry: Entry, name: str, count: int, mirrored: int, grain_deg: float = 90.0
) -> DraftPiece:
    """Return the piece of an entry, its seam line anticlockwise with every edge named.

    With a fold, the edges, notches and marks of the half come again on the other half. Measured on
    the cutting line, that line is kept as entered. Raises EntryError with the field and the row.
    """
    check_copies(count, mirrored, grain_deg)
    check_entry(entry)
    outline, is_turned = outline_of(entry.points)
    half = inset(outline, entry.outside_mm, "outside_mm")
    fold = fold_of(half, entry.fold_edge) if entry.fold_edge else None
    whole = unfolded(half, entry.fold_edge) if fold else half
    _refuse_size(whole)
    seam = inset(whole, entry.allowance_mm, "allowance_mm") if entry.is_cut_line else whole
    notches = list(_notch_places(entry, seam, is_turned))
    making = Making(name, count, mirrored, grain_deg, _opening(entry, seam), _marks(entry, fold))
    piece = _piece(entry, _with_notches(seam, notches), whole, making)
    _refuse_marks_outside(entry.marks, piece)
    return replace(piece, notches=tuple(_notch(piece, each) for each in notches))


def _piece(
    entry: Entry, seam: Sequence[Drawn], outline: Sequence[Drawn], making: Making
) -> DraftPiece:
    try:
        if not entry.is_cut_line or entry.allowance_mm == 0:
            return made(seam, making, entry.allowance_mm)
        cut_line = made(outline, making, 0).seam_line
        return replace(made(seam, making, 0), cut_line=cut_line)
    except CutLineCrosses as error:
        raise EntryError(str(error), "allowance_mm") from error
    except OutlineError as error:
        text = "The outline comes so near to itself that it touches. Move the points apart there."
        raise EntryError(text, "points") from error


def _refuse_size(whole: Sequence[Drawn]) -> None:
    ring = ring_of(whole)
    left, low, right, high = bounds_mm(ring)
    if max(right - left, high - low) > LARGEST_MM:
        text = f"The piece is over {LARGEST_MM:.0f} mm long, larger than a table. Check the unit."
        raise EntryError(text, "points")
    if signed_area_mm2(ring) < LEAST_MM2:
        raise EntryError("The outline has no area.", "points")


def _opening(entry: Entry, seam: Sequence[Drawn]) -> str:
    if entry.opening and entry.opening not in {edge.name for edge in seam}:
        text = f"The opening “{entry.opening}” is no edge of the piece."
        raise EntryError(text, "opening")
    return entry.opening


def _notch_places(entry: Entry, seam: Sequence[Drawn], is_turned: bool) -> Iterator[_NotchPlace]:
    lengths_mm = {edge.name: length_mm(edge.line) for edge in seam}
    for row, notch in enumerate(entry.notches):
        long_mm = _notched_edge_mm(entry, row, lengths_mm)
        along_mm = min(max(notch.at_mm, 0.0), long_mm)
        # a table that ran clockwise starts its edges where the piece ends them
        at_mm = long_mm - along_mm if is_turned else along_mm
        yield _NotchPlace(notch, notch.edge, at_mm)
        if entry.fold_edge:
            twin = TWIN.format(notch.edge)
            yield _NotchPlace(notch, twin, lengths_mm[twin] - at_mm)


def _notched_edge_mm(entry: Entry, row: int, lengths_mm: dict[str, float]) -> float:
    """Return the length of the edge under a notch, or refuse the notch."""
    notch = entry.notches[row]
    if notch.edge not in edge_names(entry.points):
        text = f"Notch {row + 1} is on “{notch.edge}”, and no edge in the table is called that."
        raise EntryError(text, "notches", row)
    if notch.edge == entry.fold_edge:
        text = f"Notch {row + 1} is on the fold “{notch.edge}”, which is not sewn."
        raise EntryError(text, "notches", row)
    long_mm = lengths_mm[notch.edge]
    if not -PAST_END_MM <= notch.at_mm <= long_mm + PAST_END_MM:
        text = (
            f"Notch {row + 1} is {notch.at_mm:.1f} mm along “{notch.edge}”, which is "
            f"{long_mm:.1f} mm long on the seam line."
        )
        raise EntryError(text, "notches", row)
    return long_mm


def _with_notches(seam: Sequence[Drawn], notches: Sequence[_NotchPlace]) -> list[Drawn]:
    """Put a vertex under every notch, so that it lies on the seam line exactly."""
    drawn = []
    for edge in seam:
        at_mm = [each.at_mm for each in notches if each.edge == edge.name]
        drawn.append(Drawn(edge.name, with_vertices(edge.line, at_mm, SAME_VERTEX_MM)[0]))
    return drawn


def _notch(piece: DraftPiece, place: _NotchPlace) -> Notch:
    line = piece.stretch(place.edge)
    wanted = point_along(line, place.at_mm)
    at = min(line, key=lambda vertex: math.dist(vertex, wanted))
    return Notch(place.notch.name, at, place.notch.is_double)


def _marks(entry: Entry, fold: tuple[Point, Point] | None) -> tuple[Mark, ...]:
    twins = (
        Mark(mark.name, mirror_image(mark.at, fold))
        for mark in entry.marks
        if fold and off_fold_mm(mark.at, fold) > ON_FOLD_MM
    )
    return (*entry.marks, *twins)


def _refuse_marks_outside(marks: Sequence[Mark], piece: DraftPiece) -> None:
    inside = Polygon(piece.seam_line)
    for row, mark in enumerate(marks):
        if inside.distance(Place(mark.at)) > SAME_VERTEX_MM:
            text = f"The mark “{mark.name}” lies outside the seam line."
            raise EntryError(text, "marks", row)

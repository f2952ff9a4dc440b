"""What is refused of an entry before anything is drawn: numbers, points, names and copies."""

import math
from collections.abc import Iterator
from itertools import combinations

from shapely import MultiPoint

from planning.drafting.entry import TWIN, EnteredPoint, Entry, EntryError, edge_names

MOST_POINTS = 300
LARGEST_MM = 2000.0
NEAREST_MM = 0.1  # two points nearer than this are one point
LEAST_MM2 = 1.0


def check_entry(entry: Entry) -> None:
    """Raise EntryError for widths, points or names that no piece can be drawn from."""
    check_width(entry.allowance_mm, "allowance_mm", "The seam allowance")
    check_width(entry.outside_mm, "outside_mm", "The distance outside the template")
    _check_points(entry.points)
    _check_names(entry)
    for row, notch in enumerate(entry.notches):
        check_place((notch.at_mm,), f"Notch {row + 1}", "notches", row)
    for row, mark in enumerate(entry.marks):
        check_place(mark.at, f"Mark {row + 1}", "marks", row)


def check_copies(count: int, mirrored: int, grain_deg: float) -> None:
    """Raise EntryError unless at least one is cut, and no more turned over than are cut."""
    if count < 1:
        raise EntryError("At least one of a piece is cut: type how many.", "count")
    if not 0 <= mirrored <= count:
        raise EntryError(f"Of {count} cut, {mirrored} cannot be turned over.", "count")
    if not math.isfinite(grain_deg):
        raise EntryError("The grain needs an angle in degrees.", "grain_deg")


def check_width(width_mm: float, field: str, what: str) -> None:
    """Raise EntryError unless a width is between nothing and the longest length."""
    if not 0 <= width_mm <= LARGEST_MM:
        raise EntryError(f"{what} must be between 0 and {LARGEST_MM:.0f} mm.", field)


def check_place(numbers: tuple[float, ...], what: str, field: str, row: int) -> None:
    """Raise EntryError unless every number is one, and within the longest length."""
    if not all(math.isfinite(number) for number in numbers):
        raise EntryError(f"{what} is not given in numbers.", field, row)
    if any(abs(number) > LARGEST_MM for number in numbers):
        raise EntryError(
            f"{what} is more than {LARGEST_MM:.0f} mm away, larger than a table. Check the unit.",
            field,
            row,
        )


def _check_points(points: tuple[EnteredPoint, ...]) -> None:
    if len(points) < 3:
        raise EntryError("An outline needs at least three points.", "points")
    if len(points) > MOST_POINTS:
        raise EntryError(f"An outline has at most {MOST_POINTS} points; leave some out.", "points")
    for row, point in enumerate(points):
        check_place((point.x_mm, point.y_mm), f"Point {row + 1}", "points", row)
        if point.is_curve and point.edge:
            text = (
                f"Point {row + 1} lies on a curve, and edges start at corners only: move the name."
            )
            raise EntryError(text, "points", row)
    places = [(point.x_mm, point.y_mm) for point in points]
    for (first, here), (second, there) in combinations(enumerate(places), 2):
        if math.dist(here, there) < NEAREST_MM:
            text = (
                f"Point {second + 1} is in the place of point {first + 1}. Leave one of them out."
            )
            raise EntryError(text, "points", second)
    if MultiPoint(places).convex_hull.area < LEAST_MM2:
        raise EntryError("The points lie on one line: the outline has no area.", "points")


def _check_names(entry: Entry) -> None:
    seen: set[str] = set()
    for row, name in _names_in_use(entry):
        if name in seen:
            text = (
                f"Two edges are called “{name}”. Give the one after point {row + 1} another name."
            )
            raise EntryError(text, "points", row)
        seen.add(name)


def _names_in_use(entry: Entry) -> Iterator[tuple[int, str]]:
    """Every name the piece's edges will have, with the row of its corner."""
    corners = [row for row, point in enumerate(entry.points) if not point.is_curve] or [0]
    names = edge_names(entry.points)
    yield from zip(corners, names, strict=True)
    if entry.fold_edge:
        yield from ((row, TWIN.format(name)) for row, name in zip(corners, names, strict=True))

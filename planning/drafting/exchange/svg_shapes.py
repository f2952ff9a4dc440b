"""SVG shapes as lines of points: paths, polygons, polylines, rectangles, circles and ellipses.

svgelements reads the path language; here it is first checked letter by letter, because an unknown
sign would otherwise end a path early without a word. A curve keeps within ``FLATTENED_MM`` of its
chords: for a step h of the parameter the gap is at most h² max|B''| / 8 (C. de Boor, "A Practical
Guide to Splines", 1978).
"""

import math
import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Any
from xml.etree.ElementTree import Element

import svgelements

from planning.drafting.exchange.checked import FARTHEST_MM, MOST_POINTS, refuse_far
from planning.drafting.exchange.css_units import NUMBER, user_units
from planning.drafting.exchange.found import PatternFileError
from planning.drafting.exchange.svg_safety import local
from planning.drafting.rings import Point

FLATTENED_MM = 0.1
SHAPES = ("path", "polygon", "polyline", "line", "rect", "circle", "ellipse")

Affine = tuple[float, float, float, float, float, float]

_PATH = re.compile(rf"\s*[Mm](?:[\s,]++|[MmZzLlHhVvCcSsQqTtAa]|{NUMBER})*+", re.ASCII)
_NUMBERS = re.compile(rf"(?:[\s,]++|{NUMBER})*+", re.ASCII)
_A_NUMBER = re.compile(NUMBER, re.ASCII)
_TRANSFORM = re.compile(r"([a-zA-Z]+)\s*\(([^()]*)\)[\s,]*")
_ARGUMENTS = {
    "matrix": (6,),
    "translate": (1, 2),
    "scale": (1, 2),
    "rotate": (1, 3),
    "skewX": (1,),
    "skewY": (1,),
}


@dataclass(frozen=True)
class Stroke:
    """One line of a shape, in millimetres with y upwards, and whether the shape closes it."""

    points: list[Point]
    is_closed: bool


def affine_of(text: str, place: str) -> Affine:
    """Return the matrix of a transform attribute; raises PatternFileError for what it is not.

    >>> affine_of("translate(5) scale(2)", "the path")
    (2.0, 0.0, 0.0, 2.0, 5.0, 0.0)
    """
    steps = _TRANSFORM.findall(text)
    is_known = not _TRANSFORM.sub("", text).strip() and all(
        _NUMBERS.fullmatch(inside) and len(_A_NUMBER.findall(inside)) in _ARGUMENTS.get(name, ())
        for name, inside in steps
    )
    if not is_known:
        raise PatternFileError(f"The transform “{text.strip()[:60]}” of {place} is not understood.")
    m = svgelements.Matrix(text)
    return (float(m.a), float(m.b), float(m.c), float(m.d), float(m.e), float(m.f))


def joined(outer: Affine, inner: Affine) -> Affine:
    """Return the matrix that does ``inner`` first and ``outer`` then.

    >>> joined((1, 0, 0, 1, 5, 0), (2, 0, 0, 2, 0, 0))
    (2, 0, 0, 2, 5, 0)
    """
    a, b, c, d, e, f = outer
    g, h, i, j, k, m = inner
    return (
        a * g + c * h,
        b * g + d * h,
        a * i + c * j,
        b * i + d * j,
        a * k + c * m + e,
        b * k + d * m + f,
    )


def moved(points: Sequence[Point], by: Affine) -> list[Point]:
    """Return the points under a matrix."""
    a, b, c, d, e, f = by
    return [(a * x + c * y + e, b * x + d * y + f) for x, y in points]


def strokes_of(element: Element, to_mm: Affine, place: str) -> list[Stroke]:
    """Return the lines of one shape; ``to_mm`` carries its own coordinates to millimetres.

    Raises PatternFileError for path data or a length that cannot be read, or a point too far off.
    """
    scale = math.hypot(*to_mm[:4])
    if not 0 < scale < math.inf:
        raise PatternFileError(f"The transform of {place} leaves nothing of it.")
    path = _path_of(element, place)
    try:
        lines = list(_flattened(path, FLATTENED_MM / scale, place))
    except TypeError as error:  # svgelements takes a last H or V without its number
        raise _unsound(place) from error
    strokes = [Stroke(moved(points, to_mm), is_closed) for points, is_closed in lines]
    for stroke in strokes:
        refuse_far(stroke.points, place)
    return strokes


def _path_of(element: Element, place: str) -> Any:
    tag = local(element.tag)
    if tag == "path":
        return _parsed(element.get("d", ""), place)
    if tag in ("polygon", "polyline"):
        return _parsed(_polygon_data(element, tag == "polygon", place), place)

    def side(name: str) -> float:
        return user_units(element.get(name, "0"), place)

    if tag == "line":
        return _parsed(f"M{side('x1')} {side('y1')} L{side('x2')} {side('y2')}", place)
    if tag == "rect":
        across, down = side("width"), side("height")
        rx, ry = (_radius(element, name, place) for name in ("rx", "ry"))
        rx, ry = (ry if rx is None else rx) or 0.0, (rx if ry is None else ry) or 0.0
        _refuse_nothing(min(across, down), place)
        return svgelements.Path(svgelements.Rect(side("x"), side("y"), across, down, rx, ry))
    rx, ry = (side("r"), side("r")) if tag == "circle" else (side("rx"), side("ry"))
    _refuse_nothing(min(rx, ry), place)
    return svgelements.Path(svgelements.Ellipse(side("cx"), side("cy"), rx, ry))


def _radius(element: Element, name: str, place: str) -> float | None:
    text = element.get(name, "auto")
    return None if text == "auto" else user_units(text, place)


def _refuse_nothing(size: float, place: str) -> None:
    if not 0 < size < FARTHEST_MM:
        raise PatternFileError(f"The size of {place} is nothing, less, or far too large.")


def _polygon_data(element: Element, is_closed: bool, place: str) -> str:
    text = element.get("points", "")
    numbers = _A_NUMBER.findall(text)
    if not _NUMBERS.fullmatch(text) or len(numbers) % 2:
        raise PatternFileError(f"The points of {place} are not pairs of numbers.")
    return f"M{' '.join(numbers)}{'z' if is_closed else ''}" if numbers else ""


def _parsed(data: str, place: str) -> Any:
    if not data.strip() or data.strip() == "none":
        return svgelements.Path()
    if sum(1 for _ in _A_NUMBER.finditer(data)) > 2 * MOST_POINTS:
        raise _too_many(place)
    try:
        if not _PATH.fullmatch(data):
            raise ValueError
        return svgelements.Path(data)
    except (ValueError, IndexError, TypeError, ZeroDivisionError, OverflowError) as error:
        raise _unsound(place) from error


def _unsound(place: str) -> PatternFileError:
    return PatternFileError(
        f"The path data of {place} is not sound: a letter or a number is wrong or missing. "
        "Draw that line anew."
    )


def _too_many(place: str) -> PatternFileError:
    return PatternFileError(f"There are too many points in {place}. Simplify that line.")


def _flattened(path: Any, tolerance: float, place: str) -> Iterator[tuple[list[Point], bool]]:
    line: list[Point] = []
    count = 0
    for segment in path:
        is_move = isinstance(segment, svgelements.Move)
        if is_move or not line:
            if len(line) > 1:
                yield line, False
            line = [_point(segment.end if is_move else segment.start)]
        if isinstance(segment, svgelements.Close):
            yield line, True
            line = []
        elif not is_move:
            steps = _steps(segment, tolerance, place)
            line += steps
            count += len(steps)
        if count > MOST_POINTS:
            raise _too_many(place)
    if len(line) > 1:
        yield line, False


def _steps(segment: Any, tolerance: float, place: str) -> list[Point]:
    """The points of one segment after its first."""
    bend = _bend(segment)
    count = math.sqrt(bend / (8 * tolerance)) if math.isfinite(bend) else math.inf
    if count > MOST_POINTS:
        raise PatternFileError(f"A curve of {place} is far too large. Check the unit or redraw it.")
    steps = math.ceil(count)
    inner = [_point(segment.point(step / steps)) for step in range(1, steps)]
    return [*inner, _point(segment.end)]


def _bend(segment: Any) -> float:
    """The largest second derivative of a segment over its parameter from 0 to 1."""
    if isinstance(segment, svgelements.CubicBezier):
        a, b, c, d = (
            _point(p) for p in (segment.start, segment.control1, segment.control2, segment.end)
        )
        return 6 * max(_second(a, b, c), _second(b, c, d))
    if isinstance(segment, svgelements.QuadraticBezier):
        return 2 * _second(_point(segment.start), _point(segment.control), _point(segment.end))
    if isinstance(segment, svgelements.Arc):
        return float(max(segment.rx, segment.ry) * segment.sweep**2)
    return 0.0


def _second(a: Point, b: Point, c: Point) -> float:
    return math.hypot(a[0] - 2 * b[0] + c[0], a[1] - 2 * b[1] + c[1])


def _point(point: Any) -> Point:
    return (float(point.x), float(point.y))

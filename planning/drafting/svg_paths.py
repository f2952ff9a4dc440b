"""Lines and rings as SVG path data: millimetres, y turned downwards as on a page.

Only geometry, never style: a page's own classes give colour and stroke.
"""

from collections.abc import Iterable, Sequence

from planning.drafting.rings import Point, bounds_mm


def path_data(points: Sequence[Point], closed: bool = False) -> str:
    """Return the path through ``points``.

    >>> path_data([(0, 0), (10, 5.25)])
    'M0 0 L10 -5.25'
    """
    steps = " L".join(f"{_plain(x)} {_plain(-y)}" for x, y in points)
    return f"M{steps}{' Z' if closed else ''}"


def view_box(points: Iterable[Point], margin_mm: float) -> str:
    """Return the viewBox round ``points`` with a margin on every side.

    >>> view_box([(0, 0), (10, 20)], 5)
    '-5 -25 20 30'
    """
    left, low, right, high = bounds_mm(tuple(points))
    numbers = (
        left - margin_mm,
        -high - margin_mm,
        right - left + 2 * margin_mm,
        high - low + 2 * margin_mm,
    )
    return " ".join(_plain(number) for number in numbers)


def _plain(number: float) -> str:
    return f"{round(number, 2) + 0:g}" if abs(number) < 1e4 else f"{number:.2f}"

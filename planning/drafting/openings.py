"""Where a seam is left open, so that a part can be turned and stuffed.

An opening of 50 to 80 mm lets the cloth through and is soon closed by hand (common practice, no
source). It begins and ends at corners the seam line already has, so that an outline is the same
whatever its opening.
"""

from planning.drafting.curves import Line
from planning.drafting.outline import split_line
from planning.drafting.rings import length_mm

LEAST_MM = 50.0
MOST_MM = 80.0

Span = tuple[int, int]  # numbers of the first and the last corner


def opened(line: Line, usual: Span, within: Span) -> tuple[Line, Line, Line]:
    """Cut a line in three; the middle is the opening.

    It is the ``usual`` stretch; under 50 mm it is made longer as far as ``within`` allows, and over
    80 mm shorter, by a corner at one end and at the other in turn.

    >>> line = [(10.0 * step, 0.0) for step in range(11)]
    >>> [part[0] for part in opened(line, (4, 6), (1, 9))]
    [(0.0, 0.0), (30.0, 0.0), (80.0, 0.0)]
    """
    span = usual
    while _open_mm(line, span) < LEAST_MM and span != within:
        span = _longer(span, within)
    while _open_mm(line, span) > MOST_MM:
        span = _shorter(span)
    first, last = span
    return line[: first + 1], line[first : last + 1], line[last:]


def opened_between(
    line: Line, usual: tuple[float, float], within: tuple[float, float]
) -> tuple[Line, Line, Line]:
    """Cut a line in three as ``opened`` does, the places given as shares of its length.

    >>> [len(part) for part in opened_between([(0.0, 0.0), (100.0, 0.0)], (0.2, 0.8), (0.1, 0.9))]
    [2, 2, 2]
    """
    whole_mm = length_mm(line)
    parts = split_line(line, usual[0] * whole_mm, usual[1] * whole_mm)
    first = len(parts[0]) - 1
    last = first + len(parts[1]) - 1
    joined = [*parts[0], *parts[1][1:], *parts[2][1:]]
    limits = (_corner_near(joined, within[0]), _corner_near(joined, within[1]))
    return opened(joined, (first, last), (min(limits[0], first), max(limits[1], last)))


def _corner_near(line: Line, share: float) -> int:
    target_mm = share * length_mm(line)
    return min(range(len(line)), key=lambda n: abs(length_mm(line[: n + 1]) - target_mm))


def _open_mm(line: Line, span: Span) -> float:
    return length_mm(line[span[0] : span[1] + 1])


def _longer(span: Span, within: Span) -> Span:
    first, last = span
    may_grow_on, may_grow_back = last < within[1], first > within[0]
    is_ones_turn = (last - first) % 2 == 0
    if may_grow_on and (is_ones_turn or not may_grow_back):
        return first, last + 1
    return first - 1, last


def _shorter(span: Span) -> Span:
    first, last = span
    return (first + 1, last) if (last - first) % 2 == 0 else (first, last - 1)

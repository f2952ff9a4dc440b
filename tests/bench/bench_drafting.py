"""How long it takes to draft and walk one size, and to draw the largest piece a maker can enter.

The aim is under 50 ms for the one and under 100 ms for the other.

Run: python -m tests.bench.bench_drafting
"""

import math
import statistics
import time

from planning.drafting.bear import bear
from planning.drafting.entering import entered_piece
from planning.drafting.entry import EnteredPoint, Entry
from planning.drafting.entry_checks import MOST_POINTS
from planning.drafting.seams import walk

AIM_MS = 50.0
ENTRY_AIM_MS = 100.0
ROUNDS = 30


def milliseconds(height_mm: float) -> float:
    start = time.perf_counter()
    walk(bear(height_mm))
    return 1000 * (time.perf_counter() - start)


def entering_milliseconds() -> float:
    """A wavy outline of as many points as an entry may have, measured on its cutting line."""
    turns = [2 * math.pi * step / MOST_POINTS for step in range(MOST_POINTS)]
    points = tuple(
        EnteredPoint(
            (400 + 20 * math.sin(9 * turn)) * math.cos(turn),
            (400 + 20 * math.sin(9 * turn)) * math.sin(turn),
            is_curve=step % 10 > 0,
        )
        for step, turn in enumerate(turns)
    )
    start = time.perf_counter()
    entered_piece(Entry(points, is_cut_line=True, allowance_mm=6), "wavy", 2, 1)
    return 1000 * (time.perf_counter() - start)


def main() -> None:
    milliseconds(300)
    times = [milliseconds(150 + 10 * turn) for turn in range(ROUNDS)]
    print(
        f"draft and walk one size: median {statistics.median(times):.1f} ms, "
        f"longest {max(times):.1f} ms over {ROUNDS} sizes (aim {AIM_MS:.0f} ms)"
    )
    entered = [entering_milliseconds() for _ in range(ROUNDS)]
    print(
        f"draw an entry of {MOST_POINTS} points: median {statistics.median(entered):.1f} ms, "
        f"longest {max(entered):.1f} ms (aim {ENTRY_AIM_MS:.0f} ms)"
    )


if __name__ == "__main__":
    main()

"""How long it takes to draft and walk one size of each kind, and to draw the largest entered piece.

The aims are 50 ms and 100 ms of processor time, so that other work on the machine does not count.

Run: python -m tests.bench.bench_drafting
"""

import math
import statistics
import time

from planning.drafting.entering import entered_piece
from planning.drafting.entry import EnteredPoint, Entry
from planning.drafting.entry_checks import MOST_POINTS
from planning.drafting.library import KINDS, Kind, drafted, seams_for
from planning.drafting.seams import walk

AIM_MS = 50.0
ENTRY_AIM_MS = 100.0
ROUNDS = 30


def milliseconds(kind: Kind, height_mm: float) -> float:
    pose, face = kind.poses[-1], kind.faces[-1]
    start = time.process_time()
    walk(drafted(kind.key, height_mm, pose=pose, face=face), seams_for(kind.key, pose, face))
    return 1000 * (time.process_time() - start)


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
    start = time.process_time()
    entered_piece(Entry(points, is_cut_line=True, allowance_mm=6), "wavy", 2, 1)
    return 1000 * (time.process_time() - start)


def main() -> None:
    for kind in KINDS.values():
        step_mm = (kind.most_mm - kind.least_mm) / ROUNDS
        milliseconds(kind, kind.least_mm)
        times = [milliseconds(kind, kind.least_mm + step_mm * turn) for turn in range(ROUNDS)]
        print(
            f"{kind.name}: draft and walk one size: median {statistics.median(times):.1f} ms, "
            f"longest {max(times):.1f} ms over {ROUNDS} sizes (aim {AIM_MS:.0f} ms)"
        )
    entered = [entering_milliseconds() for _ in range(ROUNDS)]
    print(
        f"draw an entry of {MOST_POINTS} points: median {statistics.median(entered):.1f} ms, "
        f"longest {max(entered):.1f} ms (aim {ENTRY_AIM_MS:.0f} ms)"
    )


if __name__ == "__main__":
    main()

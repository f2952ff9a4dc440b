"""How long drafting and walking one size takes; the aim is under 50 ms.

Run: python -m tests.bench.bench_drafting
"""

import statistics
import time

from planning.drafting.bear import bear
from planning.drafting.seams import walk

AIM_MS = 50.0
ROUNDS = 30


def milliseconds(height_mm: float) -> float:
    start = time.perf_counter()
    walk(bear(height_mm))
    return 1000 * (time.perf_counter() - start)


def main() -> None:
    milliseconds(300)
    times = [milliseconds(150 + 10 * turn) for turn in range(ROUNDS)]
    print(
        f"draft and walk one size: median {statistics.median(times):.1f} ms, "
        f"longest {max(times):.1f} ms over {ROUNDS} sizes (aim {AIM_MS:.0f} ms)"
    )


if __name__ == "__main__":
    main()

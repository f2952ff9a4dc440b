"""How time and memory of a check grow with pieces and with panels, in one run.

python -m tests.bench.bench_growth [PLOT.svg]

Problems cut out of cloth at a load of .65: 10 to 80 pieces on 4 panels, then 30 pieces on 2 to 40
panels; three of each, the median told. Memory is the most that the process and its children were
seen to hold together, looked at fifty times a second.
"""

import statistics
import sys
import threading
from pathlib import Path

import psutil

from planning.coverage.check import check
from tests.bench.certified import Ways, cut_from_cloth

PIECES, PANELS = (10, 20, 40, 60, 80), (2, 5, 10, 20, 40)
LOAD, LIMIT_S, RUNS = 0.65, 30.0, 3
EVERY_S = 0.02


class Memory:
    """The most memory of this process and its children while it is entered, in MB."""

    def __enter__(self) -> "Memory":
        self.most_mb, self._is_over = 0.0, threading.Event()
        self._watch = threading.Thread(target=self._look, daemon=True)
        self._watch.start()
        return self

    def __exit__(self, *what: object) -> None:
        self._is_over.set()
        self._watch.join()

    def _look(self) -> None:
        own = psutil.Process()
        while not self._is_over.wait(EVERY_S):
            total = 0
            for process in (own, *own.children(recursive=True)):
                try:
                    total += process.memory_info().rss
                except psutil.NoSuchProcess:
                    continue
            self.most_mb = max(self.most_mb, total / 1e6)


def measured(pieces: int, panels: int) -> tuple[float, float, int]:
    """Median seconds, most MB, and how many of the runs were covered."""
    times, most_mb, found = [], 0.0, 0
    for run in range(RUNS):
        problem = cut_from_cloth(5000 + run, pieces, LOAD, panels, Ways(mirrored=True)).problem
        with Memory() as memory:
            verdict = check(problem, seconds=LIMIT_S)
        times.append(verdict.seconds)
        found += verdict.verdict == "covers"
        most_mb = max(most_mb, memory.most_mb)
    return statistics.median(times), most_mb, found


def plot(rows: list[tuple[str, list[tuple[int, float]]]]) -> str:
    """Seconds against size, as an SVG of two lines."""
    most = max(seconds for _, line in rows for _, seconds in line)
    parts = ['<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 420 260" font-size="11">']
    for shift, (name, line) in enumerate(rows):
        widest = line[-1][0]
        spots = [(40 + 350 * x / widest, 220 - 190 * s / most) for x, s in line]
        dash = ' stroke-dasharray="6 3"' if shift else ""
        way = " ".join(f"{x:.0f},{y:.0f}" for x, y in spots)
        parts.append(f'<polyline points="{way}" fill="none" stroke="#2f4277"{dash}/>')
        x, y = spots[-1]
        parts.append(f'<text x="{x - 60:.0f}" y="{y - 6:.0f}">{name}, to {widest}</text>')
    parts.append(f'<text x="4" y="34">{most:.1f} s</text><text x="4" y="224">0 s</text></svg>')
    return "\n".join(parts)


def main() -> None:
    print("pieces  panels  seconds     MB  covered")
    rows: list[tuple[str, list[tuple[int, float]]]] = [("pieces", []), ("panels", [])]
    for name, pairs in (
        ("pieces", [(n, 4) for n in PIECES]),
        ("panels", [(30, n) for n in PANELS]),
    ):
        line = rows[0][1] if name == "pieces" else rows[1][1]
        for pieces, panels in pairs:
            seconds, most_mb, found = measured(pieces, panels)
            line.append((pieces if name == "pieces" else panels, seconds))
            print(
                f"{pieces:6}  {panels:6}  {seconds:7.2f}  {most_mb:5.0f}  {found} of {RUNS}",
                flush=True,
            )
    if len(sys.argv) > 1:
        Path(sys.argv[1]).write_text(plot(rows), encoding="utf-8")


if __name__ == "__main__":
    main()

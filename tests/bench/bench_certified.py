"""How many problems with a certain answer get it, and how fast, in one run.

python -m tests.bench.bench_certified [plain] [hard] [ruled] [cannot]

*plain*: 30 problems cut out of cloth, 6 to 25 pieces, loads .60 to .97, ten seconds each. *hard*:
12 of 20 to 60 pieces, loads .79 to .96, sixty seconds each. *ruled*: 20 with flaws, one-way cloth,
lists of garments, stripes and pins, loads .55 to .85. *cannot*: 32 impossible ones on 8 panels with
25 pieces, by size, by area, by rivals and by a bond to one garment. Seconds are those of the whole
check: child processes, proofs and verification included. A wrong verdict ends the run.
"""

import os
import platform
import statistics
import sys
from collections.abc import Callable
from dataclasses import replace

from planning.coverage.check import check
from planning.coverage.engine import engine_name
from planning.coverage.problem import Problem
from planning.coverage.verify import faults_of
from tests.bench.certified import Ways, cut_from_cloth
from tests.planning.coverage.samples import box, panel, piece

type Asked = list[tuple[str, Problem]]


def plain() -> Asked:
    return [
        _asked(1000 + n, round(6 + 19 * n / 29), 0.60 + 0.37 * n / 29, 2 + n % 3, _ways(n))
        for n in range(30)
    ]


def hard() -> Asked:
    return [
        _asked(2000 + n, round(20 + 40 * n / 11), 0.79 + 0.17 * n / 11, 2 + n % 3, _ways(n))
        for n in range(12)
    ]


def ruled() -> Asked:
    rules = (
        Ways(flaws=2, mirrored=True),
        Ways(one_way=True, mirrored=True),
        Ways(listed=0.5),
        Ways(stripes=1, one_way=True),
        Ways(pins=1),
    )
    return [
        _asked(3000 + n, 8 + n // 2, 0.55 + 0.30 * n / 19, 2 + n % 3, rules[n % 5])
        for n in range(20)
    ]


def _ways(n: int) -> Ways:
    return Ways(curved=(0, 0.5)[n % 2], spare=n % 4 == 3, mirrored=n % 3 == 0)


def _asked(seed: int, pieces: int, load: float, panels: int, ways: Ways) -> tuple[str, Problem]:
    found = cut_from_cloth(seed, pieces, load, panels, ways)
    return f"{found.name}, load {found.load:.2f}", found.problem


def cannot() -> Asked:
    """Made impossible on purpose, whatever else would fit."""
    asked: Asked = []
    for n in range(8):
        whole = cut_from_cloth(4000 + n, 25, 0.6, 8, _ways(n)).problem
        long = piece(box(100, 1300 + 10 * n), "long")
        asked.append((f"size {n}", replace(whole, pieces=(*whole.pieces, long))))
        asked.append((f"area {n}", _larger(whole, 1.35 + 0.02 * n)))
        cloth = tuple(panel(box(310 + n, 360 + n), f"p{k}") for k in range(8))
        small = tuple(piece(box(40, 50), f"small {k}") for k in range(16))
        rivals = Problem(cloth, (piece(box(200, 200), "back", count=9), *small))
        asked.append((f"rivals {n}", rivals))
        bound = (piece(box(150, 550), "tall"), piece(box(320, 200), "wide"), *small)
        two = tuple(
            panel(box(200, 600 + n), f"t{k}", garment=f"tall {k}")
            if k % 2
            else panel(box(400, 300 + n), f"w{k}", garment=f"wide {k}")
            for k in range(8)
        )
        asked.append((f"garment {n}", Problem(two, bound, same_garment=(("tall", "wide"),))))
    return asked


def _larger(problem: Problem, factor: float) -> Problem:
    pieces = tuple(
        replace(each, outline=tuple((x * factor, y * factor) for x, y in each.outline))
        for each in problem.pieces
    )
    return replace(problem, pieces=pieces)


SETS: dict[str, tuple[Callable[[], Asked], str, float]] = {
    "plain": (plain, "covers", 10.0),
    "hard": (hard, "covers", 60.0),
    "ruled": (ruled, "covers", 10.0),
    "cannot": (cannot, "cannot", 10.0),
}


def run(name: str) -> None:
    """Ask every problem of a set and print how it went."""
    make, truth, limit_s = SETS[name]
    times: list[float] = []
    asked = make()
    for words, problem in asked:
        verdict = check(problem, seconds=limit_s)
        is_right = verdict.verdict == truth
        if not is_right and verdict.verdict != "undecided":
            raise SystemExit(f"wrong: {words} is {verdict.verdict}")
        if verdict.verdict == "covers" and faults_of(problem, verdict.placements):
            raise SystemExit(f"wrong: the lay of {words} breaks a rule")
        if is_right:
            times.append(verdict.seconds)
        print(f"  {words}: {verdict.verdict} in {verdict.seconds:.2f} s", flush=True)
    middle = statistics.median(times) if times else float("nan")
    worst = max(times, default=float("nan"))
    print(
        f"{name}: {len(times)} of {len(asked)} {truth}, median {middle:.2f} s, longest {worst:.2f}"
    )


def main() -> None:
    machine = f"{os.cpu_count()} cores, {platform.machine()}, Python {platform.python_version()}"
    print(f"{machine}, {engine_name()}")
    for name in sys.argv[1:] or SETS:
        run(name)


if __name__ == "__main__":
    main()

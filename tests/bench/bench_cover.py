"""How long a verdict takes beside the bare solver, on the demo's own cloth, in one run.

    python -m tests.bench.bench_cover [runs]

The question is the 460 mm bear from the five shirts of the demo. The bare time is that of the
solver alone (one search, no process of its own, no proofs, nothing verified) to its first full lay
on the same prepared shapes; the other is that of the whole check, child processes and verification
included. Prints medians and their ratio, then how the proofs and certified problems fare.
"""

import json
import statistics
import sys
import time
from pathlib import Path
from typing import Any

from inventory.measuring.shapes import outline_from
from planning.coverage import child
from planning.coverage.check import check
from planning.coverage.problem import Panel, Piece, Problem
from planning.coverage.task import task_of
from planning.drafting.bear import bear
from tests.planning.coverage import samples
from tests.planning.coverage.samples import box, cut_up

WORKSHOP = Path(__file__).resolve().parents[2] / "demo_fixtures" / "workshop.json"
HEIGHT_MM = 460.0


def shirts() -> Problem:
    """The 460 mm bear and the panels of the demo's first collection, flaws left out."""
    garments = json.loads(WORKSHOP.read_text(encoding="utf-8"))["collections"][0]["garments"]
    panels = tuple(
        Panel(
            id=f"{garment['key']} {panel['name']}",
            garment=garment["key"],
            outline=outline_from(panel["shape"], panel["measures_mm"]),
            grain_deg=panel["grain_deg"],
            one_way=bool(garment["is_one_way"]),
        )
        for garment in garments
        for panel in garment["panels"]
    )
    pieces = tuple(
        Piece(p.name, p.cut_line, p.grain_deg, p.count, p.mirrored) for p in bear(HEIGHT_MM)
    )
    return Problem(panels, pieces)


def bare_s(problem: Problem) -> float:
    """Seconds of the solver alone to a full lay."""
    from packingsolver import irregular

    task = task_of(problem)
    job: dict[str, Any] = {
        "objective": "Feasibility",
        "sheets": [{"outline": s.outline, "holes": s.holes} for s in task.sheets],
        "items": [
            {"outline": i.outline, "copies": len(i.copies), "turns": i.turns(False)}
            for i in task.items
        ],
        "barred": (),
    }
    started = time.perf_counter()
    parameters = irregular.OptimizeParameters()
    parameters.time_limit = 30.0
    parameters.verbosity_level = 0
    parameters.use_local_search_direct_trigonometry = True
    output = irregular.optimize(child._instance(irregular, job), parameters)
    seconds = time.perf_counter() - started
    laid = output.solution.number_of_items()
    if laid != sum(len(item.copies) for item in task.items):
        raise SystemExit(f"The bare solver laid {laid} pieces only.")
    return seconds


def check_s(problem: Problem, word: str) -> float:
    started = time.perf_counter()
    verdict = check(problem, seconds=20)
    if verdict.verdict != word:
        print(f"  {verdict.verdict} where {word} is certain")
    return time.perf_counter() - started


def main() -> None:
    runs = int(sys.argv[1]) if len(sys.argv) > 1 else 7
    problem = shirts()
    pairs = [(bare_s(problem), check_s(problem, "covers")) for _ in range(runs)]
    bare, whole = (statistics.median(times) for times in zip(*pairs, strict=True))
    print(
        f"460 mm bear, {len(problem.panels)} panels: bare solver {bare:.2f} s, verdict "
        f"{whole:.2f} s (longest {max(w for _, w in pairs):.2f} s), ratio {whole / bare:.2f}"
    )
    found = []
    for seed in range(30):
        asked, _ = cut_up(seed, 6 + seed * 2 // 3, 0.60 + 0.012 * seed, mirrored=seed % 2)
        started = time.perf_counter()
        if check(asked, seconds=10).verdict == "covers":
            found.append(time.perf_counter() - started)
    print(
        f"30 certified problems, 6 to 25 pieces, loads .60 to .95: {len(found)} found in 10 s, "
        f"median {statistics.median(found):.2f} s, longest {max(found):.2f} s"
    )
    refused = [
        check_s(Problem((samples.panel(),), (samples.piece(box(391 + n, 100 + n)),)), "cannot")
        for n in range(15)
    ] + [
        check_s(
            Problem((samples.panel(),), (samples.piece(box(150, 130 + n), count=12),)), "cannot"
        )
        for n in range(15)
    ]
    print(
        f"30 certified impossibilities: median {statistics.median(refused):.2f} s, "
        f"longest {max(refused):.2f} s"
    )


if __name__ == "__main__":
    main()

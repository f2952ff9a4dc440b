"""How long a verdict takes beside the bare solver, on the demo's own cloth, in one run.

    python -m tests.bench.bench_cover [runs]

The question is the 460 mm bear from the five shirts of the demo. The bare time is that of the
solver alone (one search, no process of its own, no proofs, nothing verified) to its first full lay
on the same prepared shapes; the other is that of the whole check, child processes and verification
included. A search in a process of its own, without proofs or verification, is timed beside them,
for that is what a bare search costs from the start of a command. Prints medians and ratios.
"""

import json
import queue
import statistics
import sys
import time
from pathlib import Path
from typing import Any

from inventory.measuring.shapes import outline_from
from planning.coverage import child
from planning.coverage.check import check
from planning.coverage.engine import Child, Heard
from planning.coverage.problem import Panel, Piece, Problem
from planning.coverage.task import task_of
from planning.coverage.whole import direct_jobs
from planning.drafting.bear import bear

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


def alone_s(problem: Problem) -> float:
    """Seconds of the same search in a process of its own, from its start to its first full lay."""
    *_, (job, _) = direct_jobs(task_of(problem))
    heard: queue.Queue[Heard] = queue.Queue()
    started = time.perf_counter()
    search = Child(job, 30.0, heard)
    while len(heard.get(timeout=40.0).lies) < job.size():
        pass
    seconds = time.perf_counter() - started
    search.end()
    return seconds


def check_s(problem: Problem) -> float:
    started = time.perf_counter()
    verdict = check(problem, seconds=20)
    if verdict.verdict != "covers":
        raise SystemExit(f"{verdict.verdict} where a lay is certain")
    return time.perf_counter() - started


def main() -> None:
    runs = int(sys.argv[1]) if len(sys.argv) > 1 else 7
    problem = shirts()
    rounds = [(bare_s(problem), alone_s(problem), check_s(problem)) for _ in range(runs)]
    bare, alone, whole = (statistics.median(times) for times in zip(*rounds, strict=True))
    print(
        f"460 mm bear, {len(problem.panels)} panels, medians of {runs}: bare solver {bare:.2f} s, "
        f"in a process of its own {alone:.2f} s, verdict {whole:.2f} s (longest "
        f"{max(w for *_, w in rounds):.2f} s); ratios {whole / bare:.2f} and {whole / alone:.2f}"
    )


if __name__ == "__main__":
    main()

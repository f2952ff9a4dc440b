"""The program of a search's own process: one instance in on standard input, lays out as lines.

Run by path, not by import, so that it starts in a few hundredths of a second without Django, and
without the geometry libraries where the solver alone is asked. It knows polygons and numbers only.
It ends when its time is up, when its memory cap is reached, or when the process that started it is
gone.
"""

import json
import os
import sys
import threading
from pathlib import Path
from typing import Any, TextIO


def main() -> None:
    """Read the instance, search, and write each better lay as one line of JSON."""
    answers = os.fdopen(os.dup(1), "w", encoding="utf-8")
    os.dup2(os.open(os.devnull, os.O_WRONLY), 1)  # whatever native code prints is no answer
    job = json.loads(sys.stdin.buffer.readline())
    _cap_memory(job["memory_mb"])
    _end_with_parent()
    _limit_time(job["seconds"] + 1.0)
    (_search_snugly if job["search"] == "snug" else _search)(job, answers)


def _search_snugly(job: dict[str, Any], answers: TextIO) -> None:
    sys.path[0] = str(Path(__file__).parents[2])
    from planning.coverage.snug import search
    from planning.coverage.snug_shapes import puzzle_of

    def tell(lies: list[tuple[int, int, float, float, float]]) -> None:
        _write(answers, {"lies": lies})

    search(puzzle_of(job), job["seconds"], job["seed"], tell)
    _write(answers, {"done": True})


def _search(job: dict[str, Any], answers: TextIO) -> None:
    from packingsolver import irregular

    instance = _instance(irregular, job)
    parameters = irregular.OptimizeParameters()
    parameters.time_limit = job["seconds"]
    parameters.verbosity_level = 0
    for name, value in job["settings"].items():
        setattr(parameters, name, value)
    best = 0

    def tell(output: Any) -> None:
        nonlocal best
        count = output.solution.number_of_items()
        if count > best:
            best = count
            _write(answers, {"lies": _lies(output.solution)})

    parameters.new_solution_callback = tell
    output = irregular.optimize(instance, parameters)
    _write(answers, {"lies": _lies(output.solution), "done": True})


def _instance(irregular: Any, job: dict[str, Any]) -> Any:
    builder = irregular.InstanceBuilder()
    builder.set_objective(getattr(irregular.Objective, job["objective"]))
    for sheet in job["sheets"]:
        bin_id = builder.add_bin_type(irregular.build_shape(sheet["outline"]))
        for hole in sheet["holes"]:
            shape = irregular.ShapeWithHoles(irregular.build_shape(hole), [])
            builder.add_defect(bin_id, -1, shape)
    for item in job["items"]:
        builder.add_item_type(
            irregular.build_shape(item["outline"]),
            allowed_rotations=[(low, high, False) for low, high in item["turns"]],
            copies=item["copies"],
        )
    for sheet, items in enumerate(job["barred"]):
        for item in items:
            resource = builder.add_bin_type_resource(sheet, 0.0)
            builder.add_resource_consumption(sheet, resource, item, [1.0])
    return builder.build()


def _lies(solution: Any) -> list[tuple[int, int, float, float, float]]:
    """(item, sheet, turn in degrees, x, y) for every copy laid."""
    lies = []
    for position in range(solution.number_of_different_bins()):
        sheet = solution.bin(position)
        for item in sheet.items:
            corner = item.bl_corner
            lies.append((item.item_type_id, sheet.bin_type_id, item.angle, corner.x, corner.y))
    return lies


def _write(answers: TextIO, answer: dict[str, Any]) -> None:
    answers.write(json.dumps(answer) + "\n")
    answers.flush()


def _cap_memory(megabytes: int) -> None:
    try:
        import resource
    except ImportError:  # not every system can cap a process
        return
    resource.setrlimit(resource.RLIMIT_AS, (megabytes << 20, megabytes << 20))


def _end_with_parent() -> None:
    """The parent never closes our input while it lives; its end means that nobody is waiting."""

    def wait() -> None:
        sys.stdin.buffer.read()
        os._exit(3)

    threading.Thread(target=wait, daemon=True).start()


def _limit_time(seconds: float) -> None:
    timer = threading.Timer(seconds, os._exit, args=(4,))
    timer.daemon = True
    timer.start()


if __name__ == "__main__":
    main()

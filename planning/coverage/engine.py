"""The searches in their own processes: started, heard and ended here, never trusted.

Each job runs in a child process with a time limit and a memory cap, so that a crash, a hang or a
greedy search costs one job and is told as such. What a child says is a claim; `verify` decides.
"""

import json
import os
import queue
import subprocess
import sys
import threading
from collections.abc import Mapping
from contextlib import suppress
from dataclasses import dataclass, field
from importlib.metadata import version
from pathlib import Path
from typing import IO, Any, Literal, cast

from planning.coverage.items import Item
from planning.coverage.sheets import Sheet

MEMORY_MB = 3000
CHILD = Path(__file__).with_name("child.py")
ONE_THREAD = {"OPENBLAS_NUM_THREADS": "1", "OMP_NUM_THREADS": "1", "MKL_NUM_THREADS": "1"}
ENDINGS = {3: "its parent was gone", 4: "it overran its time"}

type Lie = tuple[int, int, float, float, float]  # item, sheet, turn in degrees, x, y


type Bond = tuple[tuple[int, ...], tuple[tuple[int, ...], ...]]  # items, groups of sheets


@dataclass(frozen=True, slots=True)
class Job:
    """One instance for a search, and how to search it: with the solver, or snugly, edge to edge.

    `barred` holds, per sheet, the items that may not be cut from it; of the solver's searches only
    some heed it. `bonds` and `seed` are heeded by the snug search only, which also lays each sheet
    by its own way of the cloth; for the solver `one_way` says it of all sheets.
    """

    name: str
    sheets: tuple[Sheet, ...]
    items: tuple[Item, ...]
    one_way: bool = False
    objective: str = "Feasibility"
    settings: Mapping[str, bool | float] = field(default_factory=dict)
    barred: tuple[tuple[int, ...], ...] = ()
    bonds: tuple[Bond, ...] = ()
    search: Literal["solver", "snug"] = "solver"
    seed: int = 0

    def size(self) -> int:
        """How many copies it asks for."""
        return sum(len(item.copies) for item in self.items)


@dataclass(frozen=True, slots=True)
class Heard:
    """A claim of a child, or its end: `ended` is None while it runs, then empty or a reason."""

    child: "Child"
    lies: tuple[Lie, ...] = ()
    ended: str | None = None


def engine_name() -> str:
    """The solver and its version, as the verdict names it."""
    return f"packingsolver {version('packingsolver')}"


class Child:
    """One running job. Its answers go to the queue it was given."""

    def __init__(self, job: Job, seconds: float, heard: "queue.Queue[Heard]") -> None:
        self.job = job
        self._heard = heard
        self._process = subprocess.Popen(
            [sys.executable, str(CHILD)],
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            stderr=subprocess.DEVNULL,
            env=_bare_environment(),
            close_fds=True,
        )
        threading.Thread(target=self._run, args=(_message(job, seconds),), daemon=True).start()

    def end(self) -> None:
        """Stop it at once, whatever it is doing."""
        self._process.kill()

    def _run(self, message: bytes) -> None:
        process, done = self._process, False
        ask, answers = cast(IO[bytes], process.stdin), cast(IO[bytes], process.stdout)
        try:
            ask.write(message)
            ask.flush()
            for line in answers:
                answer = json.loads(line)
                done = done or bool(answer.get("done"))
                if answer.get("lies"):
                    self._heard.put(Heard(self, tuple(tuple(lie) for lie in answer["lies"])))
        except (OSError, ValueError):
            done = False
        process.kill()
        with suppress(OSError):  # what was not read by a child that was ended
            ask.close()
        answers.close()
        process.wait()
        self._heard.put(Heard(self, ended="" if done else self._reason()))

    def _reason(self) -> str:
        code = self._process.returncode
        how = ENDINGS.get(code, f"signal {-code}" if code < 0 else f"exit {code}")
        return f"the search '{self.job.name}' ended early ({how})"


def _message(job: Job, seconds: float) -> bytes:
    data = {
        "seconds": seconds,
        "memory_mb": MEMORY_MB,
        "search": job.search,
        "objective": job.objective,
        "settings": dict(job.settings),
        "seed": job.seed,
        "sheets": [_sheet_data(sheet) for sheet in job.sheets],
        "items": [_item_data(item, job.one_way) for item in job.items],
        "barred": job.barred,
        "bonds": job.bonds,
    }
    return json.dumps(data).encode() + b"\n"


def _sheet_data(sheet: Sheet) -> dict[str, Any]:
    return {"outline": sheet.outline, "holes": sheet.holes, "one_way": sheet.panel.one_way}


def _item_data(item: Item, one_way: bool) -> dict[str, Any]:
    return {
        "outline": item.outline,
        "copies": len(item.copies),
        "turns": item.turns(one_way),
        "turns_one_way": item.turns(True),
    }


def _bare_environment() -> dict[str, str]:
    """What Python needs to start; the child is given none of the program's own settings."""
    kept = ("PATH", "SYSTEMROOT", "LD_LIBRARY_PATH", "DYLD_LIBRARY_PATH", "VIRTUAL_ENV")
    return {name: os.environ[name] for name in kept if name in os.environ} | ONE_THREAD

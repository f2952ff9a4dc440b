"""`manage.py cover FILE.json`: the verdict for a cover-1 file, as verdict-1 JSON.

Reads a file, asks the coverage room, writes the answer. Needs no database and no data folder. A
file that cannot be used ends it with 2 and one line that names the place.
"""

import json
import sys
from pathlib import Path

from django.core.management.base import BaseCommand, CommandParser

from planning.coverage.check import check
from planning.coverage.cover_file import problem_from_text, verdict_to_json
from planning.coverage.problem import ProblemError

UNUSABLE = 2
LONGEST_SECONDS = 3600.0


class Command(BaseCommand):
    """Says whether the cloth in a file is enough for the pieces in it."""

    help = "Give the verdict (covers, cannot or undecided) for a cover-1 file."
    requires_system_checks: list[str] = []  # noqa: RUF012 - Django's own name and type

    def add_arguments(self, parser: CommandParser) -> None:
        """The file, and how long and how to search."""
        parser.add_argument("file", type=Path, help="a cover-1 file")
        parser.add_argument("--seconds", type=float, default=10.0, help="time limit (10)")
        parser.add_argument("--seed", type=int, default=0, help="the seed of the search (0)")
        parser.add_argument("--out", type=Path, help="write the answer here instead of printing it")

    def handle(self, *args: object, **options: object) -> None:
        """Check the file and write the answer."""
        file, out = Path(str(options["file"])), options["out"]
        try:
            seconds = _seconds(options["seconds"])
            problem = problem_from_text(_text_of(file))
            verdict = check(problem, seconds=seconds, seed=int(str(options["seed"])))
        except ProblemError as error:
            self._refuse(str(error))
        answer = json.dumps(verdict_to_json(verdict), indent=1, allow_nan=False)
        if out is None:
            self.stdout.write(answer)
            return
        try:
            Path(str(out)).write_text(answer + "\n", encoding="utf-8")
        except OSError as error:
            self._refuse(f"{out}: the answer cannot be written here ({error.strerror})")

    def _refuse(self, line: str) -> None:
        self.stderr.write(" ".join(line.split()))
        sys.exit(UNUSABLE)


def _seconds(given: object) -> float:
    seconds = float(str(given))
    if not 0 < seconds <= LONGEST_SECONDS:
        raise ProblemError(f"--seconds: it must lie between 0 and {LONGEST_SECONDS:g}")
    return seconds


def _text_of(file: Path) -> bytes:
    try:
        return file.read_bytes()
    except OSError as error:
        raise ProblemError(f"{file}: the file cannot be read ({error.strerror})") from error

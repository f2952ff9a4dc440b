"""`manage.py advise`: what a cloth needs, as advice-1 JSON or as text to read.

Reads its options, asks the advice room, writes the answer. Needs no database. An option
that cannot be used ends it with 2 and one line that says why.
"""

import json
import sys
from collections.abc import Sequence
from typing import Any, NoReturn

from django.core.management.base import BaseCommand, CommandParser

from inventory.advice.advice_text import as_text
from inventory.advice.advise import advise
from inventory.advice.cloth import Cloth
from inventory.advice.conditions import CONDITIONS
from inventory.advice.label import parse_label
from inventory.advice.problems import AdviceError, BadFigure, BadShares

UNUSABLE = 2


class Command(BaseCommand):
    """Says what a cloth needs before it is cut and when it is sewn."""

    help = "Advise on washing, pressing, backing and sewing a cloth, with reasons and sources."
    requires_system_checks: list[str] = []  # noqa: RUF012 - Django's own name and type

    def create_parser(self, prog_name: str, subcommand: str, **kwargs: Any) -> CommandParser:
        """The usual parser, but a wrong option is refused in one line instead of many."""
        parser = super().create_parser(prog_name, subcommand, **kwargs)
        parser.error = self._refuse  # type: ignore[method-assign]
        return parser

    def add_arguments(self, parser: CommandParser) -> None:
        """What is known of the cloth. Everything may be left out."""
        add = parser.add_argument
        add("--fibre", action="append", default=[], metavar="NAME=PERCENT", help="repeat it")
        add("--construction", metavar="NAME", help="how it is made: jersey, twill, velvet ...")
        add("--mass", metavar="G_PER_M2", help="grams per square metre")
        add("--stretch-across", metavar="PCT", help="stretch across the grain, per cent")
        add("--stretch-along", metavar="PCT", help="stretch along the grain, per cent")
        add("--fragility", metavar="0..4", help="0 sound to 4 falling apart")
        add("--fray", metavar="0..4", help="0 does not fray to 4 unravels")
        add("--label", metavar="MARKS", help="such as wash=30-mild,iron=2,bleach=no,tumble=no")
        add("--edition", metavar="2012|2023", help="edition of the care label, if known")
        add("--keep-scent", action="store_true", help="the giver wants the scent kept")
        add("--no-wash", action="store_true", help="the giver wants it unwashed")
        add(
            "--condition",
            action="append",
            default=[],
            metavar="NAMES",
            help=f"any of {', '.join(CONDITIONS)}, with commas",
        )
        add("--text", action="store_true", help="text to read instead of JSON")

    def handle(self, *args: object, **options: Any) -> None:
        """Work out the advice and write it."""
        try:
            advice = advise(_cloth(options))
        except AdviceError as problem:
            self._refuse(str(problem))
        if options["text"]:
            self.stdout.write(_printable(as_text(advice), self.stdout), ending="")
            return
        self.stdout.write(json.dumps(advice.to_json(), indent=1, allow_nan=False))

    def _refuse(self, message: str) -> NoReturn:
        self.stderr.write(_printable(" ".join(message.split()), self.stderr))
        sys.exit(UNUSABLE)


def _cloth(options: dict[str, Any]) -> Cloth:
    edition = _whole("edition", options["edition"])
    label = options["label"]
    return Cloth(
        fibres=tuple(_share(pair) for pair in options["fibre"]),
        construction=options["construction"],
        mass_g_m2=_number("mass", options["mass"]),
        stretch_along_pct=_number("stretch along", options["stretch_along"]),
        stretch_across_pct=_number("stretch across", options["stretch_across"]),
        fragility=_whole("fragility", options["fragility"]),
        fray=_whole("fray", options["fray"]),
        label=parse_label(label or "", edition) if label or edition else None,
        keep_scent=options["keep_scent"],
        may_wash=False if options["no_wash"] else None,
        conditions=frozenset(_names(options["condition"])),
    )


def _share(pair: str) -> tuple[str, float]:
    name, equals, percent = pair.rpartition("=")
    if not equals or not name.strip():
        raise BadShares(f"“{pair}” should read like cotton=100.")
    try:
        return name, float(percent)
    except ValueError:
        raise BadShares(f"The share of {name} is not a number: “{percent}”.") from None


def _number(what: str, text: str | None) -> float | None:
    if text is None:
        return None
    try:
        return float(text)
    except ValueError:
        raise BadFigure(f"The {what} is not a number: “{text}”.") from None


def _whole(what: str, text: str | None) -> int | None:
    if text is None:
        return None
    try:
        return int(text)
    except ValueError:
        raise BadFigure(f"The {what} is not a whole number: “{text}”.") from None


def _names(given: Sequence[str]) -> list[str]:
    return [name for text in given for name in text.split(",") if name.strip()]


def _printable(text: str, stream: Any) -> str:
    """``text`` with what the terminal cannot show replaced, so that writing never fails."""
    encoding = getattr(stream, "encoding", None) or "utf-8"
    return text.encode(encoding, "replace").decode(encoding)

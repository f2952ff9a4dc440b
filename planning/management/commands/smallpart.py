"""`manage.py smallpart --eye 12x6 --stem 4x14 --age-months 30 --market us`: the gauge's answer.

Reads sizes in millimetres, asks the safety room, writes smallpart-1 JSON. Needs no database. Input
that cannot be used ends it with 2 and one line. Without an age or a market the strictest rule
holds.
"""

import argparse
import json
import re
import sys
from collections.abc import Callable

from django.core.management.base import BaseCommand, CommandParser

from planning.safety import ages, parts, use
from planning.safety.errors import SafetyError
from planning.safety.fit import fit_of

UNUSABLE = 2
SHAPES = ("disc", "sphere", "rod", "box", "eye")


class Command(BaseCommand):
    """Says whether a hard part is a small part, and whether it may be used."""

    help = "Hold a part against the small-parts gauge: exactly one of --disc to --eye."
    requires_system_checks: list[str] = []  # noqa: RUF012 - Django's own name and type

    def create_parser(self, prog_name: str, subcommand: str, **kwargs: object) -> CommandParser:
        """Leave out the usage line, so that a wrong option is answered with one line."""
        return super().create_parser(
            prog_name,
            subcommand,
            usage=argparse.SUPPRESS,
            **kwargs,
        )

    def add_arguments(self, parser: CommandParser) -> None:
        """The part, what it is made of, and for whom."""
        parser.add_argument("--disc", metavar="DxT", help="diameter and thickness in mm")
        parser.add_argument("--sphere", metavar="D", help="diameter in mm")
        parser.add_argument("--rod", metavar="DxL", help="diameter and length in mm")
        parser.add_argument("--box", metavar="AxBxC", help="three edges in mm")
        parser.add_argument("--eye", metavar="DxH", help="head diameter and height in mm")
        parser.add_argument(
            "--stem", metavar="SxL", help="stem or shank of an eye or a disc, in mm"
        )
        parser.add_argument(
            "--material", default="plastic", help="plastic, metal, wood, fabric ..."
        )
        parser.add_argument("--age-months", help="the recipient's age in months")
        parser.add_argument("--market", help="us, eu or uk")
        parser.add_argument("--cuddly", action="store_true", help="the keepsake is a cuddly toy")

    def handle(self, *args: object, **options: object) -> None:
        """Answer for one part."""
        given = {name: str(value) for name, value in options.items() if value is not None}
        try:
            fit = fit_of(_part(given))
            answer = use.use_of(
                fit,
                given["material"],
                _age_months(given),
                ages.market_of(given["market"]) if "market" in given else None,
                cuddly=options["cuddly"] is True,
            )
        except SafetyError as error:
            self.stderr.write(" ".join(str(error).split()))
            sys.exit(UNUSABLE)
        told = {
            "format": "bearing-cloth/smallpart-1",
            "fits": fit.fits,
            "borderline": fit.borderline,
            "use": answer.use.value,
            "because": answer.because,
            "source": answer.source,
        }
        self.stdout.write(json.dumps(told, indent=1, ensure_ascii=False))


def _part(given: dict[str, str]) -> parts.Part:
    shapes = [name for name in SHAPES if name in given]
    if len(shapes) != 1:
        raise SafetyError("Give exactly one of --disc, --sphere, --rod, --box or --eye.")
    shape = shapes[0]
    if "stem" in given and shape not in ("eye", "disc"):
        raise SafetyError("--stem belongs to --eye or --disc.")
    if shape == "eye" and "stem" not in given:
        raise SafetyError("--eye needs its --stem, such as --stem 4x14.")
    if "stem" in given:
        maker = parts.Eye if shape == "eye" else parts.ShankButton
        return maker(*_sizes(given, shape, 2), *_sizes(given, "stem", 2))
    makers: dict[str, tuple[Callable[..., parts.Part], int]] = {
        "disc": (parts.Disc, 2),
        "rod": (parts.Disc, 2),
        "sphere": (parts.Sphere, 1),
        "box": (parts.Box, 3),
    }
    make, count = makers[shape]
    return make(*_sizes(given, shape, count))


def _sizes(given: dict[str, str], name: str, count: int) -> list[float]:
    written = re.split(r"[x×*]", given[name].strip().lower())
    try:
        sizes = [float(size) for size in written]
    except ValueError:
        sizes = []
    if len(sizes) != count:
        pattern = "x".join(["12", "6", "4"][:count])
        raise SafetyError(f"--{name} {given[name]}: write {count} length(s) in mm, like {pattern}.")
    return sizes


def _age_months(given: dict[str, str]) -> int | None:
    if "age_months" not in given:
        return None
    try:
        return int(given["age_months"])
    except ValueError:
        raise SafetyError(
            f"--age-months {given['age_months']}: write a whole number of months."
        ) from None

import io
import json
import subprocess
import sys
from pathlib import Path

import pytest
from django.core.management import CommandError, call_command

ROOT = Path(__file__).parents[3]


def answer(*args: str) -> dict[str, object]:
    out = io.StringIO()
    call_command("smallpart", *args, stdout=out)
    told: dict[str, object] = json.loads(out.getvalue())
    return told


def refusal(*args: str) -> str:
    err = io.StringIO()
    with pytest.raises(SystemExit) as stopped:
        call_command("smallpart", *args, stderr=err)
    assert stopped.value.code == 2
    return err.getvalue().strip()


def test_the_example_of_the_manual() -> None:
    told = answer("--eye", "12x6", "--stem", "4x14", "--age-months", "30", "--market", "us")
    assert list(told) == ["format", "fits", "borderline", "use", "because", "source"]
    assert told["format"] == "bearing-cloth/smallpart-1"
    assert (told["fits"], told["borderline"], told["use"]) == (True, False, "refused")


@pytest.mark.parametrize(
    ("args", "fits", "borderline", "use"),
    [
        (("--disc", "32x3", "--age-months", "40", "--market", "us"), False, True, "must test"),
        (("--rod", "12×50", "--age-months", "120", "--market", "us"), False, False, "allowed"),
        (("--sphere", "30"), True, False, "refused"),
        (("--box", "8x30x2", "--age-months", "48", "--market", "uk"), True, False, "must test"),
        (("--disc", "25x5", "--stem", "6x8", "--cuddly", "--age-months", "48"), True, False)
        + ("refused",),
        (("--disc", "15x1", "--material", "felt", "--age-months", "9", "--market", "us"), True)
        + (False, "allowed"),
    ],
)
def test_each_shape_is_understood(
    args: tuple[str, ...], fits: bool, borderline: bool, use: str
) -> None:
    told = answer(*args)
    assert (told["fits"], told["borderline"], told["use"]) == (fits, borderline, use)


@pytest.mark.parametrize(
    ("args", "words"),
    [
        ((), "exactly one"),
        (("--disc", "1x2", "--sphere", "3"), "exactly one"),
        (("--eye", "12x6"), "--stem"),
        (("--sphere", "9", "--stem", "1x2"), "--stem belongs"),
        (("--disc", "12"), "--disc 12: write 2"),
        (("--disc", "axb"), "--disc axb"),
        (("--disc=-1x2",), "diameter_mm: -1"),
        (("--sphere", "nan"), "nan"),
        (("--sphere", "0"), "0 is no length"),
        (("--sphere", "9", "--age-months", "2.5"), "whole number"),
        (("--sphere", "9", "--age-months", "-3"), "age of -3"),
        (("--sphere", "9", "--market", "mars"), "us, eu, uk"),
        (("--sphere", "9", "--material", "cheese"), "plastic"),
    ],
)
def test_bad_input_ends_with_two_and_one_line(args: tuple[str, ...], words: str) -> None:
    line = refusal(*args)
    assert words in line
    assert "\n" not in line


def test_an_unknown_option_is_refused() -> None:
    with pytest.raises(CommandError, match="--frob"):
        call_command("smallpart", "--sphere", "9", "--frob")


def test_an_unknown_option_on_the_command_line_ends_with_two_and_one_line() -> None:
    ran = subprocess.run(
        [sys.executable, "manage.py", "smallpart", "--sphere", "9", "--frob"],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=False,
    )
    assert ran.returncode == 2
    assert ran.stdout == ""
    assert len(ran.stderr.splitlines()) == 1

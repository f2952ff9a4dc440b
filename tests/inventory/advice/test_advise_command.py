import json
import subprocess
import sys
from pathlib import Path

import pytest
from django.core.management import call_command

ROOT = Path(__file__).resolve().parents[3]


def run(capsys: pytest.CaptureFixture[str], *options: str) -> str:
    call_command("advise", *options)
    return capsys.readouterr().out


def test_json_is_the_default(capsys: pytest.CaptureFixture[str]) -> None:
    answer = json.loads(
        run(
            capsys,
            "--fibre=cotton=95", "--fibre=spandex=5", "--construction=jersey", "--mass=200",
            "--stretch-across=50", "--stretch-along=20", "--fragility=1", "--fray=0",
            "--label=wash=30-mild,iron=2,bleach=no,tumble=no,professional=P", "--edition=2023",
            "--condition=moth,smoke",
        )
    )  # fmt: skip
    assert answer["format"] == "bearing-cloth/advice-1"
    assert answer["wash"]["method"] == "machine-mild"
    assert answer["wash"]["max_c"] == 30
    assert answer["press"]["max_c"] == 160
    assert answer["needle"]["point"] == "stretch"


def test_text_reads_from_the_must_nots_down(capsys: pytest.CaptureFixture[str]) -> None:
    text = run(capsys, "--fibre=silk=100", "--construction=velvet", "--text")
    assert text.index("MUST NOT") < text.index("WHAT TO DO") < text.index("WHY, HOW SURE")
    assert "Do not fuse" in text
    assert max(len(line) for line in text.splitlines()) <= 88


def test_nothing_known_still_gets_an_answer(capsys: pytest.CaptureFixture[str]) -> None:
    assert json.loads(run(capsys))["wash"]["method"] == "spot"


def test_the_scent_and_the_wish_are_options(capsys: pytest.CaptureFixture[str]) -> None:
    assert json.loads(run(capsys, "--keep-scent"))["wash"]["method"] == "none"
    assert json.loads(run(capsys, "--no-wash"))["wash"]["method"] == "none"


@pytest.mark.parametrize(
    ("options", "words"),
    [
        (["--fibre=cottn=100"], "Nearest: cotton"),
        (["--fibre=cotton=60"], "add up to 60"),
        (["--fibre=cotton"], "should read like cotton=100"),
        (["--fibre=cotton=lots"], "not a number"),
        (["--fibre==100"], "should read like"),
        (["--fibre=cotton=nan"], "above 0"),
        (["--construction=velvit"], "velvet"),
        (["--mass=-5"], "mass"),
        (["--mass=heavy"], "not a number"),
        (["--mass=inf"], "mass"),
        (["--stretch-across=-1"], "stretch across"),
        (["--stretch-along=x"], "stretch along"),
        (["--fragility=5"], "0 to 4"),
        (["--fray=1.5"], "whole number"),
        (["--label=wash=33"], "No wash mark"),
        (["--label=nonsense"], "should read like"),
        (["--label=iron=2", "--edition=2019"], "2012 or 2023"),
        (["--edition=new"], "whole number"),
        (["--condition=mouldy"], "mould"),
        (["--bogus"], "--bogus"),
        (["--fibre"], "--fibre"),
        (["--condition=mou\nld"], "No condition"),
    ],
)
def test_bad_input_ends_with_2_and_one_line(
    capsys: pytest.CaptureFixture[str], options: list[str], words: str
) -> None:
    with pytest.raises(SystemExit) as ended:
        call_command("advise", *options)
    shown = capsys.readouterr()
    assert ended.value.code == 2
    assert shown.out == ""
    assert len(shown.err.strip().splitlines()) == 1
    assert words in shown.err


@pytest.mark.parametrize(
    ("options", "code"),
    [(["--text"], 0), (["--fibre=c\udcffotton=100"], 2), (["--mass", "-5"], 2)],
)
def test_a_terminal_without_our_letters_is_no_trouble(
    tmp_path: Path, options: list[str], code: int
) -> None:
    run = subprocess.run(
        [sys.executable, "manage.py", "advise", *options],
        cwd=ROOT,
        env={"PATH": "/usr/bin:/bin", "PYTHONIOENCODING": "ascii",
             "BEARING_CLOTH_DATA": str(tmp_path)},
        capture_output=True,
        check=False,
    )  # fmt: skip
    assert run.returncode == code
    assert b"Traceback" not in run.stderr
    assert len(run.stderr.splitlines()) == (1 if code else 0)

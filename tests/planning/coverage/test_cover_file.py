"""The cover-1 file: what is read, what is written, what is refused and where."""

import json
import subprocess
import sys
from pathlib import Path

import pytest

from planning.coverage.check import check
from planning.coverage.cover_file import (
    problem_from_json,
    problem_from_text,
    problem_to_json,
    verdict_to_json,
)
from planning.coverage.fingerprint import fingerprint
from planning.coverage.problem import ProblemError

ROOT = Path(__file__).resolve().parents[3]
SQUARE = [[0, 0], [200, 0], [200, 200], [0, 200]]
PANEL = {"id": "p0", "garment": "shirt", "outline": [[0, 0], [400, 0], [400, 600], [0, 600]]}
PIECE = {"id": "side", "outline": SQUARE, "count": 2, "mirrored": 1}


def file(**changed):
    plain = {"format": "bearing-cloth/cover-1", "panels": [PANEL], "pieces": [PIECE]}
    return {**plain, **changed}


def test_the_least_file_takes_the_usual_margins():
    problem = problem_from_json(file())
    assert (problem.clearance_mm, problem.edge_margin_mm, problem.flaw_margin_mm) == (2, 5, 3)
    assert problem.panels[0].grain_deg == 90


def test_what_is_written_reads_back_the_same():
    problem = problem_from_json(
        file(
            panels=[
                {
                    **PANEL,
                    "flaws": [[[10, 10], [20, 10], [20, 20]]],
                    "one_way": True,
                    "repeat": {"along_mm": 40, "across_mm": 60, "origin": [0, 0]},
                }
            ],
            same_garment=[["side"]],
            match=[
                {
                    "a": {"piece": "side", "copy": 0, "at": [0, 0]},
                    "b": {"piece": "side", "copy": 1, "at": [0, 0]},
                    "direction": "both",
                    "within_mm": 2,
                }
            ],
            pin=[
                {
                    "piece": "side",
                    "copy": 0,
                    "panel": "p0",
                    "piece_point": [0, 0],
                    "panel_point": [9, 9],
                    "within_mm": 5,
                }
            ],
        )
    )
    again = problem_from_json(json.loads(json.dumps(problem_to_json(problem))))
    assert again == problem
    assert fingerprint(again) == fingerprint(problem)


def test_rings_may_be_closed_clockwise_or_repeat_a_point():
    ring = [[0, 0], [0, 200], [0, 200], [200, 200], [200, 0], [0, 0]]
    answer = check(problem_from_json(file(pieces=[{**PIECE, "outline": ring}])), seconds=8)
    assert answer.verdict == "covers"


def test_the_answer_has_every_key_of_the_format():
    answer = verdict_to_json(check(problem_from_json(file()), seconds=8, seed=3))
    assert answer["format"] == "bearing-cloth/verdict-1"
    assert set(answer) >= {
        "verdict",
        "placements",
        "unplaced",
        "proof",
        "spare",
        "seconds",
        "seed",
        "engine",
    }
    assert answer["seed"] == 3
    assert set(answer["placements"][0]) == {
        "piece",
        "copy",
        "panel",
        "mirrored",
        "rotation_deg",
        "translation",
        "outline",
    }
    assert set(answer["spare"]) >= {
        "used_mm2",
        "usable_mm2",
        "holds_to_inset_mm",
        "holds_to_shrink_pct",
    }


BOW_TIE = [[0, 0], [100, 100], [100, 0], [0, 100]]


@pytest.mark.parametrize(
    ("changed", "place"),
    [
        ({"format": "other"}, "format"),
        ({"panels": []}, "panels"),
        ({"pieces": []}, "pieces"),
        ({"panels": [{**PANEL, "outline": BOW_TIE}]}, "panels[0].outline"),
        ({"panels": [{**PANEL, "outline": [[0, 0], [1, 1]]}]}, "panels[0].outline"),
        ({"panels": [{**PANEL, "outline": [[0, 0], [9, 0], [5, 0]]}]}, "panels[0].outline"),
        ({"panels": [PANEL, PANEL]}, "panels"),
        ({"panels": [{**PANEL, "flaws": [BOW_TIE]}]}, "panels[0].flaws[0]"),
        ({"panels": [{**PANEL, "outline": [[0, 0], [1e9, 0], [1e9, 1e9]]}]}, "panels[0].outline"),
        ({"pieces": [{**PIECE, "mirrored": 3}]}, "pieces[0].mirrored"),
        ({"pieces": [{**PIECE, "count": 0}]}, "pieces[0].count"),
        ({"pieces": [{**PIECE, "count": 501}]}, "pieces"),
        ({"pieces": [{**PIECE, "count": 1.5}]}, "pieces[0].count"),
        ({"pieces": [{**PIECE, "panels": ["p9"]}]}, "pieces[0].panels"),
        ({"pieces": [{**PIECE, "garments": ["coat"]}]}, "pieces[0].garments"),
        ({"pieces": [{"id": "side"}]}, "pieces[0]"),
        ({"clearance_mm": -1}, "clearance_mm"),
        ({"edge_margin_mm": "wide"}, "edge_margin_mm"),
        ({"same_garment": [["nose"]]}, "same_garment[0]"),
        (
            {
                "pin": [
                    {
                        "piece": "side",
                        "copy": 7,
                        "panel": "p0",
                        "piece_point": [0, 0],
                        "panel_point": [0, 0],
                        "within_mm": 1,
                    }
                ]
            },
            "pin[0]",
        ),
        (
            {
                "locked": [
                    {
                        "piece": "side",
                        "copy": 0,
                        "panel": "p9",
                        "mirrored": False,
                        "rotation_deg": 0,
                        "translation": [0, 0],
                    }
                ]
            },
            "locked[0]",
        ),
    ],
)
def test_what_breaks_a_rule_is_refused_by_its_place(changed, place):
    with pytest.raises(ProblemError) as refused:
        problem_from_json(file(**changed))
    assert str(refused.value).startswith(place)
    assert "\n" not in str(refused.value)


@pytest.mark.parametrize(
    "text", [b"", b"{", b"[]", b"\xff\xfe", b'{"format": NaN}', b"null", b"[" * 100_000]
)
def test_what_is_no_such_file_at_all_is_refused(text):
    with pytest.raises(ProblemError):
        problem_from_text(text)


def test_a_spike_is_taken_off_before_anything_is_laid():
    spiked = [[0, 0], [50, 0], [900, 0], [50, 0], [50, 50], [0, 50]]
    problem = problem_from_json(file(pieces=[{"id": "side", "outline": spiked}]))
    assert max(x for x, _ in problem.pieces[0].outline) == 50
    answer = check(problem, seconds=8)
    assert answer.verdict == "covers"
    assert max(abs(x) for x, _ in answer.placements[0].outline) < 1000


def test_a_number_of_thousands_of_digits_is_refused():
    text = json.dumps(file()).replace("400", "4" * 5000).encode()
    with pytest.raises(ProblemError, match="too many digits"):
        problem_from_text(text)


def test_a_number_that_is_none_is_refused():
    text = json.dumps(file()).replace("400", "NaN").encode()
    with pytest.raises(ProblemError):
        problem_from_text(text)


def cover(*arguments: str) -> "subprocess.CompletedProcess[str]":
    return subprocess.run(
        [sys.executable, "manage.py", "cover", *arguments],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=False,
    )


def test_the_command_answers_and_writes(tmp_path):
    asked = tmp_path / "asked.json"
    asked.write_text(json.dumps(file()))
    done = cover(str(asked), "--seconds=8")
    assert done.returncode == 0
    assert json.loads(done.stdout)["verdict"] == "covers"
    out = tmp_path / "answer.json"
    assert cover(str(asked), "--seconds=8", f"--out={out}").stdout == ""
    assert json.loads(out.read_text())["verdict"] == "covers"


def test_the_command_refuses_with_2_and_one_line(tmp_path):
    broken = tmp_path / "broken.json"
    broken.write_text(json.dumps(file(panels=[{**PANEL, "outline": BOW_TIE}])))
    for arguments in ([str(broken)], [str(tmp_path / "none.json")], [str(broken), "--seconds=0"]):
        done = cover(*arguments)
        assert done.returncode == 2
        assert done.stdout == ""
        assert done.stderr.count("\n") == 1

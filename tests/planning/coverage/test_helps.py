"""What would help: told only where a lay shows it, and true of that lay."""

import math
import time
from dataclasses import replace

import pytest

from planning.coverage.extra import with_square
from planning.coverage.helps import helps_for
from planning.coverage.leaving import help_by_leaving_out, without_one
from planning.coverage.loosening import helps_by_loosening
from planning.coverage.problem import Problem
from planning.coverage.trials import Trials
from planning.coverage.verdict import Verdict
from planning.coverage.verify import faults_of
from tests.planning.coverage.samples import box, cut_up, lying, panel, piece


@pytest.fixture(autouse=True)
def short_questions(monkeypatch):
    """What is found at all here is found at once; what is not takes all of its time."""
    monkeypatch.setattr("planning.coverage.trials.MOST_SECONDS", 0.6)


def kinds(helps):
    return {each.kind: each for each in helps}


def loosened(problem):
    trials = Trials(problem, 20, 0, None, None)
    return kinds(helps_by_loosening(problem, (), trials, 1.0))


def test_what_is_covered_needs_no_help():
    assert helps_for(Problem((panel(),), (piece(box(100, 100)),)), 3) == ()


TOO_WIDE = Problem((panel(),), (piece(box(30, 30), "nose"), piece(box(395, 350))))


def test_a_square_of_cloth_is_found_that_is_as_small_as_may_be():
    # 395 and two margins of 5 are 405, and only whole centimetres are told
    extra = kinds(helps_for(TOO_WIDE, 8))["extra_cloth"]
    assert extra.figures == {"side_mm": 410}
    assert "side" in extra.pieces
    assert "41 by 41 cm" in extra.text
    assert not faults_of(with_square(TOO_WIDE, 410), extra.lay)


def test_a_square_serves_pieces_that_are_bound_to_other_cloth():
    bound = piece(box(150, 150), "ear", garments=("dress",), panels=("p1",))
    dress = panel(box(100, 100), "p1", garment="dress")
    problem = Problem((panel(), dress), (bound,))
    extra = kinds(helps_for(problem, 6))["extra_cloth"]
    assert extra.figures == {"side_mm": 160}
    assert not faults_of(with_square(problem, 160), extra.lay)


def test_cloth_that_is_taken_for_one_way_too_soon_is_named():
    wedge = ((0.0, 0.0), (380.0, 0.0), (380.0, 80.0), (120.0, 580.0), (0.0, 580.0))
    cloth = tuple(
        (400 - x, 600 - y) for x, y in ((-8, -8), (392, -8), (392, 90), (128, 592), (-8, 592))
    )
    problem = Problem((panel(cloth, one_way=True),), (piece(wedge),), edge_margin_mm=1)
    turned = loosened(problem)["half_turns"]
    assert (turned.pieces, turned.panels) == (("side",), ("p0",))


def test_a_piece_bound_to_too_little_cloth_is_named_with_the_cloth_it_could_have():
    ear = piece(box(150, 150), "ear", garments=("dress",))
    dress = panel(box(100, 100), "p1", garment="dress")
    problem = Problem((panel(), dress), (ear, piece(box(50, 50), "nose", garments=("dress",))))
    freed = loosened(problem)["list"]
    assert (freed.pieces, freed.panels) == (("ear",), ("p0",))
    assert freed.text.count("ear") == 1


def test_pieces_that_need_not_come_from_one_garment_are_named():
    small = panel(box(150, 150), "p0"), panel(box(150, 150), "p1", garment="dress")
    pair = piece(box(120, 120), "left"), piece(box(120, 120), "right")
    problem = Problem(small, pair, same_garment=(("left", "right"),))
    assert loosened(problem)["same_garment"].pieces == ("left", "right")


@pytest.mark.parametrize(
    ("cloth", "pieces", "kind", "figures"),
    [
        # 2 x 195 + gap is 391.5 wide with 1.5 mm between them, 390 between the margins
        (panel(box(401.5, 300)), piece(box(195, 250), count=2), "clearance", (1.5,)),
        (panel(box(400, 300)), piece(box(393, 250)), "edge_margin", (3.5,)),
        (
            panel(box(400, 300), flaws=(box(10, 300, 390, 0),)),
            piece(box(383, 250)),
            "flaw_margin",
            (2.0,),
        ),
    ],
)
def test_a_gap_or_margin_is_told_as_large_as_it_may_be(cloth, pieces, kind, figures):
    problem = Problem((cloth,), (pieces,))
    found = loosened(problem)[kind]
    assert tuple(found.figures.values()) == figures
    looser = replace(problem, **found.figures)
    assert not faults_of(looser, found.lay)


def test_no_gap_is_made_smaller_than_a_millimetre():
    problem = Problem((panel(box(400, 300)),), (piece(box(399.5, 250)),))
    assert "edge_margin" not in loosened(problem)


def test_a_piece_that_must_lie_a_little_off_the_grain_is_named():
    # a strip along a panel that leans by three degrees and is a few millimetres wider
    lean = math.tan(math.radians(3)) * 600
    cloth = panel(((0, 0), (118, 0), (118 - lean, 600), (-lean, 600)))
    problem = Problem((cloth,), (piece(box(100, 560)),))
    grain = loosened(problem)["grain_tolerance"]
    assert grain.figures == {"grain_tolerance_deg": 3}
    tolerant = replace(problem, pieces=(replace(problem.pieces[0], grain_tolerance_deg=3),))
    assert not faults_of(tolerant, grain.lay)


def test_the_smallest_piece_that_stands_in_the_way_is_named():
    # the nose is smaller but in nobody's way; the large piece is never asked about
    large = piece(box(300, 200), "large")
    problem = replace(TOO_WIDE, pieces=(large, *TOO_WIDE.pieces[:1], piece(box(395, 100))))
    without = kinds(helps_for(problem, 6))["leave_out"]
    assert without.pieces == ("side",)
    assert not faults_of(without_one(problem, problem.pieces[2]), without.lay)


def test_the_one_piece_left_over_needs_no_search():
    problem = replace(TOO_WIDE, pieces=TOO_WIDE.pieces[1:])
    nose = piece(box(30, 30), "nose", count=2)
    asked = replace(problem, pieces=(nose, *problem.pieces))
    lay = (lying(nose, panel(), 9, 9), lying(nose, panel(), 99, 9, copy=1))
    trials = Trials(asked, 0, 0, None, None)
    without = help_by_leaving_out(asked, lay, (("side", 0),), trials, 1.0)
    assert (without.pieces, without.lay) == (("side",), lay)


def test_one_copy_less_keeps_the_mirrored_ones_as_long_as_it_can():
    side = piece(box(9, 9), count=3, mirrored=2)
    problem = Problem((panel(),), (side,), same_garment=(("side",),))
    one = without_one(problem, side)
    assert (one.pieces[0].count, one.pieces[0].mirrored) == (2, 2)
    two = without_one(one, one.pieces[0])
    assert (two.pieces[0].count, two.pieces[0].mirrored) == (1, 1)
    assert without_one(two, two.pieces[0]) is None


def test_where_nothing_was_found_the_pieces_left_over_are_named():
    crowd = piece(box(350, 500), count=6)
    left = kinds(helps_for(Problem((panel(),), (crowd,)), 3))["left_over"]
    assert left.pieces == ("side",)
    assert left.lay == ()


def test_a_problem_that_is_covered_after_all_is_told_as_found():
    side, cloth = piece(box(100, 100)), panel(one_way=True)
    problem = Problem((cloth,), (side,))
    mistaken = Verdict("undecided", (), (("side", 0),), None, None, 0.0, 0, "none")
    two = replace(problem, pieces=(side, piece(box(50, 50), "ear")))
    mistaken = replace(mistaken, placements=(lying(side, cloth, 9, 9),), unplaced=(("ear", 0),))
    (found,) = helps_for(two, 6, verdict=mistaken)
    assert found.kind == "found"
    assert not faults_of(two, found.lay)


def test_time_and_a_wish_to_stop_are_kept():
    problem, _ = cut_up(5, 16, 0.99)
    heard = []
    started = time.monotonic()
    helps_for(problem, 60, stop=lambda: time.monotonic() - started > 1, progress=heard.append)
    assert time.monotonic() - started < 30  # far from 60, on any machine
    assert {each.stage for each in heard} <= {"help"}


def test_the_same_question_gets_the_same_helps():
    first, second = (
        [(each.kind, each.text) for each in helps_for(TOO_WIDE, 8, seed=3)] for _ in range(2)
    )
    assert first == second
    assert [kind for kind, _ in first] == ["leave_out", "extra_cloth", "edge_margin"]

"""Pieces pushed about on their panels: never a fault more, never nearer an edge than before."""

import time
from dataclasses import replace

import pytest

from planning.coverage.problem import Locked, Match, Pin, Problem, Repeat, Spot
from planning.coverage.pushing import kept_in_place, pushed_clear, pushed_inward
from planning.coverage.spare import inset_mm
from planning.coverage.verify import faults_of
from tests.planning.coverage.samples import box, cut_up, lying, panel, piece


def inward(problem, lay, kept=()):
    return pushed_inward(problem, lay, kept, time.monotonic() + 5)


def clear(problem, lay, kept=()):
    return pushed_clear(problem, lay, kept, time.monotonic() + 5)


def test_a_piece_alone_comes_to_stand_in_the_middle():
    side, cloth = piece(box(100, 100)), panel()
    problem = Problem((cloth,), (side,))
    (placed,) = inward(problem, (lying(side, cloth, 5, 200),))
    assert placed.translation[0] == pytest.approx(150, abs=0.1)
    assert placed.translation[1] == pytest.approx(200, abs=0.1)  # it is far enough off already


def test_pieces_in_a_row_share_what_room_there_is():
    # three of 120 and two gaps of 2 in 400 leave 18 on either side, less the margin of 5
    side, cloth = piece(box(120, 500), count=3), panel()
    problem = Problem((cloth,), (side,))
    lay = [lying(side, cloth, 5 + 122 * n, 50, copy=n) for n in range(3)]
    assert inset_mm(problem, inward(problem, lay)) == pytest.approx(13, abs=0.05)


@pytest.mark.parametrize("seed", range(5))
def test_a_lay_is_never_made_worse(seed):
    problem, planted = cut_up(seed, 12, 0.75)
    pushed = inward(problem, planted)
    assert not faults_of(problem, pushed)
    assert inset_mm(problem, pushed) >= inset_mm(problem, planted)


def test_what_a_rule_keeps_in_place_does_not_move():
    side, cloth = piece(box(60, 60), count=5), panel(repeat=Repeat(40, None, (0, 0)))
    lock = Locked("side", 0, "p0", False, 0.0, (5.0, 5.0))
    pin = Pin("side", 1, "p0", (0, 0), (100, 5), 5)
    match = Match(Spot("side", 2, (0, 0)), Spot("side", 3, (0, 0)))
    problem = Problem((cloth,), (side,), locked=(lock,), pin=(pin,), match=(match,))
    kept = kept_in_place(problem)
    assert kept == {("side", copy) for copy in range(4)}
    lay = [lying(side, cloth, 5 + 75 * copy, 5, copy=copy) for copy in range(5)]
    pushed = inward(problem, lay, kept)
    assert list(pushed[:4]) == lay[:4]
    assert pushed[4].translation[1] > 40


def test_an_edge_three_millimetres_further_in_is_mended_by_a_slide():
    problem, planted = cut_up(4, 9, 0.6)
    cut = tuple((min(x, 397.0), y) for x, y in problem.panels[1].outline)
    narrower = replace(problem, panels=(problem.panels[0], replace(problem.panels[1], outline=cut)))
    leaning = inward(problem, planted)
    shift = 395 - max(x for p in leaning if p.panel == "front" for x, _ in p.outline)
    leaning = tuple(_moved(p, shift) if p.panel == "front" else p for p in leaning)
    assert not faults_of(problem, leaning)
    assert faults_of(narrower, leaning)
    mended = clear(narrower, leaning)
    assert not faults_of(narrower, mended)
    assert [p for p in mended if p.panel == "back"] == [p for p in leaning if p.panel == "back"]


def _moved(placement, x):
    return replace(
        placement,
        translation=(placement.translation[0] + x, placement.translation[1]),
        outline=tuple((px + x, py) for px, py in placement.outline),
    )


def test_pieces_that_overlap_a_little_are_parted():
    side, cloth = piece(box(120, 120), count=2), panel()
    problem = Problem((cloth,), (side,))
    lay = [lying(side, cloth, 100, 100), lying(side, cloth, 214, 103, copy=1)]
    assert faults_of(problem, lay)
    assert not faults_of(problem, clear(problem, lay))


def test_a_lay_without_fault_is_not_touched_by_mending():
    problem, planted = cut_up(1, 10, 0.8)
    assert clear(problem, planted) == planted

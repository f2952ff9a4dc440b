"""How far a verdict stands from the edge, where the answer is known."""

import time

import pytest

from planning.coverage.problem import Panel, Problem
from planning.coverage.robust import robustness
from planning.coverage.shrinking import held_shrinkage, shrunk
from planning.coverage.spare import inset_mm
from planning.coverage.verify import faults_of
from tests.planning.coverage.samples import L_SHAPE, box, cut_up, lying, panel, piece


def test_pieces_laid_anew_hold_to_more_than_the_lay_they_were_given_in():
    # two squares of 180 in a row leave 28 of 400, one above the other 238 of 600: laid anew they
    # stand 110 off (width: 400 - 180 = 220), less the margin of 5, and the lay given stands 9
    side, cloth = piece(box(180, 180), count=2), panel()
    problem = Problem((cloth,), (side,))
    lay = (lying(side, cloth, 14, 200), lying(side, cloth, 196, 200, copy=1))
    found = robustness(problem, lay, 3)
    assert found.same_inset_mm == pytest.approx(9, abs=0.1)
    assert found.same_shrink_pct == pytest.approx(100 * (1 - 372 / 400), abs=0.1)
    assert found.same_inset_mm < found.resolved_inset_mm <= 105.01
    assert found.resolved_shrink_pct >= 15  # nearly 20, at which it stops
    assert not faults_of(problem, found.lay)
    assert found.resolved_inset_mm == inset_mm(problem, found.lay)


def test_nothing_is_lost_by_looking():
    problem, planted = cut_up(1, 10, 0.8)
    found = robustness(problem, planted, 1.5)
    assert found.resolved_inset_mm >= found.same_inset_mm > 0
    assert found.resolved_shrink_pct >= found.same_shrink_pct > 0
    assert not faults_of(problem, found.lay)


def test_cloth_shrunk_as_far_as_is_said_still_holds_the_lay_where_it_lies():
    side, ear = piece(box(90, 150)), piece(box(120, 60), "ear")
    cloth = panel(L_SHAPE, flaws=(box(30, 30, 40, 260),))
    problem = Problem((cloth,), (side, ear))
    lay = (lying(side, cloth, 60, 320), lying(ear, cloth, 230, 70))
    share, centres = held_shrinkage(problem, lay)
    for part in (0.25, 0.5, 0.75, 0.9999):
        assert not faults_of(shrunk(problem, part * share, centres), lay)


def test_a_wish_to_stop_is_heard():
    problem, planted = cut_up(3, 10, 0.8)
    started = time.monotonic()
    robustness(problem, planted, 60, stop=lambda: True)
    assert time.monotonic() - started < 30  # far from 60, on any machine


def test_a_panel_nothing_is_cut_from_shrinks_too():
    spare = Panel("p1", "coat", box(50, 50, 100, 100))
    side, cloth = piece(box(100, 100)), panel()
    problem = Problem((cloth, spare), (side,))
    share, centres = held_shrinkage(problem, (lying(side, cloth, 100, 100),))
    assert set(centres) == {"p0"}
    smaller = shrunk(problem, share, centres).panel("p1").outline
    assert smaller[1][0] - smaller[0][0] == pytest.approx(50 * (1 - share))

"""A lay made to stand further from the edges: never worse than the one that was given."""

import time

import pytest

from planning.coverage.problem import Pin, Problem
from planning.coverage.spare import inset_mm
from planning.coverage.steady import steadied
from planning.coverage.verify import faults_of
from tests.planning.coverage.samples import box, cut_up, lying, panel, piece


def steady(problem, lay, seconds):
    return steadied(problem, lay, time.monotonic() + seconds, 0, lambda: True)


@pytest.mark.parametrize("seconds", [0.0, 0.3, 1.2])
def test_a_lay_never_gets_worse(seconds):
    problem, planted = cut_up(2, 12, 0.8)
    found = steady(problem, planted, seconds)
    assert not faults_of(problem, found)
    assert inset_mm(problem, found) >= inset_mm(problem, planted)


def test_a_lay_that_leans_on_its_edges_comes_off_them_without_a_search(monkeypatch):
    monkeypatch.setattr("planning.coverage.steady.relaid", lambda *_, **__: None)
    side, cloth = piece(box(110, 250), count=4), panel()
    problem = Problem((cloth,), (side,))
    lay = [lying(side, cloth, 5 + 112 * (n % 2), 5 + 252 * (n // 2), copy=n) for n in range(4)]
    assert inset_mm(problem, lay) == 0
    # two of 250 and a gap of 2 leave 98 of 600 along the grain: 49 less the margin at either end
    assert inset_mm(problem, steady(problem, lay, 3)) == pytest.approx(44, abs=0.1)


def test_a_pinned_copy_stays_and_does_not_hold_the_others_back():
    side, cloth = piece(box(100, 100), count=2), panel()
    pin = Pin("side", 0, "p0", (0, 0), (5, 5), 5)
    problem = Problem((cloth,), (side,), pin=(pin,))
    lay = (lying(side, cloth, 5, 5), lying(side, cloth, 5, 200, copy=1))
    found = steady(problem, lay, 2)
    assert found[0] == lay[0] or found[1] == lay[0]
    assert not faults_of(problem, found)
    assert inset_mm(problem, [p for p in found if p.copy == 1]) > 100


def test_all_copies_pinned_leave_nothing_to_do():
    side, cloth = piece(box(100, 100)), panel()
    problem = Problem((cloth,), (side,), pin=(Pin("side", 0, "p0", (0, 0), (5, 5), 5),))
    lay = (lying(side, cloth, 5, 5),)
    assert steady(problem, lay, 1) == lay

"""A lay kept through changes of cloth, pieces and rules."""

from dataclasses import replace

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from planning.coverage.check import check
from planning.coverage.problem import Locked, Pin, Problem
from planning.coverage.repair import repaired
from planning.coverage.verify import faults_of
from tests.planning.coverage.samples import box, cut_up, lying, panel, piece


def test_a_lay_that_holds_is_given_back_as_it_is():
    problem, planted = cut_up(3, 10, 0.8)
    assert repaired(problem, planted, 1) == planted


def test_a_panel_cut_three_millimetres_narrower_is_mended_by_a_slide(monkeypatch):
    monkeypatch.setattr("planning.coverage.repair.relaid", lambda *_, **__: pytest.fail("searched"))
    side, ear, cloth = piece(box(180, 300)), piece(box(100, 100), "ear"), panel()
    lay = (lying(side, cloth, 215, 20), lying(ear, cloth, 100, 20))
    assert not faults_of(Problem((cloth,), (side, ear)), lay)
    narrower = Problem((panel(box(397, 600)),), (side, ear))
    assert faults_of(narrower, lay)
    found = repaired(narrower, lay, 2)
    assert not faults_of(narrower, found)
    moved = [
        abs(new.translation[0] - old.translation[0]) + abs(new.translation[1] - old.translation[1])
        for new, old in zip(found, lay, strict=True)
    ]
    assert moved == pytest.approx([3, 0], abs=0.01)


def test_a_piece_that_grew_a_little_makes_its_neighbours_give_way():
    small, cloth = piece(box(180, 180), count=4), panel()
    lay = [lying(small, cloth, 10 + 190 * (n % 2), 10 + 190 * (n // 2), copy=n) for n in range(4)]
    grown = Problem((cloth,), (piece(box(190, 190), count=4),))
    found = repaired(grown, lay, 2)
    assert not faults_of(grown, found)


def test_a_piece_whose_panel_is_gone_is_laid_anew_and_the_others_stay():
    side, cloth, gone = piece(box(100, 100), count=3), panel(), panel(id="gone")
    lay = [lying(side, cloth, 20, 20), lying(side, cloth, 200, 20, copy=1)]
    lay.append(lying(side, gone, 50, 50, copy=2))
    problem = Problem((cloth,), (side,))
    found = repaired(problem, lay, 5)
    assert not faults_of(problem, found)
    assert set(lay[:2]) < set(found)


def test_a_copy_that_is_locked_elsewhere_goes_there():
    side, cloth = piece(box(100, 100), count=2), panel()
    lay = (lying(side, cloth, 20, 20), lying(side, cloth, 200, 20, copy=1))
    lock = Locked("side", 1, "p0", False, 0.0, (20.0, 60.0))
    problem = Problem((cloth,), (side,), locked=(lock,))
    found = repaired(problem, lay, 5)
    assert not faults_of(problem, found)


def test_a_copy_that_is_pinned_now_goes_to_its_point():
    side, cloth = piece(box(100, 100), count=2), panel()
    lay = (lying(side, cloth, 20, 20), lying(side, cloth, 200, 20, copy=1))
    problem = Problem((cloth,), (side,), pin=(Pin("side", 1, "p0", (0, 0), (30, 400), 4),))
    found = repaired(problem, lay, 5)
    assert not faults_of(problem, found)
    assert lay[0] in found


def test_what_cannot_be_repaired_is_none():
    side, cloth = piece(box(300, 300), count=2), panel()
    lay = (lying(side, cloth, 20, 20), lying(side, cloth, 20, 200, copy=1))
    assert repaired(Problem((panel(box(400, 400)),), (side,)), lay, 1) is None


def test_copies_and_pieces_that_are_no_more_are_left_out():
    side, cloth = piece(box(100, 100), count=2), panel()
    lay = (lying(side, cloth, 20, 20), lying(side, cloth, 200, 20, copy=1))
    odd = replace(lay[0], piece="nose")
    fewer = Problem((cloth,), (piece(box(100, 100)),))
    assert repaired(fewer, (*lay, odd, lay[0]), 1) == lay[:1]


@settings(max_examples=5, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(st.integers(0, 50), st.floats(0, 300), st.floats(0, 200))
def test_more_cloth_never_turns_covers_into_anything_else(seed, wider, higher):
    problem, planted = cut_up(seed, 8, 0.8)
    back, front = problem.panels
    larger = replace(front, outline=box(400 + wider, 600 + higher))
    more = panel(box(100, 100), "more", garment="c")
    asked = replace(problem, panels=(back, larger, more))
    verdict = check(asked, seconds=2, known_lay=planted)
    assert (verdict.verdict, verdict.placements) == ("covers", planted)


def test_a_check_mends_a_known_lay_before_it_looks_anew(monkeypatch):
    monkeypatch.setattr("planning.coverage.check.look", lambda *_: pytest.fail("looked"))
    problem, planted = cut_up(4, 9, 0.6)
    right = max(x for p in planted if p.panel == "front" for x, _ in p.outline)
    cut = tuple((min(x, right + 2), y) for x, y in problem.panels[1].outline)
    narrower = replace(problem, panels=(problem.panels[0], replace(problem.panels[1], outline=cut)))
    assert faults_of(narrower, planted)
    verdict = check(narrower, seconds=8, known_lay=planted)
    assert verdict.verdict == "covers"
    assert not faults_of(narrower, verdict.placements)

"""The verdict: found where a lay is there, proven where none can be, undecided otherwise."""

import time
from dataclasses import replace

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from shapely import Polygon, affinity

from planning.coverage.check import check
from planning.coverage.problem import Pin, Placement, Problem
from planning.coverage.verify import faults_of
from tests.planning.coverage.samples import (
    L_SHAPE,
    box,
    cut_up,
    lying,
    panel,
    piece,
)


def covered(problem: Problem, seconds: float = 10.0) -> tuple[Placement, ...]:
    verdict = check(problem, seconds=seconds)
    assert verdict.verdict == "covers"
    assert not faults_of(problem, verdict.placements)
    assert verdict.proof is None
    return verdict.placements


def test_two_squares_on_one_cloth():
    assert len(covered(Problem((panel(),), (piece(box(200, 200), count=2, mirrored=1),)))) == 2


def test_a_piece_that_fits_only_turned_half_round():
    wedge = ((0.0, 0.0), (380.0, 0.0), (380.0, 80.0), (120.0, 580.0), (0.0, 580.0))
    cloth = tuple(
        (400 - x, 600 - y) for x, y in ((-8, -8), (392, -8), (392, 90), (128, 592), (-8, 592))
    )
    problem = Problem((panel(cloth),), (piece(wedge),), edge_margin_mm=1)
    (placement,) = covered(problem)
    assert placement.rotation_deg % 360 == pytest.approx(180, abs=0.01)
    one_way = replace(problem, panels=(replace(problem.panels[0], one_way=True),))
    assert check(one_way, seconds=5).verdict == "cannot"


def test_a_piece_that_would_fit_only_unmirrored_is_not_called_covered():
    hook = ((0.0, 0.0), (380.0, 0.0), (380.0, 60.0), (60.0, 60.0), (60.0, 580.0), (0.0, 580.0))
    cloth = tuple(
        (x - 8, y - 8) for x, y in ((0, 0), (396, 0), (396, 76), (76, 76), (76, 596), (0, 596))
    )
    as_drawn = Problem((panel(cloth, one_way=True),), (piece(hook),), edge_margin_mm=2)
    assert len(covered(as_drawn)) == 1
    turned_over = replace(as_drawn, pieces=(piece(hook, mirrored=1),))
    assert check(turned_over, seconds=5).verdict == "cannot"


@pytest.mark.parametrize("too_wide", [0.5, 3.0, 40.0])
def test_a_piece_wider_than_the_room_between_the_margins_cannot_be_cut(too_wide):
    verdict = check(Problem((panel(),), (piece(box(390 + too_wide, 100)),)), seconds=5)
    assert verdict.verdict == "cannot"
    assert verdict.proof.kind == "fits_nowhere"
    assert "39.0 cm" in verdict.proof.text
    assert verdict.placements == ()


def test_a_piece_exactly_as_wide_as_the_room_is_never_refused():
    assert check(Problem((panel(),), (piece(box(390, 100)),)), seconds=3).verdict != "cannot"


def test_more_area_than_there_is_cannot_be_cut():
    verdict = check(Problem((panel(),), (piece(box(150, 150), count=12),)), seconds=5)
    assert (verdict.verdict, verdict.proof.kind) == ("cannot", "area")
    assert verdict.proof.need_mm2 > verdict.proof.have_mm2


def test_pieces_bound_to_too_small_a_garment_cannot_be_cut():
    small = panel(box(200, 200), "small", garment="dress")
    bound = piece(box(120, 120), count=3, garments=("dress",))
    verdict = check(Problem((panel(), small), (bound,)), seconds=5)
    assert verdict.verdict == "cannot"
    assert verdict.proof.panels == ("small",)


def test_what_is_neither_found_nor_refuted_is_undecided():
    # four squares of 195 need two rows and two columns: 2 x 195 + a gap is more than 390 wide,
    # yet by area there is room enough for five
    squares = piece(box(195, 195), count=6)
    verdict = check(Problem((panel(box(400, 600 + 10)),), (squares,)), seconds=2)
    assert verdict.verdict in ("undecided", "cannot")
    assert len(verdict.placements) + len(verdict.unplaced) == 6
    assert not faults_of(
        Problem((panel(box(400, 610)),), (squares,)), verdict.placements, whole=False
    )


def test_flaws_are_cut_around():
    stained = panel(flaws=(box(20, 600, 190, 0),))
    assert len(covered(Problem((stained,), (piece(box(170, 300), count=2),)))) == 2
    wide = check(Problem((stained,), (piece(box(190, 300)),)), seconds=5)
    assert wide.verdict == "cannot"


def test_pieces_go_to_the_garments_they_are_bound_to():
    dress = panel(box(300, 300), "p1", garment="dress")
    free, bound = piece(box(180, 180), "free", count=4), piece(box(100, 100), "bound", count=2)
    bound = replace(bound, garments=("dress",))
    lay = covered(Problem((panel(), dress), (free, bound)))
    assert {p.panel for p in lay if p.piece == "bound"} == {"p1"}


def test_a_pinned_pocket_lies_where_it_belongs():
    pin = Pin("side", 0, "p0", (100, 100), (150, 420), within_mm=4)
    problem = Problem(
        (panel(),), (piece(box(200, 200)), piece(box(80, 80), "ear", count=4)), pin=(pin,)
    )
    covered(problem)


@pytest.mark.parametrize("seed", range(8))
def test_problems_cut_from_cloth_are_found_and_never_refuted(seed):
    problem, planted = cut_up(
        seed, 8 + seed, 0.62 + 0.02 * seed, mirrored=seed % 2, one_way=seed % 3 == 0
    )
    assert not faults_of(problem, planted)
    covered(problem)


@pytest.mark.parametrize("seed", range(4))
def test_a_proof_never_meets_a_planted_lay_however_full(seed):
    problem, planted = cut_up(100 + seed, 14, 0.99, clearance_mm=0.5, edge_margin_mm=2.0)
    assert not faults_of(problem, planted)
    assert check(problem, seconds=2.5).verdict != "cannot"


def test_a_known_lay_is_kept_as_it_is():
    problem, planted = cut_up(3, 10, 0.8)
    verdict = check(problem, seconds=0.5, known_lay=planted)
    assert (verdict.verdict, verdict.placements) == ("covers", planted)


def test_a_known_lay_that_holds_no_longer_is_not_believed():
    problem, planted = cut_up(3, 10, 0.8)
    moved = tuple(
        replace(
            p,
            translation=(p.translation[0] + 60, p.translation[1]),
            outline=tuple((x + 60, y) for x, y in p.outline),
        )
        for p in planted
    )
    verdict = check(problem, seconds=10, known_lay=moved)
    assert verdict.placements != moved
    assert verdict.verdict != "covers" or not faults_of(problem, verdict.placements)


def test_a_wish_to_stop_is_heard():
    problem, _ = cut_up(5, 16, 0.99)
    started = time.monotonic()
    verdict = check(problem, seconds=30, stop=lambda: time.monotonic() - started > 1)
    assert verdict.verdict in ("undecided", "covers")
    assert time.monotonic() - started < 15  # far from 30, on any machine


def test_progress_is_told_while_it_looks():
    heard = []
    problem, _ = cut_up(5, 16, 0.99)
    check(problem, seconds=2, progress=heard.append)
    assert heard
    assert all(0 <= each.placed <= each.of == 16 for each in heard)


def test_a_search_that_dies_costs_only_itself(monkeypatch):
    # the child's program is swapped for one that falls over at once
    monkeypatch.setattr("planning.coverage.engine.CHILD", "no-such-room.py")
    verdict = check(Problem((panel(),), (piece(box(200, 200), count=2),)), seconds=3)
    assert verdict.verdict == "undecided"
    assert verdict.notes


def test_spare_says_how_far_a_lay_stands_from_the_edge():
    verdict = check(Problem((panel(),), (piece(box(100, 100)),)), seconds=5, steady_seconds=3)
    assert verdict.spare.used_mm2 == pytest.approx(10_000)
    assert verdict.spare.usable_mm2 == pytest.approx(390 * 590)
    assert 0 <= verdict.spare.holds_to_inset_mm <= 145.001
    inset = replace(
        Problem((panel(),), (piece(box(100, 100)),)),
        edge_margin_mm=5 + verdict.spare.holds_to_inset_mm - 0.01,
    )
    assert not faults_of(inset, verdict.placements)


MOVES = st.tuples(
    st.floats(-500, 500), st.floats(-500, 500), st.sampled_from([0.0, 30.0, 90.0, 217.0])
)


@settings(max_examples=6, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(MOVES, st.booleans())
def test_moving_and_turning_the_cloth_changes_no_verdict(move, is_enough):
    x, y, turn = move
    wide = 150 if is_enough else 420
    shape = affinity.translate(affinity.rotate(Polygon(L_SHAPE), turn, origin=(0, 0)), x, y)
    moved = panel(tuple(shape.exterior.coords[:-1]), grain_deg=90 + turn)
    verdict = check(Problem((moved,), (piece(box(wide, 150), count=2),)), seconds=6)
    assert verdict.verdict == ("covers" if is_enough else "cannot")


def test_more_cloth_never_hurts():
    problem, planted = cut_up(2, 9, 0.7)
    more = replace(problem, panels=(*problem.panels, panel(box(300, 300), "more", garment="c")))
    assert check(more, seconds=10, known_lay=planted).verdict == "covers"


def test_the_same_question_gets_the_same_answer():
    problem, _ = cut_up(1, 8, 0.6)
    words = {check(problem, seconds=8, seed=7).verdict for _ in range(2)}
    assert words == {"covers"}


def test_a_lay_laid_by_hand_is_accepted_as_known():
    side, cloth = piece(box(100, 100)), panel()
    lay = (lying(side, cloth, 33, 44),)
    assert check(Problem((cloth,), (side,)), seconds=2, known_lay=lay).placements == lay

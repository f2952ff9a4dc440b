"""The chance that a lay holds, against chances that can be worked out by hand."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.stats import binomtest, norm

from planning.coverage.chance import bounds_of, chance_it_holds
from planning.coverage.check import check
from planning.coverage.cover_file import verdict_to_json
from planning.coverage.drawn import corner_moves, sides_of
from planning.coverage.problem import Pin, Problem
from planning.coverage.pushing import pushed_inward
from planning.coverage.spare import inset_mm
from tests.planning.coverage.samples import L_SHAPE, box, cut_up, lying, panel, piece

SIDE, CLOTH = piece(box(380, 200)), panel()
PROBLEM = Problem((CLOTH,), (SIDE,))


def is_near(chance, truth):
    """Whether the middle lies within some four standard errors of the truth."""
    return abs((chance.low + chance.high) / 2 - truth) < 4 * 0.5 / chance.samples**0.5


def at(x, y=200.0):
    """A piece 380 wide on a panel of 400, so that 10 mm are spare beyond both margins."""
    return (lying(SIDE, CLOTH, x, y),)


@settings(max_examples=40, deadline=None)
@given(st.integers(1, 400), st.floats(0, 1))
def test_the_bounds_are_the_exact_ones(samples, share):
    # source: Clopper and Pearson 1934, as scipy.stats.binomtest reckons them
    hits = round(share * samples)
    wanted = binomtest(hits, samples).proportion_ci(0.95, "exact")
    assert bounds_of(hits, samples) == pytest.approx((wanted.low, wanted.high), abs=1e-9)


@pytest.mark.parametrize(("x", "tape"), [(7, 10), (5, 10), (12, 20), (14, 8)])
def test_a_lay_that_must_stay_holds_while_each_edge_does(x, tape):
    # each of the two near edges is off by an even chance between -tape and tape: one edge holds
    # with the chance (slack + tape) / 2 tape; the far edges always do
    truth = np.prod([min(1, (slack + tape) / (2 * tape)) for slack in (x - 5, 15 - x)])
    chance = chance_it_holds(PROBLEM, at(x), tape, may_move=False, samples=4000, seed=1)
    assert is_near(chance, truth)
    assert chance.samples == 4000


def test_the_bounds_hold_the_truth_nineteen_times_in_twenty():
    truth = 2 / 3  # edges off by up to 6, of which one has 2 mm to spare and the other 8
    drawn = [chance_it_holds(PROBLEM, at(7), 6, may_move=False, seed=seed) for seed in range(60)]
    assert sum(chance.low <= truth <= chance.high for chance in drawn) >= 53


@pytest.mark.parametrize(("x", "tape"), [(5, 10), (12, 20), (10, 6)])
def test_a_lay_that_may_move_holds_while_the_width_does(x, tape):
    # the width is off by the sum of two even chances, which is spread as a triangle of 2 tape
    # either way, and 10 mm of it are spare wherever the piece lies
    short = max(0.0, 2 * tape - 10)
    truth = 1 - short**2 / (2 * (2 * tape) ** 2)
    chance = chance_it_holds(PROBLEM, at(x), tape, samples=4000, seed=2)
    assert is_near(chance, truth)


def test_errors_spread_normally_are_reckoned_so():
    truth = norm.cdf(2 / 6) * norm.cdf(8 / 6)
    options = {"is_spread_normal": True, "may_move": False, "samples": 4000, "seed": 3}
    chance = chance_it_holds(PROBLEM, at(7), 6, **options)
    assert is_near(chance, truth)


def test_shrinkage_across_the_grain_takes_off_the_width():
    # 400 mm less 10 are enough: it holds while the cloth shrinks by no more than 2.5 of 0 to 4 %
    chance = chance_it_holds(PROBLEM, at(10), 0, (0, 9, 0, 4), samples=4000, seed=4)
    assert is_near(chance, 2.5 / 4)
    along = chance_it_holds(PROBLEM, at(10), 0, (0, 4, 0, 0), samples=200)
    assert along.high == 1


def test_a_flaw_may_lie_elsewhere_than_it_was_marked():
    # the stain is 4 mm from the piece, 1 more than it must be, and off by up to 4 along y
    stained = panel(flaws=(box(20, 20, 150, 404),))
    problem = Problem((stained,), (piece(box(200, 200)),))
    lay = (lying(problem.pieces[0], stained, 100, 200),)
    chance = chance_it_holds(problem, lay, 4, may_move=False, samples=4000, seed=5)
    assert is_near(chance, (1 + 4) / 8)


@pytest.mark.parametrize("seed", range(4))
def test_a_lay_that_stands_off_by_what_the_tape_errs_always_holds(seed):
    problem, planted = cut_up(seed, 10, 0.5)
    lay = pushed_inward(problem, planted, (), float("inf"))
    tape = min(6.0, inset_mm(problem, lay))
    assert tape > 1
    for may_move in (False, True):
        assert chance_it_holds(problem, lay, tape, may_move=may_move).high == 1


def test_a_pinned_piece_keeps_its_lay_from_being_moved():
    pin = Pin("side", 0, "p0", (0, 0), (5, 200), 5)
    pinned = Problem((CLOTH,), (SIDE,), pin=(pin,))
    free, bound = (chance_it_holds(p, at(5), 4, samples=400) for p in (PROBLEM, pinned))
    assert free.low > 0.9
    assert bound.high < 0.6


def test_the_same_seed_gives_the_same_chance():
    first, second = (chance_it_holds(PROBLEM, at(7), 8, seed=9) for _ in range(2))
    assert first == second


def test_a_corner_goes_to_where_its_edges_meet():
    ring = np.array(L_SHAPE)
    sides = sides_of(ring)
    off = np.zeros((1, 6))
    off[0, :3] = 1.0, 2.0, 3.0  # the lower edge, the right one and the one below the notch
    moves = corner_moves(ring, sides, off)[0]
    assert moves.round(9).tolist()[:4] == [[0, -1], [2, -1], [2, 3], [0, 3]]


def test_a_curve_is_one_edge():
    circle = np.array([(np.cos(a), np.sin(a)) for a in np.linspace(0, 2 * np.pi, 40)[:-1]]) * 100
    sides = sides_of(circle)
    assert set(sides) == {0}
    moved = circle + corner_moves(circle, sides, np.array([[5.0]]))[0]
    assert np.hypot(moved[:, 0], moved[:, 1]) == pytest.approx(105.0, abs=0.1)


def test_a_verdict_tells_the_chance_of_its_lay_and_the_file_writes_it():
    lay = at(10)
    verdict = check(PROBLEM, seconds=8, known_lay=lay)
    chance = verdict.spare.chance
    assert chance == chance_it_holds(PROBLEM, lay, samples=chance.samples)
    written = verdict_to_json(verdict)["spare"]["chance"]
    assert written == {"low": chance.low, "high": 1.0, "samples": 100, "tape_mm": 3.0}
    hurried = check(PROBLEM, seconds=0.2, known_lay=lay)
    assert hurried.verdict == "covers"
    assert hurried.spare.chance is None

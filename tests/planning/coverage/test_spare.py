"""How far a lay stands from the edge, against what can be reckoned by hand."""

import itertools
import math
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import Polygon, affinity

from planning.coverage.problem import Problem
from planning.coverage.spare import inset_mm, spare_of
from planning.coverage.verify import faults_of
from tests.planning.coverage.samples import L_SHAPE, box, cut_up, lying, panel, piece

LENGTHS = st.floats(20, 300)
SHARES = st.floats(0, 1)


@settings(max_examples=40, deadline=None)
@given(LENGTHS, LENGTHS, SHARES, SHARES, st.sampled_from([0.0, 5.0, 12.5]))
def test_a_rectangle_on_a_rectangle_is_reckoned_exactly(wide, high, right, up, margin):
    x = margin + right * (400 - 2 * margin - wide)
    y = margin + up * (600 - 2 * margin - high)
    side, cloth = piece(box(wide, high)), panel()
    problem = Problem((cloth,), (side,), edge_margin_mm=margin)
    spare = spare_of(problem, (lying(side, cloth, x, y),))
    nearest = min(x, y, 400 - x - wide, 600 - y - high)
    assert spare.holds_to_inset_mm == pytest.approx(nearest - margin, abs=0.01)
    # the panel may lie anywhere under the piece, so only its size counts
    least = min(1 - (wide + 2 * margin) / 400, 1 - (high + 2 * margin) / 600)
    assert spare.holds_to_shrink_pct == pytest.approx(100 * min(0.2, least), abs=0.1)
    assert spare.holds_to_shrink_pct <= 100 * least + 1e-6


@pytest.mark.parametrize("away", [10.0, 25.0])
def test_edges_that_move_in_bring_an_inward_corner_nearer_than_themselves(away):
    # both edges at the corner (200, 200) move by d, so the corner moves by d along x and y: a
    # piece whose own corner lies `away` from both holds while root 2 (away - d) is the margin
    side, cloth = piece(box(60, 60)), panel(L_SHAPE)
    problem = Problem((cloth,), (side,))
    lay = (lying(side, cloth, 140 - away, 140 - away),)
    held = inset_mm(problem, lay)
    assert held == pytest.approx(away - 5 / math.sqrt(2), abs=0.01)
    cut = tuple((x - (held if x else 0), y - (held if y else 0)) for x, y in L_SHAPE)
    assert not faults_of(replace(problem, panels=(panel(cut),)), lay)


def test_a_flaw_counts_as_an_edge_does():
    side, cloth = piece(box(100, 100)), panel(flaws=(box(50, 50, 170, 120),))
    problem = Problem((cloth,), (side,))
    assert inset_mm(problem, (lying(side, cloth, 55, 120),)) == pytest.approx(15 - 3, abs=0.01)


def test_what_holds_to_an_inset_holds_on_cloth_taken_in_so_far():
    for seed in range(6):
        problem, planted = cut_up(seed, 10, 0.5)
        held = inset_mm(problem, planted)
        assert held > 0.2
        for by, is_held in ((held - 0.02, True), (held + 0.1, False)):
            taken_in = replace(problem, edge_margin_mm=problem.edge_margin_mm + by)
            assert (not faults_of(taken_in, planted)) == is_held


def test_what_holds_to_a_shrinkage_holds_somewhere_on_cloth_shrunk_so_far():
    # an L with a flaw: places are tried on a grid, apart from any code of the room
    side, ear = piece(box(90, 150)), piece(box(120, 60), "ear")
    cloth = panel(L_SHAPE, flaws=(box(30, 30, 40, 260),))
    problem = Problem((cloth,), (side, ear))
    lay = (lying(side, cloth, 60, 320), lying(ear, cloth, 230, 70))
    assert not faults_of(problem, lay)
    pct = spare_of(problem, lay).holds_to_shrink_pct
    assert pct > 3
    for share in (0.3, 0.7, 1.0):
        scale = 1 - pct * share / 100
        middle = Polygon(L_SHAPE).envelope.centroid
        shapes = [
            affinity.scale(Polygon(r), scale, scale, origin=middle) for r in (L_SHAPE, *cloth.flaws)
        ]
        assert any(
            not faults_of(replace(problem, panels=(_moved(cloth, shapes, x, y),)), lay)
            for x, y in itertools.product(range(-24, 25, 2), repeat=2)
        )


def _moved(cloth, shapes, x, y):
    outline, flaw = (
        tuple(affinity.translate(shape, x, y).exterior.coords[:-1]) for shape in shapes
    )
    return replace(cloth, outline=outline, flaws=(flaw,))


def test_a_flaw_that_would_cross_a_piece_stops_the_shrinking():
    # the flaw lies beside the piece, towards the edge: whatever the centre, it may come nearer
    # by no more than the gap between them, 20 mm, over the width from it to the far edge
    side, cloth = piece(box(150, 560)), panel(flaws=(box(20, 560, 200, 20),))
    problem = Problem((cloth,), (side,))
    lay = (lying(side, cloth, 30, 20),)
    pct = spare_of(problem, lay).holds_to_shrink_pct
    # along y the panel leaves 600 - 570 = 30, or 5 %; the room from edge to flaw is 200 wide and
    # must stay 150 + 5 + 3: 21 %
    assert pct == pytest.approx(5.0, abs=0.1)
    wider = piece(box(186, 560))
    pct = spare_of(Problem((cloth,), (wider,)), (lying(wider, cloth, 6, 20),)).holds_to_shrink_pct
    assert pct == pytest.approx(100 * (1 - (186 + 8) / 200), abs=0.1)


def test_a_lay_of_nothing_holds_to_nothing():
    spare = spare_of(Problem((panel(),), (piece(box(10, 10)),)), ())
    assert (spare.used_mm2, spare.holds_to_inset_mm, spare.holds_to_shrink_pct) == (0, 0, 0)

"""Rivals: claimed exactly where two pieces cannot share a place, and never more than that.

For rectangles on the grain the truth is a closed form: two share a rectangle when they lie beside
each other or above each other, so when widths or heights with the gap between add up to no more.
"""

import math
import random
from dataclasses import replace

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from planning.coverage.check import check
from planning.coverage.kinds import kinds_of
from planning.coverage.problem import Problem
from planning.coverage.rivals import cannot_share, looks_apart
from planning.coverage.room import rooms_of
from planning.coverage.verify import faults_of
from tests.planning.coverage.samples import box, lying, panel, piece

SIDES = st.integers(60, 290).map(float)


@settings(max_examples=60, deadline=None)
@given(SIDES, SIDES, SIDES, SIDES)
def test_two_rectangles_share_a_place_by_the_closed_form(w1, h1, w2, h2):
    cloth = panel(box(310, 310))  # 300 by 300 inside the margins of 5 mm
    problem = Problem((cloth,), (piece(box(w1, h1), "a"), piece(box(w2, h2), "b")))
    beside, above = 300 - (w1 + w2 + 2), 300 - (h1 + h2 + 2)
    assume(abs(beside) > 0.5 and abs(above) > 0.5)
    one, other = kinds_of(problem)
    (room,) = rooms_of(problem, cloth)
    can = beside > 0 or above > 0
    assert cannot_share(problem, one, other, room) is not can
    assert looks_apart(problem, one, other, room) <= can


def test_more_rivals_than_places_is_a_proof_in_words():
    """Four squares of 20 cm on three panels of 30 by 35 cm: each has the area for two."""
    cloth = [panel(box(310, 360), f"p{n}") for n in range(3)]
    verdict = check(Problem(tuple(cloth), (piece(box(200, 200), "back", count=4),)), seconds=5)
    assert (verdict.verdict, verdict.proof.kind) == ("cannot", "rivals")
    assert "4 pieces" in verdict.proof.text
    assert "3 places" in verdict.proof.text
    fewer = Problem(tuple(cloth), (piece(box(200, 200), "back", count=3),))
    assert check(fewer, seconds=5).verdict == "covers"


def test_rivals_of_several_kinds():
    """A trouser leg of 18 by 60 cm and two of 16 by 50 on two sleeves of 25 by 62 cm."""
    cloth = [panel(box(260, 630), f"sleeve {n}") for n in range(2)]
    pieces = (piece(box(180, 600), "long"), piece(box(160, 500), "short", count=2, mirrored=1))
    verdict = check(Problem(tuple(cloth), pieces), seconds=5)
    assert (verdict.verdict, verdict.proof.kind) == ("cannot", "rivals")
    assert set(verdict.proof.pieces) == {"long", "short"}


def test_curved_rivals():
    """Two discs of 18 cm in a square of 30 cm inside its margins need 18 + 12.7 cm a side."""
    disc = tuple(
        (90 * math.cos(math.radians(a)), 90 * math.sin(math.radians(a))) for a in range(0, 360, 6)
    )
    for side, word in ((300.0, "cannot"), (330.0, "covers")):
        problem = Problem((panel(box(side + 10, side + 10)),), (piece(disc, "disc", count=2),))
        # the centres can be (side - 180) * sqrt(2) apart at most: 170 mm, or 212 mm
        assert check(problem, seconds=5).verdict == word


@pytest.mark.parametrize("seed", range(8))
def test_a_proof_never_meets_a_lay(seed):
    """Two pieces side by side with a millimetre to spare: whatever their sizes, never refused."""
    dice = random.Random(seed)
    w1, w2 = dice.uniform(80, 200), dice.uniform(80, 200)
    h1, h2 = dice.uniform(100, 250), dice.uniform(100, 250)
    cloth = panel(box(w1 + w2 + 2 + 10 + 1, max(h1, h2) + 10 + 1))
    a, b = piece(box(w1, h1), "a"), piece(box(w2, h2), "b")
    problem = Problem((cloth,), (a, b))
    lay = (lying(a, cloth, 5.3, 5.3), lying(b, cloth, 5.3 + w1 + 2.3, 5.3))
    assert not faults_of(problem, lay)
    assert check(problem, seconds=4).verdict == "covers"


def test_a_group_that_no_garment_holds_is_a_proof():
    shirt, vest = panel(box(210, 610), "back"), panel(box(410, 310), "front", garment="vest")
    pieces = (piece(box(100, 500), "long"), piece(box(300, 100), "wide"))
    free = Problem((shirt, vest), pieces)
    assert check(free, seconds=5).verdict == "covers"
    bound = replace(free, same_garment=(("long", "wide"),))
    verdict = check(bound, seconds=5)
    assert (verdict.verdict, verdict.proof.kind) == ("cannot", "same_garment")
    assert "long fits only shirt" in verdict.proof.text

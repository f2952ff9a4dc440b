"""The search under every rule of the lay: what it finds keeps it, what cannot be is never a yes.

Stripes by the trade's rule that the repeat runs on across a seam (Pacific Northwest Extension,
"Sewing with Stripes, Checks, and Plaids"): the phases of the two places agree modulo the repeat,
here worked out by hand from where the pieces lie.
"""

from dataclasses import replace

import pytest

from planning.coverage.check import check
from planning.coverage.problem import Locked, Match, Pin, Problem, Repeat, Spot
from planning.coverage.verify import faults_of
from tests.planning.coverage.samples import box, panel, piece

STRIPED = replace(panel(), repeat=Repeat(along_mm=45.0, across_mm=None, origin=(0.0, 12.0)))
HALVES = piece(box(90, 160), id="front", count=2, mirrored=1)
SEAM = Match(Spot("front", 0, (90.0, 40.0)), Spot("front", 1, (90.0, 40.0)), "along", 1.0)


def phase_mm(placement, spot) -> float:
    """Where in the repeat a spot of the piece lies; the grain of the panel runs up."""
    x, y = spot
    if placement.mirrored:
        x = -x
    if placement.rotation_deg % 360 == 180:
        x, y = -x, -y
    return (y + placement.translation[1] - 12.0) % 45.0


def test_stripes_meet_along_a_seam():
    problem = Problem((STRIPED,), (HALVES, piece(box(60, 60), id="ear", count=2)), match=(SEAM,))
    verdict = check(problem, seconds=8)
    assert verdict.verdict == "covers"
    assert not faults_of(problem, verdict.placements)
    a, b = (p for p in verdict.placements if p.piece == "front")
    off = abs(phase_mm(a, (90.0, 40.0)) - phase_mm(b, (90.0, 40.0)))
    assert min(off, 45.0 - off) <= 1.01


def test_stripes_meet_across_two_panels_of_one_cloth():
    other = replace(STRIPED, id="other", repeat=Repeat(45.0, None, (0.0, 30.0)))
    narrow = [
        replace(each, outline=((0.0, 0.0), (110.0, 0.0), (110.0, 300.0), (0.0, 300.0)))
        for each in (STRIPED, other)
    ]
    problem = Problem(tuple(narrow), (HALVES,), match=(SEAM,))
    verdict = check(problem, seconds=8)
    assert verdict.verdict == "covers"
    assert {p.panel for p in verdict.placements} == {narrow[0].id, "other"}


def test_a_match_without_room_for_its_repeat_is_never_a_yes():
    """Each half fits one of two panels just so, and their stripes are 20 mm apart for ever."""
    tight = ((0.0, 0.0), (100.0, 0.0), (100.0, 170.0), (0.0, 170.0))
    a = replace(STRIPED, outline=tight, one_way=True)
    b = replace(a, id="other", repeat=Repeat(45.0, None, (0.0, 32.0)))
    problem = Problem((a, b), (HALVES,), match=(replace(SEAM, within_mm=3.0),))
    verdict = check(problem, seconds=4)
    assert verdict.verdict != "covers"
    free = check(replace(problem, match=()), seconds=4)
    assert free.verdict == "covers"


def test_a_locked_copy_stays_and_the_rest_lies_around_it():
    lock = Locked("front", 0, STRIPED.id, False, 0.0, (150.0, 60.0))
    problem = Problem((STRIPED,), (HALVES, piece(box(60, 60), id="ear", count=4)), locked=(lock,))
    verdict = check(problem, seconds=8)
    assert verdict.verdict == "covers"
    laid = next(p for p in verdict.placements if (p.piece, p.copy) == ("front", 0))
    assert laid.translation == (150.0, 60.0)


def test_a_locked_copy_that_breaks_a_rule_is_proven_impossible():
    lock = Locked("front", 0, STRIPED.id, False, 0.0, (-20.0, 60.0))
    verdict = check(Problem((STRIPED,), (HALVES,), locked=(lock,)), seconds=4)
    assert verdict.verdict == "cannot"
    assert verdict.proof.text


def test_pieces_bound_to_one_garment_come_from_one():
    shirts = tuple(replace(panel(id=f"p{n}"), garment=f"shirt {n}") for n in range(3))
    ears = (piece(box(120, 120), id="ear front"), piece(box(120, 120), id="ear back"))
    problem = Problem(shirts, ears, same_garment=(("ear front", "ear back"),))
    verdict = check(problem, seconds=8)
    assert verdict.verdict == "covers"
    assert len({p.panel for p in verdict.placements}) == 1


def test_a_pin_lands_on_its_point():
    pin = Pin("front", 0, STRIPED.id, (45.0, 80.0), (200.0, 150.0), 2.0)
    problem = Problem((STRIPED,), (HALVES,), pin=(pin,))
    verdict = check(problem, seconds=8)
    assert verdict.verdict == "covers"
    assert not faults_of(problem, verdict.placements)


@pytest.mark.parametrize("side", [120.0, 200.0])
def test_a_bias_piece_lies_at_half_a_right_angle(side):
    """A square on the bias is 1.414 times as wide; 200 mm (283 mm) fits 300 mm, 220 would not."""
    problem = Problem(
        (replace(panel(), outline=((0.0, 0.0), (300.0, 0.0), (300.0, 300.0), (0.0, 300.0))),),
        (replace(piece(box(side, side), id="bias"), bias=True),),
    )
    verdict = check(problem, seconds=6)
    assert verdict.verdict == "covers"
    assert verdict.placements[0].rotation_deg % 90 == pytest.approx(45)


def test_a_bias_piece_that_is_too_wide_is_proven_impossible():
    problem = Problem(
        (replace(panel(), outline=((0.0, 0.0), (300.0, 0.0), (300.0, 300.0), (0.0, 300.0))),),
        (replace(piece(box(220, 220), id="bias"), bias=True),),
    )
    assert check(problem, seconds=6).verdict == "cannot"

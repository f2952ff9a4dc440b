"""How far a baby's first clothes reach.

Common practice, no source: one newborn sleepsuit and one bodysuit do not make an 18-inch bear, but
they do make a small one. Measures are those of an invented newborn's sleepsuit (body length 56 cm
clothes size) and bodysuit, opened at their seams.
"""

import pytest

from inventory.measuring.shapes import outline_from
from planning.coverage.check import check
from planning.coverage.problem import Panel, Piece, Problem
from planning.coverage.verify import faults_of
from planning.drafting.bear import bear
from shared.units import parse_length

BODY = {
    "chest_width": 215,
    "hem_width": 190,
    "shoulder_width": 190,
    "length": 330,
    "armhole_depth": 95,
    "neck_width": 100,
    "neck_depth": 45,
    "shoulder_drop": 15,
}
SLEEVE = {"top_width": 190, "cuff_width": 130, "length": 190, "cap_height": 25}
LEG = {"top_width": 130, "bottom_width": 110, "length": 200}
BACK = {**BODY, "neck_depth": 20}


def panels() -> tuple[Panel, ...]:
    cut = [
        ("sleepsuit", "back", "shirt-body", BACK),
        ("sleepsuit", "front", "shirt-body", BODY),
        ("sleepsuit", "left sleeve", "sleeve", SLEEVE),
        ("sleepsuit", "right sleeve", "sleeve", SLEEVE),
        ("sleepsuit", "left leg front", "trapezium", LEG),
        ("sleepsuit", "right leg front", "trapezium", LEG),
        ("sleepsuit", "left leg back", "trapezium", LEG),
        ("sleepsuit", "right leg back", "trapezium", LEG),
        ("bodysuit", "bodysuit back", "shirt-body", BACK),
        ("bodysuit", "bodysuit front", "shirt-body", BODY),
    ]
    return tuple(
        Panel(id=name, garment=garment, outline=outline_from(shape, measures))
        for garment, name, shape, measures in cut
    )


def problem(height_mm: float) -> Problem:
    pieces = tuple(
        Piece(
            id=piece.name,
            outline=piece.cut_line,
            grain_deg=piece.grain_deg,
            count=piece.count,
            mirrored=piece.mirrored,
        )
        for piece in bear(height_mm)
    )
    return Problem(panels=panels(), pieces=pieces)


def test_a_newborns_clothes_do_not_make_an_18_inch_bear() -> None:
    verdict = check(problem(parse_length("18", "in")), seconds=20)
    assert verdict.verdict == "cannot"
    assert verdict.proof is not None


@pytest.mark.parametrize("height_mm", [150, 200])
def test_a_newborns_clothes_do_make_a_small_bear(height_mm: float) -> None:
    asked = problem(height_mm)
    verdict = check(asked, seconds=30)
    assert verdict.verdict == "covers"
    assert not faults_of(asked, verdict.placements)

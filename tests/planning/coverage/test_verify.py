"""The last word before *covers*: each rule kept and each rule broken, by hand-made lays."""

from dataclasses import replace

import pytest

from planning.coverage.problem import Match, Pin, Problem, Repeat, Spot
from planning.coverage.verify import faults_of
from tests.planning.coverage.samples import L_SHAPE, box, cut_up, lying, panel, piece

SIDE = piece(box(100, 200), count=2, mirrored=1)
CLOTH = panel()
PROBLEM = Problem((CLOTH,), (SIDE,))


def lay(x: float = 10.0, y: float = 10.0, **second):
    second = {"x": 250.0, "y": 10.0, "copy": 1, "mirrored": True, **second}
    return [
        lying(SIDE, CLOTH, x, y),
        lying(SIDE, CLOTH, second.pop("x"), second.pop("y"), **second),
    ]


def kinds(problem: Problem, placements) -> set[str]:
    return {fault.kind for fault in faults_of(problem, placements)}


def test_a_lay_that_keeps_every_rule_has_no_fault():
    assert kinds(PROBLEM, lay()) == set()


@pytest.mark.parametrize(
    ("placements", "kind"),
    [
        (lay(x=4.9), "edge"),
        (lay(y=-1.0), "edge"),
        (lay(y=396.0), "edge"),
        (lay()[:1], "missing"),
        ([lay()[0], lay()[0]], "twice"),
        (lay(mirrored=False, x=150.0), "mirror"),
        (lay(turn=90.0, x=390.0, y=300.0), "grain"),
        (lay(turn=1.0), "grain"),
    ],
)
def test_each_broken_rule_is_named(placements, kind):
    assert kind in kinds(PROBLEM, placements)


def test_margins_are_kept_to_the_hundredth_of_a_millimetre():
    assert kinds(PROBLEM, lay(x=5.0, y=5.0)) == set()
    assert kinds(PROBLEM, lay(x=4.98)) == {"edge"}
    touching = [lying(SIDE, CLOTH, 5, 5), lying(SIDE, CLOTH, 207, 5, copy=1, mirrored=True)]
    assert kinds(PROBLEM, touching) == set()
    nearer = [lying(SIDE, CLOTH, 5, 5), lying(SIDE, CLOTH, 206.98, 5, copy=1, mirrored=True)]
    assert len(kinds(PROBLEM, nearer)) == 1


def test_a_piece_inside_another_is_found():
    small = piece(box(10, 10), "small")
    problem = replace(PROBLEM, pieces=(SIDE, small))
    inside = [*lay(), lying(small, CLOTH, 50, 50)]
    assert faults_of(problem, inside)


def test_a_flaw_keeps_its_distance_even_when_it_lies_inside_the_piece():
    stained = panel(flaws=(box(4, 4, 50, 50),))
    problem = Problem((stained,), (SIDE,))
    assert kinds(problem, lay()) == {"flaw"}
    beside = panel(flaws=(box(20, 20, 112.9, 20),))
    assert kinds(Problem((beside,), (SIDE,)), lay()) == {"flaw"}
    clear = panel(flaws=(box(20, 20, 113.0, 20),))
    assert kinds(Problem((clear,), (SIDE,)), lay()) == set()


def test_a_half_turn_is_right_only_where_the_cloth_is_not_one_way():
    turned = [lying(SIDE, CLOTH, 110, 210, turn=180.0), lay()[1]]
    assert kinds(PROBLEM, turned) == set()
    one_way = replace(PROBLEM, panels=(replace(CLOTH, one_way=True),))
    assert kinds(one_way, turned) == {"grain"}


def test_grain_is_right_within_its_tolerance():
    loose = replace(SIDE, grain_tolerance_deg=3.0)
    problem = Problem((CLOTH,), (loose,))
    for turn, wrong in ((2.9, set()), (-2.9, set()), (3.2, {"grain"}), (182.9, set())):
        x, y = (150.0, 250.0) if turn > 90 else (30.0, 30.0)
        placements = [lying(loose, CLOTH, x, y, turn=turn), lay()[1]]
        placements[1] = lying(loose, CLOTH, 350, 10, copy=1, mirrored=True)
        assert kinds(problem, placements) == wrong


def test_a_bias_piece_lies_at_45_degrees_either_way():
    strip = piece(box(40, 200), bias=True)
    problem = Problem((panel(),), (strip,))
    for turn, x, wrong in (
        (45.0, 200, set()),
        (-45.0, 200, set()),
        (0.0, 200, {"grain"}),
        (90.0, 230, {"grain"}),
    ):
        assert kinds(problem, [lying(strip, CLOTH, x, 250, turn=turn)]) == wrong


def test_a_piece_keeps_to_its_panels_and_garments():
    other = panel(id="p1", garment="dress")
    for facts, wrong in (
        ({"panels": ("p1",)}, {"panel"}),
        ({"garments": ("dress",)}, {"garment"}),
        ({"panels": ("p0",), "garments": ("shirt",)}, set()),
    ):
        bound = replace(SIDE, **facts)
        assert kinds(Problem((CLOTH, other), (bound,)), lay()) == wrong


def test_an_outline_that_is_not_the_pieces_own_is_found():
    first, second = lay()
    moved = tuple((x + 1, y) for x, y in first.outline)
    assert "transform" in kinds(PROBLEM, [replace(first, outline=moved), second])
    assert "unknown" in kinds(PROBLEM, [replace(first, panel="nowhere"), second])


def test_a_piece_across_the_notch_of_a_panel_is_outside_it():
    notched = panel(L_SHAPE)
    tall = piece(box(100, 300))
    problem = Problem((notched,), (tall,))
    assert kinds(problem, [lying(tall, notched, 50, 150)]) == set()
    assert kinds(problem, [lying(tall, notched, 150, 100)]) == {"edge"}


def test_pieces_of_one_garment_come_from_one():
    other = panel(id="p1", garment="dress")
    left, right = piece(box(50, 50), "left"), piece(box(50, 50), "right")
    problem = Problem((CLOTH, other), (left, right), same_garment=(("left", "right"),))
    together = [lying(left, CLOTH, 10, 10), lying(right, CLOTH, 100, 10)]
    apart = [lying(left, CLOTH, 10, 10), lying(right, other, 100, 10)]
    assert kinds(problem, together) == set()
    assert len(kinds(problem, apart)) == 1


def test_a_pinned_spot_lands_on_its_place():
    pin = Pin("side", 0, "p0", (50, 100), (60, 110), within_mm=5)
    problem = replace(PROBLEM, pin=(pin,))
    assert kinds(problem, lay()) == set()
    assert kinds(problem, lay(x=15.1)) == {"pin"}


def test_stripes_meet_modulo_their_repeat():
    striped = panel(repeat=Repeat(along_mm=40.0, across_mm=None, origin=(0.0, 0.0)))
    match = Match(Spot("side", 0, (100, 0)), Spot("side", 1, (100, 0)), "along", within_mm=3)
    problem = Problem((striped,), (SIDE,), match=(match,))
    assert kinds(problem, [lay()[0], lay(y=50.0)[1]]) == set()
    second = lying(SIDE, striped, 250, 30, copy=1, mirrored=True)
    assert len(kinds(problem, [lay()[0], second])) == 1
    nearly = lying(SIDE, striped, 250, 52.9, copy=1, mirrored=True)
    assert kinds(problem, [lay()[0], nearly]) == set()


@pytest.mark.parametrize("seed", range(6))
def test_the_lay_a_problem_was_cut_from_has_no_fault(seed):
    problem, planted = cut_up(seed, 12, 0.9, mirrored=seed % 2)
    assert faults_of(problem, planted) == []

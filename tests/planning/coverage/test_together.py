"""All sizes at once: each answered once, each answer as true as that of a check of its own."""

from dataclasses import replace

import pytest
from shapely import Polygon, affinity

from planning.coverage.problem import Piece, Problem, ProblemError
from planning.coverage.together import check_all, shrunk_lay
from planning.coverage.verify import faults_of
from planning.drafting.bear import bear
from tests.planning.coverage.samples import SHIRT, box, lying, panel, piece


def sized(scale: float) -> Problem:
    """Four squares that fill 0.9 of one panel's width at the scale of 1."""
    return Problem((panel(),), (piece(box(180 * scale, 180 * scale), count=4, mirrored=2),))


def test_every_size_is_answered_once_and_truly():
    problems = [sized(scale) for scale in (0.5, 0.9, 1.0, 2.0, 3.0)]
    answers = list(check_all(problems, 10))
    assert sorted(number for number, _ in answers) == [0, 1, 2, 3, 4]
    words = {number: verdict.verdict for number, verdict in answers}
    assert [words[n] for n in range(5)] == ["covers", "covers", "covers", "cannot", "cannot"]
    for number, verdict in answers:
        if verdict.verdict == "covers":
            assert not faults_of(problems[number], verdict.placements)
        else:
            assert verdict.proof.text
            assert len(verdict.unplaced) == 4


def test_proofs_come_before_anything_is_searched(monkeypatch):
    monkeypatch.setattr("planning.coverage.together.check", lambda *_, **__: pytest.fail("looked"))
    answers = check_all([sized(1.0), sized(3.0)], 10)
    assert next(answers)[1].verdict == "cannot"


def test_the_lay_of_a_larger_size_serves_the_smaller(monkeypatch):
    side = piece(box(180, 180), count=2)
    large = Problem((panel(),), (side,))
    lay = (lying(side, panel(), 10, 10), lying(side, panel(), 200, 10, copy=1))
    monkeypatch.setattr("planning.coverage.check.look", lambda *_: pytest.fail("looked"))
    small = replace(large, pieces=(piece(box(150, 150), count=2),))
    answers = dict(check_all([small, large], 6, known_lays={1: lay}))
    assert answers[1].placements == lay
    assert [p.translation for p in answers[0].placements] == [(25, 25), (215, 25)]


def test_a_bear_laid_in_one_size_is_laid_in_the_next_smaller():
    # the same pieces at the same places, whatever their curves: pieces far apart always hold
    large, small = (
        tuple(Piece(p.name, p.cut_line, p.grain_deg, p.count, p.mirrored) for p in bear(height))
        for height in (300.0, 250.0)
    )
    cloth = panel(box(7000, 900))
    lay = []
    for number, (each, copy) in enumerate(Problem((cloth,), large).copies()):
        shape = Polygon(each.outline)
        mirrored = each.is_mirrored(copy)
        shape = affinity.scale(shape, -1 if mirrored else 1, 1, origin=(0, 0))
        x, y = 200 + 290 * number - shape.centroid.x, 450 - shape.centroid.y
        turn = (90 - (180 - each.grain_deg if mirrored else each.grain_deg)) % 360
        lay.append(lying(each, cloth, x, y, copy=copy, mirrored=mirrored, turn=turn))
    assert not faults_of(Problem((cloth,), large), lay)
    found = shrunk_lay(Problem((cloth,), small), lay)
    assert found is not None
    assert [p.panel for p in found] == [p.panel for p in lay]


def test_a_lay_that_cannot_serve_is_none():
    assert shrunk_lay(sized(1.0), ()) is None
    side = piece(box(180, 180), count=4, mirrored=2)
    heap = [lying(side, panel(), 100, 100, copy=n) for n in range(4)]
    assert shrunk_lay(sized(1.0), heap) is None


def test_one_unsound_size_is_refused_before_any_answer():
    unsound = replace(sized(1.0), pieces=())
    with pytest.raises(ProblemError):
        check_all([sized(0.5), unsound], 5)


def test_a_wish_to_stop_leaves_undecided_what_was_not_looked_at():
    crowded = Problem((panel(SHIRT),), (piece(box(150, 120), count=12),))
    answers = list(check_all([crowded], 60, stop=lambda: True))
    assert [verdict.verdict for _, verdict in answers] == ["undecided"]

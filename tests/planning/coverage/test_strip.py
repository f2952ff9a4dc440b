"""How much of a bolt pieces need: never less than their area, and never without a verified lay."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import Polygon

from planning.coverage.problem import Piece, Problem, ProblemError
from planning.coverage.strip import strip_lay
from planning.coverage.verify import faults_of
from planning.drafting.bear import bear
from tests.planning.coverage.samples import box, piece

BEAR = tuple(Piece(p.name, p.cut_line, p.grain_deg, p.count, p.mirrored) for p in bear(300.0))


def sound(pieces, found, clearance=2.0, margin=5.0):
    """Assert what every answer must keep."""
    problem = Problem((found.panel,), tuple(pieces), clearance, margin)
    assert not faults_of(problem, found.placements)
    used = sum(Polygon(each.outline).area * each.count for each in pieces)
    wide = max(x for x, _ in found.panel.outline)
    assert found.used_mm2 == pytest.approx(used)
    assert found.length_mm >= used / wide
    assert found.density == pytest.approx(used / (found.length_mm * wide))
    assert found.length_mm == max(y for _, y in found.panel.outline)
    return found.length_mm


def test_squares_that_fill_the_width_take_as_many_rows_as_they_must():
    # three of 100 with gaps of 2 and margins of 5 are 314 wide; seven make three rows, 100 each
    squares = (piece(box(100, 100), count=7),)
    assert sound(squares, strip_lay(squares, 314.0, seconds=1)) == pytest.approx(314, abs=0.01)


def test_two_triangles_lie_closer_than_their_boxes():
    # two right triangles make a rectangle of 200 by 200 and a slanting gap; in rows they take 402
    triangles = (piece(((0.0, 0.0), (200.0, 0.0), (0.0, 200.0)), count=2),)
    length = sound(triangles, strip_lay(triangles, 230.0, seconds=2))
    assert length < 250


def test_there_is_an_answer_without_any_search():
    found = strip_lay(BEAR, 900.0, seconds=0)
    sound(BEAR, found)


def test_a_search_makes_it_shorter():
    rows, found = (strip_lay(BEAR, 900.0, seconds=seconds) for seconds in (0, 1.5))
    assert sound(BEAR, found) < sound(BEAR, rows)


def test_a_search_that_dies_leaves_the_rows(monkeypatch):
    monkeypatch.setattr("planning.coverage.engine.CHILD", "no-such-room.py")
    assert strip_lay(BEAR, 900.0, seconds=2) == strip_lay(BEAR, 900.0, seconds=0)


def test_on_a_one_way_bolt_nothing_is_turned_round():
    found = strip_lay(BEAR, 900.0, one_way=True, seconds=0.8)
    sound(BEAR, found)
    assert found.panel.one_way


def test_lists_of_panels_and_garments_do_not_count_on_a_bolt():
    bound = (piece(box(50, 50), garments=("shirt",), panels=("p0",)),)
    assert strip_lay(bound, 200.0, seconds=0).length_mm == pytest.approx(60)


def test_a_piece_on_the_bias_lies_at_45_degrees():
    strips = (piece(box(40, 200), bias=True, count=3),)
    length = sound(strips, strip_lay(strips, 500.0, seconds=0))
    assert length == pytest.approx((240 / 2**0.5) * 2 + 2 + 10, abs=0.1)  # two rows of boxes


@pytest.mark.parametrize(
    ("pieces", "width", "place"),
    [
        ((piece(box(300, 50)),), 200.0, "side: "),
        ((piece(box(30, 50)),), 10.0, "width_mm: "),
        ((piece(box(30, 50)),), float("nan"), "width_mm: "),
        ((), 500.0, "pieces: "),
    ],
)
def test_what_cannot_lie_on_the_bolt_is_refused_by_its_place(pieces, width, place):
    with pytest.raises(ProblemError) as refused:
        strip_lay(pieces, width, seconds=0)
    assert str(refused.value).startswith(place)


@settings(max_examples=30, deadline=None)
@given(
    st.lists(st.tuples(st.floats(20, 190), st.floats(20, 190)), min_size=1, max_size=8),
    st.floats(0, 6),
    st.floats(0, 12),
    st.integers(0, 5),
)
def test_rows_always_hold(sizes, clearance, margin, seed):
    pieces = [piece(box(*size), f"r{number}") for number, size in enumerate(sizes)]
    found = strip_lay(pieces, 230.0, clearance, margin, seconds=0, seed=seed)
    sound(pieces, found, clearance, margin)
    assert found.length_mm >= max(high for _, high in sizes) + 2 * margin - 0.01

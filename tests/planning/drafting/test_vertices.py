from hypothesis import given
from hypothesis import strategies as st

from planning.drafting.rings import length_mm
from planning.drafting.vertices import with_vertices

LINE = [(0.0, 0.0), (10.0, 0.0), (10.0, 10.0)]


@given(st.lists(st.floats(0, 20), max_size=6))
def test_new_vertices_change_neither_length_nor_old_vertices(at_mm: list[float]) -> None:
    line, places = with_vertices(LINE, at_mm, 0.01)
    assert abs(length_mm(line) - 20) < 1e-9
    assert set(LINE) <= set(line)
    for wanted, place in zip(at_mm, places, strict=True):
        assert abs(length_mm(line[: place + 1]) - wanted) <= 0.01 + 1e-9


def test_a_vertex_nearby_serves_as_it_is() -> None:
    assert with_vertices(LINE, [10.005, 0.0, 20.0], 0.01) == (LINE, [1, 0, 2])


def test_two_wishes_for_one_place_make_one_vertex() -> None:
    assert with_vertices(LINE, [4.0, 4.0], 0.01)[0] == [(0, 0), (4, 0), (10, 0), (10, 10)]

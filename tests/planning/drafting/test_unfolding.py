import pytest
from hypothesis import given
from hypothesis import strategies as st

from planning.drafting.outline import Drawn
from planning.drafting.rings import bounds_mm, length_mm, signed_area_mm2
from planning.drafting.unfolding import mirror_image, unfolded
from tests.planning.drafting.entries_for_tests import HALF_EGG, piece_of

FOLD = ((0.0, 100.0), (0.0, 0.0))


def test_a_half_becomes_a_whole_with_twin_edges() -> None:
    whole = piece_of(HALF_EGG, fold_edge="fold")
    assert [edge.name for edge in whole.edges] == [
        "foot",
        "side",
        "side, other half",
        "foot, other half",
    ]
    assert bounds_mm(whole.seam_line)[0] == -bounds_mm(whole.seam_line)[2]
    for name in ("foot", "side"):
        assert whole.stretch_mm(name) == pytest.approx(whole.stretch_mm(f"{name}, other half"))


def test_the_whole_has_twice_the_area_of_the_half() -> None:
    half, whole = piece_of(HALF_EGG), piece_of(HALF_EGG, fold_edge="fold")
    assert signed_area_mm2(whole.seam_line) == pytest.approx(2 * signed_area_mm2(half.seam_line))


def test_a_slanting_fold_is_as_good_as_an_upright_one() -> None:
    slanting = [(0, 0), (90, 0, False, "fold"), (0, 90)]
    whole = piece_of(slanting, fold_edge="fold")
    assert signed_area_mm2(whole.seam_line) == pytest.approx(90 * 90)
    assert bounds_mm(whole.seam_line) == pytest.approx((0, 0, 90, 90))


def test_the_fold_may_be_entered_clockwise() -> None:
    other_way = [(0, 0, False, "fold"), (0, 100), (50, 60)]
    whole = piece_of(other_way, fold_edge="fold")
    assert signed_area_mm2(whole.seam_line) == pytest.approx(5000)


def test_an_edge_from_fold_to_fold_has_its_twin() -> None:
    drawn = [Drawn("round", [(0.0, 0.0), (30.0, 50.0), (0.0, 100.0)]), Drawn("fold", list(FOLD))]
    whole = unfolded(drawn, "fold")
    assert [edge.name for edge in whole] == ["round", "round, other half"]
    assert whole[1].line == [(0, 100), (-30, 50), (0, 0)]


@given(*[st.tuples(st.floats(-500, 500), st.floats(-500, 500))] * 2)
def test_mirror_images_keep_distances_and_come_back(
    first: tuple[float, float], second: tuple[float, float]
) -> None:
    fold = ((3.0, 4.0), (40.0, -20.0))
    there = [mirror_image(point, fold) for point in (first, second)]
    assert length_mm(there) == pytest.approx(length_mm([first, second]), abs=1e-6)
    assert mirror_image(there[0], fold) == pytest.approx(first, abs=1e-6)

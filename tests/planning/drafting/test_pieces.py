import pytest

from planning.drafting.bear import bear
from planning.drafting.errors import SeamNameError


def test_a_missing_piece_is_named() -> None:
    with pytest.raises(SeamNameError, match="No piece of this size is called “tail”"):
        bear(300).piece("tail")


def test_a_missing_edge_is_named() -> None:
    with pytest.raises(SeamNameError, match="“ear” has no edge or line called “rim”"):
        bear(300).piece("ear").stretch("rim")


def test_the_edges_of_a_piece_make_up_its_whole_seam_line() -> None:
    for piece in bear(300):
        around = [point for edge in piece.edges for point in piece.points_of(edge)[:-1]]
        assert tuple(around) == piece.seam_line


def test_placement_lines_can_be_measured_like_edges() -> None:
    side = bear(300).piece("head side")
    assert side.stretch_mm("ear") == pytest.approx(26.9, abs=0.2)

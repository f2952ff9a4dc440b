import pytest
from shapely import Point, Polygon

from planning.drafting.errors import DraftError
from planning.drafting.rabbit import measures_of_rabbit, rabbit
from planning.drafting.rings import bounds_mm, is_simple
from tests.planning.drafting.shapes_for_tests import corner_deg


def test_the_rabbit_has_twelve_kinds_of_piece() -> None:
    counts = {piece.name: (piece.count, piece.mirrored) for piece in rabbit(300)}
    assert len(counts) == 12
    assert counts["ear outer"] == counts["ear lining"] == counts["tail"] == (2, 1)


def test_its_ears_are_longer_than_its_head_and_both_layers_alike() -> None:
    size = rabbit(300)
    outer, lining = size.piece("ear outer"), size.piece("ear lining")
    _, low, _, high = bounds_mm(outer.seam_line)
    assert high - low > measures_of_rabbit(300).head_height_mm
    assert outer.seam_line == lining.seam_line


def test_its_nose_lies_flat() -> None:
    """Two sides and the round end of the gusset meet there: 360 degrees make it flat."""
    at_nose = corner_deg(rabbit(300).piece("head side"), "chin")
    assert 2 * at_nose + 180 == pytest.approx(360, abs=15)


@pytest.mark.parametrize("height_mm", [150, 300, 500])
@pytest.mark.parametrize("allowance_mm", [4.0, 6.0, 10.0])
def test_every_piece_can_be_cut_with_any_usual_allowance(
    height_mm: float, allowance_mm: float
) -> None:
    for piece in rabbit(height_mm, allowance_mm):
        assert is_simple(piece.seam_line), piece.name
        assert is_simple(piece.cut_line), piece.name


def test_its_marks_lie_inside_and_say_where_the_tail_goes() -> None:
    for piece in rabbit(300):
        inside = Polygon(piece.seam_line).buffer(0.01)
        assert all(inside.contains(Point(mark.at)) for mark in piece.marks), piece.name
    assert [mark.name for mark in rabbit(300).piece("body back").marks] == ["tail"]


def test_heights_out_of_range_are_refused() -> None:
    with pytest.raises(DraftError, match="The rabbit can stand 150 to 500 mm tall, not 149 mm"):
        rabbit(149)

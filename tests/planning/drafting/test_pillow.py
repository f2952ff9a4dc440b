import pytest

from planning.drafting.pillow import HEM_MOST_MM, PILLOW_SEAMS, pillow
from planning.drafting.rings import bounds_mm, signed_area_mm2
from planning.drafting.seams import walk


def test_it_is_a_front_and_two_backs() -> None:
    assert [(p.name, p.count, p.mirrored) for p in pillow(400)] == [
        ("front", 1, 0),
        ("upper back", 1, 0),
        ("lower back", 1, 0),
    ]


@pytest.mark.parametrize("height_mm", [100, 250, 500])
def test_its_longer_side_is_its_size(height_mm: float) -> None:
    left, low, right, high = bounds_mm(pillow(height_mm).piece("front").seam_line)
    assert high - low == pytest.approx(height_mm)
    assert right - left == pytest.approx(0.8 * height_mm)
    assert pillow(height_mm).width_mm == pytest.approx(right - left)


@pytest.mark.parametrize("height_mm", [100, 250, 500])
def test_the_backs_cover_the_front_and_overlap_by_a_quarter(height_mm: float) -> None:
    size = pillow(height_mm)
    hem = min(0.07 * height_mm, HEM_MOST_MM)
    backs = sum(signed_area_mm2(size.piece(f"{end} back").seam_line) for end in ("upper", "lower"))
    front = signed_area_mm2(size.piece("front").seam_line)
    overlap = 0.24 * front + 2 * hem * 0.8 * height_mm
    assert backs == pytest.approx(front + overlap)


def test_the_hem_is_folded_so_that_its_edge_meets_its_line() -> None:
    upper = pillow(400).piece("upper back")
    edge, fold, sewn = (upper.stretch(name)[0][1] for name in ("hem", "hem fold", "hem sewn"))
    assert sewn - fold == pytest.approx(fold - edge) == pytest.approx(20)
    lower = pillow(400).piece("lower back")
    edge, fold, sewn = (lower.stretch(name)[0][1] for name in ("hem", "hem fold", "hem sewn"))
    assert fold - sewn == pytest.approx(edge - fold) == pytest.approx(20)


def test_every_seam_is_exact() -> None:
    assert all(abs(w.difference_mm) < 1e-3 for w in walk(pillow(333), PILLOW_SEAMS))


def test_its_front_has_a_place_for_a_detail() -> None:
    assert [(m.name, m.at) for m in pillow(400).piece("front").marks] == [
        ("detail place", (160, 200))
    ]


def test_it_says_that_nothing_is_left_open() -> None:
    size = pillow(400)
    assert not any(piece.opening for piece in size)
    assert "overlap" in size.notes[0]

import pytest

from planning.drafting.bear import bear
from planning.drafting.practice import narrowest_mm, too_few_kinds


def test_five_kinds_of_piece_are_too_few_and_six_are_not() -> None:
    names = [piece.name for piece in bear(300)]
    assert too_few_kinds(names[:5])
    assert not too_few_kinds(names[:6])


def test_two_pieces_of_one_name_count_as_one_kind() -> None:
    names = [piece.name for piece in bear(300)]
    assert too_few_kinds(names[:5] + names[:1])


def test_the_narrowest_place_grows_with_the_bear() -> None:
    small, large = (narrowest_mm(bear(height).piece("arm outer")) for height in (200, 400))
    assert large == pytest.approx(2 * small, rel=0.01)

from planning.drafting.library import built_in_pattern
from planning.drafting.practice import too_few_kinds
from planning.drafting.seams import walk


def test_the_built_in_bear_comes_in_five_sizes_smallest_first() -> None:
    assert [size.height_mm for size in built_in_pattern().sizes] == [150, 230, 300, 380, 460]


def test_every_built_in_size_walks_and_has_enough_pieces() -> None:
    pattern = built_in_pattern()
    for size in pattern.sizes:
        assert all(walked.ok for walked in walk(size, pattern.seams))
        assert not too_few_kinds(piece.name for piece in size)
        assert len({piece.name for piece in size}) >= 9


def test_size_names_are_their_heights_in_centimetres() -> None:
    assert [size.name for size in built_in_pattern().sizes] == [
        "15 cm",
        "23 cm",
        "30 cm",
        "38 cm",
        "46 cm",
    ]

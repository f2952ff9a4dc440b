from planning.drafting.outline import Drawn, Making, made, split_line
from planning.drafting.rings import length_mm


def test_split_lines_share_their_cut_points_and_keep_the_length() -> None:
    line = [(0.0, 0.0), (10.0, 0.0), (10.0, 10.0)]
    parts = split_line(line, 4.0, 10.0)
    assert [part[0] for part in parts] == [(0, 0), (4, 0), (10, 0)]
    assert [length_mm(part) for part in parts] == [4, 6, 10]


def test_a_piece_has_its_edges_in_order_and_a_notch_where_one_ends() -> None:
    piece = made(
        [
            Drawn("foot", [(0.0, 0.0), (50.0, 0.0)]),
            Drawn("back", [(50.0, 0.0), (50.0, 30.0)], "top", is_double=True),
            Drawn("slope", [(50.0, 30.0), (0.0, 0.0)]),
        ],
        Making("wedge", count=4, mirrored=2, opening="slope"),
        allowance_mm=6,
    )
    assert piece.seam_line == ((0, 0), (50, 0), (50, 30))
    assert piece.stretch("slope") == ((50, 30), (0, 0))
    assert [(notch.name, notch.at, notch.is_double) for notch in piece.notches] == [
        ("top", (50, 30), True)
    ]
    assert piece.opening is not None
    assert piece.opening.name == "slope"
    assert piece.labels == ("Cut 4: 2 as drawn, 2 turned over.",)


def test_a_piece_without_a_mirrored_copy_says_only_how_many() -> None:
    square = [(0.0, 0.0), (9.0, 0.0), (9.0, 9.0), (0.0, 9.0), (0.0, 0.0)]
    assert made([Drawn("rim", square)], Making("pad", 1, 0), 2).labels == ("Cut 1.",)

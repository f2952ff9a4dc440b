"""The size check against puzzles whose answers are known.

Pentominoes: S. W. Golomb, *Polyominoes* (1965): the twelve fill a 6 by 10 board, so no proof may
say that they cannot; a board with 59 squares is too small for their 60. Tangram: seven pieces of
one square. Small grids: rectangles of whole squares, decided here by trying everything.
"""

import itertools

import pytest
from shapely import Polygon, box, union_all

from planning.coverage.check import check
from planning.coverage.problem import Panel, Piece, Problem
from planning.coverage.verify import faults_of

CELL = 40.0
TWELVE = {
    "F": "01 10 11 12 20",
    "I": "00 01 02 03 04",
    "L": "00 01 02 03 10",
    "N": "00 01 11 12 13",
    "P": "00 01 02 10 11",
    "T": "00 10 20 11 12",
    "U": "00 01 10 20 21",
    "V": "00 01 02 10 20",
    "W": "00 10 11 21 22",
    "X": "01 10 11 12 21",
    "Y": "00 01 02 03 11",
    "Z": "00 10 11 12 22",
}


def outline_of(cells: str) -> tuple[tuple[float, float], ...]:
    """The ring round unit squares, a hair taken in so that a filled board is no exact fit."""
    squares = [box(int(c[0]), int(c[1]), int(c[0]) + 1, int(c[1]) + 1) for c in cells.split()]
    shape = union_all(squares).buffer(-0.002, join_style="mitre").simplify(1e-6)
    assert isinstance(shape, Polygon)
    return tuple((x * CELL, y * CELL) for x, y in shape.exterior.coords[:-1])


def board(wide: float, high: float, *holes: tuple[int, int]) -> Panel:
    ring = ((0.0, 0.0), (wide * CELL, 0.0), (wide * CELL, high * CELL), (0.0, high * CELL))
    flaws = tuple(
        tuple(((x + dx) * CELL, (y + dy) * CELL) for dx, dy in ((0, 0), (1, 0), (1, 1), (0, 1)))
        for x, y in holes
    )
    return Panel("board", "board", ring, flaws)


def puzzle(panel: Panel, pieces: list[Piece]) -> Problem:
    return Problem((panel,), tuple(pieces), clearance_mm=0, edge_margin_mm=0, flaw_margin_mm=0)


def pentominoes() -> list[Piece]:
    # any quarter turn is a grain tolerance of 180 for a piece that has no grain
    return [
        Piece(name, outline_of(cells), grain_tolerance_deg=180) for name, cells in TWELVE.items()
    ]


def test_no_proof_says_that_twelve_pentominoes_do_not_fill_six_by_ten():
    # source: Golomb, Polyominoes: 2,339 ways to fill the 6 x 10 board
    assert check(puzzle(board(6, 10), pentominoes()), seconds=3).verdict != "cannot"


def test_a_board_of_59_squares_is_too_small_for_them():
    # source: Golomb, Polyominoes: twelve pieces of five squares are sixty
    verdict = check(puzzle(board(6, 10, (2, 3)), pentominoes()), seconds=5)
    assert (verdict.verdict, verdict.proof.kind) == ("cannot", "area")


def test_the_long_pentomino_fits_no_board_four_squares_long():
    # source: its length of five squares
    long = Piece("I", outline_of(TWELVE["I"]))
    verdict = check(puzzle(board(9, 4), [long]), seconds=5)
    assert (verdict.verdict, verdict.proof.kind) == ("cannot", "fits_nowhere")


def test_the_seven_tangram_pieces_are_never_refused_their_square():
    # source: the tangram's own dissection of a square of side 4 (areas 4 4 2 1 1 2 2 of 16)
    shapes = {
        "large 1": ((0, 0), (4, 0), (2, 2)),
        "large 2": ((0, 0), (2, 2), (0, 4)),
        "medium": ((4, 2), (4, 4), (2, 4)),
        "small 1": ((4, 0), (4, 2), (3, 1)),
        "small 2": ((2, 2), (3, 3), (1, 3)),
        "square": ((2, 2), (3, 1), (4, 2), (3, 3)),
        "slanted": ((0, 4), (1, 3), (3, 3), (2, 4)),
    }
    pieces = []
    for name, ring in shapes.items():
        cx = sum(x for x, _ in ring) / len(ring)
        cy = sum(y for _, y in ring) / len(ring)
        taken_in = [(cx + (x - cx) * 0.99, cy + (y - cy) * 0.99) for x, y in ring]
        pieces.append(Piece(name, tuple((x * 80, y * 80) for x, y in taken_in)))
    ring = ((0.0, 0.0), (320.0, 0.0), (320.0, 320.0), (0.0, 320.0))
    problem = puzzle(Panel("square", "square", ring), pieces)
    verdict = check(problem, seconds=4)
    assert verdict.verdict != "cannot"
    assert not faults_of(problem, verdict.placements, whole=False)


def fits_by_trying(board_size: tuple[int, int], sizes: list[tuple[int, int]]) -> bool:
    """Whether rectangles of whole squares can lie on the board, by trying every place."""
    wide, high = board_size
    if not sizes:
        return True

    def lay(number: int, taken: frozenset[tuple[int, int]]) -> bool:
        if number == len(sizes):
            return True
        w, h = sizes[number]
        for x, y in itertools.product(range(wide - w + 1), range(high - h + 1)):
            cells = {(x + i, y + j) for i in range(w) for j in range(h)}
            if not cells & taken and lay(number + 1, taken | cells):
                return True
        return False

    return lay(0, frozenset())


GRIDS = [
    ((4, 4), [(2, 2), (2, 2), (2, 2), (2, 2)]),
    ((4, 4), [(3, 3), (2, 2)]),
    ((3, 5), [(3, 2), (3, 3)]),
    ((5, 3), [(2, 3), (3, 2), (3, 1)]),
    ((4, 3), [(3, 2), (2, 2), (1, 1), (1, 1)]),
    ((5, 5), [(3, 3), (3, 3)]),
    ((2, 6), [(2, 3), (1, 3), (1, 3)]),
    ((3, 3), [(4, 1)]),
]


@pytest.mark.parametrize(("size", "sizes"), GRIDS)
def test_small_grids_agree_with_trying_everything(size, sizes):
    # pieces are a hair smaller than their squares: what fits by squares fits here, and the other
    # way round, since a rectangle on the grain can always be pushed to the lower left
    pieces = [
        Piece(
            f"r{n}",
            ((0, 0), (w * CELL - 0.2, 0), (w * CELL - 0.2, h * CELL - 0.2), (0, h * CELL - 0.2)),
        )
        for n, (w, h) in enumerate(sizes)
    ]
    problem = puzzle(board(*size), pieces)
    verdict = check(problem, seconds=6)
    if fits_by_trying(size, sizes):
        assert verdict.verdict == "covers"
        assert not faults_of(problem, verdict.placements)
    else:
        assert verdict.verdict != "covers"

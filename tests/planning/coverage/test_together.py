"""A lay of a larger size as the start of a smaller one."""

from shapely import Polygon, affinity

from planning.coverage.problem import Piece, Problem
from planning.coverage.together import shrunk_lay
from planning.coverage.verify import faults_of
from planning.drafting.bear import bear
from tests.planning.coverage.samples import box, lying, panel, piece


def sized(scale: float) -> Problem:
    """Four squares that fill 0.9 of one panel's width at the scale of 1."""
    return Problem((panel(),), (piece(box(180 * scale, 180 * scale), count=4, mirrored=2),))


def test_a_bear_laid_in_one_size_is_laid_in_the_next_smaller():
    # the same pieces at the same places, whatever their curves: pieces far apart always hold
    large, small = (
        tuple(Piece(p.name, p.cut_line, p.grain_deg, p.count, p.mirrored) for p in bear(height))
        for height in (300.0, 250.0)
    )
    cloth = panel(box(7000, 900))
    lay = []
    for number, (each, copy) in enumerate(Problem((cloth,), large).copies()):
        shape = Polygon(each.outline)
        mirrored = each.is_mirrored(copy)
        shape = affinity.scale(shape, -1 if mirrored else 1, 1, origin=(0, 0))
        x, y = 200 + 290 * number - shape.centroid.x, 450 - shape.centroid.y
        turn = (90 - (180 - each.grain_deg if mirrored else each.grain_deg)) % 360
        lay.append(lying(each, cloth, x, y, copy=copy, mirrored=mirrored, turn=turn))
    assert not faults_of(Problem((cloth,), large), lay)
    found = shrunk_lay(Problem((cloth,), small), lay)
    assert found is not None
    assert [p.panel for p in found] == [p.panel for p in lay]


def test_a_lay_that_cannot_serve_is_none():
    assert shrunk_lay(sized(1.0), ()) is None
    side = piece(box(180, 180), count=4, mirrored=2)
    heap = [lying(side, panel(), 100, 100, copy=n) for n in range(4)]
    assert shrunk_lay(sized(1.0), heap) is None

"""Half a piece and its fold."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import Polygon, affinity

from planning.drafting.exchange.found import PatternFileError
from planning.drafting.exchange.unfold import unfolded
from tests.planning.drafting.exchange.files_for_tests import (
    BOX,
    block,
    from_dxf,
    line,
    point,
    polyline,
)

HALF = ((0.0, 0.0), (60.0, 0.0), (60.0, 40.0), (30.0, 90.0), (0.0, 90.0))
FOLD = ((0.0, 0.0), (0.0, 90.0))


def one(inside):
    (piece,) = from_dxf(block("BACK", inside)).pieces
    return piece


@settings(deadline=None)
@given(turn_deg=st.floats(0, 360), start=st.integers(0, 4), is_over=st.booleans())
def test_the_whole_is_the_half_and_its_reflection(turn_deg, start, is_over):
    # against Shapely: the union of the half and its mirror image, however it lies
    corners = [*HALF[start:], *HALF[:start]]
    if is_over:
        corners.reverse()
    half = affinity.rotate(Polygon(corners), turn_deg, origin=(7, 9))
    fold = affinity.rotate(Polygon([*FOLD, (1, 1)]), turn_deg, origin=(7, 9)).exterior.coords[:2]
    whole = unfolded(list(half.exterior.coords)[:-1], True, tuple(fold))
    both = Polygon(HALF).union(affinity.scale(Polygon(HALF), xfact=-1, origin=(0, 0)))
    expected = affinity.rotate(both, turn_deg, origin=(7, 9))
    assert whole is not None
    assert Polygon(whole).symmetric_difference(expected).area < 1e-6


def test_a_fold_runs_through_corners_that_lie_on_it():
    ring = (*HALF, (0.2, 50.0), (-0.1, 20.0))
    assert Polygon(unfolded(ring, True, FOLD)).area == pytest.approx(2 * Polygon(HALF).area)


@pytest.mark.parametrize("fold", [((30.0, 0.0), (30.0, 90.0)), ((0.0, -9.0), (9.0, -9.0))])
def test_no_edge_on_the_line_is_no_fold(fold):
    assert unfolded(HALF, True, fold) is None


def test_a_mirror_line_on_the_edge_unfolds_everything():
    piece = one(
        polyline("1", HALF)
        + polyline("14", ((0, 8), (52, 8), (52, 38), (26, 82), (0, 82)))
        + line("6", *FOLD)
        + point("4", 60, 20)
        + point("4", 0, 90)
        + point("13", 30, 30)
        + line("8", (0, 50), (40, 50))
        + line("7", (20, 10), (20, 60))
    )
    assert piece.is_unfolded
    assert Polygon(piece.outline).area == pytest.approx(2 * Polygon(HALF).area)
    assert Polygon(piece.seam_line).bounds == (-52, 8, 52, 82)
    assert [(n.name, n.at) for n in piece.notches] == [
        ("notch 1", (60, 20)),
        ("notch 2", (0, 90)),
        ("notch 1, other side", (-60, 20)),
    ]
    assert [mark.at for mark in piece.marks] == [(30, 30), (-30, 30)]
    assert [item.points for item in piece.lines] == [((0, 50), (40, 50)), ((0, 50), (-40, 50))]
    assert piece.grain_deg == 90


def test_half_an_outline_left_open_at_the_fold_is_unfolded():
    piece = one(polyline("1", HALF, closed=False) + line("6", *FOLD))
    assert piece.is_unfolded
    assert Polygon(piece.outline).area == pytest.approx(2 * Polygon(HALF).area)


def test_an_open_sew_line_is_unfolded_with_its_piece():
    sew = polyline("14", ((0, 8), (52, 8), (52, 38), (26, 82), (0, 82)), closed=False)
    piece = one(polyline("1", HALF) + line("6", *FOLD) + sew)
    assert Polygon(piece.seam_line).bounds == (-52, 8, 52, 82)


@pytest.mark.parametrize("fold", [((50, 0), (50, 60)), ((0, -20), (0, 60))])
def test_a_mirror_line_through_the_inside_or_beyond_leaves_the_piece_as_drawn(fold):
    piece = one(polyline("1", BOX) + line("6", *fold))
    assert (piece.is_unfolded, piece.outline) == (False, BOX)
    assert "as drawn whole" in piece.notes[0]


def test_a_half_that_would_cross_itself_unfolded_is_refused():
    spike = ((0.0, 0.0), (60.0, 0.0), (-0.3, 45.0), (60.0, 90.0), (0.0, 90.0), (0.0, 60.0))
    with pytest.raises(PatternFileError, match="“BACK” crosses"):
        one(polyline("1", spike) + line("6", (0, 60), (0, 90)))

from typing import Any

import pytest
from shapely import Polygon, distance, points

from planning.drafting.allowance import cut_line_of
from planning.drafting.entry import EntryError
from planning.drafting.entry_lines import outline_of, ring_of
from planning.drafting.insetting import inset
from planning.drafting.rings import Ring
from tests.planning.drafting.entries_for_tests import (
    HALF_EGG,
    NAMED_SQUARE,
    entry_of,
    round_points,
)
from tests.planning.drafting.shapes_for_tests import EL

# A square with a tab 8 mm wide on its right side: set in by 6 mm, nothing is left of the tab.
FINGER = [
    (x, y, True) for x, y in ((48, -4), (60, -3), (75, -3), (78, 0), (75, 3), (60, 3), (48, 4))
]
TAB = ((0, 0), (60, 0), (60, 26), (90, 26), (90, 34), (60, 34), (60, 60), (0, 60))


def lines_in(typed: Any, by_mm: float) -> dict[str, list[tuple[float, float]]]:
    drawn, _ = outline_of(entry_of(typed).points)
    return {edge.name: edge.line for edge in inset(drawn, by_mm, "allowance_mm")}


def test_nothing_taken_off_changes_nothing() -> None:
    drawn, _ = outline_of(entry_of(HALF_EGG).points)
    assert inset(drawn, 0, "allowance_mm") == drawn


def test_each_edge_of_a_square_moves_in_with_its_corners() -> None:
    lines = lines_in(NAMED_SQUARE, 6)
    assert lines["foot"] == [pytest.approx((6, 6)), pytest.approx((94, 6))]
    assert lines["left"] == [pytest.approx((6, 94)), pytest.approx((6, 6))]


def test_a_hollow_corner_moves_away_from_the_hollow() -> None:
    lines = lines_in(EL, 4)
    assert lines["edge 4"][0] == pytest.approx((16, 16))


def test_edges_still_follow_one_another_round_a_curve() -> None:
    lines = list(lines_in(HALF_EGG, 6).values())
    for line, after in zip(lines, [*lines[1:], lines[0]], strict=True):
        assert line[-1] == after[0]


@pytest.mark.parametrize("typed", [NAMED_SQUARE, HALF_EGG, EL, round_points(40)])
@pytest.mark.parametrize("by_mm", [1.0, 6.0, 9.0])
def test_the_inset_lies_at_one_distance_everywhere(typed: Any, by_mm: float) -> None:
    drawn, _ = outline_of(entry_of(typed).points)
    rim = Polygon(ring_of(drawn)).exterior
    inner = ring_of(inset(drawn, by_mm, "allowance_mm"))
    away = distance(points(Polygon(inner).exterior.segmentize(1.0).coords), rim)
    # Shapely may leave out vertices by a hundredth of the distance; hollow corners are mitred
    assert away.min() == pytest.approx(by_mm, abs=0.02 * by_mm)
    assert away.max() <= by_mm * (2**0.5 if typed is EL else 1.02) + 1e-9


@pytest.mark.parametrize("seam", [EL, ((0, 0), (90, 0), (40, 70))])
def test_a_cutting_line_with_round_corners_gives_back_its_seam_line(seam: Ring) -> None:
    """The corners are entered in the middle of the rounding, where a maker would see them."""
    cut = Polygon(cut_line_of(seam, 6)).exterior
    corners = [cut.interpolate(cut.project(p)) for p in points(seam)]
    along = sorted(
        [(cut.project(p), p.x, p.y, False) for p in corners]
        + [
            (s, *cut.interpolate(s).coords[0], True)
            for s in range(3, int(cut.length), 3)
            if all(abs(s - cut.project(p)) > 1 for p in corners)
        ]
    )
    inner = inset(outline_of(entry_of([p[1:] for p in along]).points)[0], 6, "allowance_mm")
    found = {edge.line[0] for edge in inner}
    for corner in seam:
        assert min(abs(x - corner[0]) + abs(y - corner[1]) for x, y in found) < 1.0


@pytest.mark.parametrize(
    ("typed", "by_mm", "words"),
    [
        (NAMED_SQUARE, 50, "nothing is left"),
        (NAMED_SQUARE, 900, "nothing is left"),
        (
            [(0, 0), (40, 0), (40, 16), (80, 16), (80, 0), (120, 0), (120, 40), (80, 40)]
            + [(80, 24), (40, 24), (40, 40), (0, 40)],
            6,
            "falls into two parts",
        ),
        (TAB, 6, r"Near \(90, 26\) mm the outline is too narrow"),
        ([(x - 25 * (x == 90), y) for x, y in TAB], 6, "“edge [34]” disappears"),
        ([(0, 0), (100, 0), (100, 97), (97, 100), (0, 100)], 9, "“edge 3” disappears"),
        ([*round_points(40)[1:], *FINGER], 6, r"Near \(78, 0\) mm the outline is too narrow"),
    ],
)
def test_an_inset_that_loses_part_of_the_piece_is_refused(
    typed: Any, by_mm: float, words: str
) -> None:
    with pytest.raises(EntryError, match=words) as refused:
        lines_in(typed, by_mm)
    assert refused.value.field == "allowance_mm"


def test_a_short_edge_that_outlives_the_inset_is_kept() -> None:
    """A corner cut off at 45 degrees keeps 3 sqrt 2 less 2 a tan 22.5 degrees of its length."""
    line = lines_in([(0, 0), (100, 0), (100, 97), (97, 100), (0, 100)], 4)["edge 3"]
    (ax, ay), (bx, by) = line[0], line[-1]
    assert ((bx - ax) ** 2 + (by - ay) ** 2) ** 0.5 == pytest.approx(
        3 * 2**0.5 - 8 * (2**0.5 - 1), abs=1e-6
    )


def test_a_sharp_tip_is_no_lost_part() -> None:
    assert len(lines_in([(0, 0), (300, 0), (300, 60)], 6)) == 3


def test_a_narrow_slot_is_cut_off_square_beyond_five_distances() -> None:
    slot = [(0, 0), (100, 0), (100, 100), (52, 100), (50, 40), (48, 100), (0, 100)]
    assert len(lines_in(slot, 6)) == 7

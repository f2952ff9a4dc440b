import math

import pytest

from planning.drafting.curves import STEPS, ellipse_perimeter_mm, smooth, smooth_loop, stretch_of
from planning.drafting.rings import length_mm

MARKED = [(0.0, 0.0), (40.0, 30.0), (90.0, 10.0)]


def test_a_smooth_line_goes_through_every_marked_point() -> None:
    line = smooth(MARKED, start_deg=90)
    for drawn, marked in zip(line[::STEPS], MARKED, strict=True):
        assert drawn == pytest.approx(marked)


def test_a_smooth_line_leaves_and_arrives_at_its_headings() -> None:
    line = smooth([(0.0, 0.0), (100.0, 0.0)], start_deg=45, end_deg=315)
    first = math.atan2(line[1][1], line[1][0])
    last = math.atan2(line[-1][1] - line[-2][1], line[-1][0] - line[-2][0])
    assert math.degrees(first) == pytest.approx(39, abs=6)
    assert first == pytest.approx(-last)


def test_a_smooth_line_without_headings_between_two_points_is_straight() -> None:
    line = smooth([(0.0, 0.0), (30.0, 40.0)])
    assert length_mm(line) == pytest.approx(50)


def test_a_loop_ends_where_it_began_without_a_corner() -> None:
    loop = smooth_loop([(10.0, 0.0), (0.0, 10.0), (-10.0, 0.0), (0.0, -10.0)])
    assert loop[0] == pytest.approx(loop[-1])
    assert length_mm(loop) == pytest.approx(2 * math.pi * 10, rel=0.02)


def test_the_stretches_of_a_loop_make_up_its_length() -> None:
    loop = smooth_loop([(10.0, 0.0), (0.0, 10.0), (-10.0, 0.0), (0.0, -10.0)])
    parts = [stretch_of(loop, a, b) for a, b in ((0, 1), (1, 3), (3, 4))]
    assert sum(length_mm(part) for part in parts) == pytest.approx(length_mm(loop))


def test_twice_the_points_give_twice_the_curve() -> None:
    double = [(2 * x, 2 * y) for x, y in MARKED]
    assert length_mm(smooth(double, 80)) == pytest.approx(2 * length_mm(smooth(MARKED, 80)))


def test_a_flat_ellipse_is_nearly_twice_its_long_axis() -> None:
    assert ellipse_perimeter_mm(100, 0) == pytest.approx(400, rel=0.005)

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planning.safety.errors import SafetyError
from planning.safety.fit import fit_of, fit_of_diameter, fits_gauge
from planning.safety.gauge import ENLARGED, GAUGE
from planning.safety.parts import Box, Disc, Eye, Part, ShankButton, Sphere
from planning.safety.sweep import narrowest_radius_mm

small = st.floats(0.5, 70)


def test_the_gauge_is_an_inch_and_a_quarter_wide_and_falls_at_45_degrees() -> None:
    assert GAUGE.diameter_mm == 31.75
    assert GAUGE.deep_mm == pytest.approx(57.15)
    assert GAUGE.deep_mm - GAUGE.diameter_mm == pytest.approx(25.4)


def test_the_enlarged_gauge_has_a_millimetre_more() -> None:
    assert (ENLARGED.diameter_mm, round(ENLARGED.deep_mm, 2)) == (32.75, 58.15)


@pytest.mark.parametrize("part", [Disc(31.75, 25.4), Disc(20, 37.15), Box(8, 30, 2), Sphere(31.75)])
def test_a_part_that_just_stands_in_the_gauge_fits(part: Part) -> None:
    assert fit_of(part).fits


def test_a_part_wider_than_the_rim_says_so() -> None:
    fit = fit_of(Disc(40, 3))
    assert not fit.is_small
    assert fit.because.startswith("It is 40 mm wide and cannot pass the gauge's rim")


def test_a_part_longer_than_the_diagonal_says_so() -> None:
    fit = fit_of(Disc(1, 70))
    assert not fit.is_small
    assert "70.0 mm long; nothing longer than 65.4 mm" in fit.because


def test_a_part_with_too_much_body_says_so() -> None:
    assert fit_of(Box(31.7, 31.7, 40)).because == "It takes up more room than the gauge has."


def test_a_borderline_part_is_treated_as_small() -> None:
    fit = fit_of(Disc(32, 3))
    assert (fit.fits, fit.borderline, fit.is_small) == (False, True, True)


@pytest.mark.parametrize(
    ("diameter", "fits", "borderline"),
    [(15, True, False), (31.75, True, False), (32.75, False, True), (32.76, False, False)],
)
def test_a_button_of_unknown_thickness_is_judged_by_its_width(
    diameter: float, fits: bool, borderline: bool
) -> None:
    fit = fit_of_diameter(diameter)
    assert (fit.fits, fit.borderline) == (fits, borderline)


@settings(max_examples=15, deadline=None)
@given(small, small)
def test_a_smaller_cylinder_never_fits_worse(diameter: float, length: float) -> None:
    if fits_gauge(Disc(diameter, length), GAUGE)[0]:
        assert fits_gauge(Disc(0.9 * diameter, 0.9 * length), GAUGE)[0]


@settings(max_examples=15, deadline=None)
@given(st.floats(1, 31), st.floats(1, 56))
def test_standing_upright_is_never_denied_by_the_sweep(diameter: float, length: float) -> None:
    part = Disc(diameter, length)
    if part.stands_in(GAUGE):
        assert narrowest_radius_mm(part, GAUGE) <= GAUGE.radius_mm + 1e-3


@settings(max_examples=10, deadline=None)
@given(st.floats(2, 30), st.floats(2, 40), st.floats(2, 40))
def test_a_box_fits_no_worse_than_the_cylinder_round_it(a: float, b: float, c: float) -> None:
    if fits_gauge(Disc(math.hypot(a, b), c), GAUGE)[0]:
        assert fits_gauge(Box(a, b, c), GAUGE)[0]


def test_the_order_of_a_boxs_edges_does_not_matter() -> None:
    answers = {fit_of(box).fits for box in (Box(8, 30, 2), Box(2, 8, 30), Box(30, 2, 8))}
    assert answers == {True}


def test_a_thin_stem_is_an_eye_like_a_shank_button() -> None:
    assert fit_of(Eye(25, 5, 6, 8)).fits == fit_of(ShankButton(25, 5, 6, 8)).fits is True


@pytest.mark.parametrize("size", [0, -1, math.nan, math.inf, 1e6])
def test_lengths_that_are_none_are_refused(size: float) -> None:
    with pytest.raises(SafetyError, match="Disc, length_mm"):
        Disc(10, size)

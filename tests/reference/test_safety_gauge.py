"""The small-parts gauge against worked fits and a numeric table.

Shape: 16 CFR 1501.4 Figure 1 (1.25 in wide, 2.25 in at the deep side, read second-hand; 1.00 in at
the shallow side from memory); EN 71-1 clause 8.2 takes its cylinder from it (Annex A.36). The fits
are sums worked by hand from the closed forms of that shape, or an independent numeric pose search.
"""

import math

import numpy as np
import numpy.typing as npt
import pytest
from scipy.optimize import brentq, minimize

from planning.safety.fit import LIGNE_MM, fit_of, fit_of_diameter, fits_gauge
from planning.safety.gauge import ENLARGED, GAUGE
from planning.safety.parts import Box, Disc, Eye, Part, ShankButton, Sphere
from planning.safety.sweep import narrowest_radius_mm

YES, NO, BORDERLINE = (True, False), (False, False), (False, True)


@pytest.mark.parametrize(
    ("part", "answer"),
    [
        pytest.param(Eye(12, 6, 4, 14), YES, id="6 + max(12, 22) = 28"),
        pytest.param(Eye(30, 12, 5, 20), YES, id="15 + max(27, 34.5) = 49.5"),
        pytest.param(Eye(20, 8, 5, 40), YES, id="60.5 upright, but fits tilted about 14 degrees"),
        pytest.param(Eye(30, 15, 6, 40), NO, id="73 upright, best tilt 1.1 short"),
        pytest.param(Disc(40, 3), NO, id="40 > 31.75"),
        pytest.param(Disc(32, 3), BORDERLINE, id="32 > 31.75 by 0.25"),
        pytest.param(Disc(31, 3), YES, id="31 + 3 = 34"),
        pytest.param(Disc(31, 27), BORDERLINE, id="58 > 57.15 but <= 58.15"),
        pytest.param(ShankButton(25, 5, 6, 8), YES, id="12.5 + max(17.5, 16) = 30"),
        pytest.param(Disc(12, 45), YES, id="toggle 57"),
        pytest.param(Disc(12, 50), NO, id="toggle, longest 46.0"),
        pytest.param(Sphere(30), YES, id="ball 30"),
        pytest.param(Sphere(32), BORDERLINE, id="ball 32"),
        pytest.param(Sphere(4), YES, id="filler pellet"),
        pytest.param(Disc(1, 50), YES, id="needle < 63.7"),
        pytest.param(Box(8, 30, 2), YES, id="zip pull 30 + 8.25 = 38.25"),
        pytest.param(Disc(20, 37), YES, id="57.0 <= 57.15"),
        pytest.param(Disc(20, 38), BORDERLINE, id="58.0 > 57.15"),
        pytest.param(Disc(2, 61), YES, id="tilted, longest 62.0"),
        pytest.param(Disc(2, 64), NO, id="longest 62.0"),
        pytest.param(Sphere(31.75), YES, id="ball of the exact width"),
        pytest.param(Sphere(31.76), BORDERLINE, id="ball a hair wider"),
    ],
)
def test_worked_fits(part: Part, answer: tuple[bool, bool]) -> None:
    fit = fit_of(part)
    assert (fit.fits, fit.borderline) == answer


@pytest.mark.parametrize(
    ("part", "spare_mm", "within"), [(Eye(20, 8, 5, 40), 4.8, 0.1), (Eye(30, 15, 6, 40), -1.1, 0.1)]
)
def test_the_tilted_eyes_have_their_worked_slack(
    part: Part, spare_mm: float, within: float
) -> None:
    """Numeric search: 4.8 mm of radius to spare, and 1.1 mm short."""
    spare = GAUGE.radius_mm - narrowest_radius_mm(part, GAUGE)
    assert spare == pytest.approx(spare_mm, abs=within)


@pytest.mark.parametrize(
    ("diameter", "longest"),
    [(1, 63.7), (2, 62.0), (4, 58.8), (6, 55.6), (8, 52.3), (10, 49.1), (12, 46.0)]
    + [(15, 42.1), (18, 39.1), (20, 37.1), (25, 32.1), (30, 27.1)],
)
def test_longest_rods_of_the_numeric_table(diameter: float, longest: float) -> None:
    """Longest rod of each diameter by a separate numeric search, plus or minus 0.3 mm."""
    assert fits_gauge(Disc(diameter, longest - 0.3), GAUGE)[0]
    assert not fits_gauge(Disc(diameter, longest + 0.3), GAUGE)[0]


def test_a_line_can_be_as_long_as_rim_to_deep_corner() -> None:
    """hypot(31.75, 57.15) = 65.38 mm."""
    assert GAUGE.longest_mm == pytest.approx(65.38, abs=0.005)
    assert fits_gauge(Disc(0.01, 65.3), GAUGE)[0]
    assert not fits_gauge(Disc(0.01, 65.4), GAUGE)[0]


def test_the_well_holds_two_cubic_inches_less_a_drop() -> None:
    """32.68 cm³, 1.994 cubic inches: a cylinder to the mean depth of 41.275 mm."""
    assert GAUGE.volume_mm3 / 1000 == pytest.approx(32.68, abs=0.005)
    assert GAUGE.volume_mm3 / 25.4**3 == pytest.approx(1.994, abs=0.001)


def test_the_floor_binds_a_ball_only_above_33_48_mm() -> None:
    """A ball of radius r on the axis line of the deep side touches the 45 degree floor and the rim.

    Its centre sits r below the rim and at most R - r to the deep side: the floor needs
    (middle + (R - r) - r) / sqrt(2) >= r.
    """

    def room(d: float) -> float:
        r, R = d / 2, GAUGE.radius_mm
        return (GAUGE.middle_mm + (R - r) - r) / math.sqrt(2) - r

    assert brentq(room, 20, 60) == pytest.approx(33.48, abs=0.01)


def test_fifty_lignes_sit_on_the_limit() -> None:
    """40 lignes to the inch (from memory): 40 L = 25.4 mm, 50 L = 31.75 mm."""
    assert pytest.approx(25.4) == 40 * LIGNE_MM
    assert pytest.approx(GAUGE.diameter_mm) == 50 * LIGNE_MM
    assert fit_of_diameter(24 * LIGNE_MM).fits


def test_the_guard_band_is_one_millimetre() -> None:
    """Widths to 32.75 and sums to 58.15 mm count as small."""
    assert fits_gauge(Disc(32.75, 25.4), ENLARGED)[0]
    assert not fits_gauge(Disc(32.76, 3), ENLARGED)[0]
    assert fits_gauge(Disc(30, 28.1), ENLARGED)[0]


@pytest.mark.parametrize("part", [Disc(6, 52), Disc(12, 44), Eye(20, 8, 5, 40)])
def test_the_sweep_agrees_with_a_general_minimiser(part: Part) -> None:
    """SciPy's Nelder-Mead over tilt, turn and both shifts finds no better pose from many starts."""
    cloud = part.points()

    def width(pose: npt.NDArray[np.float64]) -> float:
        tilt, turn, tx, ty = pose
        x = math.cos(tilt) * cloud[:, 0] + math.sin(tilt) * cloud[:, 2]
        z = math.cos(tilt) * cloud[:, 2] - math.sin(tilt) * cloud[:, 0]
        px = math.cos(turn) * x - math.sin(turn) * cloud[:, 1] + tx
        py = math.sin(turn) * x + math.cos(turn) * cloud[:, 1] + ty
        below = (z - z.min() - GAUGE.middle_mm - px).max()
        return float(np.hypot(px, py).max() + 10 * max(below, 0.0))

    rng = np.random.default_rng(7)
    starts = rng.uniform((0, 0, -15, -15), (math.pi, math.pi, 15, 15), size=(24, 4)).tolist()
    found = min(minimize(width, s, method="Nelder-Mead", tol=1e-4).fun for s in starts)
    assert narrowest_radius_mm(part, GAUGE) <= found + 0.02

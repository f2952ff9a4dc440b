import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import Polygon, affinity

from inventory.measuring.rings import clean_ring
from inventory.measuring.shrinkage import Shrinkage, sound_core
from inventory.measuring.usable import Place, usable_cloth
from shared.errors import OutlineError

SQUARE = ((0.0, 0.0), (400.0, 0.0), (400.0, 600.0), (0.0, 600.0))
HOLLOW = ((0, 0), (400, 0), (400, 600), (300, 600), (300, 200), (100, 200), (100, 600), (0, 600))


def test_the_parts_taken_off_add_up_to_the_whole():
    cloth = usable_cloth(
        SQUARE,
        [Place("Stain", ((200, 300),), 20), Place("Hole", ((210, 300),), 10)],
        [Place("Pocket", ((50, 50), (150, 50), (150, 150), (50, 150)))],
        shrinkage=Shrinkage((2, 7), (1, 3)),
    )
    lost = sum(part.area_mm2 for part in cloth.taken_off)
    assert cloth.usable_mm2 + lost == pytest.approx(cloth.outline_mm2, abs=1)
    assert "Hole" not in [part.reason for part in cloth.taken_off]  # it lies inside the stain


def test_a_flaw_takes_its_margin_with_it():
    # source: area of a disc; chords lie outside it by at most a quarter of a percent of its radius
    cloth = usable_cloth(SQUARE, [Place("Stain", ((200, 300),), 20)])
    stain = next(part for part in cloth.taken_off if part.reason == "Stain")
    assert stain.area_mm2 == pytest.approx(3.14159 * 23**2, rel=0.01)


def test_a_panel_narrower_than_its_margins_yields_nothing():
    cloth = usable_cloth(((0, 0), (9, 0), (9, 600), (0, 600)))
    assert cloth.usable_mm2 == 0


def test_expected_shrinkage_is_taken_at_its_worst():
    cloth = usable_cloth(SQUARE, shrinkage=Shrinkage((2, 5), (1, 3)), edge_margin_mm=0)
    assert cloth.usable_mm2 == pytest.approx(400 * 0.97 * 600 * 0.95)
    assert cloth.is_shrinkage_predicted


def test_shrinkage_follows_the_grain():
    sideways = usable_cloth(
        SQUARE, shrinkage=Shrinkage((10, 10), (0, 0)), grain_deg=0, edge_margin_mm=0
    )
    left, _, right, _ = sideways.region.bounds
    assert right - left == pytest.approx(360)


PERCENT = st.floats(min_value=0, max_value=12)


@settings(max_examples=60, deadline=None)
@given(st.sampled_from([SQUARE, HOLLOW]), PERCENT, PERCENT, PERCENT, PERCENT)
def test_the_sound_core_lies_inside_every_shrunk_panel(
    ring, low, spread, across_low, across_spread
):
    shrinkage = Shrinkage((low, low + spread), (across_low, across_low + across_spread))
    panel = Polygon(ring)
    core, _ = sound_core(panel, [], shrinkage, 90)
    for part in (0.0, 0.13, 0.5, 0.77, 1.0):
        along = 1 - (low + part * spread) / 100
        across = 1 - (across_low + (1 - part) * across_spread) / 100
        shrunk = affinity.scale(panel, across, along, origin=panel.centroid)
        assert core.difference(shrunk.buffer(1e-6)).area < 1e-3


def test_a_flaw_is_covered_wherever_shrinkage_moves_it():
    panel, flaw = Polygon(SQUARE), Polygon([(20, 20), (40, 20), (40, 40), (20, 40)])
    _, (grown,) = sound_core(panel, [flaw], Shrinkage((0, 10), (0, 10)), 90)
    for along, across in ((1.0, 1.0), (0.95, 0.9), (0.9, 0.97)):
        moved = affinity.scale(flaw, across, along, origin=panel.centroid)
        assert grown.buffer(1e-6).covers(moved)


@pytest.mark.parametrize(
    ("points", "words"),
    [
        ([(0, 0), (1, 1)], "at least three"),
        ([(0, 0), (10, 0), (0.5, 0.5)], "no area"),
        ([(0, 0), (float("nan"), 0), (0, 50)], "Corner 2"),
        ([(0, 0), (50, 0), (50, 1e6)], "Corner 3 is more than ten metres"),
        ([(0, 0), (100, 0), (100, 100), (50, -20), (0, 100)], "crosses"),
    ],
)
def test_outlines_that_are_none_are_refused(points, words):
    with pytest.raises(OutlineError, match=words):
        clean_ring(points)


def test_a_closed_clockwise_ring_with_repeats_is_put_right():
    ring = clean_ring([(0, 0), (0, 50), (0, 50), (50, 50), (50, 0), (0, 0)])
    assert ring == ((0, 0), (50, 0), (50, 50), (0, 50))

import pytest
from shapely import Polygon

from inventory.drawing import EXAMPLES
from inventory.measuring.shapes import MEASURES, outline_from
from shared.errors import OutlineError


@pytest.mark.parametrize("shape", EXAMPLES)
def test_every_shape_draws_one_simple_ring(shape):
    ring = outline_from(shape, EXAMPLES[shape])
    assert Polygon(ring).is_valid
    assert Polygon(ring).exterior.is_ccw
    assert min(y for _, y in ring) == pytest.approx(0, abs=1e-6)


def test_a_shirt_back_is_as_wide_and_long_as_the_tape_says():
    left, bottom, right, top = Polygon(outline_from("shirt-body", EXAMPLES["shirt-body"])).bounds
    assert (right - left, top - bottom) == pytest.approx((520, 720))


def test_hollow_edges_count_no_cloth_that_is_not_there():
    body = Polygon(outline_from("shirt-body", EXAMPLES["shirt-body"]))
    straight_armholes = Polygon(
        [(10, 0), (510, 0), (520, 480), (475, 675), (345, 720), (175, 720), (45, 675), (0, 480)]
    )
    assert body.area < straight_armholes.area


@pytest.mark.parametrize("shape", [s for s in EXAMPLES if s != "corners"])
def test_a_missing_measure_is_named(shape):
    first = MEASURES[shape][0]
    measures = {k: v for k, v in EXAMPLES[shape].items() if k != first.key}
    with pytest.raises(OutlineError, match=f"{first.label} is missing"):
        outline_from(shape, measures)


@pytest.mark.parametrize(
    ("shape", "changed", "words"),
    [
        ("shirt-body", {"armhole_depth": 800}, "armhole is deeper"),
        ("shirt-body", {"neck_width": 500}, "wider than the shoulders"),
        ("shirt-body", {"neck_depth": 720}, "neckline is deeper"),
        ("shirt-body", {"shoulder_drop": 300}, "drops below"),
        ("sleeve", {"cap_height": 600}, "sleeve head"),
        ("trouser-leg", {"rise": 1200}, "rise is longer"),
        ("skirt-gore", {"hem_width": 1500}, "too wide"),
    ],
)
def test_measures_that_contradict_each_other_are_refused(shape, changed, words):
    with pytest.raises(OutlineError, match=words):
        outline_from(shape, EXAMPLES[shape] | changed)


def test_a_gore_that_widens_downwards_mirrors_one_that_narrows():
    down = Polygon(
        outline_from("skirt-gore", {"waist_width": 160, "hem_width": 380, "length": 600})
    )
    up = Polygon(outline_from("skirt-gore", {"waist_width": 380, "hem_width": 160, "length": 600}))
    assert down.area == pytest.approx(up.area)


def test_crossing_corners_are_refused_with_the_place():
    with pytest.raises(OutlineError, match=r"crosses or touches itself near 5\.0 cm across"):
        outline_from("corners", {"points": [(0, 0), (100, 100), (100, 0), (0, 100)]})

import math
from typing import Any

import pytest

from planning.drafting.basic_shapes import BASIC_SHAPES, entry_of_shape
from planning.drafting.entering import entered_piece
from planning.drafting.entry import EntryError
from planning.drafting.hands import is_handed
from planning.drafting.pieces import DraftPiece
from planning.drafting.rings import bounds_mm

# For each shape: measures in their order, then the width and height they ask for.
USUAL: dict[str, tuple[tuple[float, ...], float, float]] = {
    "rectangle": ((100, 60), 100, 60),
    "trapezium": ((100, 40, 60), 100, 60),
    "triangle": ((60, 90), 60, 90),
    "circle": ((80,), 80, 80),
    "oval": ((60, 100), 60, 100),
    "half-circle": ((100,), 100, 50),
    "ear": ((40, 60, 50), 60, 50),
    "limb": ((200, 60, 90), 90, 200),
    "wedge": ((200, 10, 70, 120, 30), 70, 200),
    "heart": ((100, 110), 100, 110),
    "teardrop": ((60, 100), 60, 100),
}


def measures_of(key: str, values: Any) -> dict[str, float]:
    keys = [name for name, _ in BASIC_SHAPES[key].measures]
    return dict(zip(keys, values, strict=True))


def shape(key: str, *values: float) -> DraftPiece:
    entry = entry_of_shape(key, measures_of(key, values), 6)
    return entered_piece(entry, key, 2, 1)


def test_every_shape_is_tried_here() -> None:
    assert set(USUAL) == set(BASIC_SHAPES)


@pytest.mark.parametrize("key", BASIC_SHAPES)
def test_a_shape_has_the_width_and_height_it_was_given(key: str) -> None:
    values, wide, tall = USUAL[key]
    left, low, right, high = bounds_mm(shape(key, *values).seam_line)
    assert right - left == pytest.approx(wide, rel=4e-3)
    assert high - low == pytest.approx(tall, rel=2e-3)
    assert left == pytest.approx(-right, abs=0.01)
    assert low == pytest.approx(0, abs=0.1)


@pytest.mark.parametrize("key", BASIC_SHAPES)
def test_every_shape_is_its_own_mirror_image(key: str) -> None:
    assert not is_handed(shape(key, *USUAL[key][0]))


@pytest.mark.parametrize("key", BASIC_SHAPES)
def test_a_shape_is_an_entry_on_the_seam_line_with_a_name_for_every_edge(key: str) -> None:
    entry = entry_of_shape(key, measures_of(key, USUAL[key][0]), 7)
    assert (entry.is_cut_line, entry.allowance_mm) == (False, 7)
    corners = [point for point in entry.points if not point.is_curve]
    assert all(point.edge for point in corners)
    assert BASIC_SHAPES[key].name
    assert BASIC_SHAPES[key].description.endswith(".")


@pytest.mark.parametrize("key", BASIC_SHAPES)
@pytest.mark.parametrize("factor", [0.2, 1.5, 3.0])
def test_a_shape_with_larger_measures_is_the_same_shape_larger(key: str, factor: float) -> None:
    values = USUAL[key][0]
    plain, large = shape(key, *values), shape(key, *[factor * value for value in values])
    for little, big in zip(plain.seam_line, large.seam_line, strict=True):
        assert big == pytest.approx((factor * little[0], factor * little[1]), abs=3e-4)


@pytest.mark.parametrize("key", BASIC_SHAPES)
@pytest.mark.parametrize("bad", [0.0, -5.0, math.nan, math.inf, 2001.0, None])
def test_a_measure_that_is_none_is_refused_at_its_own_field(key: str, bad: float | None) -> None:
    for name, label in BASIC_SHAPES[key].measures:
        measures = measures_of(key, USUAL[key][0])
        del measures[name]
        if bad is not None:
            measures[name] = bad
        with pytest.raises(EntryError, match=label) as refused:
            entry_of_shape(key, measures, 6)
        assert (refused.value.field, refused.value.row) == (name, None)


@pytest.mark.parametrize(
    ("key", "values", "field"),
    [
        ("ear", (61, 60, 50), "width"),
        ("limb", (200, 60, 59), "foot"),
        ("limb", (120, 60, 90), "length"),
        ("wedge", (200, 10, 70, 200, 30), "widest_at"),
        ("wedge", (200, 10, 29, 120, 30), "widest"),
        ("teardrop", (60, 60), "height"),
    ],
)
def test_measures_that_contradict_each_other_are_refused(
    key: str, values: tuple[float, ...], field: str
) -> None:
    with pytest.raises(EntryError) as refused:
        entry_of_shape(key, measures_of(key, values), 6)
    assert refused.value.field == field


def test_an_unknown_shape_is_refused_with_the_known_ones() -> None:
    with pytest.raises(EntryError, match="rectangle, trapezium, triangle"):
        entry_of_shape("star", {}, 6)


def test_a_limb_may_end_in_a_plain_round_end() -> None:
    plain = shape("limb", 200, 60, 60)
    wide = bounds_mm(plain.seam_line)
    assert wide[2] - wide[0] == pytest.approx(60, rel=4e-3)
    assert plain.stretch_mm("foot") == pytest.approx(plain.stretch_mm("top"), rel=1e-3)


def test_the_side_of_a_limb_has_a_middle_third_for_an_opening() -> None:
    limb = shape("limb", 200, 60, 90)
    thirds = [limb.stretch_mm(f"right side, {part}") for part in ("lower", "middle", "upper")]
    assert thirds == pytest.approx([limb.stretch_mm("left side") / 3] * 3, abs=1e-3)


def test_the_widest_place_of_a_wedge_is_where_it_was_asked_for() -> None:
    wedge = shape("wedge", 200, 10, 70, 120, 30)
    assert max(wedge.seam_line)[1] == pytest.approx(120, abs=1)

"""Words on the drawing of a lay that can be read, and rules with what they miss."""

import itertools
import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import Point, Polygon, box

from planning.coverage.placing import placement_of
from planning.coverage.problem import Match, Panel, Piece, Pin, Problem, Repeat, Spot
from planning.coverage.verify import faults_of
from planning.kept import kept_rules, letter_of, marks_of
from planning.labels import arrow_along, label_inside, number_beside, number_inside
from planning.spare_words import spare_words

SQUARE = ((0.0, 0.0), (60.0, 0.0), (60.0, 60.0), (0.0, 60.0))
LONG = [("7  body front 2", "right"), ("7", "body front 2")]


def test_words_stand_inside_a_piece_that_is_wide_enough():
    shape = box(0, 0, 200, 80)
    label = label_inside(shape, LONG, 10)
    assert label is not None
    assert label.lines == LONG[0]
    assert shape.covers(label.room)


def test_words_go_where_a_crooked_piece_is_wide():
    foot = Polygon([(0, 0), (140, 0), (140, 40), (30, 40), (30, 300), (0, 300)])
    label = label_inside(foot, LONG, 10)
    assert label is None or foot.covers(label.room)
    assert label_inside(box(0, 0, 30, 300), LONG, 10) is None


def test_a_small_piece_carries_its_number_and_a_smaller_one_has_it_beside():
    assert number_inside(Point(0, 0).buffer(12), 7, 10) is not None
    tiny = Point(0, 0).buffer(4)
    assert number_inside(tiny, 7, 10) is None
    others = [box(-60, 6, 60, 60)]
    label = number_beside(tiny, 7, 10, [tiny, *others], box(-100, -100, 100, 100))
    assert label.is_number
    assert label.leader
    assert all(not label.room.intersects(other) for other in (tiny, *others))


@pytest.mark.parametrize("angle_deg", [0, 45, 90, 200])
def test_the_grain_arrow_runs_its_way_inside_the_piece_and_clear_of_the_words(angle_deg):
    shape = box(0, 0, 200, 120)
    label = label_inside(shape, LONG, 12)
    arrow = arrow_along(shape, angle_deg, label.room)
    assert shape.covers(arrow)
    assert not arrow.intersects(label.room)
    (x0, y0), (x1, y1) = arrow.coords
    lies = math.degrees(math.atan2(y1 - y0, x1 - x0))
    assert (lies - angle_deg + 180) % 360 == pytest.approx(180)


@settings(max_examples=60, deadline=None)
@given(st.floats(2, 300), st.floats(2, 300), st.integers(1, 99), st.sampled_from([0, 37, 90]))
def test_no_piece_is_too_small_or_too_thin_to_be_named(wide, high, number, angle_deg):
    shape = box(0, 0, wide, high)
    frame = box(-200, -200, 500, 500)
    label = (
        label_inside(shape, [(f"{number}  ear 1", "left")], 12)
        or number_inside(shape, number, 12)
        or number_beside(shape, number, 12, [shape], frame)
    )
    assert str(number) in label.lines[0]
    assert frame.covers(label.room)
    arrow = arrow_along(shape, angle_deg, label.room)
    assert arrow is None or shape.covers(arrow)


def test_letters_go_on_after_z():
    letters = [letter_of(number) for number in range(60)]
    assert letters[0] == "A"
    assert len(set(letters)) == 60


def two_squares(direction="along", repeat=(20.0, None)):
    panel = Panel("p", "g", tuple(box(0, 0, 400, 400).exterior.coords[:-1]))
    striped = Panel(panel.id, panel.garment, panel.outline, repeat=Repeat(*repeat, (3.0, 7.0)))
    spots = [Spot("side", copy, (0.0, 30.0)) for copy in (0, 1)]
    match = Match(*spots, direction, 3.0)
    return Problem((striped,), (Piece("side", SQUARE, count=2),), match=(match,))


@pytest.mark.parametrize("offset_mm", [0, 1.5, 2.99, 3.01, 10, 19, 20, 31.5])
@pytest.mark.parametrize("direction", ["along", "across", "both"])
def test_what_is_said_to_be_missed_agrees_with_the_verifier(offset_mm, direction):
    problem = two_squares(direction, repeat=(20.0, 25.0))
    side = problem.pieces[0]
    lay = [
        placement_of(side, 0, "p", 0, (20, 20)),
        placement_of(side, 1, "p", 0, (150, 20 + offset_mm)),
    ]
    (rule,) = kept_rules(problem, lay, lambda piece, copy: f"{piece} {copy + 1}", {})
    is_fault = any(fault.kind == "match" for fault in faults_of(problem, lay))
    assert (rule.off_mm > rule.within_mm + 0.01) is is_fault
    if direction == "along":
        expected = abs((offset_mm + 10) % 20 - 10)
        assert rule.off_mm == pytest.approx(expected)


def test_a_match_on_plain_cloth_misses_nothing():
    problem = two_squares(repeat=(None, None))
    lay = [placement_of(problem.pieces[0], c, "p", 0, (20 + 100 * c, 20)) for c in (0, 1)]
    (rule,) = kept_rules(problem, lay, lambda piece, copy: piece, {})
    assert rule.off_mm is None


def test_a_pin_says_how_far_its_detail_lies_from_its_place():
    panel = Panel("p", "g", tuple(box(0, 0, 400, 400).exterior.coords[:-1]))
    pin = Pin("side", 0, "p", (30.0, 30.0), (103.0, 104.0), 9.0)
    problem = Problem((panel,), (Piece("side", SQUARE),), pin=(pin,))
    lay = [placement_of(problem.pieces[0], 0, "p", 0, (70, 70))]
    (rule,) = kept_rules(problem, lay, lambda piece, copy: piece, {("side", 0): "Pocket"})
    assert rule.words == "Pocket shows on side"
    assert rule.off_mm == pytest.approx(5)  # 3 across and 4 up
    assert marks_of(problem, lay)["side", 0][0].letter == "A"


def test_stripes_are_drawn_square_to_the_way_they_repeat():
    problem = two_squares("both", repeat=(20.0, 25.0))
    lay = [placement_of(problem.pieces[0], 0, "p", 0, (20, 20))]
    (mark,) = marks_of(problem, lay)["side", 0]
    assert [angle % 180 for angle in mark.stripes_deg] == [0, 90]


SPARE = {
    "used_mm2": 40_000,
    "usable_mm2": 100_000,
    "holds_to_inset_mm": 12.9,
    "holds_to_shrink_pct": 4.26,
}


def test_what_a_lay_still_stands_is_never_rounded_up():
    words = " ".join(spare_words(SPARE, "cm"))
    assert "1.2 cm further in" in words
    assert "another 4.2 %" in words
    assert "of 100 cases" not in words
    tight = " ".join(spare_words({**SPARE, "holds_to_inset_mm": 3.0}, "cm"))
    assert "That is little" in tight


def test_a_chance_is_told_by_its_lower_bound():
    chance = {"low": 0.969, "high": 1.0, "samples": 100, "tape_mm": 3.0}
    words = spare_words({**SPARE, "chance": chance}, "cm", is_shrinkage_foretold=True)
    assert "in at least 96 of 100 cases" in words[-1]
    assert "shrinks as foretold" in words[-1]
    assert "shrinks" not in spare_words({**SPARE, "chance": chance}, "cm")[-1]


def test_labels_of_a_full_panel_do_not_cover_each_other():
    shapes = [Point(40 * n, 0).buffer(5) for n in range(6)]
    frame = box(-60, -80, 300, 80)
    taken = list(shapes)
    labels = []
    for number, shape in enumerate(shapes, 1):
        label = number_beside(shape, number, 10, taken, frame)
        taken.append(label.room)
        labels.append(label)
    pairs = itertools.combinations([label.room for label in labels], 2)
    assert not any(a.intersects(b) for a, b in pairs)
    assert all(label.leader for label in labels)

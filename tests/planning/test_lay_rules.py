"""From rows to the question: each rule as the coverage room takes it, and what cannot be read."""

import pytest
from shapely import Polygon

from inventory.models import Garment, Panel
from planning.coverage.problem import Locked, Match, Pin, Repeat, Spot
from planning.coverage.sound import refuse_unsound
from planning.lay_rules import rules_for
from planning.models import PatternPiece
from planning.problems import cloth_of, problem_of, too_much
from planning.spots import copy_words, middle_of, spots_of
from tests import builders

pytestmark = pytest.mark.django_db

SQUARE = [[0, 0], [200, 0], [200, 200], [0, 200]]
POCKET = [[100, 100], [200, 100], [200, 220], [100, 220]]


def asked(keepsake):
    problem = problem_of(keepsake, keepsake.pattern.sizes.get(), cloth_of(keepsake))
    refuse_unsound(problem)
    return problem


def remarks(keepsake):
    return rules_for(keepsake, keepsake.pattern.sizes.get(), cloth_of(keepsake).rows).remarks


@pytest.fixture
def panel(cushion) -> Panel:
    return Panel.objects.get()


@pytest.fixture
def side(cushion) -> PatternPiece:
    """The cushion's piece, with a mark, a notch and two edges, one of them named like the mark."""
    row = cushion.pattern.sizes.get().pieces.get()
    row.marks = [{"name": "eye", "at": [50, 60]}]
    row.notches = [{"name": "top", "at": [100, 200], "is_double": False}]
    row.edges = [{"name": "front", "start": 1, "end": 2}, {"name": "eye", "start": 3, "end": 1}]
    row.save()
    return row


def match(cushion, **facts):
    facts = {"a_piece": "side", "a_copy": 0, "b_piece": "side", "b_copy": 1, **facts}
    return cushion.matches.create(workshop=cushion.workshop, **facts)


def pin(cushion, detail, **facts):
    facts = {"piece_name": "side", "copy": 1, **facts}
    return cushion.pins.create(workshop=cushion.workshop, detail=detail, **facts)


def lock(cushion, panel, **facts):
    place = {"rotation_deg": 180, "x_mm": 210, "y_mm": 215, "copy": 0, **facts}
    size = cushion.pattern.sizes.get()
    return cushion.locks.create(
        workshop=cushion.workshop, size=size, panel=panel, piece_name="side", **place
    )


def test_spots_are_the_middle_the_marks_the_notches_and_the_middles_of_the_edges(side):
    assert spots_of(side) == {
        "": (100, 100),
        "eye": (50, 60),
        "top": (100, 200),
        "front": (200, 100),
        "eye (2)": (0, 0),  # half-way from the upper left corner down and on to the lower right
    }


def test_the_middle_of_a_hollow_shape_lies_on_it():
    hollow = Polygon([(0, 0), (90, 0), (90, 10), (10, 10), (10, 90), (0, 90)])
    assert hollow.covers(Polygon([middle_of(hollow)] * 3).representative_point())


def test_copies_are_named_by_number_and_hand(side):
    assert [copy_words(side, copy) for copy in (0, 1)] == ["side 1, left", "side 2, right"]
    side.mirrored = 0
    assert copy_words(side, 1) == "side 2"
    side.count = 1
    assert copy_words(side, 0) == "side"


def test_pieces_that_belong_together_come_from_one_garment(cushion):
    cushion.together.create(workshop=cushion.workshop, piece_names=["side", "lid"])
    assert asked(cushion).same_garment == (("side",),)
    assert "“lid”, which this pattern does not have" in remarks(cushion)[0].words


def test_a_piece_cut_on_the_bias_says_so(cushion, side):
    PatternPiece.objects.update(is_bias=True)
    assert asked(cushion).pieces[0].bias


def test_a_locked_piece_lies_where_it_was_put(cushion, panel):
    lock(cushion, panel)
    name = cloth_of(cushion).panels[0].id
    assert asked(cushion).locked == (Locked("side", 0, name, False, 180, (210, 215)),)


def test_a_lock_of_another_size_or_on_a_panel_that_is_gone_is_not_counted(cushion, panel):
    lock(cushion, panel, copy=1)
    gone = builders.panel(panel.garment, name="Front", removed_at="2026-01-01T00:00Z")
    lock(cushion, gone)
    assert [each.copy for each in asked(cushion).locked] == [1]
    assert "side 1, left was kept in its place" in remarks(cushion)[0].words
    cushion.locks.update(size=builders.pattern(cushion.workshop).sizes.get())
    assert asked(cushion).locked == ()


def test_a_detail_is_pinned_by_its_middle_and_is_cloth_again(cushion, panel, side):
    pocket = builders.detail(panel, POCKET)
    assert len(asked(cushion).panels[0].flaws) == 1
    pin(cushion, pocket, spot="eye", within_mm=7)
    problem = asked(cushion)
    assert problem.panels[0].flaws == ()
    name = problem.panels[0].id
    assert problem.pin == (Pin("side", 1, name, (50, 60), (150, 160), 7),)


def test_a_circle_is_pinned_by_its_centre(cushion, panel):
    badge = builders.detail(panel, [[130, 240]], radius_mm=20)
    pin(cushion, badge)
    assert asked(cushion).pin[0].panel_point == pytest.approx((130, 240))


def test_what_a_pinned_detail_lies_on_is_cloth_too_and_is_said(cushion, panel):
    builders.detail(panel, POCKET, note="Breast pocket")
    builders.detail(panel, [[300, 300], [340, 300], [340, 340]], note="Badge")
    sprig = builders.detail(panel, [[140, 140], [160, 140], [160, 180]], note="Sprig")
    pin(cushion, sprig)
    assert len(asked(cushion).panels[0].flaws) == 1
    words = [remark.words for remark in remarks(cushion)]
    assert words == ["Breast pocket on Back may be cut into, because Sprig lies on it."]


def test_a_pin_on_cloth_that_is_left_out_stops_the_check(cushion, panel):
    other = builders.panel(builders.garment(cushion.collection), name="Front")
    pin(cushion, builders.detail(other, POCKET))
    assert asked(cushion).pin
    cushion.left_out.add(other.garment)
    cushion = type(cushion).objects.get()
    problem = asked(cushion)
    assert problem.pin == ()
    assert problem.pieces[0].panels == ()  # no verdict from before the rule may stand
    (remark,) = remarks(cushion)
    assert remark.stops
    assert "is not in the cloth" in remark.words


def test_a_pin_where_the_piece_may_not_be_cut_stops_the_check(cushion, panel):
    pin(cushion, builders.detail(panel, POCKET))
    other = builders.panel(builders.garment(cushion.collection), name="Front").garment
    cushion.piece_rules.create(workshop=cushion.workshop, piece_name="side", garment=other)
    assert "may not be cut from" in remarks(cushion)[0].words
    asked(cushion)


@pytest.mark.parametrize("facts", [{"copy": 2}, {"spot": "tail"}])
def test_a_place_that_this_size_does_not_have_stops_the_check(cushion, panel, facts):
    pin(cushion, builders.detail(panel, POCKET), **facts)
    (remark,) = remarks(cushion)
    assert remark.stops
    assert asked(cushion).pin == ()


def striped(panel, **facts):
    Garment.objects.filter(pk=panel.garment_id).update(surface="stripe", **facts)
    Panel.objects.filter(pk=panel.pk).update(repeat_x_mm=10, repeat_y_mm=20)


def test_stripes_that_meet_name_both_places_and_the_panels_repeat(cushion, panel, side):
    striped(panel, repeat_along_mm=40)
    match(cushion, a_spot="front", b_spot="front", direction="both", within_mm=2)
    problem = asked(cushion)
    front = (Spot("side", 0, (200, 100)), Spot("side", 1, (200, 100)))
    assert problem.match == (Match(*front, "both", 2),)
    assert problem.panels[0].repeat == Repeat(40, None, (10, 20))
    assert problem.pieces[0].panels is None
    assert not rules_for(cushion, side.size, cloth_of(cushion).rows).waits


@pytest.mark.parametrize(
    ("garment", "on_panel", "words"),
    [
        ({"repeat_along_mm": 40}, {"repeat_x_mm": None}, "where a stripe starts"),
        ({}, {}, "its repeat is not measured"),
        ({"repeat_along_mm": 40}, {"is_measured_after_wash": False}, "still to be washed"),
    ],
)
def test_no_match_passes_on_a_panel_whose_stripes_are_not_known(
    cushion, panel, garment, on_panel, words
):
    plain = builders.panel(builders.garment(cushion.collection), name="Front")
    match(cushion)
    assert remarks(cushion) == []
    striped(panel, **garment)
    Panel.objects.filter(pk=panel.pk).update(**on_panel)
    rules = rules_for(cushion, cushion.pattern.sizes.get(), cloth_of(cushion).rows)
    assert rules.waits
    (remark,) = rules.remarks
    assert words in remark.words
    assert not remark.stops
    assert asked(cushion).pieces[0].panels == (f"{plain.garment.tag} Front",)
    cushion.matches.all().delete()
    assert asked(type(cushion).objects.get()).pieces[0].panels is None


def test_a_lock_on_a_panel_that_waits_for_its_stripes_stops_the_check(cushion, panel):
    striped(panel, repeat_along_mm=40)
    Panel.objects.update(repeat_x_mm=None)
    match(cushion)
    lock(cushion, panel)
    assert any(remark.stops for remark in remarks(cushion))
    assert asked(cushion).locked == ()


def test_too_many_panels_are_refused_with_what_to_do(cushion, monkeypatch):
    monkeypatch.setattr("planning.problems.MOST_PANELS", 0)
    remark = too_much(cushion, cushion.pattern.sizes.get(), cloth_of(cushion))
    assert "Leave out the garments" in remark.words
    monkeypatch.setattr("planning.problems.MOST_PANELS", 200)
    monkeypatch.setattr("planning.problems.MOST_COPIES", 1)
    remark = too_much(cushion, cushion.pattern.sizes.get(), cloth_of(cushion))
    assert "asks for 2 pieces" in remark.words


def test_a_rule_about_a_garment_without_cloth_leaves_no_panel(cushion):
    bare = builders.garment(cushion.collection, name="Scarf")
    cushion.piece_rules.create(workshop=cushion.workshop, piece_name="side", garment=bare)
    assert asked(cushion).pieces[0].garments == ()

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import Point, Polygon

from planning.drafting.bear import bear
from planning.drafting.errors import DraftError
from planning.drafting.measures import CHARACTERS
from planning.drafting.pieces import DraftSize
from planning.drafting.rings import is_simple, perimeter_mm, signed_area_mm2
from planning.drafting.stance import Stance
from shared.errors import OutlineError
from tests.planning.drafting.shapes_for_tests import corner_deg

HEIGHTS_MM = (150, 230, 300, 460, 500)
STANDING = [bear(h, c) for h in HEIGHTS_MM for c in CHARACTERS]
SITTING = [bear(h, c, stance=Stance("sitting", "aside")) for h in HEIGHTS_MM for c in CHARACTERS]
every_bear = pytest.mark.parametrize("size", [*STANDING, *SITTING])
every_standing_bear = pytest.mark.parametrize("size", STANDING)
COUNTS = {
    "body front": (2, 1),
    "body back": (2, 1),
    "head side": (2, 1),
    "head gusset": (1, 0),
    "ear": (4, 2),
    "arm outer": (2, 1),
    "arm inner": (2, 1),
    "paw pad": (2, 1),
    "leg": (4, 2),
    "sole": (2, 1),
}
# Of the bear of 300 mm, before there were other kinds.
PERIMETERS_MM = {
    "body front": 391.3,
    "body back": 391.5,
    "head side": 366.2,
    "head gusset": 471.7,
    "ear": 166.5,
    "arm outer": 315.5,
    "arm inner": 264.9,
    "paw pad": 167.8,
    "leg": 412.3,
    "sole": 189.3,
}
CORNERS = {
    "body front": 91,
    "body back": 100,
    "head side": 106,
    "head gusset": 133,
    "ear": 65,
    "arm outer": 104,
    "arm inner": 72,
    "paw pad": 48,
    "leg": 106,
    "sole": 96,
}


def test_the_bear_has_ten_kinds_of_piece_with_left_and_right_copies() -> None:
    assert {piece.name: (piece.count, piece.mirrored) for piece in bear(300)} == COUNTS


@every_bear
def test_every_ring_is_simple_and_anticlockwise(size: DraftSize) -> None:
    for piece in size:
        assert is_simple(piece.seam_line), piece.name
        assert is_simple(piece.cut_line), piece.name
        assert 0 < signed_area_mm2(piece.seam_line) < signed_area_mm2(piece.cut_line)


@settings(max_examples=25, deadline=None)
@given(st.floats(150, 500), st.sampled_from(sorted(CHARACTERS)), st.sampled_from([4.0, 6.0, 10.0]))
def test_any_size_can_be_drafted_with_any_usual_allowance(
    height: float, character: str, allowance: float
) -> None:
    assert all(is_simple(piece.cut_line) for piece in bear(height, character, allowance))


@every_bear
def test_marks_and_lines_lie_inside_the_seam_line(size: DraftSize) -> None:
    for piece in size:
        inside = Polygon(piece.seam_line).buffer(0.01)
        places = [mark.at for mark in piece.marks] + [p for s in piece.lines for p in s.points]
        assert all(inside.contains(Point(place)) for place in places), piece.name


def test_eyes_nose_ears_joints_and_places_for_details_are_marked() -> None:
    marked = {piece.name: [mark.name for mark in piece.marks] for piece in bear(300)}
    assert marked["body front"] == ["arm joint", "leg joint", "detail place"]
    assert marked["head side"] == ["eye"]
    assert marked["head gusset"] == ["nose"]
    assert marked["arm outer"] == marked["arm inner"] == ["arm joint"]
    assert marked["leg"] == ["leg joint"]
    assert marked["paw pad"] == marked["sole"] == ["detail place"]
    lines = {piece.name: [line.name for line in piece.lines] for piece in bear(300)}
    assert lines["head side"] == ["ear"]
    assert lines["head gusset"] == ["ear, right", "ear, left"]


@pytest.mark.parametrize(("name", "clear_mm"), [("body front", 22), ("paw pad", 12), ("sole", 16)])
def test_a_place_for_a_detail_has_room_round_it(name: str, clear_mm: float) -> None:
    piece = bear(300).piece(name)
    at = next(mark.at for mark in piece.marks if mark.name == "detail place")
    assert Polygon(piece.seam_line).exterior.distance(Point(at)) > clear_mm


@every_bear
def test_notches_lie_on_the_seam_line(size: DraftSize) -> None:
    for piece in size:
        assert all(notch.at in piece.seam_line for notch in piece.notches)


@pytest.mark.parametrize("character", sorted(CHARACTERS))
@pytest.mark.parametrize("factor", [1.5, 2.0, 3.2])
def test_seam_lines_grow_by_the_factor_and_areas_by_its_square(
    character: str, factor: float
) -> None:
    small, large = bear(150, character), bear(150 * factor, character)
    for little, big in zip(small, large, strict=True):
        assert perimeter_mm(big.seam_line) == pytest.approx(
            factor * perimeter_mm(little.seam_line), abs=0.02
        )
        assert signed_area_mm2(big.seam_line) == pytest.approx(
            factor**2 * signed_area_mm2(little.seam_line), rel=1e-5
        )


@every_bear
def test_the_allowance_has_its_width_at_every_size(size: DraftSize) -> None:
    for piece in size:
        seam = Polygon(piece.seam_line)
        away = [seam.distance(Point(corner)) for corner in piece.cut_line]
        assert min(away) == pytest.approx(6, abs=0.05), piece.name
        assert max(away) == pytest.approx(6, abs=0.05), piece.name


@every_standing_bear
@pytest.mark.parametrize(
    ("first", "second"),
    [
        (("body front", "centre front, upper"), ("body front", "centre front, upper")),
        (("body front", "neck"), ("body back", "side, neck to shoulder")),
        (("body back", "neck"), ("body back", "neck")),
        (("head side", "neck"), ("head side", "neck")),
        (("head side", "nape to crown"), ("head gusset", "nape")),
        (("arm inner", "wrist"), ("paw pad", "rim")),
        (("leg", "foot"), ("leg", "foot")),
    ],
)
def test_a_free_edge_runs_on_straight_across_a_seam(
    size: DraftSize, first: tuple[str, str], second: tuple[str, str]
) -> None:
    total = corner_deg(size.piece(first[0]), first[1]) + corner_deg(
        size.piece(second[0]), second[1]
    )
    assert total == pytest.approx(180, abs=12)


@every_standing_bear
def test_the_four_gores_meet_flat_under_the_seat(size: DraftSize) -> None:
    front = corner_deg(size.piece("body front"), "side, seat to hip")
    back = corner_deg(size.piece("body back"), "centre back, lower")
    assert 2 * (front + back) == pytest.approx(360, abs=30)


def test_the_nose_is_no_ruffle_in_the_classic_bear() -> None:
    at_nose = corner_deg(bear(300).piece("head side"), "chin")
    assert 2 * at_nose + 180 == pytest.approx(360, abs=25)


def test_narrow_limbs_are_said_so() -> None:
    assert [note.split(" is ")[0] for note in bear(150).notes] == ["The arm outer", "The leg"]
    assert bear(300).notes == ()


@pytest.mark.parametrize("height", [149.9, 500.1, 0, -300, math.nan])
def test_heights_out_of_range_are_refused(height: float) -> None:
    with pytest.raises(DraftError, match="can stand 150 to 500 mm"):
        bear(height)
    with pytest.raises(DraftError, match="can sit 150 to 500 mm"):
        bear(height, stance=Stance("sitting"))


def test_the_classic_bear_stays_as_it_is() -> None:
    """Lays and checks that are kept rest on these very outlines."""
    assert {p.name: round(perimeter_mm(p.cut_line), 1) for p in bear(300)} == PERIMETERS_MM
    assert {piece.name: len(piece.seam_line) for piece in bear(300)} == CORNERS


def test_an_unknown_character_is_refused_with_the_known_ones() -> None:
    with pytest.raises(DraftError, match="classic, baby, long-limbed"):
        bear(300, "grizzly")


def test_a_negative_allowance_is_refused() -> None:
    with pytest.raises(OutlineError):
        bear(300, "classic", -1)

"""A maker's own pattern: entered, changed, graded, sewn together, kept once it is planned with."""

import pytest

from planning.library import give_built_in
from planning.models import Pattern, PatternPiece, PatternSize
from tests import builders
from tests.planning.entered import (
    SQUARE,
    estimates,
    points,
    put_back,
    seam,
    seam_page,
    wide_mm,
)


def test_a_square_comes_in_true_to_scale(square):
    from shapely import Polygon

    seam, cut = Polygon(square.seam_line_mm), Polygon(square.cut_line_mm)
    assert seam.area == pytest.approx(100 * 100)
    # Steiner's formula for a convex shape with rounded corners: A + L a + pi a²
    assert cut.area == pytest.approx(10_000 + 400 * 6 + 3.14159 * 36, rel=1e-3)
    assert [edge["name"] for edge in square.edges] == ["foot", "side", "top", "back"]


def test_a_piece_can_be_changed_and_nothing_else_moves(maker, square):
    address = f"/pieces/{square.pk}/change/"
    form = maker.get(address).context["form"]
    assert form["point_2_across"].value() == "10"
    maker.post(address, points([(0, 0, "foot"), (12, 0, ""), (12, 10, ""), (0, 10, "")]))
    square.refresh_from_db()
    assert max(x for x, _ in square.seam_line_mm) == pytest.approx(120)


def test_inches_with_fractions_come_in_too(client, workshop):
    client.force_login(builders.member(workshop, "inch", units="in").user)
    facts = {"name": "Inches", "height": "12", "seam_allowance": "1/4"}
    client.post("/patterns/new/paper/", facts)
    size = PatternSize.objects.get(pattern__name="Inches")
    corners = [(0, 0, ""), ("3 3/8", 0, ""), ("3 3/8", 2, ""), (0, 2, "")]
    client.post(f"/sizes/{size.pk}/pieces/add/?how=corners", points(corners))
    assert max(x for x, _ in size.pieces.get().seam_line_mm) == pytest.approx(85.725)


@pytest.mark.parametrize(
    ("corners", "facts", "field", "words"),
    [
        (SQUARE[:2], {}, "point_1_across", "three"),
        ([(0, 0, ""), (10, 10, ""), (10, 0, ""), (0, 10, "")], {}, None, "cross"),
        ([*SQUARE[:3], ("", 10, "")], {}, "point_4_across", "both lengths"),
        ([(0, 0, ""), (250, 0, ""), (250, 10, "")], {}, "point_2_across", "table"),
        (SQUARE, {"count": 0}, "count", "At least one"),
        (SQUARE, {"mirrored": 3}, "mirrored", "turned over"),
        (SQUARE, {"fold_edge": "seat"}, "fold_edge", "seat"),
        (SQUARE, {"opening": "seat"}, "opening", "seat"),
        (SQUARE, {"notch_1_edge": "foot", "notch_1_at": "14"}, "notch_1_edge", "foot"),
        (SQUARE, {"mark_1_name": "eye", "mark_1_across": "3"}, "mark_1_across", "place"),
        (SQUARE, {"line": "cut", "outside": "6"}, "outside", ""),
        (SQUARE, {"notch_2_edge": "seat", "notch_2_at": "1"}, "notch_2_edge", "Notch 2"),
        (SQUARE, {"notch_3_name": "centre"}, "notch_3_edge", "edge and a distance"),
        (SQUARE, {"mark_4_name": "eye"}, "mark_4_across", "place"),
        ([*SQUARE, ("", "", "lid")], {}, "point_5_across", "both lengths"),
        ([*SQUARE, ("", "", ""), (0, 0, "")], {}, "point_6_across", "Point 6 is in the place"),
        (SQUARE, {"name": ""}, "name", "required"),
    ],
)
def test_bad_input_names_the_field_and_keeps_what_was_typed(
    maker, size, corners, facts, field, words
):
    page = maker.post(f"/sizes/{size.pk}/pieces/add/?how=corners", points(corners, **facts))
    errors = page.context["form"].errors
    assert words.lower() in str(errors).lower()
    if field:
        assert field in errors
    assert page.context["form"]["point_1_edge"].value() == corners[0][2]
    assert not size.pieces.exists()


def test_a_length_that_cannot_be_read_is_the_only_trouble_told(maker, size):
    facts = points(SQUARE) | {"point_2_across": "x", "outside": "y"}
    page = maker.post(f"/sizes/{size.pk}/pieces/add/?how=corners", facts)
    assert set(page.context["form"].errors) == {"point_2_across", "outside"}
    assert page.content.decode().count("<details open>") == 1  # the one with the wrong field


def test_a_quarter_of_an_inch_is_offered_to_those_who_measure_in_inches(client, workshop):
    client.force_login(builders.member(workshop, "inch", units="in").user)
    for address in ("/patterns/new/paper/", "/patterns/new/draft/"):
        assert client.get(address).context["form"]["seam_allowance"].value() == "1/4"


def test_two_pieces_of_one_size_cannot_share_a_name(maker, size, square):
    page = maker.post(f"/sizes/{size.pk}/pieces/add/?how=corners", points(SQUARE, name="Side"))
    assert "name" in page.context["form"].errors


def test_a_basic_shape_makes_a_piece_by_its_measures(maker, size):
    facts = points([], name="sole", count=2, mirrored=0)
    page = maker.get(f"/sizes/{size.pk}/pieces/add/?how=circle")
    measures = [field.name for field in page.context["form"].measure_fields]
    maker.post(f"/sizes/{size.pk}/pieces/add/?how=circle", {**facts, measures[0]: "8"})
    from shapely import Polygon

    ring = Polygon(size.pieces.get().seam_line_mm)
    assert ring.area == pytest.approx(3.14159 * 40**2, rel=5e-3)


def test_more_rows_lose_nothing_and_save_nothing(maker, size):
    page = maker.post(
        f"/sizes/{size.pk}/pieces/add/?how=corners",
        {**points(SQUARE), "more_rows": "yes", "rows": "12"},
    )
    form = page.context["form"]
    assert form.rows == 20
    assert form["point_3_edge"].value() == "top"
    assert not size.pieces.exists()


def test_the_sketch_draws_what_is_typed_so_far(maker, size):
    address = f"/sizes/{size.pk}/pieces/sketch/"
    half = maker.get(address, points(SQUARE[:2])).content.decode()
    assert half.count('<circle class="handle') == 2
    assert "points" in half
    whole = maker.get(address, points(SQUARE)).content.decode()
    assert "10 cm" in whole  # each edge with its length
    assert "piece-shape" in whole


def test_a_piece_is_drawn_on_the_page_itself(maker, size, square):
    drawn = maker.get(f"/pieces/{square.pk}/change/").content.decode()
    assert drawn.count('<circle class="handle') == 4
    assert "side: 10 cm" in drawn
    wrong = points([*SQUARE[:3], (5, -1, "")])
    wrong = maker.post(f"/pieces/{square.pk}/change/", wrong).content.decode()
    assert wrong.count('<circle class="handle') == 3
    assert "side: 10 cm" not in wrong


def test_a_pattern_without_pieces_asks_for_them_first(maker, own, size):
    page = maker.get(own.get_absolute_url()).content.decode()
    assert "Add its pieces" in page
    assert "Plan a keepsake" not in page


def test_a_size_is_graded_at_the_seam_line_with_the_allowance_kept(maker, own, size, square):
    maker.post(f"/patterns/{own.pk}/grade/", {"graded_from": size.pk, "heights": "15, 45"})
    small = own.sizes.get(height_mm=150).pieces.get()
    assert max(x for x, _ in small.seam_line_mm) == pytest.approx(50)
    wide = max(x for x, _ in small.cut_line_mm) - min(x for x, _ in small.cut_line_mm)
    assert wide == pytest.approx(50 + 2 * 6, abs=0.1)


def test_grades_follow_the_size_they_came_from(maker, own, size, square):
    maker.post(f"/patterns/{own.pk}/grade/", {"graded_from": size.pk, "heights": "60"})
    wider = [(0, 0, ""), (20, 0, ""), (20, 10, ""), (0, 10, "")]
    maker.post(f"/pieces/{square.pk}/change/", points(wider))
    large = own.sizes.get(height_mm=600).pieces.get()
    assert max(x for x, _ in large.seam_line_mm) == pytest.approx(400)
    page = maker.get(f"/pieces/{large.pk}/change/", follow=True)
    assert "graded from another" in page.content.decode()


@pytest.mark.parametrize("heights", ["", "x", "1", "30", "15, 9000"])
def test_heights_that_cannot_be_are_refused(maker, own, size, square, heights):
    page = maker.post(f"/patterns/{own.pk}/grade/", {"graded_from": size.pk, "heights": heights})
    assert "heights" in page.context["form"].errors
    assert own.sizes.count() == 1


def test_seams_are_walked_and_a_bad_one_is_told_everywhere(maker, own, size, square, workshop):
    corners = [(0, 0, "foot"), (10, 0, "side"), (10, 11, "top"), (0, 11, "back")]
    maker.post(f"/sizes/{size.pk}/pieces/add/?how=corners", points(corners, name="back"))
    facts = seam(("side", "side"), ("back", "side"))
    maker.post(f"/patterns/{own.pk}/seams/add/", facts)
    page = maker.get(own.get_absolute_url())
    (found,) = page.context["findings"].failing
    assert found.walk.difference_mm == pytest.approx(-10)
    assert "1 does not meet" in page.content.decode()
    assert "Side B is 10.0 mm too long" in page.content.decode()
    assert "do not meet" in page.content.decode()
    assert "do not meet" in maker.get(size.get_absolute_url()).content.decode()
    keepsake = builders.keepsake(builders.collection(workshop), own)
    assert "do not meet" in maker.get(keepsake.get_absolute_url()).content.decode()


def test_ease_lets_a_longer_side_meet(maker, own, size, square):
    corners = [(0, 0, "foot"), (10, 0, "side"), (10, 10.4, "top"), (0, 10.4, "back")]
    maker.post(f"/sizes/{size.pk}/pieces/add/?how=corners", points(corners, name="back"))
    facts = seam(("back", "side"), ("side", "side"), ease_most_pct=5)
    maker.post(f"/patterns/{own.pk}/seams/add/", facts)
    assert not maker.get(own.get_absolute_url()).context["findings"].is_flawed


def test_a_seam_is_changed_and_removed(maker, own, size, square):
    maker.post(f"/patterns/{own.pk}/seams/add/", seam(("side", "foot"), ("side", "foot")))
    own.refresh_from_db()
    maker.post(seam_page(own), seam(("side", "top"), ("side", "top")))
    own.refresh_from_db()
    assert own.seams[0]["a"] == [["side", "top", 1]]
    kept = own.seams
    maker.post(f"{seam_page(own)}remove/")
    own.refresh_from_db()
    assert own.seams == []
    put_back(maker, own)
    own.refresh_from_db()
    assert own.seams == kept


def test_a_renamed_edge_keeps_its_seams(maker, own, size, square):
    maker.post(f"/patterns/{own.pk}/seams/add/", seam(("side", "foot"), ("side", "foot")))
    corners = [(0, 0, "sole"), *SQUARE[1:]]
    maker.post(f"/pieces/{square.pk}/change/", points(corners))
    own.refresh_from_db()
    assert own.seams[0]["a"] == [["side", "sole", 1]]
    assert not maker.get(own.get_absolute_url()).context["findings"].is_flawed


def test_a_copy_of_a_built_in_may_lose_and_rename_pieces(maker, workshop):
    maker.post(f"/patterns/{give_built_in(workshop).pk}/copy/")
    size = PatternSize.objects.filter(pattern__name="Bearing Cloth bear, my own").first()
    volume = {each.name: each.likely for each, *_ in estimates(maker, size)}["stuffing volume"]
    piece = size.pieces.first()
    facts = {"name": "tummy", "count": piece.count, "mirrored": piece.mirrored, "grain_deg": 90.0}
    maker.post(f"/pieces/{piece.pk}/change/", facts)
    after = {each.name: each.likely for each, *_ in estimates(maker, size)}["stuffing volume"]
    assert after == pytest.approx(volume)
    page = maker.post(f"/pieces/{piece.pk}/remove/", follow=True)
    assert page.status_code == 200
    assert "seams do not meet" in page.content.decode()


def test_a_renamed_piece_keeps_its_seams(maker, own, size, square):
    maker.post(f"/patterns/{own.pk}/seams/add/", seam(("side", "foot"), ("side", "foot")))
    maker.post(f"/pieces/{square.pk}/change/", points(SQUARE, name="front"))
    own.refresh_from_db()
    assert own.seams[0]["a"] == [["front", "foot", 1]]


def test_a_size_too_small_for_its_points_stands_by_itself_all_the_same(maker, own, size):
    # a step of 0.5 mm at 30 cm is under the nearest that two points may lie at 3 cm
    corners = [(0, 0, ""), (5, 0, ""), (5, 0.05, ""), (10, 0.05, ""), (10, 10, ""), (0, 10, "")]
    maker.post(f"/sizes/{size.pk}/pieces/add/?how=corners", points(corners))
    maker.post(f"/patterns/{own.pk}/grade/", {"graded_from": size.pk, "heights": "3"})
    small = own.sizes.get(height_mm=30)
    maker.post(f"/sizes/{small.pk}/own/")
    assert maker.get(f"/pieces/{small.pieces.get().pk}/change/").status_code == 200


def test_a_graded_size_that_stands_by_itself_keeps_its_points(maker, own, size, square):
    facts = points(SQUARE, notch_1_edge="top", notch_1_at="4", line="seam")
    maker.post(f"/pieces/{square.pk}/change/", facts)
    maker.post(f"/patterns/{own.pk}/grade/", {"graded_from": size.pk, "heights": "15"})
    small = own.sizes.get(height_mm=150)
    before = small.pieces.get()
    maker.post(f"/sizes/{small.pk}/own/")
    form = maker.get(f"/pieces/{before.pk}/change/").context["form"]
    assert form["point_2_across"].value() == "5"
    maker.post(f"/pieces/{before.pk}/change/", {f.name: f.value() or "" for f in form})
    after = small.pieces.get()
    assert after.seam_line_mm == before.seam_line_mm
    assert after.notches == before.notches


HANDED = [(0, 0, ""), (10, 0, ""), (10, 4, ""), (3, 10, ""), (0, 10, "")]


def test_hands_that_all_face_one_way_stop_the_check(maker, own, size, workshop):
    maker.post(f"/sizes/{size.pk}/pieces/add/?how=corners", points(HANDED, name="ear", mirrored=0))
    page = maker.get(own.get_absolute_url())
    assert page.context["mistakes"]
    assert "wrong-hand" in page.content.decode()
    assert size.pieces.get().get_absolute_url() in page.content.decode()
    keepsake = builders.keepsake(builders.collection(workshop), own)
    builders.panel(builders.garment(keepsake.collection))
    answer = maker.post(f"/keepsakes/{keepsake.pk}/check/", follow=True)
    assert "ear" in answer.content.decode()
    assert not keepsake.checks.exists()


def test_copies_meant_to_face_one_way_are_let_through(maker, own, size):
    facts = points(HANDED, name="gore", count=6, mirrored=0, same_hand="on")
    maker.post(f"/sizes/{size.pk}/pieces/add/?how=corners", facts)
    assert not maker.get(own.get_absolute_url()).context["mistakes"]


def test_what_is_planned_with_stays_and_a_new_version_can_change(maker, own, square, workshop):
    keepsake = builders.keepsake(builders.collection(workshop), own)
    page = maker.post(f"/pieces/{square.pk}/change/", points(HANDED), follow=True)
    assert "stays as it is" in page.content.decode()
    square.refresh_from_db()
    assert max(x for x, _ in square.seam_line_mm) == pytest.approx(100)
    maker.post(f"/patterns/{own.pk}/version/")
    fresh = Pattern.objects.get(version=2)
    assert fresh.earlier == own
    piece = PatternPiece.objects.get(size__pattern=fresh)
    assert piece.seam_line_mm == square.seam_line_mm
    maker.post(f"/pieces/{piece.pk}/change/", points(HANDED))
    keepsake.refresh_from_db()
    assert keepsake.pattern == own
    assert fresh.get_absolute_url() in maker.get(keepsake.get_absolute_url()).content.decode()
    assert [row for row, *_ in maker.get("/patterns/").context["patterns"]].count(own) == 0


def test_a_built_in_stays_and_its_copy_is_the_makers_own(maker, workshop):
    bear = give_built_in(workshop)
    page = maker.get(f"/patterns/{bear.pk}/change/", follow=True)
    assert "Make a copy" in page.content.decode()
    maker.post(f"/patterns/{bear.pk}/copy/")
    copy = Pattern.objects.get(name="Bearing Cloth bear, my own")
    assert not copy.is_settled
    assert copy.sizes.count() == bear.sizes.count()
    assert not maker.get(copy.get_absolute_url()).context["findings"].is_flawed


def test_putting_away_and_bringing_back_loses_nothing(maker, own):
    maker.post(f"/patterns/{own.pk}/put-away/")
    assert own not in [row for row, *_ in maker.get("/patterns/").context["patterns"]]
    assert own in [row for row, *_ in maker.get("/patterns/?show=away").context["patterns"]]
    maker.post(f"/patterns/{own.pk}/bring-back/")
    assert own in [row for row, *_ in maker.get("/patterns/").context["patterns"]]


def test_another_allowance_moves_the_cutting_line_only(maker, own, square):
    facts = {"name": own.name, "seam_allowance": "1"}
    maker.post(f"/patterns/{own.pk}/change/", facts)
    before = square.seam_line_mm
    square.refresh_from_db()
    assert square.seam_line_mm == before
    assert min(x for x, _ in square.cut_line_mm) == pytest.approx(-10, abs=0.05)


def test_another_allowance_inside_a_cutting_line_reaches_the_graded_sizes(maker, own, size):
    maker.post(f"/sizes/{size.pk}/pieces/add/?how=corners", points(SQUARE, line="cut"))
    maker.post(f"/patterns/{own.pk}/grade/", {"graded_from": size.pk, "heights": "60"})
    large = own.sizes.get(height_mm=600)
    maker.post(f"/patterns/{own.pk}/change/", {"name": own.name, "seam_allowance": "1"})
    # 10 cm as cut, 8 cm inside the new allowance, twice that at twice the height
    assert wide_mm(size.pieces.get().seam_line_mm) == pytest.approx(80)
    assert wide_mm(large.pieces.get().seam_line_mm) == pytest.approx(160)
    assert wide_mm(large.pieces.get().cut_line_mm) == pytest.approx(180, abs=0.1)


def test_an_allowance_a_piece_has_no_room_for_names_it_and_changes_nothing(maker, own, size):
    maker.post(f"/sizes/{size.pk}/pieces/add/?how=corners", points(SQUARE, line="cut"))
    facts = {"name": "Another name", "seam_allowance": "5"}
    page = maker.post(f"/patterns/{own.pk}/change/", facts)
    assert "side" in str(page.context["form"].errors["seam_allowance"])
    own.refresh_from_db()
    assert (own.name, own.seam_allowance_mm) == ("Grandmother’s bear", 6)


def test_stuffed_parts_are_named_by_the_pieces(maker, own, size, square):
    page = maker.get(f"/patterns/{own.pk}/parts/", follow=True)
    assert "No piece names its stuffed part" in page.content.decode()
    maker.post(f"/pieces/{square.pk}/change/", points(SQUARE, part="cushion"))
    maker.post(f"/patterns/{own.pk}/parts/", {"how_many_0": 1, "flat_0": "flat"})
    own.refresh_from_db()
    assert own.parts == [{"name": "cushion", "how_many": 1, "is_flat": True}]
    page = maker.get(size.get_absolute_url())
    stuffing = {each.name: each.likely for each, *_ in page.context["estimates"]}["stuffing volume"]
    # two 10 cm squares: Robin's paper bag, 0.191 litres
    assert stuffing == pytest.approx(0.191, abs=0.001)


def test_a_draft_at_own_heights_walks(maker, workshop):
    facts = {"kind": "bear", "heights": "20, 33.3", "seam_allowance": "0.6"}
    page = maker.post("/patterns/new/draft/", {**facts, "pose": "standing", "face": "ahead"})
    own = Pattern.objects.get(workshop=workshop, kind="bear", built_in="")
    assert page.url == own.get_absolute_url()
    assert [size.height_mm for size in own.sizes.all()] == [200, 333]
    assert not maker.get(own.get_absolute_url()).context["findings"].is_flawed


def test_a_height_the_draft_cannot_have_is_refused(maker, workshop):
    facts = {"kind": "bear", "heights": "90", "seam_allowance": "0.6"}
    page = maker.post("/patterns/new/draft/", facts)
    assert "heights" in page.context["form"].errors
    assert not Pattern.objects.filter(workshop=workshop, built_in="").exists()


@pytest.mark.parametrize("allowance", ["300", "-1", "x", ""])
def test_an_allowance_no_draft_can_have_is_refused(maker, workshop, allowance):
    facts = {"kind": "bear", "heights": "20", "seam_allowance": allowance}
    page = maker.post("/patterns/new/draft/", facts)
    assert "seam_allowance" in page.context["form"].errors
    assert not Pattern.objects.filter(workshop=workshop, built_in="").exists()


PAGES = ("", "grade/", "change/", "seams/add/")


def test_a_stranger_sees_nothing(stranger, own, size, square):
    addresses = [f"/patterns/{own.pk}/{page}" for page in PAGES]
    addresses += [f"/sizes/{size.pk}/{page}" for page in ("", "pieces/add/", "pattern.svg")]
    addresses += [f"/pieces/{square.pk}/{page}" for page in ("", "change/")]
    for address in addresses:
        assert stranger.get(address).status_code == 404, address
    posts = [f"/patterns/{own.pk}/{page}/" for page in ("copy", "version", "put-away")]
    posts += [f"/sizes/{size.pk}/own/", f"/sizes/{size.pk}/remove/", f"/pieces/{square.pk}/remove/"]
    for address in posts:
        assert stranger.post(address).status_code == 404, address


def test_the_look_follows_the_choice_and_nothing_crashes_it(maker):
    address = "/patterns/new/draft/look/"
    standing = maker.get(address, {"kind": "rabbit", "pose": "standing", "face": "ahead"})
    sitting = maker.get(address, {"kind": "rabbit", "pose": "sitting", "face": "aside"})
    assert standing.content != sitting.content
    odd = maker.get(address, {"kind": "pillow", "pose": "sitting", "face": "x"})
    assert odd.content == maker.get(address, {"kind": "pillow"}).content
    assert maker.get(address, {"kind": "dragon"}).status_code == 200


def test_cloth_that_stretches_less_than_asked_is_named(maker, own, size, square, workshop):
    maker.post(f"/pieces/{square.pk}/change/", points(SQUARE, asks_stretch_pct=20))
    collection = builders.collection(workshop)
    builders.garment(collection, name="Jersey", stretch_across_pct=35)
    builders.garment(collection, name="Poplin", stretch_across_pct=2)
    builders.garment(collection, name="Not tested")
    keepsake = builders.keepsake(collection, own)
    page = maker.get(keepsake.get_absolute_url())
    assert {garment.name for _, garment in page.context["stiff"]} == {"Poplin", "Not tested"}
    assert "asks for 20 % stretch" in page.content.decode()

import re

import pytest
from shapely import LinearRing, LineString

from planning.drafting.errors import DraftError
from planning.drafting.figure import Figure, View, figure
from planning.drafting.library import figure_for
from planning.drafting.measures import measures_of
from tests.planning.drafting.shapes_for_tests import ANIMALS, EVERY_MAKE, Make

NUMBERS = re.compile(r"-?\d+(?:\.\d+)?")
both_views = pytest.mark.parametrize("view", ["front", "side"])


def heights(path: str) -> list[float]:
    return [-float(number) for number in NUMBERS.findall(path)[1::2]]


def across(path: str) -> list[float]:
    return [float(number) for number in NUMBERS.findall(path)[::2]]


every_make = pytest.mark.parametrize("make", EVERY_MAKE, ids=str)


def drawn(make: Make, view: View, height_mm: float = 300) -> Figure:
    return figure_for(make.key, height_mm, view, make.pose, make.face)


@both_views
@every_make
@pytest.mark.parametrize("height_mm", [150, 400])
def test_the_crown_is_at_the_height_and_the_lowest_point_on_the_floor(
    view: View, make: Make, height_mm: float
) -> None:
    whole = drawn(make, view, height_mm)
    crown = "figure-head" if make.key in ANIMALS else "figure-body"
    tops = [max(heights(path)) for name, path in whole.paths if name == crown]
    lows = [min(heights(path)) for _, path in whole.paths]
    assert max(tops) == pytest.approx(height_mm, rel=0.012)
    assert min(lows) == pytest.approx(0, abs=0.012 * height_mm)


@both_views
@every_make
def test_no_line_crosses_itself(view: View, make: Make) -> None:
    for name, path in drawn(make, view).paths:
        points = list(zip(across(path), heights(path), strict=True))
        line = LinearRing(points) if path.endswith("Z") else LineString(points)
        assert line.is_simple, name


@both_views
@pytest.mark.parametrize("key", ANIMALS)
def test_a_face_aside_is_drawn_aside(view: View, key: str) -> None:
    """From in front the nose moves to the animal's left; from its left side it comes nearer."""
    middles = {}
    for face in ("ahead", "aside"):
        nose = dict(figure_for(key, 300, view, face=face).paths)["figure-nose"]
        middles[face] = (min(across(nose)) + max(across(nose))) / 2
    assert middles["aside"] > middles["ahead"] + 8
    assert len(eyes(key, view, "ahead")) == (2 if view == "front" else 1)
    assert len(eyes(key, view, "aside")) >= 1


def eyes(key: str, view: View, face: str) -> list[str]:
    paths = figure_for(key, 300, view, face=face).paths
    return [path for name, path in paths if name == "figure-eye"]


@pytest.mark.parametrize("key", ANIMALS)
def test_a_sitting_animal_shows_its_soles(key: str) -> None:
    assert (
        len([n for n, _ in figure_for(key, 300, pose="sitting").paths if n == "figure-foot"]) == 2
    )
    standing = [name for name, _ in figure_for(key, 300).paths]
    assert "figure-foot" not in standing


def test_the_rabbit_shows_its_ears_above_the_crown_and_its_tail_from_the_side() -> None:
    paths = figure_for("rabbit", 300).paths
    assert max(max(heights(path)) for name, path in paths if name == "figure-ear") > 380
    assert "figure-tail" in {name for name, _ in figure_for("rabbit", 300, "side").paths}


def test_the_front_view_shows_the_width_of_the_body() -> None:
    body = next(path for name, path in figure(400).paths if name == "figure-body")
    assert max(across(body)) - min(across(body)) == pytest.approx(
        measures_of(400).body_width_mm, rel=0.01
    )


def test_the_side_view_shows_the_depth_of_head_and_body() -> None:
    m = measures_of(400)
    whole = dict(figure(400, view="side").paths)
    head, body = across(whole["figure-head"]), across(whole["figure-body"])
    assert max(head) - min(head) == pytest.approx(m.head_depth_mm, rel=0.01)
    assert max(body) - min(body) == pytest.approx(m.body_depth_mm, rel=0.02)


def test_the_front_view_is_the_same_left_and_right() -> None:
    for name, path in figure(300).paths:
        if name in ("figure-body", "figure-head", "figure-muzzle", "figure-nose"):
            assert min(across(path)) == pytest.approx(-max(across(path)), abs=0.02)


@both_views
@every_make
def test_the_view_box_holds_every_line(view: View, make: Make) -> None:
    whole = drawn(make, view)
    left, top, wide, tall = (float(number) for number in whole.view_box.split())
    for _, path in whole.paths:
        assert left <= min(across(path)) <= max(across(path)) <= left + wide
        assert top <= -max(heights(path)) <= -min(heights(path)) <= top + tall


@both_views
@every_make
def test_classes_are_plain_names_without_style(view: View, make: Make) -> None:
    for name, path in drawn(make, view).paths:
        assert re.fullmatch(r"figure-[a-z-]+", name)
        assert re.fullmatch(r"M[-\d. L]+Z?", path)


def test_an_unknown_character_is_refused() -> None:
    with pytest.raises(DraftError):
        figure(300, "grizzly")

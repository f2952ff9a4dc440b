import re

import pytest

from planning.drafting.errors import DraftError
from planning.drafting.figure import View, figure
from planning.drafting.measures import CHARACTERS, measures_of

NUMBERS = re.compile(r"-?\d+(?:\.\d+)?")
both_views = pytest.mark.parametrize("view", ["front", "side"])


def heights(path: str) -> list[float]:
    return [-float(number) for number in NUMBERS.findall(path)[1::2]]


def across(path: str) -> list[float]:
    return [float(number) for number in NUMBERS.findall(path)[::2]]


@both_views
@pytest.mark.parametrize("character", sorted(CHARACTERS))
def test_the_head_ends_at_the_height_and_the_feet_on_the_floor(view: View, character: str) -> None:
    drawn = figure(300, character, view)
    head = [path for name, path in drawn.paths if name == "figure-head"]
    feet = [path for name, path in drawn.paths if name in ("figure-leg", "figure-foot")]
    assert max(heights(head[0])) == pytest.approx(300, abs=0.7)
    assert min(min(heights(foot)) for foot in feet) == pytest.approx(0, abs=1.5)


def test_the_front_view_shows_the_width_of_the_body() -> None:
    body = next(path for name, path in figure(400).paths if name == "figure-body")
    assert max(across(body)) - min(across(body)) == pytest.approx(
        measures_of(400).body_width_mm, rel=0.01
    )


def test_the_side_view_shows_the_depth_of_head_and_body() -> None:
    m = measures_of(400)
    drawn = dict(figure(400, view="side").paths)
    head, body = across(drawn["figure-head"]), across(drawn["figure-body"])
    assert max(head) - min(head) == pytest.approx(m.head_depth_mm, rel=0.01)
    assert max(body) - min(body) == pytest.approx(m.body_depth_mm, rel=0.02)


def test_the_front_view_is_the_same_left_and_right() -> None:
    for name, path in figure(300).paths:
        if name in ("figure-body", "figure-head", "figure-muzzle", "figure-nose"):
            assert min(across(path)) == pytest.approx(-max(across(path)), abs=0.02)


@both_views
def test_the_view_box_holds_every_line(view: View) -> None:
    drawn = figure(230, view=view)
    left, top, wide, tall = (float(number) for number in drawn.view_box.split())
    for _, path in drawn.paths:
        assert left <= min(across(path)) <= max(across(path)) <= left + wide
        assert top <= -max(heights(path)) <= -min(heights(path)) <= top + tall


@both_views
def test_classes_are_plain_names_without_style(view: View) -> None:
    for name, path in figure(300, view=view).paths:
        assert re.fullmatch(r"figure-[a-z-]+", name)
        assert re.fullmatch(r"M[-\d. L]+Z?", path)


def test_an_unknown_character_is_refused() -> None:
    with pytest.raises(DraftError):
        figure(300, "grizzly")

import pytest

from inventory.advice.grades import (
    FRAGILITY,
    FRAY,
    HAND_FEELS,
    STRETCH_CLASSES,
    Grade,
    mass_g_m2_from,
    stretch_class,
    stretch_pct,
    weight_class,
)
from inventory.advice.problems import BadFigure


@pytest.mark.parametrize("grades", [FRAGILITY, FRAY])
def test_grades_run_from_0_to_4_each_with_words_and_a_sign(grades: tuple[Grade, ...]) -> None:
    assert [each.value for each in grades] == [0, 1, 2, 3, 4]
    assert all(each.words and each.shows for each in grades)


@pytest.mark.parametrize(
    ("pct", "name"),
    [
        (0, "rigid"),
        (14.9, "rigid"),
        (15, "stable"),
        (24.9, "stable"),
        (25, "moderate"),
        (50, "stretchy"),
        (74.9, "stretchy"),
        (75, "super"),
        (300, "super"),
    ],
)
def test_a_stretch_falls_in_one_class(pct: float, name: str) -> None:
    assert stretch_class(pct).name == name


def test_the_stretch_classes_meet_without_a_gap() -> None:
    for low, high in zip(STRETCH_CLASSES, STRETCH_CLASSES[1:], strict=False):
        assert low.to_pct == high.from_pct


def test_the_hand_feel_classes_meet_without_a_gap() -> None:
    feels = list(HAND_FEELS.values())
    for low, high in zip(feels, feels[1:], strict=False):
        assert low.mass_g_m2[1] == high.mass_g_m2[0]


@pytest.mark.parametrize(
    ("mass_g_m2", "name"), [(5, "sheer"), (115, "light"), (150, "medium"), (2000, "very-heavy")]
)
def test_a_mass_falls_in_one_class(mass_g_m2: float, name: str) -> None:
    assert weight_class(mass_g_m2).name == name


def test_a_shirt_panel_on_the_kitchen_scales() -> None:
    assert mass_g_m2_from(23, 400 * 500) == pytest.approx(115)


@pytest.mark.parametrize(
    ("relaxed_mm", "stretched_mm"), [(0, 100), (-1, 1), (100, 90), (float("nan"), 100)]
)
def test_an_impossible_stretch_is_refused(relaxed_mm: float, stretched_mm: float) -> None:
    with pytest.raises(BadFigure):
        stretch_pct(relaxed_mm, stretched_mm)


@pytest.mark.parametrize(("mass_g", "area_mm2"), [(0, 1), (1, 0), (float("inf"), 1)])
def test_an_impossible_weighing_is_refused(mass_g: float, area_mm2: float) -> None:
    with pytest.raises(BadFigure):
        mass_g_m2_from(mass_g, area_mm2)

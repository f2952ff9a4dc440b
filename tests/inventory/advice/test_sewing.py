from typing import Any

import pytest

from tests.inventory.advice.cloths import advice


@pytest.mark.parametrize(
    ("words", "known", "length_mm"),
    [
        (("cotton 100", "plain-weave"), {"mass_g_m2": 115}, 1.8),
        (("cotton 100", "twill"), {"mass_g_m2": 200}, 2.0),
        (("cotton 100", "denim"), {"mass_g_m2": 400}, 2.5),
        (("leather 100", "leather"), {}, 3.0),
        (("cotton 100", "plain-weave"), {"fragility": 3}, 2.5),
        ((), {}, 2.0),
    ],
)
def test_the_cloth_sets_the_stitch_length(
    words: tuple[str, ...], known: dict[str, Any], length_mm: float
) -> None:
    stitch = advice(*words, **known).stitch
    assert stitch.length_mm == length_mm
    assert stitch.curve_length_mm <= length_mm
    assert stitch.stitches_per_inch == pytest.approx(25.4 / length_mm, abs=0.05)


@pytest.mark.parametrize(
    ("fray", "finish", "allowance_mm"),
    [(0, "none", 6), (1, "pink", 6), (2, "zigzag", 6), (3, "overlock", 10),
     (4, "seal-and-overlock", 12)],
)  # fmt: skip
def test_the_fray_grade_sets_finish_and_allowance(
    fray: int, finish: str, allowance_mm: float
) -> None:
    edge = advice("cotton 100", "plain-weave", fray=fray).edge
    assert (edge.finish, edge.allowance_mm) == (finish, allowance_mm)


def test_without_a_test_the_construction_grade_stands_in() -> None:
    assert advice("silk 100", "chiffon").edge.allowance_mm == 12
    assert advice("cotton 100", "jersey").edge.finish == "none"


def test_when_nothing_is_known_the_edge_is_taken_to_fray_badly() -> None:
    assert advice().edge.allowance_mm == 10


def test_a_hand_knit_is_stitched_before_it_is_cut() -> None:
    knit = advice("wool 100", "sweater-knit")
    assert knit.edge.finish == "stitch-then-cut"
    assert any("stitch inside the lines" in step for step in knit.order.steps)


def test_pile_is_cut_from_the_back_and_hides_are_clipped() -> None:
    assert "from the back" in advice("acrylic 100", "fur-fabric").cutting.text
    assert "clips" in advice("leather 100", "leather").holding.text


def test_chalk_is_kept_off_cloth_that_keeps_marks() -> None:
    assert "thread" in advice("silk 100", "plain-weave").marking.text
    assert "pencil on the back" in advice("leather 100", "leather").marking.text


def test_leather_thread_is_not_cotton() -> None:
    assert "polyester or nylon" in advice("leather 100").thread.text


def test_the_order_tests_colour_before_washing_and_fuses_before_cutting() -> None:
    steps = " | ".join(advice("cotton 100", "jersey").order.steps)
    assert steps.index("test the colour") < steps.index("fuse a test patch")
    assert steps.index("fuse a test patch") < steps.index("and cut")


@pytest.mark.parametrize(
    "known",
    [{"fragility": 4}, {"conditions": ["antique"]}, {"keep_scent": True, "conditions": ["mould"]}],
)
def test_the_order_stops_before_the_scissors_where_the_giver_must_choose(
    known: dict[str, Any],
) -> None:
    steps = advice("cotton 100", "plain-weave", **known).order.steps
    assert "stop here" in steps[-1]

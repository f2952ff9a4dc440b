"""Colour grades and the handling of mould, moth, blood and mothballs against the sources."""

import pytest

from inventory.advice.advise import Advice, advise
from inventory.advice.cloth import Cloth
from inventory.advice.colour import GREY_SCALE_STEPS, grey_scale_grade


@pytest.mark.parametrize(
    ("grade", "delta_e"),
    [
        ("5", 0.0),
        ("4-5", 0.8),
        ("4", 1.7),
        ("3-4", 2.5),
        ("3", 3.4),
        ("2-3", 4.8),
        ("2", 6.8),
        ("1-2", 9.6),
        ("1", 13.6),
    ],
)
def test_grey_scale_steps(grade: str, delta_e: float) -> None:
    # source: EN 20105-A02:1994 (ISO 105-A02)
    assert GREY_SCALE_STEPS[grade].value == delta_e
    assert grey_scale_grade(delta_e) == grade


@pytest.mark.parametrize(("delta_e", "grade"), [(3.0, "3"), (2.9, "3-4"), (0.2, "5"), (20.0, "1")])
def test_colour_differences_between_the_steps(delta_e: float, grade: str) -> None:
    # source: EN 20105-A02:1994; 2.9 lies between two bands and takes the nearest step
    assert grey_scale_grade(delta_e) == grade


def test_the_scale_has_nine_steps_with_the_halves() -> None:
    # source: EN 20105-A02:1994: 5 steps, 9 with halves
    assert len(GREY_SCALE_STEPS) == 9


def about(*conditions: str, fibre: str = "cotton", **known: bool) -> Advice:
    return advise(
        Cloth(fibres=((fibre, 100.0),), conditions=frozenset(conditions), **known)  # type: ignore[arg-type]
    )


def sources_of(advice: Advice, words: str) -> str:
    notices = (*advice.must_not, *advice.cautions)
    return " ".join(each.source for each in notices if words in f"{each.text} {each.because}")


@pytest.mark.parametrize("fibre", ["cotton", "silk", "polyester"])
def test_a_colour_test_precedes_wet_cleaning(fibre: str) -> None:
    # source: Canadian Conservation Institute, Notes 13/14
    wash = about(fibre=fibre).wash
    assert wash.colour_test
    assert any("Notes 13/14" in each for each in wash.source)


def test_fragile_and_bled_cloth_is_never_washed() -> None:
    # source: Canadian Conservation Institute, Notes 13/14: very fragile; already bled
    assert about("bled").wash.method == "none"
    assert about("shattered").wash.method == "none"


def test_sequins_are_not_washed() -> None:
    # source: Canadian Conservation Institute, Notes 13/14: trims, beads, sequins
    cloth = Cloth(fibres=(("cotton", 100.0),), construction="sequinned")
    assert advise(cloth).wash.method == "spot"


def test_antique_pieces_get_no_machine_dryer_or_iron() -> None:
    # source: Canadian Conservation Institute, Note on washing non-coloured textiles
    antique = about("antique")
    assert (antique.wash.method, antique.dry.method) == ("none", "none")
    assert antique.press.max_c is None


def test_moth_is_frozen_at_minus_20_to_25_for_a_week() -> None:
    # source: The Textile Museum (Washington), pest brochure
    assert "Textile Museum" in sources_of(about("moth"), "-20 to -25 °C for at least one week")


def test_cold_does_not_kill_mould() -> None:
    # source: US National Park Service, Conserve O Gram 3/4, 2007 (against its 1993 edition)
    assert "3/4, 2007" in sources_of(about("mould"), "only puts mould to sleep")


def test_people_at_risk_from_mould() -> None:
    # source: Conserve O Gram 3/4, 2007, and the NPS disaster primer
    assert "disaster primer" in sources_of(about("mould"), "asthma, an allergy or weak immunity")


def test_mould_is_met_with_a_respirator() -> None:
    # source: US CDC: N95 or better, goggles, gloves, long sleeves
    assert "CDC" in sources_of(about("mould"), "N95, FFP2 or better")


def test_blood_is_washed_as_hot_as_the_cloth_allows() -> None:
    # source: Health and Safety Executive: highest temperature the fabric allows, above 40 °C
    # source: NHS Greater Glasgow and Clyde, 2012: by itself, half load, ideally 60 °C
    blood = about("blood")
    assert blood.wash.max_c == 60
    assert "half full" in " ".join(each.text for each in blood.cautions)


def test_mothballs_are_kept_from_babies() -> None:
    # source: US EPA, mothballs text; Santucci and Shah, Academic Emergency Medicine 2000
    assert "Santucci" in sources_of(about("mothball"), "G6PD")


def test_dust_masks_do_not_stop_mothball_vapour() -> None:
    # source: AIHA, protective equipment after natural disasters
    assert "AIHA" in sources_of(about("mothball"), "dust mask")

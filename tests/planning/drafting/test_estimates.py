import pytest

from planning.drafting.bear import bear
from planning.drafting.bear_seams import SEAMS
from planning.drafting.errors import DraftError
from planning.drafting.estimates import (
    estimates_of,
    eye_diameter,
    interfacing_area,
    seam_length_mm,
    stuffing_mass,
    stuffing_volume,
    thread_length,
    thread_ratio,
)
from planning.drafting.measures import CHARACTERS
from planning.drafting.stuffing import flat_part_volume_mm3


@pytest.mark.parametrize("character", sorted(CHARACTERS))
def test_every_estimate_has_a_range_around_it_and_a_source(character: str) -> None:
    for estimate in estimates_of(bear(300, character), SEAMS):
        assert 0 < estimate.low < estimate.likely < estimate.high, estimate.name
        assert estimate.source


def test_twice_the_height_takes_eight_times_the_stuffing() -> None:
    small, large = stuffing_volume(bear(200)), stuffing_volume(bear(400))
    assert large.likely == pytest.approx(8 * small.likely, rel=1e-4)


def test_twice_the_height_takes_twice_the_thread() -> None:
    small, large = (thread_length(bear(height), SEAMS).likely for height in (200, 400))
    assert large == pytest.approx(2 * small, rel=1e-3)


def test_firmer_stuffing_is_heavier() -> None:
    size = bear(300)
    masses = [stuffing_mass(size, firmness).likely for firmness in ("soft", "medium", "firm")]
    assert masses == sorted(masses)
    assert masses[2] / masses[0] == pytest.approx(40 / 15)


def test_an_unknown_firmness_is_refused() -> None:
    with pytest.raises(DraftError, match="soft, medium, firm"):
        stuffing_mass(bear(300), "hard")


@pytest.mark.parametrize(("thickness", "stitch"), [(0, 2), (1, 0), (-1, 2)])
def test_a_seam_without_thickness_or_stitches_is_refused(thickness: float, stitch: float) -> None:
    with pytest.raises(DraftError):
        thread_ratio(thickness, stitch)


def test_hand_and_machine_seams_are_counted_apart() -> None:
    size = bear(300)
    by_hand = seam_length_mm(size, SEAMS, by_hand=True)
    openings = 55.6 + 2 * 39.5 + 2 * 51.5
    assert by_hand == pytest.approx(openings + 2 * 40.8, abs=1)
    assert seam_length_mm(size, SEAMS) > 5 * by_hand


def test_interfacing_lies_between_seam_lines_and_cut_lines_with_gaps() -> None:
    estimate = interfacing_area(bear(300))
    assert estimate.low == pytest.approx(1090, rel=0.05)
    assert estimate.high == pytest.approx(1.25 * estimate.likely)


def test_eyes_for_a_30_cm_bear_are_about_a_centimetre() -> None:
    estimate = eye_diameter(bear(300))
    assert estimate.low < 10 < estimate.high


def test_a_flat_part_does_not_care_which_side_is_called_its_width() -> None:
    assert flat_part_volume_mm3(60, 200) == flat_part_volume_mm3(200, 60)

from dataclasses import replace

import pytest

from planning.drafting.bear import bear
from planning.drafting.errors import DraftError, SeamNameError
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
from planning.drafting.library import drafted, parts_for, seams_for
from planning.drafting.pieces import DraftSize
from planning.drafting.sewing import Part
from planning.drafting.stuffing import flat_part_volume_mm3
from tests.planning.drafting.shapes_for_tests import ANIMALS, EVERY_MAKE, Make

SEAMS = seams_for("bear")
PARTS = parts_for("bear")


@pytest.mark.parametrize("make", EVERY_MAKE, ids=str)
def test_every_estimate_has_a_range_around_it_and_a_source(make: Make) -> None:
    stance = (make.pose, make.face)
    size = drafted(make.key, 300, pose=make.pose, face=make.face)
    found = estimates_of(size, seams_for(make.key, *stance), parts_for(make.key, *stance))
    for estimate in found:
        assert 0 < estimate.low < estimate.likely < estimate.high, estimate.name
        assert estimate.source
    assert ("eyes" in {estimate.name for estimate in found}) == (make.key in ANIMALS)


def names_of(size: DraftSize, parts: tuple[Part, ...]) -> set[str]:
    return {estimate.name for estimate in estimates_of(size, SEAMS, parts)}


def test_nothing_is_said_of_stuffing_when_no_part_is_named() -> None:
    size = bear(300)
    assert names_of(size, PARTS) - names_of(size, ()) == {"stuffing volume", "stuffing, medium"}


def test_nothing_is_said_of_a_width_that_is_not_known() -> None:
    size = bear(300)
    bare = replace(size, width_mm=None)
    assert names_of(size, PARTS) - names_of(bare, PARTS) == {"finished width"}


def test_nothing_is_said_of_thread_when_no_seam_is_named() -> None:
    assert "thread" not in {estimate.name for estimate in estimates_of(bear(300), (), PARTS)}


def test_a_part_of_a_piece_that_is_not_there_is_refused() -> None:
    with pytest.raises(SeamNameError, match="tail"):
        estimates_of(bear(300), SEAMS, (Part("tail", (("tail", 2),), 1, is_flat=True),))


def test_a_sitting_bear_has_the_eyes_of_the_taller_bear_it_is() -> None:
    sitting, standing = eye_diameter(drafted("bear", 216, pose="sitting")), eye_diameter(bear(300))
    assert sitting
    assert standing
    assert sitting.likely == pytest.approx(standing.likely, rel=1e-3)


def test_twice_the_height_takes_eight_times_the_stuffing() -> None:
    small, large = stuffing_volume(bear(200), PARTS), stuffing_volume(bear(400), PARTS)
    assert large.likely == pytest.approx(8 * small.likely, rel=1e-4)


def test_twice_the_height_has_twice_the_seam() -> None:
    """By machine and by hand together: an opening does not grow with the height."""
    small, large = (
        seam_length_mm(bear(height), SEAMS) + seam_length_mm(bear(height), SEAMS, by_hand=True)
        for height in (200, 400)
    )
    assert large == pytest.approx(2 * small, rel=1e-3)


def test_thread_goes_with_the_length_of_the_seams() -> None:
    small, large = bear(200), bear(400)
    threads = [thread_length(size, SEAMS).likely for size in (small, large)]
    seams = [seam_length_mm(size, SEAMS) for size in (small, large)]
    assert threads[1] / threads[0] == pytest.approx(seams[1] / seams[0])


def test_firmer_stuffing_is_heavier() -> None:
    size = bear(300)
    masses = [
        stuffing_mass(size, PARTS, firmness).likely for firmness in ("soft", "medium", "firm")
    ]
    assert masses == sorted(masses)
    assert masses[2] / masses[0] == pytest.approx(40 / 15)


def test_an_unknown_firmness_is_refused() -> None:
    with pytest.raises(DraftError, match="soft, medium, firm"):
        stuffing_mass(bear(300), PARTS, "hard")


@pytest.mark.parametrize(("thickness", "stitch"), [(0, 2), (1, 0), (-1, 2)])
def test_a_seam_without_thickness_or_stitches_is_refused(thickness: float, stitch: float) -> None:
    with pytest.raises(DraftError):
        thread_ratio(thickness, stitch)


def test_hand_and_machine_seams_are_counted_apart() -> None:
    size = bear(300)
    by_hand = seam_length_mm(size, SEAMS, by_hand=True)
    openings = 55.6 + 2 * 52.1 + 2 * 51.5
    assert by_hand == pytest.approx(openings + 2 * 40.8, abs=1)
    assert seam_length_mm(size, SEAMS) > 5 * by_hand


def test_interfacing_lies_between_seam_lines_and_cut_lines_with_gaps() -> None:
    estimate = interfacing_area(bear(300))
    assert estimate.low == pytest.approx(1090, rel=0.05)
    assert estimate.high == pytest.approx(1.25 * estimate.likely)


def test_eyes_for_a_30_cm_bear_are_about_a_centimetre() -> None:
    estimate = eye_diameter(bear(300))
    assert estimate
    assert estimate.low < 10 < estimate.high


def test_a_flat_part_does_not_care_which_side_is_called_its_width() -> None:
    assert flat_part_volume_mm3(60, 200) == flat_part_volume_mm3(200, 60)

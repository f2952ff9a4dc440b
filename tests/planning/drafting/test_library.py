import pytest

from planning.drafting.errors import DraftError
from planning.drafting.library import (
    KINDS,
    built_in_pattern,
    built_in_patterns,
    drafted,
    figure_for,
    parts_for,
    seams_for,
)
from planning.drafting.practice import too_few_kinds
from planning.drafting.seams import walk
from planning.drafting.stuffing import stuffing_volume_mm3
from shared.errors import OutlineError
from tests.planning.drafting.shapes_for_tests import ANIMALS


def test_the_classic_bear_comes_first_in_five_sizes_smallest_first() -> None:
    first = built_in_patterns()[0]
    assert first is built_in_pattern()
    assert first.key == "bearing-cloth-bear"
    assert [size.height_mm for size in first.sizes] == [150, 230, 300, 380, 460]
    assert [size.name for size in first.sizes] == ["15 cm", "23 cm", "30 cm", "38 cm", "46 cm"]


def test_there_are_six_patterns_with_keys_of_their_own() -> None:
    assert list(KINDS) == ["bear", "bear-baby", "bear-long", "rabbit", "pillow", "heart"]
    assert len({pattern.key for pattern in built_in_patterns()}) == 6


def test_a_pattern_is_found_by_its_kind_and_by_its_own_key() -> None:
    assert built_in_pattern("bear").sizes == built_in_pattern().sizes
    assert built_in_pattern("rabbit") is built_in_pattern("rabbit")


@pytest.mark.parametrize("pattern", built_in_patterns(), ids=lambda pattern: pattern.key)
def test_every_size_of_a_pattern_walks_and_can_be_stuffed(pattern) -> None:
    for size in pattern.sizes:
        assert all(walked.ok for walked in walk(size, pattern.seams))
        assert stuffing_volume_mm3(size, pattern.parts) > 0
        assert len({piece.name for piece in size}) == len(size.pieces)


@pytest.mark.parametrize("key", ANIMALS)
def test_an_animal_has_kinds_of_piece_enough_to_be_round(key: str) -> None:
    names = [piece.name for piece in drafted(key, 300)]
    assert not too_few_kinds(names)
    assert len(names) >= 8


@pytest.mark.parametrize("kind", KINDS.values(), ids=lambda kind: kind.key)
def test_a_kind_keeps_its_limits_and_its_usual_sizes_lie_within(kind) -> None:
    assert kind.least_mm <= min(kind.heights_mm) < max(kind.heights_mm) <= kind.most_mm
    for height_mm in (kind.least_mm - 0.1, kind.most_mm + 0.1, float("nan")):
        with pytest.raises(DraftError, match=f"{kind.least_mm:g} to {kind.most_mm:g} mm"):
            drafted(kind.key, height_mm)
        with pytest.raises(DraftError, match=f"{kind.least_mm:g} to {kind.most_mm:g} mm"):
            figure_for(kind.key, height_mm)


def test_a_size_takes_the_allowance_asked_for() -> None:
    assert drafted("heart", 200, seam_allowance_mm=10).seam_allowance_mm == 10
    with pytest.raises(OutlineError):
        drafted("pillow", 200, seam_allowance_mm=-1)


def test_an_unknown_key_is_refused_with_the_known_ones() -> None:
    with pytest.raises(DraftError, match="bear, bear-baby, bear-long, rabbit, pillow, heart"):
        built_in_pattern("owl")


@pytest.mark.parametrize("ask", [drafted, figure_for])
def test_a_pillow_cannot_sit_nor_a_heart_look_aside(ask) -> None:
    with pytest.raises(DraftError, match="Pillow: the pose cannot be “sitting”, only “standing”"):
        ask("pillow", 300, pose="sitting")
    with pytest.raises(DraftError, match="Heart: the face cannot be “aside”, only “ahead”"):
        ask("heart", 300, face="aside")


def test_a_pose_nobody_knows_is_refused() -> None:
    with pytest.raises(DraftError, match="only “standing” or “sitting”"):
        seams_for("bear", "lying")
    with pytest.raises(DraftError, match="only “ahead” or “aside”"):
        parts_for("bear", face="behind")


def test_an_unknown_view_is_refused() -> None:
    with pytest.raises(DraftError, match="front, side"):
        figure_for("pillow", 300, "back")  # type: ignore[arg-type]

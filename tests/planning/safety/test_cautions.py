import pytest

from planning.safety.ages import Market
from planning.safety.cautions import Purpose, cautions_for
from planning.safety.errors import SafetyError

AGES = (None, 0, 11, 12, 35, 36, 100, 168, 900)


def kinds(*args: object, **more: object) -> list[str]:
    return [caution.kind for caution in cautions_for(*args, **more)]  # type: ignore[arg-type]


@pytest.mark.parametrize("age", AGES)
@pytest.mark.parametrize("purpose", ["toy", "display"])
@pytest.mark.parametrize("market", [None, "us", "eu", "uk"])
def test_needles_and_the_law_are_never_left_out(
    age: int | None, purpose: Purpose, market: Market | None
) -> None:
    found = kinds(age, purpose, market)
    assert "needles" in found
    assert found[-1] == "law"
    assert len(found) == len(set(found))


@pytest.mark.parametrize(("age", "shown"), [(None, True), (0, True), (11, True), (12, False)])
@pytest.mark.parametrize("purpose", ["toy", "display"])
def test_the_sleep_caution_holds_for_the_whole_first_year(
    age: int | None, shown: bool, purpose: Purpose
) -> None:
    assert ("sleep" in kinds(age, purpose, "uk")) is shown


def test_a_display_piece_for_a_grown_person_is_told_what_it_is() -> None:
    assert kinds(400, "display", "us") == ["needles", "display", "law"]


def test_a_child_under_3_in_the_house_brings_its_rules_to_a_grown_persons_piece() -> None:
    found = cautions_for(400, "display", "us", child_under_3_near=True)
    small = next(caution for caution in found if caution.kind == "small parts")
    assert small.weight == "stop"
    assert "display" not in [caution.kind for caution in found]
    assert {"magnets", "cords"} <= {caution.kind for caution in found}


def test_calling_a_childs_bear_a_display_piece_changes_nothing() -> None:
    assert cautions_for(60, "display", "us") == cautions_for(60, "toy", "us")


def test_a_cuddly_toy_for_a_five_year_old_counts_as_younger_in_europe() -> None:
    assert "age" in kinds(60, "toy", "eu")
    assert "age" not in kinds(60, "toy", "us")


@pytest.mark.parametrize("age", AGES)
def test_the_heaviest_cautions_come_first_and_each_has_a_source(age: int | None) -> None:
    found = cautions_for(age)
    weights = ["stop", "take care", "note"]
    ranks = [weights.index(caution.weight) for caution in found]
    assert ranks == sorted(ranks)
    assert all(caution.source and caution.text.endswith(".") for caution in found)


def test_an_impossible_age_is_refused() -> None:
    with pytest.raises(SafetyError):
        cautions_for(-1)

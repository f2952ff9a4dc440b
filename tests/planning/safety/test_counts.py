import pytest

from planning.safety.counts import cord_check, count_check, needle_check
from planning.safety.errors import SafetyError
from planning.safety.sleepwear import sleepwear_check


def test_all_needles_back_lets_the_work_go_on_with_a_magnet() -> None:
    finding = count_check(24, 24)
    assert finding.ok
    assert "magnet" in finding.text


@pytest.mark.parametrize(("out", "back", "gap"), [(24, 23, "1 missing"), (2, 5, "3 more")])
def test_a_count_that_does_not_agree_stops_the_keepsake(out: int, back: int, gap: str) -> None:
    finding = count_check(out, back)
    assert not finding.ok
    assert gap in finding.text


def test_counts_below_nothing_are_refused() -> None:
    with pytest.raises(SafetyError):
        count_check(-1, 0)


@pytest.mark.parametrize(
    ("broken", "found", "ok"), [(False, False, True), (True, True, True), (True, False, False)]
)
def test_a_broken_needle_stops_the_work_until_every_piece_is_found(
    broken: bool, found: bool, ok: bool
) -> None:
    assert needle_check(broken, found).ok is ok


@pytest.mark.parametrize(
    ("tail", "loop", "ok"), [(220, 360, True), (220.1, 0, False), (0, 360.1, False), (0, 0, True)]
)
def test_cords_are_held_to_the_strictest_limits(tail: float, loop: float, ok: bool) -> None:
    assert cord_check(tail, loop).ok is ok


@pytest.mark.parametrize(("tail", "loop"), [(-1, 0), (0, float("nan"))])
def test_cord_lengths_that_are_none_are_refused(tail: float, loop: float) -> None:
    with pytest.raises(SafetyError):
        cord_check(tail, loop)


@pytest.mark.parametrize(
    ("year", "child", "ok"),
    [(1975, True, False), (1975, False, True), (1969, True, True), (2020, True, True)],
)
def test_old_sleepwear_is_kept_from_childrens_toys(year: int, child: bool, ok: bool) -> None:
    assert sleepwear_check(year, child).ok is ok


def test_sleepwear_of_unknown_age_is_doubted() -> None:
    assert "may be from the 1970s" in sleepwear_check(None, for_child=True).text

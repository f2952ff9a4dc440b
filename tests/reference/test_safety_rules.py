"""Age, market and bench rules against the papers they come from, source beside each."""

from datetime import date

import pytest

from planning.safety.abuse import N_PER_LBF, NM_PER_IN_LBF, en71_abuse_limits, us_abuse_limits
from planning.safety.cautions import cautions_for
from planning.safety.counts import cord_check, needle_check
from planning.safety.errors import SafetyError
from planning.safety.features import age_gate
from planning.safety.fit import fit_of
from planning.safety.laws import laws_for
from planning.safety.parts import Disc, Eye
from planning.safety.sleepwear import sleepwear_check
from planning.safety.use import Use, is_small_part, use_of


def test_torn_off_felt_is_no_small_part_in_the_united_states() -> None:
    """16 CFR 1501.4(b)(2) leaves out paper, fabric, yarn, fuzz, elastic and string."""
    patch, button = fit_of(Disc(15, 1)), fit_of(Disc(15, 3))
    assert not is_small_part(patch, "felt", "us")
    assert is_small_part(patch, "felt", "eu")
    assert is_small_part(button, "plastic", "us")


@pytest.mark.parametrize(
    ("months", "torque_nm", "pull_n", "press_n", "drops", "metres"),
    [
        (12, 0.226, 44.5, 89.0, 10, 1.37),
        (18, 0.226, 44.5, 89.0, 10, 1.37),
        (19, 0.339, 66.7, 111.2, 4, 0.92),
        (30, 0.339, 66.7, 111.2, 4, 0.92),
        (36, 0.339, 66.7, 111.2, 4, 0.92),
        (60, 0.452, 66.7, 133.4, 4, 0.92),
        (96, 0.452, 66.7, 133.4, 4, 0.92),
    ],
)
def test_united_states_abuse_rows(
    months: int, torque_nm: float, pull_n: float, press_n: float, drops: int, metres: float
) -> None:
    """16 CFR 1500.51 to .53: 2/3/4 in-lbf, 10/15/15 lbf, 20/25/30 lbf; upper ages included."""
    limits = us_abuse_limits(months)
    assert limits.torque_nm == pytest.approx(torque_nm, abs=5e-4)
    assert limits.tension_n == limits.seam_n == pytest.approx(pull_n, abs=0.05)
    assert limits.compression_n == pytest.approx(press_n, abs=0.1)
    assert (limits.drops, limits.drop_height_m) == (drops, metres)


@pytest.mark.parametrize("months", [-1, 97])
def test_no_row_outside_the_united_states_sections(months: int) -> None:
    """16 CFR 1500.53 ends at 96 months."""
    with pytest.raises(SafetyError):
        us_abuse_limits(months)


@pytest.mark.parametrize(("size", "pull_n"), [(6, 50), (6.1, 90), (12, 90)])
def test_european_pulls_turn_at_six_millimetres(size: float, pull_n: float) -> None:
    """EN 71-1 as restated by test houses (2021): 50 N to 6 mm, 90 N above; 0.34 N m; seams 70 N."""
    limits = en71_abuse_limits(size)
    assert (limits.tension_n, limits.torque_nm, limits.seam_n) == (pull_n, 0.34, 70)


@pytest.mark.parametrize("size", [0, -1, float("nan")])
def test_a_part_without_a_size_has_no_pull(size: float) -> None:
    with pytest.raises(SafetyError):
        en71_abuse_limits(size)


@pytest.mark.parametrize(
    ("lbf", "newtons"), [(15, 66.72), (11.24, 50.0), (15.74, 70.0), (20.23, 90.0)]
)
def test_pounds_force_in_newtons(lbf: float, newtons: float) -> None:
    """1 lbf = 0.45359237 kg x 9.80665 m/s², by definition."""
    assert lbf * N_PER_LBF == pytest.approx(newtons, abs=0.02)
    assert pytest.approx(0.45359237 * 9.80665) == N_PER_LBF
    assert pytest.approx(0.339, abs=5e-4) == 3 * NM_PER_IN_LBF


def test_an_embroidered_face_for_a_baby_is_allowed_with_the_sleep_caution() -> None:
    """American Academy of Pediatrics, 2022: no soft toys in the sleep space in the first year."""
    assert age_gate(["embroidered-face"], 8, "uk").use is Use.ALLOWED
    sleep = [caution for caution in cautions_for(8, "toy", "uk") if caution.kind == "sleep"]
    assert sleep
    assert sleep[0].weight == "stop"


def test_a_safety_eye_under_36_months_is_refused() -> None:
    """16 CFR 1501.2 and 1500.18(a)(9): small parts ban."""
    assert use_of(fit_of(Eye(12, 6, 4, 14)), "plastic", 30, "us").use is Use.REFUSED
    assert age_gate(["hard-eyes"], 30, "us").use is Use.REFUSED


@pytest.mark.parametrize(("months", "use"), [(35, Use.REFUSED), (36, Use.MUST_TEST)])
def test_the_ban_is_for_under_36_months(months: int, use: Use) -> None:
    """16 CFR 1501.1: under 36 months; the abuse section .52 runs to 36 inclusive all the same."""
    assert use_of(fit_of(Disc(15, 3)), "plastic", months, "us").use is use


def test_a_cuddly_toy_with_safety_eyes_counts_as_younger_in_europe() -> None:
    """EN 71-1, scope: soft-filled toys with simple features to hold and cuddle."""
    assert age_gate(["hard-eyes"], 48, "eu", cuddly=True).use is Use.REFUSED
    assert use_of(fit_of(Eye(12, 6, 4, 14)), "plastic", 48, "eu", cuddly=True).use is Use.REFUSED
    assert age_gate(["hard-eyes"], 48, "eu", cuddly=False).use is Use.MUST_TEST


def test_sleepwear_of_1975_is_not_for_a_childs_toy() -> None:
    """16 CFR 1615 and 1616 (flame resistance); the TRIS ban of 1977 is from memory."""
    assert not sleepwear_check(1975, for_child=True).ok
    modern = sleepwear_check(2020, for_child=True)
    assert modern.ok
    assert "do not make the toy fire-safe" in modern.text


def test_a_missing_needle_fragment_blocks_the_keepsake() -> None:
    """16 CFR 1500.18(a)(3): stuffed animals with internal parts that can puncture are banned."""
    assert not needle_check(broken=True, all_fragments_found=False).ok
    swept = needle_check(broken=True, all_fragments_found=True)
    assert swept.ok
    assert "magnet" in swept.text


@pytest.mark.parametrize(("tail_mm", "ok"), [(250, False), (220, True), (200, True)])
def test_ribbon_tails_end_at_220_mm(tail_mm: float, ok: bool) -> None:
    """EN 71-1:2005+A8 clause 5.4: free length of cords 220 mm under 25 N."""
    assert cord_check(tail_mm).ok is ok


def test_pennsylvania_reaches_gifts() -> None:
    """35 P.S. 5201 to 5209, Act 30 of 2024: toys for sale, gift or use; makers register."""
    notes = laws_for("us", date(2026, 11, 1), "pa")
    assert any("sale, gift or use" in note.text and "register" in note.text for note in notes)


@pytest.mark.parametrize(
    ("day", "law"),
    [(date(2030, 7, 31), "Directive 2009/48/EC"), (date(2030, 8, 1), "Regulation (EU) 2025/2509")],
)
def test_the_european_law_changes_on_1_august_2030(day: date, law: str) -> None:
    """Regulation (EU) 2025/2509 of 26 November 2025 applies from 1 August 2030."""
    assert law in laws_for("eu", day)[0].text.split(" until ")[0]


def test_great_britain_accepts_either_mark() -> None:
    """SI 2011/1881 and guidance of 11 December 2024: CE recognition goes on."""
    text = laws_for("uk", date(2026, 11, 1))[0].text
    assert "UKCA or the CE" in text
    assert "2011" in text

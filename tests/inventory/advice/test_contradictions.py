from typing import Any

import pytest

from tests.inventory.advice.cloths import advice


def conflicts(*words: str | None, **known: Any) -> str:
    return " ".join(each.text for each in advice(*words, **known).conflicts)


@pytest.mark.parametrize(
    ("words", "known", "told"),
    [
        (("cotton 100", "jersey"), {"stretch_across_pct": 0}, "called a knit"),
        (("cotton 100", "twill"), {"stretch_across_pct": 40}, "called a woven"),
        (("cotton 100", "leather"), {}, "called leather or suede"),
        (("leather 100", "jersey"), {}, "holds leather or fur"),
        (("elastane 100", "jersey"), {}, "hardly ever made"),
        (("silk 100", "chiffon"), {"mass_g_m2": 600}, "far from the usual"),
        (("wool 100", "twill", "bleach=any"), {}, "any bleach"),
        (("cotton 100",), {"keep_scent": True, "may_wash": True}, "allows washing"),
    ],
)
def test_what_does_not_hold_together_is_told(
    words: tuple[str, ...], known: dict[str, Any], told: str
) -> None:
    assert told in conflicts(*words, **known)


@pytest.mark.parametrize(
    ("words", "known"),
    [
        (("cotton 100", "jersey"), {"stretch_across_pct": 30, "mass_g_m2": 160}),
        (("cotton 97 elastane 3", "denim"), {"stretch_across_pct": 30}),
        (("leather 100", "leather", "wash=no"), {}),
        (("polyester 100", "fur-fabric"), {}),
        (("fur 100", "fur-fabric"), {}),
        (("cotton 100", "plain-weave", "wash=95,iron=3,tumble=yes,bleach=any"), {}),
        ((), {}),
    ],
)
def test_what_holds_together_is_not_complained_of(
    words: tuple[str, ...], known: dict[str, Any]
) -> None:
    assert conflicts(*words, **known) == ""


def test_a_knit_without_stretch_is_still_sewn_as_a_knit() -> None:
    found = advice("cotton 100", "jersey", stretch_across_pct=0)
    assert found.needle.point == "ball"
    assert found.interfacing.attach == "fusible"


def test_a_doubtful_mass_lets_the_lighter_figure_set_the_interfacing() -> None:
    found = advice("cotton 100", "plain-weave", mass_g_m2=800, fragility=2)
    assert found.interfacing.mass_g_m2 is not None
    assert found.interfacing.mass_g_m2[1] <= 180

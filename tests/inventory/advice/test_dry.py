import pytest

from tests.inventory.advice.cloths import advice


@pytest.mark.parametrize(
    ("words", "method"),
    [
        (("cotton 100", "plain-weave"), "line"),
        (("cotton 100", "jersey"), "flat"),
        (("wool 100", "twill"), "flat"),
        (("polyester 100", "velvet"), "flat"),
        (("leather 100",), "none"),
        ((), "flat"),
    ],
)
def test_the_table_never_tumbles(words: tuple[str, ...], method: str) -> None:
    assert advice(*words).dry.method == method


def test_a_label_may_allow_a_tumble_dryer() -> None:
    low = advice("cotton 100", None, "wash=40,tumble=low").dry
    assert (low.method, low.max_c) == ("tumble-low", 60)
    assert advice("cotton 100", None, "wash=40,tumble=yes").dry.max_c == 80


def test_a_dryer_for_wool_is_a_contradiction() -> None:
    found = advice("wool 100", "twill", "tumble=yes")
    assert found.dry.method == "flat"
    assert any("tumble dryer" in each.text for each in found.conflicts)
    assert any("tumble" in each.text for each in found.must_not)


def test_no_tumbling_keeps_a_knit_flat_and_a_shirt_on_the_line() -> None:
    assert advice("cotton 100", "jersey", "tumble=no").dry.method == "flat"
    assert advice("cotton 100", "twill", "tumble=no").dry.method == "line"


def test_tender_cloth_dries_flat_whatever_the_label() -> None:
    assert advice("cotton 100", None, "tumble=yes", fragility=2).dry.method == "flat"


def test_shade_and_dripping_come_from_the_label() -> None:
    dry = advice("cotton 100", None, "dry=drip-line-shade").dry
    assert (dry.method, dry.shade, dry.drip) == ("line", True, True)


def test_cloth_soaked_with_cream_is_never_tumbled() -> None:
    found = advice("cotton 100", None, "wash=60,tumble=yes", conditions=["cream"])
    assert found.dry.method == "line"

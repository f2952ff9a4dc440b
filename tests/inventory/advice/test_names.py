import pytest

from inventory.advice.conditions import CONDITIONS, condition_named
from inventory.advice.constructions import CONSTRUCTIONS, construction_named
from inventory.advice.fibre_names import EU_NAMES
from inventory.advice.fibres import FIBRES, fibre_named
from inventory.advice.problems import UnknownName

CONTRACT_CONSTRUCTIONS = [
    "plain-weave", "twill", "satin", "denim", "corduroy", "velvet", "towelling", "flannel",
    "seersucker", "lace", "chiffon", "brocade", "jersey", "rib", "interlock", "sweater-knit",
    "fleece", "sweatshirt", "felt", "quilted", "coated", "leather", "suede", "fur-fabric",
    "sequinned", "pleated",
]  # fmt: skip


@pytest.mark.parametrize(
    ("written", "found"),
    [
        ("flax", "flax"),
        ("linen", "flax"),
        ("Viscose", "viscose"),
        ("rayon", "viscose"),
        ("polyamide", "polyamide"),
        ("NYLON", "polyamide"),
        ("elastane", "elastane"),
        ("spandex", "elastane"),
        ("metallised", "metallised"),
        ("metallic", "metallised"),
        ("true  hemp", "hemp"),
        ("azlon", "protein"),
        ("olefin", "polypropylene"),
        ("leather", "leather"),
        ("fur", "fur"),
    ],
)
def test_a_fibre_answers_to_its_eu_and_us_names(written: str, found: str) -> None:
    assert fibre_named(written).name == found


def test_an_unknown_fibre_is_refused_with_the_nearest_names() -> None:
    with pytest.raises(UnknownName, match="No fibre is called “poliester”. Nearest: polyester"):
        fibre_named("poliester")


def test_a_name_like_no_other_is_refused_without_an_offer() -> None:
    with pytest.raises(UnknownName) as refused:
        fibre_named("zzzz")
    assert refused.value.nearest == ()


def test_no_name_stands_for_two_fibres() -> None:
    names = [word for each in FIBRES.values() for word in {each.name, *each.also_called}]
    assert len(names) == len(set(names))


def test_no_name_stands_for_two_constructions() -> None:
    names = [word for each in CONSTRUCTIONS.values() for word in {each.name, *each.also_called}]
    assert len(names) == len(set(names))


def test_every_us_name_finds_its_fibre_or_its_kin() -> None:
    for each in FIBRES.values():
        assert fibre_named(each.us_name).us_name == each.us_name


def test_every_textile_fibre_stands_on_the_eu_list_once() -> None:
    listed = [name for fact in EU_NAMES for name in fact.value]
    assert sorted(listed) == sorted(each.name for each in FIBRES.values() if each.is_textile)


def test_exactly_the_constructions_of_the_command_exist() -> None:
    assert list(CONSTRUCTIONS) == CONTRACT_CONSTRUCTIONS


def test_a_construction_answers_to_other_trade_words() -> None:
    assert construction_named("T-shirt").name == "jersey"
    assert construction_named("Boiled wool").name == "felt"
    assert construction_named("plain weave").name == "plain-weave"


def test_an_unknown_construction_is_refused_with_the_nearest_names() -> None:
    with pytest.raises(UnknownName, match="velvet"):
        construction_named("velvit")


def test_every_construction_has_a_fray_grade_and_a_mass_range_in_order() -> None:
    for each in CONSTRUCTIONS.values():
        assert 0 <= each.frays_by_default <= 4
        assert 0 < each.mass_g_m2.value[0] < each.mass_g_m2.value[1]
        assert each.fray.value == each.frays_by_default


def test_conditions_answer_to_other_spellings() -> None:
    assert condition_named("Mold") == "mould"
    assert {"mould", "moth", "mothball", "blood", "cream", "smoke"} <= set(CONDITIONS)
    with pytest.raises(UnknownName, match="smoke"):
        condition_named("smok")

import json

from hypothesis import given, settings
from hypothesis import strategies as st

from inventory.advice.advice_text import as_text
from inventory.advice.advise import advise
from inventory.advice.cloth import Cloth, cloth_problems
from inventory.advice.conditions import CONDITIONS
from inventory.advice.constructions import CONSTRUCTIONS
from inventory.advice.facts import Certainty
from inventory.advice.fibres import FIBRES
from inventory.advice.label import MARKS, CareLabel
from tests.inventory.advice.cloths import advice

PARTS = {"wash", "dry", "press", "shrink", "interfacing", "needle", "stitch", "edge"}
CERTAINTIES = {"label", "published", "trade figure", "common practice", "from memory"}


@st.composite
def shares(draw: st.DrawFn) -> tuple[tuple[str, float], ...]:
    names = draw(st.lists(st.sampled_from(sorted(FIBRES)), max_size=4, unique=True))
    if not names:
        return ()
    cuts = sorted(
        draw(st.lists(st.integers(1, 99), min_size=len(names) - 1,
                      max_size=len(names) - 1, unique=True))
    )  # fmt: skip
    edges = [0, *cuts, 100]
    return tuple(
        (name, float(high - low)) for name, low, high in zip(names, edges, edges[1:], strict=False)
    )


def maybe[T](strategy: st.SearchStrategy[T]) -> st.SearchStrategy[T | None]:
    return st.none() | strategy


def marks(part: str) -> st.SearchStrategy[str | None]:
    return maybe(st.sampled_from([value for value, _ in MARKS[part]]))


LABELS = st.builds(
    CareLabel,
    wash=marks("wash"),
    bleach=marks("bleach"),
    dry=marks("dry"),
    iron=marks("iron"),
    professional=marks("professional"),
    edition=st.sampled_from([None, 2012, 2023]),
)

CLOTHS = st.builds(
    Cloth,
    fibres=shares(),
    construction=maybe(st.sampled_from(sorted(CONSTRUCTIONS))),
    mass_g_m2=maybe(st.floats(1, 5000)),
    stretch_along_pct=maybe(st.floats(0, 300)),
    stretch_across_pct=maybe(st.floats(0, 300)),
    fragility=maybe(st.integers(0, 4)),
    fray=maybe(st.integers(0, 4)),
    label=maybe(LABELS),
    keep_scent=st.booleans(),
    may_wash=maybe(st.booleans()),
    conditions=st.frozensets(st.sampled_from(sorted(CONDITIONS)), max_size=3),
)


@settings(deadline=None, max_examples=300)
@given(CLOTHS)
def test_every_possible_cloth_gets_whole_advice(cloth: Cloth) -> None:
    assert cloth_problems(cloth) == ()
    found = advise(cloth)
    answer = json.loads(json.dumps(found.to_json(), allow_nan=False))
    assert answer["format"] == "bearing-cloth/advice-1"
    for name in PARTS:
        part = answer[name]
        assert part["text"].endswith(".")
        assert len(part["because"]) == len(part["source"]) > 0
        assert part["certainty"] in CERTAINTIES
    for notice in (*answer["must_not"], *answer["cautions"], *answer["conflicts"]):
        assert notice["text"]
        assert notice["because"]
        assert notice["source"]
    assert "None" not in as_text(found)


@settings(deadline=None, max_examples=300)
@given(CLOTHS)
def test_the_safe_side_is_never_left(cloth: Cloth) -> None:
    found = advise(cloth)
    if cloth.keep_scent or cloth.may_wash is False:
        assert found.wash.method == "none"
        assert found.dry.method == "none"
    if found.interfacing.attach == "fusible":
        assert found.press.max_c is not None
        assert found.interfacing.fuse_max_c is not None
        assert found.interfacing.fuse_max_c <= found.press.max_c
        assert cloth.construction not in ("velvet", "sequinned", "leather", "fur-fabric", "lace")
        assert not any("Do not fuse anything" in each.text for each in found.must_not)
    if found.press.max_c is None:
        assert not found.press.steam
    if cloth.mass_g_m2 is not None and found.interfacing.mass_g_m2 is not None:
        assert found.interfacing.mass_g_m2[1] <= cloth.mass_g_m2 + 0.05
    for low, high in (found.shrink.along_pct, found.shrink.across_pct):
        assert 0 <= low <= high < 100
    assert 0 < found.needle.size_nm[0] <= found.needle.size_nm[1] <= 140
    if cloth.fragility == 4 or "shattered" in cloth.conditions:
        assert found.wash.method == "none"
        assert found.press.max_c is None


@settings(deadline=None, max_examples=200)
@given(CLOTHS, st.sampled_from(sorted(FIBRES)))
def test_adding_a_fibre_never_makes_the_iron_hotter_without_a_label(
    cloth: Cloth, name: str
) -> None:
    if cloth.label is not None or not cloth.fibres or name in dict(cloth.fibres):
        return
    halved = tuple((fibre, share / 2) for fibre, share in cloth.fibres)
    blend = Cloth(
        fibres=(*halved, (name, 50.0)),
        construction=cloth.construction,
        conditions=cloth.conditions,
        fragility=cloth.fragility,
    )
    alone = Cloth(
        fibres=cloth.fibres,
        construction=cloth.construction,
        conditions=cloth.conditions,
        fragility=cloth.fragility,
    )
    assert (advise(blend).press.max_c or 0) <= (advise(alone).press.max_c or 0)


def test_the_answer_has_the_keys_of_the_format() -> None:
    answer = advice("cotton 100", "jersey", mass_g_m2=160).to_json()
    assert set(answer) >= PARTS | {"format", "must_not", "cautions", "conflicts"}
    assert set(answer["wash"]) >= {"method", "max_c", "text", "because", "source", "certainty"}
    assert set(answer["press"]) >= {"max_c", "steam"}
    assert set(answer["shrink"]) >= {"along_pct", "across_pct"}
    assert set(answer["interfacing"]) >= {"attach", "structure", "mass_g_m2"}
    assert set(answer["needle"]) >= {"point", "size_nm"}
    assert set(answer["stitch"]) >= {"length_mm"}
    assert set(answer["edge"]) >= {"finish", "allowance_mm"}
    assert answer["needle"]["size_nm"] == [75, 90]
    assert answer["wash"]["method"] == "machine"


def test_the_five_words_for_how_sure_are_the_agreed_ones() -> None:
    assert {each.value for each in Certainty} == CERTAINTIES


def test_the_same_cloth_always_gets_the_same_advice() -> None:
    one = advice("cotton 60 polyester 40", "twill", conditions=["moth", "smoke"]).to_json()
    other = advice("polyester 40 cotton 60", "twill", conditions=["smoke", "moth"]).to_json()
    assert one == other

"""The sheet of rules: rows are added, mended, taken away and saved all or nothing."""

import json

import pytest

from inventory.models import Panel
from planning.models import DetailPin, Keepsake, PatternPiece, StripeMatch, Together
from planning.rule_choices import choices_of, presets_of
from tests import builders

pytestmark = pytest.mark.django_db

POCKET = [[100, 100], [200, 100], [200, 220], [100, 220]]
LEFT, RIGHT = json.dumps(["side", 0]), json.dumps(["side", 1])
FRONT = json.dumps(["side", "front"])
BARE = {
    "clearance_mm": "0.2",
    "edge_margin_mm": "0.5",
    "flaw_margin_mm": "0.3",
    "grain_tolerance_deg": "0",
}


def facts(**rows) -> dict[str, object]:
    """A posted sheet with so many rows of each kind; a row is a dict of its fields."""
    posted: dict[str, object] = dict(BARE)
    for kind in ("together", "pins", "matches"):
        given = rows.get(kind, [])
        posted |= {f"{kind}-TOTAL_FORMS": len(given), f"{kind}-INITIAL_FORMS": 0}
        for number, row in enumerate(given):
            posted |= {f"{kind}-{number}-{name}": value for name, value in row.items()}
    return posted | {name: value for name, value in rows.items() if not isinstance(value, list)}


@pytest.fixture
def pocket(cushion):
    PatternPiece.objects.update(edges=[{"name": "front", "start": 1, "end": 2}])
    cushion.pattern.seams = [
        {
            "name": "side, front",
            "a": [["side", "front", 1]],
            "b": [["side", "front", 1]],
            "ease_pct": [0, 0],
            "copies": 1,
            "by_hand": False,
        }
    ]
    cushion.pattern.save()
    return builders.detail(Panel.objects.get(), POCKET, note="Breast pocket")


def post(maker, cushion, **rows):
    return maker.post(f"/keepsakes/{cushion.pk}/rules/", facts(**rows))


def test_rows_of_every_kind_are_saved_and_shown_again(maker, cushion, pocket):
    match = {"a_copy": LEFT, "a_spot": FRONT, "b_copy": RIGHT, "b_spot": FRONT}
    match |= {"direction": "both", "within_mm": "0.2"}
    answer = post(
        maker,
        cushion,
        together=[{"piece_names": "side"}],
        pins=[{"detail": pocket.pk, "copy": RIGHT, "spot": FRONT, "within_mm": "1"}],
        matches=[match],
    )
    assert answer.status_code == 302
    assert Together.objects.get().piece_names == ["side"]
    pin = DetailPin.objects.get()
    assert (pin.detail, pin.piece_name, pin.copy, pin.spot, pin.within_mm) == (
        pocket,
        "side",
        1,
        "front",
        10,
    )
    row = StripeMatch.objects.get()
    assert (row.a_copy, row.a_spot, row.b_copy, row.b_spot) == (0, "front", 1, "front")
    assert (row.direction, row.within_mm) == ("both", 2)
    page = maker.get(f"/keepsakes/{cushion.pk}/rules/").content.decode()
    assert page.count('class="rule-row') == 3
    assert "Breast pocket on Back" in page
    post(maker, cushion)
    assert not Together.objects.exists()
    assert not DetailPin.objects.exists()


def test_every_wish_is_saved(maker, cushion):
    garment = Panel.objects.get().garment
    post(maker, cushion, wants_leftover="on", wants_same_cloth="on", kept_whole=str(garment.pk))
    row = Keepsake.objects.get()
    assert (row.wants_few_garments, row.wants_leftover, row.wants_same_cloth) == (
        False,
        True,
        True,
    )
    assert list(row.kept_whole.all()) == [garment]


@pytest.mark.parametrize("nothing", ["0", "0.0", "0,00", "0 mm", "0 cm"])
def test_a_margin_may_be_nothing(maker, cushion, nothing):
    post(maker, cushion, clearance_mm=nothing)
    assert Keepsake.objects.get().clearance_mm == 0


def test_rules_are_saved_with_their_units(maker, workshop, cushion):
    workshop.members.update(units="in")
    garment = Panel.objects.get().garment
    lengths = {"clearance_mm": "1/8", "edge_margin_mm": "1/4", "flaw_margin_mm": "1/8"}
    answer = post(maker, cushion, **lengths, grain_tolerance_deg="2", piece_0=str(garment.pk))
    assert answer.status_code == 302
    cushion.refresh_from_db()
    assert (cushion.clearance_mm, cushion.edge_margin_mm) == (3.175, 6.35)
    assert [(r.piece_name, r.garment) for r in cushion.piece_rules.all()] == [("side", garment)]


@pytest.mark.parametrize(
    ("changed", "field"),
    [
        ({"clearance_mm": "-1"}, "clearance_mm"),
        ({"clearance_mm": ""}, "clearance_mm"),
        ({"edge_margin_mm": "wide"}, "edge_margin_mm"),
        ({"edge_margin_mm": "90"}, "edge_margin_mm"),
        ({"grain_tolerance_deg": "90"}, "grain_tolerance_deg"),
        ({"left_out": "99999"}, "left_out"),
        ({"kept_whole": "99999"}, "kept_whole"),
    ],
)
def test_a_single_rule_that_cannot_be_is_named(maker, cushion, changed, field):
    page = post(maker, cushion, **changed)
    assert field in page.context["sheet"].form.errors
    assert f'href="#id_{field}' in page.content.decode()


@pytest.mark.django_db(transaction=True)
def test_saving_says_to_check_again_only_where_a_verdict_is_out_of_date(maker, cushion):
    assert "Saved." in maker.get(post(maker, cushion).url).content.decode()
    maker.post(f"/keepsakes/{cushion.pk}/check/")
    page = maker.get(post(maker, cushion, wants_leftover="on").url).content.decode()
    assert "Check the sizes again: the rules" not in page
    page = maker.get(post(maker, cushion, edge_margin_mm="1.2").url).content.decode()
    assert "Check the sizes again: the rules" in page


def test_one_more_row_saves_and_judges_nothing(maker, cushion, pocket):
    half = {"a_copy": LEFT, "direction": "across", "within_mm": "wide"}
    answer = post(maker, cushion, matches=[half], edge_margin_mm="abc", do="matches")
    page = answer.content.decode()
    assert answer.status_code == 200
    assert page.count('class="rule-row') == 2
    assert 'value="wide"' in page
    assert 'value="abc"' in page
    assert "Something needs mending" not in page
    assert not StripeMatch.objects.exists()


def test_a_detail_is_chosen_by_its_picture(maker, cushion, pocket):
    page = post(maker, cushion, do=f"show:{pocket.pk}")
    (form,) = page.context["sheet"].rows["pins"].forms
    assert form["detail"].value() == str(pocket.pk)
    nonsense = post(maker, cushion, do="show:99999")
    assert not nonsense.context["sheet"].rows["pins"].forms


def test_a_mirrored_seam_comes_ready_made(maker, cushion, pocket):
    (preset,) = presets_of(cushion.pattern, set())
    assert preset.words == "Side, front: stripes meet"
    page = post(maker, cushion, do=f"preset:{preset.words}")
    (form,) = page.context["sheet"].rows["matches"].forms
    names = ("a_copy", "a_spot", "b_copy", "b_spot", "direction")
    assert [form[name].value() for name in names] == [LEFT, FRONT, RIGHT, FRONT, "along"]
    taken = {frozenset({("side", 0, "front"), ("side", 1, "front")})}
    assert presets_of(cushion.pattern, taken) == []


def test_the_bear_offers_its_own_mirrored_seams(workshop):
    from planning.library import give_built_in

    words = [preset.words for preset in presets_of(give_built_in(workshop), set())]
    assert "Body front, centre front, upper: stripes meet" in words
    assert not any("opening" in each for each in words)


def test_a_row_is_taken_away_or_left_empty(maker, cushion, pocket):
    pin = {"detail": pocket.pk, "copy": LEFT, "spot": "", "within_mm": "0.5"}
    empty = {"a_copy": "", "a_spot": "", "b_copy": "", "b_spot": ""}
    empty |= {"direction": "along", "within_mm": "0.3"}
    answer = post(maker, cushion, pins=[{**pin, "DELETE": "on"}], matches=[empty], together=[{}])
    assert answer.status_code == 302
    assert not DetailPin.objects.exists()
    assert not StripeMatch.objects.exists()
    assert not Together.objects.exists()


@pytest.mark.parametrize(
    ("kind", "changed", "field", "words"),
    [
        ("pins", {"copy": ""}, "copy", "required"),
        ("pins", {"copy": json.dumps(["side", 7])}, "copy", "not one of"),
        ("pins", {"copy": "nonsense"}, "copy", "not one of"),
        ("pins", {"within_mm": "30"}, "within_mm", "more than 20 cm"),
        ("pins", {"within_mm": "-1"}, "within_mm", "negative"),
        ("pins", {"detail": "99999"}, "detail", "not one of"),
        ("matches", {"b_copy": LEFT}, "b_copy", "meet itself"),
        ("matches", {"b_copy": ""}, "b_copy", "required"),
        ("matches", {"a_spot": json.dumps(["lid", "rim"])}, "a_spot", "not on side"),
        ("matches", {"direction": "up"}, "direction", "not one of"),
    ],
)
def test_a_rule_that_cannot_be_is_named_and_nothing_is_saved(
    maker, cushion, pocket, kind, changed, field, words
):
    size = cushion.pattern.sizes.get()
    ring = [[0, 0], [9, 0], [9, 9], [0, 9]]
    size.pieces.create(
        workshop=cushion.workshop,
        name="lid",
        position=2,
        count=1,
        cut_line_mm=ring,
        seam_line_mm=ring,
        marks=[{"name": "rim", "at": [1, 1]}],
    )
    rows = {
        "pins": {"detail": pocket.pk, "copy": LEFT, "spot": "", "within_mm": "0.5"},
        "matches": {
            "a_copy": LEFT,
            "b_copy": RIGHT,
            "a_spot": "",
            "b_spot": "",
            "direction": "along",
            "within_mm": "0.3",
        },
    }
    rows[kind] |= changed
    page = post(maker, cushion, **{name: [row] for name, row in rows.items()})
    (form,) = page.context["sheet"].rows[kind].forms
    assert words in str(form.errors[field])
    assert "Something needs mending" in page.content.decode()
    assert not DetailPin.objects.exists()
    assert not StripeMatch.objects.exists()


@pytest.mark.parametrize(
    ("second", "words"),
    [({"copy": LEFT}, "This piece shows"), ({"copy": RIGHT}, "This detail is shown")],
)
def test_a_detail_and_a_copy_are_pinned_once(maker, cushion, pocket, second, words):
    other = builders.detail(Panel.objects.get(), [[300, 300], [320, 300], [320, 330]])
    pin = {"detail": pocket.pk, "copy": LEFT, "spot": "", "within_mm": "0.5"}
    again = {**pin, **second}
    if second["copy"] == LEFT:
        again["detail"] = other.pk
    page = post(maker, cushion, pins=[pin, again])
    assert words in str(page.context["sheet"].rows["pins"].forms[1].errors)
    assert not DetailPin.objects.exists()


def test_another_workshops_detail_cannot_be_shown(maker, cushion, pocket):
    elsewhere = builders.collection(builders.workshop("Elsewhere 3"))
    theirs = builders.detail(builders.panel(builders.garment(elsewhere)), POCKET)
    pin = {"detail": theirs.pk, "copy": LEFT, "spot": "", "within_mm": "0.5"}
    page = post(maker, cushion, pins=[pin])
    assert "detail" in page.context["sheet"].rows["pins"].forms[0].errors


def test_a_sheet_without_its_rows_is_refused(maker, cushion):
    page = maker.post(f"/keepsakes/{cushion.pk}/rules/", BARE)
    assert page.status_code == 200
    assert "did not arrive whole" in page.content.decode()


def test_places_are_offered_piece_by_piece(cushion, pocket):
    choices = choices_of(cushion.pattern)
    assert choices.copies == [(LEFT, "Side 1, left"), (RIGHT, "Side 2, right")]
    assert choices.spots == [("Side", [(FRONT, "front")])]

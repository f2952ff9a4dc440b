"""A lay by hand: looked at with its faults, saved only whole and right, put back, kept in place."""

import json

import pytest
from django.utils import timezone

from inventory.models import Panel
from planning.coverage.placing import placement_of
from planning.coverage.problem import Panel as CoverPanel
from planning.coverage.problem import Piece
from planning.coverage.verify import faults_of
from planning.hand_lays import turns_on
from planning.laying import keep_by_hand
from planning.models import Keepsake, Lay, LockedPiece, PatternPiece, Placement, SizeCheck
from planning.problems import cloth_of, problem_of
from planning.sizes import sizes_of
from tests import builders

pytestmark = pytest.mark.django_db(transaction=True)

LEFT, RIGHT = json.dumps(["side", 0]), json.dumps(["side", 1])


def draft_in(page) -> str:
    return page.context["draft"]


def facts(page, **changed) -> dict[str, str]:
    """What the form would send as it stands, with a few fields changed."""
    form = page.context["form"]
    shown = {name: form[name].value() for name in form.fields}
    chosen = page.context["chosen"]
    sent = {"draft": draft_in(page), "chosen": chosen, "piece": chosen}
    shown = {name: value or "" for name, value in shown.items()}
    first = {"panel": str(Panel.objects.get(name="Back").pk), "turn": "0"}
    return {**sent, **{name: shown[name] or first.get(name, "") for name in shown}, **changed}


def places() -> dict[int, tuple[float, float]]:
    """The lower left corner of each copy of the cushion's side."""
    rows = Placement.objects.order_by("copy")
    return {
        row.copy: (min(x for x, _ in row.outline_mm), min(y for _, y in row.outline_mm))
        for row in rows
    }


@pytest.fixture
def laid(cushion) -> SizeCheck:
    """A cushion that is covered: two squares of 20 cm side by side on a panel of 50 by 70."""
    size, cloth = cushion.pattern.sizes.get(), cloth_of(cushion)
    problem = problem_of(cushion, size, cloth)
    row = SizeCheck.objects.create(
        workshop=cushion.workshop, keepsake=cushion, size=size, asked_at=timezone.now()
    )
    SizeCheck.objects.update(state="done")
    side, panel = problem.pieces[0], problem.panels[0].id
    spots = ((10.0, 10.0), (450.0, 10.0))  # the second is turned over: its left is its right
    lay = [placement_of(side, copy, panel, 0.0, spots[copy]) for copy in (0, 1)]
    assert keep_by_hand(row, cloth, problem, lay) == []
    row.refresh_from_db()
    return row


def test_the_page_shows_a_piece_with_its_numbers(maker, stranger, laid):
    address = f"/lays/{laid.pk}/move/"
    page = maker.get(f"{address}?piece={RIGHT}")
    words = page.content.decode()
    assert "Side 2, right" in words
    assert 'value="25"' in words
    assert "Every piece here keeps every rule" in words
    assert stranger.get(address).status_code == 404
    assert stranger.post(address, facts(page)).status_code == 404


def test_a_place_is_looked_at_without_being_saved(maker, laid):
    page = maker.get(f"/lays/{laid.pk}/move/")
    again = maker.post(f"/lays/{laid.pk}/move/", facts(page, across="10", up="20", do="check"))
    assert "Side 1, left on" in again.content.decode()
    assert "comes too close to side 2, right" in again.content.decode()
    assert json.loads(draft_in(again))[0]["x"] == pytest.approx(100)
    assert places()[0] == (10, 10)


def test_a_lay_with_a_fault_is_never_saved(maker, laid):
    page = maker.get(f"/lays/{laid.pk}/move/")
    again = maker.post(f"/lays/{laid.pk}/move/", facts(page, across="40", do="save"))
    assert again.status_code == 200
    assert "Not saved" in again.content.decode()
    assert places()[0] == (10, 10)


def test_a_lay_without_fault_is_saved_verified_and_can_be_put_back(maker, stranger, laid):
    keepsake = laid.keepsake
    page = maker.get(f"/lays/{laid.pk}/move/")
    answer = maker.post(f"/lays/{laid.pk}/move/", facts(page, across="2", up="30", do="save"))
    assert answer.url == laid.get_absolute_url()
    assert places() == {0: (20, 300), 1: (250, 10)}
    laid.refresh_from_db()
    assert (laid.outcome, laid.engine, laid.seconds) == ("covers", "", None)
    assert laid.spare["holds_to_inset_mm"] == pytest.approx(5, abs=0.02)  # 10 mm less the margin
    assert sizes_of(keepsake, cloth_of(keepsake)).rows[0].covers
    assert Lay.objects.get().fingerprint == laid.fingerprint
    assert "Put the pieces back" in maker.get(answer.url).content.decode()
    assert stranger.post(f"/lays/{laid.pk}/undo/").status_code == 404
    maker.post(f"/lays/{laid.pk}/undo/")
    assert places() == {0: (10, 10), 1: (250, 10)}
    maker.post(f"/lays/{laid.pk}/undo/")
    assert places() == {0: (20, 300), 1: (250, 10)}


def test_putting_back_is_refused_where_the_rules_have_changed(maker, laid):
    page = maker.get(f"/lays/{laid.pk}/move/")
    maker.post(f"/lays/{laid.pk}/move/", facts(page, across="2", up="30", do="save"))
    Keepsake.objects.update(edge_margin_mm=15)
    answer = maker.post(f"/lays/{laid.pk}/undo/", follow=True)
    assert "no longer keep the rules" in answer.content.decode()
    assert places()[0] == (20, 300)


def test_there_is_nothing_to_put_back_at_first(maker, laid):
    page = maker.get(laid.get_absolute_url()).content.decode()
    assert "Put the pieces back" not in page
    answer = maker.post(f"/lays/{laid.pk}/undo/", follow=True)
    assert "nothing to put back" in answer.content.decode()


def test_another_piece_is_chosen_without_moving_this_one(maker, laid):
    page = maker.get(f"/lays/{laid.pk}/move/")
    for wish in ({"do": "choose"}, {}):
        again = maker.post(f"/lays/{laid.pk}/move/", facts(page, across="3", piece=RIGHT, **wish))
        assert again.context["chosen"] == RIGHT
        assert draft_in(again) == draft_in(page)


def test_what_has_no_place_yet_is_laid_by_hand_and_makes_a_yes(maker, laid):
    Placement.objects.filter(copy=1).delete()
    SizeCheck.objects.update(outcome="undecided", unplaced=[{"piece": "side", "copy": 1}])
    Lay.objects.update(is_whole=False)
    page = maker.get(laid.get_absolute_url()).content.decode()
    assert "Lay the rest by hand" in page
    page = maker.get(f"/lays/{laid.pk}/move/")
    assert page.context["chosen"] == RIGHT
    assert "Not laid yet" in page.content.decode()
    page = maker.post(f"/lays/{laid.pk}/move/", facts(page, do="check"))
    assert page.context["left_over"] == ["side 2, right"]
    maker.post(f"/lays/{laid.pk}/move/", facts(page, across="25", up="1", do="save"))
    laid.refresh_from_db()
    assert (laid.outcome, laid.unplaced, laid.placed) == ("covers", [], 2)
    assert places()[1] == (250, 10)


def test_a_part_of_a_lay_by_hand_is_no_yes(maker, laid):
    Placement.objects.filter(copy=1).delete()
    SizeCheck.objects.update(outcome="undecided")
    Lay.objects.update(is_whole=False)
    page = maker.get(f"/lays/{laid.pk}/move/?piece={LEFT}")
    maker.post(f"/lays/{laid.pk}/move/", facts(page, across="3", do="save"))
    laid.refresh_from_db()
    assert laid.outcome == "undecided"
    assert not Lay.objects.get().is_whole
    assert places() == {0: (30, 10)}
    # nor where the verdict was a yes for other rules
    SizeCheck.objects.update(outcome="covers", fingerprint="of another day")
    page = maker.get(f"/lays/{laid.pk}/move/?piece={LEFT}")
    maker.post(f"/lays/{laid.pk}/move/", facts(page, across="4", do="save"))
    laid.refresh_from_db()
    assert laid.outcome == "undecided"


def test_a_proof_of_today_outlives_a_part_of_a_lay(maker, laid):
    Placement.objects.filter(copy=1).delete()
    Lay.objects.update(is_whole=False)
    SizeCheck.objects.update(outcome="cannot", proof={"kind": "area", "text": "x", "panels": []})
    page = maker.get(f"/lays/{laid.pk}/move/?piece={LEFT}")
    maker.post(f"/lays/{laid.pk}/move/", facts(page, across="3", do="save"))
    laid.refresh_from_db()
    assert (laid.outcome, laid.proof["kind"]) == ("cannot", "area")


def test_nothing_is_saved_while_the_size_is_being_checked(maker, laid):
    page = maker.get(f"/lays/{laid.pk}/move/")
    SizeCheck.objects.update(state="running")
    for wish in ("save", "keep"):
        again = maker.post(f"/lays/{laid.pk}/move/", facts(page, across="2", do=wish))
        assert "being checked" in again.content.decode()
    assert places()[0] == (10, 10)
    assert not LockedPiece.objects.exists()


@pytest.mark.parametrize(
    ("changed", "field"),
    [
        ({"across": "wide"}, "across"),
        ({"up": "-1"}, "up"),
        ({"turn": "33"}, "turn"),
        ({"panel": "99999"}, "panel"),
    ],
)
def test_a_place_that_cannot_be_is_named(maker, laid, changed, field):
    page = maker.get(f"/lays/{laid.pk}/move/")
    again = maker.post(f"/lays/{laid.pk}/move/", facts(page, do="check", **changed))
    assert field in again.context["form"].errors
    assert draft_in(again) == draft_in(page)


BROKEN = (
    "",
    "[",
    "{}",
    "[1]",
    '[{"piece": "side"}]',
    '[{"piece": "lid", "copy": 0, "panel": 1, "turn": 0, "x": 0, "y": 0}]',
    '[{"piece": "side", "copy": 9, "panel": 1, "turn": 0, "x": 0, "y": 0}]',
    '[{"piece": "side", "copy": 0, "panel": 99999, "turn": 0, "x": 0, "y": 0}]',
    '[{"piece": "side", "copy": 0, "panel": 1, "turn": 0, "x": NaN, "y": 0}]',
    '[{"piece": "side", "copy": 0, "panel": 1, "turn": 0, "x": 1e300, "y": 0}]',
    "[" * 10_000,
)


@pytest.mark.parametrize("text", BROKEN)
def test_a_draft_that_is_broken_changes_nothing(maker, laid, text):
    page = maker.get(f"/lays/{laid.pk}/move/")
    answer = maker.post(f"/lays/{laid.pk}/move/", facts(page, draft=text, do="save"), follow=True)
    assert "Nothing was changed" in answer.content.decode()
    assert maker.post(f"/lays/{laid.pk}/faults/", {"draft": text}).status_code == 400
    assert places()[0] == (10, 10)


def test_a_piece_laid_twice_is_a_fault(maker, laid):
    page = maker.get(f"/lays/{laid.pk}/move/")
    rows = json.loads(draft_in(page))
    answer = maker.post(f"/lays/{laid.pk}/faults/", {"draft": json.dumps([rows[0], rows[0]])})
    assert "laid twice" in answer.json()["faults"][0]["words"]
    answer = maker.post(f"/lays/{laid.pk}/faults/", {"draft": json.dumps(rows * 2)})
    assert answer.status_code == 400


def test_faults_come_as_words_with_the_pieces_they_concern(maker, stranger, laid):
    page = maker.get(f"/lays/{laid.pk}/move/")
    rows = json.loads(draft_in(page))
    answer = maker.post(f"/lays/{laid.pk}/faults/", {"draft": json.dumps(rows)})
    assert answer.json() == {"faults": []}
    rows[0]["x"] += 100
    (fault,) = maker.post(f"/lays/{laid.pk}/faults/", {"draft": json.dumps(rows)}).json()["faults"]
    assert fault["words"].startswith("Side 1, left on")
    assert sorted(fault["copies"]) == [LEFT, RIGHT]
    assert stranger.post(f"/lays/{laid.pk}/faults/", {"draft": "[]"}).status_code == 404
    assert maker.get(f"/lays/{laid.pk}/faults/").status_code == 405


def test_a_piece_goes_to_another_panel(maker, laid):
    front = builders.panel(Panel.objects.get().garment, 300, 300, name="Front", grain_deg=0)
    page = maker.get(f"/lays/{laid.pk}/move/")
    answer = maker.post(
        f"/lays/{laid.pk}/move/", facts(page, panel=str(front.pk), across="2", up="2", do="save")
    )
    assert answer.status_code == 302
    row = Placement.objects.get(copy=0)
    assert (row.panel, row.rotation_deg % 180) == (front, 90)  # its grain lies across


def test_a_piece_is_kept_here_and_freed_and_the_yes_stays(maker, stranger, laid):
    for step in ("keep", "free"):
        assert stranger.post(f"/lays/{laid.pk}/{step}/", {"piece": LEFT}).status_code == 404
        assert maker.get(f"/lays/{laid.pk}/{step}/").status_code == 405
    maker.post(f"/lays/{laid.pk}/keep/", {"piece": LEFT})
    lock = LockedPiece.objects.get()
    assert (lock.piece_name, lock.copy, lock.x_mm, lock.y_mm) == ("side", 0, 10, 10)
    page = maker.get(laid.get_absolute_url()).content.decode()
    assert "Where every piece lies" in page
    assert "Free it" in page
    assert 'class="lock"' in page
    moved = maker.post(
        f"/lays/{laid.pk}/move/", facts(maker.get(f"/lays/{laid.pk}/move/"), across="3", do="check")
    )
    assert "was moved, though it is locked" in moved.content.decode()
    maker.post(f"/lays/{laid.pk}/free/", {"piece": LEFT})
    assert not LockedPiece.objects.exists()
    assert "Where every piece lies" in maker.get(laid.get_absolute_url()).content.decode()


@pytest.mark.parametrize("nonsense", ["", "side", "[]", '["lid", 0]', '["side", 7]', '["side"]'])
def test_nonsense_for_a_piece_is_no_crash(maker, laid, nonsense):
    for step in ("keep", "free"):
        assert maker.post(f"/lays/{laid.pk}/{step}/", {"piece": nonsense}).status_code == 302
    assert maker.get(f"/lays/{laid.pk}/move/", {"piece": nonsense}).status_code == 200
    assert not LockedPiece.objects.exists()


def test_a_piece_is_kept_where_others_are_in_its_way_and_they_are_laid_anew(maker, laid):
    page = maker.get(f"/lays/{laid.pk}/move/")
    answer = maker.post(
        f"/lays/{laid.pk}/move/", facts(page, across="15", up="20", do="keep"), follow=True
    )
    assert "stays. The rest is laid anew" in answer.content.decode()
    laid.refresh_from_db()
    assert laid.outcome == "covers"
    assert places()[0] == (150, 200)


def test_a_piece_is_not_kept_where_it_lies_wrong_by_itself(maker, laid):
    page = maker.get(f"/lays/{laid.pk}/move/")
    again = maker.post(f"/lays/{laid.pk}/move/", facts(page, across="0", do="keep"))
    assert "cannot be kept here" in again.content.decode()
    assert not LockedPiece.objects.exists()


def test_the_search_goes_round_what_is_locked(maker, stranger, laid):
    maker.post(f"/lays/{laid.pk}/keep/", {"piece": LEFT})
    Keepsake.objects.update(clearance_mm=45)
    page = maker.get(laid.get_absolute_url()).content.decode()
    assert "Search around the locked pieces" in page
    assert stranger.post(f"/lays/{laid.pk}/search/").status_code == 404
    maker.post(f"/lays/{laid.pk}/search/")
    laid.refresh_from_db()
    assert laid.outcome == "covers"
    assert places()[0] == (10, 10)


def test_turns_follow_the_grain_of_cloth_and_piece():
    square = ((0.0, 0.0), (1.0, 0.0), (1.0, 1.0))
    cloth = CoverPanel("p", "g", square, grain_deg=90)
    assert turns_on(Piece("a", square), 0, cloth) == [0, 180]
    assert turns_on(Piece("a", square, grain_deg=0), 0, cloth) == [90, 270]
    assert turns_on(Piece("a", square, bias=True), 0, cloth) == [45, 135, 225, 315]
    one_way = CoverPanel("p", "g", square, grain_deg=90, one_way=True)
    assert turns_on(Piece("a", square), 0, one_way) == [0]
    assert turns_on(Piece("a", square, grain_tolerance_deg=2), 0, one_way) == [0, 2, 358]
    assert turns_on(Piece("a", square), 0, one_way, 1.5) == [0, 1.5]


@pytest.mark.parametrize("bias", [False, True])
def test_every_turn_that_is_offered_is_right_by_the_verifier(cushion, bias):
    PatternPiece.objects.update(is_bias=bias, grain_deg=30)
    problem = problem_of(cushion, cushion.pattern.sizes.get(), cloth_of(cushion))
    for copy in (0, 1):
        for turn in turns_on(problem.pieces[0], copy, problem.panels[0]):
            place = placement_of(problem.pieces[0], copy, problem.panels[0].id, turn, (250, 350))
            faults = faults_of(problem, [place], whole=False)
            assert "grain" not in {fault.kind for fault in faults}

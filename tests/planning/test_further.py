"""What would help, and lays nearer to the wishes: through the same queue, never for the worse."""

import pytest

from inventory.models import Garment, Panel
from planning import checking, further
from planning.coverage.placing import placement_of
from planning.coverage.verdict import Help
from planning.laying import known_lay
from planning.models import Keepsake, Lay, Placement, SizeCheck
from planning.problems import cloth_of, problem_of
from planning.sizes import sizes_of
from tests import builders

pytestmark = pytest.mark.django_db(transaction=True)


@pytest.fixture
def cut_short(monkeypatch):
    """Longer looks take two seconds."""
    monkeypatch.setattr("planning.checking.FURTHER_BUDGET_S", 2.0)


def refused(maker, cushion) -> SizeCheck:
    """A check that ends in a proof: one square is a little too wide for the panel's margins."""
    ring = [[0, 0], [492, 0], [492, 100], [0, 100]]
    cushion.pattern.sizes.get().pieces.update(cut_line_mm=ring)
    maker.post(f"/keepsakes/{cushion.pk}/check/")
    row = SizeCheck.objects.get()
    assert row.outcome == "cannot"
    return row


def test_what_helps_is_found_and_the_verdict_stays(maker, stranger, cushion, monkeypatch):
    monkeypatch.setattr("planning.checking.FURTHER_BUDGET_S", 8.0)
    row = refused(maker, cushion)
    page = maker.get(row.get_absolute_url()).content.decode()
    assert "Find out what would help" in page
    assert stranger.post(f"/lays/{row.pk}/helps/").status_code == 404
    assert maker.get(f"/lays/{row.pk}/helps/").status_code == 405
    maker.post(f"/lays/{row.pk}/helps/")
    fresh = SizeCheck.objects.get()
    assert (fresh.state, fresh.outcome, fresh.proof) == ("done", "cannot", row.proof)
    kinds = {each["kind"] for each in fresh.helps}
    assert "edge_margin" in kinds  # 4 mm instead of 5 on either side leave 492
    page = maker.get(row.get_absolute_url()).content.decode()
    assert fresh.helps[0]["text"][1:] in page
    assert "Find out what would help" not in page
    maker.post(f"/keepsakes/{cushion.pk}/check/")
    assert SizeCheck.objects.get().helps == []


def test_where_nothing_helps_that_is_said(maker, cushion, cut_short, monkeypatch):
    row = refused(maker, cushion)
    monkeypatch.setattr(further, "helps_for", lambda problem, seconds, **options: ())
    maker.post(f"/lays/{row.pk}/helps/")
    assert (
        "Nothing was found that would be enough"
        in maker.get(row.get_absolute_url()).content.decode()
    )


def test_a_lay_that_a_longer_look_finds_is_the_answer(maker, cushion, cut_short, monkeypatch):
    maker.post(f"/keepsakes/{cushion.pk}/check/")
    row = SizeCheck.objects.get()
    lay = tuple(known_lay(row, cloth_of(cushion)))
    Placement.objects.filter(copy=1).delete()
    Lay.objects.update(is_whole=False)
    SizeCheck.objects.update(outcome="undecided")
    found = (Help("found", "It is enough as it is.", (), (), {}, lay),)
    monkeypatch.setattr(further, "helps_for", lambda problem, seconds, **options: found)
    maker.post(f"/lays/{row.pk}/helps/")
    fresh = SizeCheck.objects.get()
    assert (fresh.state, fresh.outcome, fresh.helps) == ("done", "covers", [])
    assert Lay.objects.get().is_whole


def test_a_found_lay_that_does_not_hold_changes_nothing(maker, cushion, cut_short, monkeypatch):
    row = refused(maker, cushion)
    problem = problem_of(cushion, row.size, cloth_of(cushion))
    wrong = tuple(
        placement_of(problem.pieces[0], copy, problem.panels[0].id, 0.0, (0.0, 0.0))
        for copy in (0, 1)
    )
    found = (Help("found", "It is enough as it is.", (), (), {}, wrong),)
    monkeypatch.setattr(further, "helps_for", lambda problem, seconds, **options: found)
    maker.post(f"/lays/{row.pk}/helps/")
    assert SizeCheck.objects.get().outcome == "cannot"
    assert not Lay.objects.filter(is_whole=True).exists()


def on_two_garments(maker, cushion) -> SizeCheck:
    """A lay that holds, on two shirts where one would do."""
    other = builders.panel(builders.garment(cushion.collection, name="Grey shirt"), 500, 700)
    maker.post(f"/keepsakes/{cushion.pk}/check/")
    laid = Placement.objects.get(copy=1)
    laid.panel = other
    laid.x_mm, laid.y_mm, laid.rotation_deg = 250, 20, 0
    laid.outline_mm = [[250 - x, y + 20] for x, y in ((0, 0), (200, 0), (200, 200), (0, 200))]
    laid.save()
    first = Placement.objects.get(copy=0)
    first.panel = Panel.objects.exclude(pk=other.pk).get()
    first.save()
    row = SizeCheck.objects.get()
    assert sizes_of(cushion, cloth_of(cushion)).rows[0].covers
    return row


def test_a_lay_nearer_to_the_wishes_takes_the_place_of_the_old(
    maker, stranger, cushion, monkeypatch
):
    monkeypatch.setattr("planning.checking.FURTHER_BUDGET_S", 6.0)
    row = on_two_garments(maker, cushion)
    page = maker.get(row.get_absolute_url()).content.decode()
    assert "Look for a lay nearer to your wishes" in page
    assert stranger.post(f"/lays/{row.pk}/better/").status_code == 404
    maker.post(f"/lays/{row.pk}/better/")
    fresh = SizeCheck.objects.get()
    assert (fresh.state, fresh.outcome, fresh.placed) == ("done", "covers", 2)
    assert Placement.objects.values("panel__garment").distinct().count() == 1
    assert fresh.spare["holds_to_inset_mm"] > 1  # it does not lean on its edges
    assert "nearer to your wishes was found" in maker.get(row.get_absolute_url()).content.decode()
    assert sizes_of(cushion, cloth_of(cushion)).rows[0].covers


def test_where_no_nearer_lay_is_found_the_old_one_stays(maker, cushion, cut_short, monkeypatch):
    row = on_two_garments(maker, cushion)
    before = list(Placement.objects.values_list("panel", "x_mm", "y_mm"))
    monkeypatch.setattr(further, "better_lay", lambda problem, lay, *more, **options: tuple(lay))
    maker.post(f"/lays/{row.pk}/better/")
    assert list(Placement.objects.values_list("panel", "x_mm", "y_mm")) == before
    assert SizeCheck.objects.get().message == further.NO_NEARER
    monkeypatch.setattr(further, "better_lay", lambda problem, lay, *more, **options: lay[:1] * 2)
    maker.post(f"/lays/{row.pk}/better/")
    assert list(Placement.objects.values_list("panel", "x_mm", "y_mm")) == before


def test_how_far_the_cloth_may_be_off_is_told_and_the_furthest_lay_kept(
    maker, stranger, cushion, monkeypatch
):
    """A square of 20 cm alone in the middle of 50 by 70 cm stands at most 145 mm from its margin:
    (500 - 200) / 2 less 5 mm."""
    monkeypatch.setattr("planning.checking.FURTHER_BUDGET_S", 6.0)
    monkeypatch.setattr("planning.checking.STEADY_S", 0.0)  # the first lay leans where it will
    row = on_two_garments(maker, cushion)
    before = row.spare["holds_to_inset_mm"]
    assert stranger.post(f"/lays/{row.pk}/edges/").status_code == 404
    maker.post(f"/lays/{row.pk}/edges/")
    fresh = SizeCheck.objects.get()
    assert (fresh.state, fresh.outcome, fresh.placed) == ("done", "covers", 2)
    assert fresh.spare["holds_to_inset_mm"] > before
    assert 50 < fresh.spare["anew"]["inset_mm"] <= 145
    assert fresh.spare["anew"]["inset_mm"] == pytest.approx(fresh.spare["holds_to_inset_mm"], abs=1)
    assert "laid anew" in maker.get(row.get_absolute_url()).content.decode()


def test_wishes_are_what_was_ticked(cushion):
    problem = problem_of(cushion, cushion.pattern.sizes.get(), cloth_of(cushion))
    assert further.wishes_of(cushion, problem).few_garments == 1
    Keepsake.objects.update(wants_few_garments=False, wants_leftover=True)
    keepsake = Keepsake.objects.get()
    garment = Garment.objects.get()
    bare = builders.garment(keepsake.collection, name="Scarf")
    keepsake.kept_whole.set([garment, bare])
    wishes = further.wishes_of(keepsake, problem)
    assert (wishes.few_garments, wishes.leftover, wishes.same_cloth) == (0, 0.5, 0)
    assert wishes.keep_whole == (garment.tag,)


@pytest.mark.parametrize("what", ["helps", "better", "edges"])
def test_nothing_further_is_looked_for_where_it_has_no_sense(maker, cushion, what):
    maker.post(f"/keepsakes/{cushion.pk}/check/")
    row = SizeCheck.objects.get()
    SizeCheck.objects.update(outcome="covers" if what == "helps" else "undecided")
    maker.post(f"/lays/{row.pk}/{what}/")
    assert SizeCheck.objects.get().task == "verdict"
    Keepsake.objects.update(edge_margin_mm=9)  # and not where the verdict is of another day
    maker.post(f"/lays/{row.pk}/{what}/")
    assert SizeCheck.objects.get().task == "verdict"


def test_rules_that_change_while_it_waits_are_noticed(maker, cushion):
    maker.post(f"/keepsakes/{cushion.pk}/check/")
    Keepsake.objects.update(edge_margin_mm=9)
    keepsake = Keepsake.objects.get()
    checking.ask(keepsake, [keepsake.pattern.sizes.get()], 1, SizeCheck.Task.BETTER)
    assert "Check the size again" in SizeCheck.objects.get().message


def test_the_page_waits_quietly_while_something_runs(maker, cushion):
    maker.post(f"/keepsakes/{cushion.pk}/check/")
    row = SizeCheck.objects.get()
    SizeCheck.objects.update(state="running", task="better")
    page = maker.get(row.get_absolute_url()).content.decode()
    assert "nearer to your wishes is being looked for" in page
    assert maker.get(row.get_absolute_url(), headers={"HX-Request": "true"}).status_code == 204
    SizeCheck.objects.update(state="done")
    assert maker.get(row.get_absolute_url(), headers={"HX-Request": "true"}).status_code == 200

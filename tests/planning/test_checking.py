"""A check's row is the truth: what is saved, kept, superseded and taken up again."""

from datetime import timedelta

import pytest
from django.db import IntegrityError, transaction
from django.utils import timezone
from shapely import Polygon

from inventory.models import Garment, Panel
from planning import checking
from planning.coverage.verdict import Verdict
from planning.coverage.verify import faults_of
from planning.models import SILENT_AFTER, Lay, Placement, SizeCheck
from planning.problems import cloth_of, problem_of
from planning.sizes import sizes_of
from tests import builders

pytestmark = pytest.mark.django_db(transaction=True)


def ask(keepsake, budget_s=5.0):
    checking.ask(keepsake, list(keepsake.pattern.sizes.all()), budget_s)
    return SizeCheck.objects.get(keepsake=keepsake)


def test_a_covered_size_is_saved_with_a_lay_that_holds(cushion):
    row = ask(cushion)
    assert (row.state, row.outcome, row.placed) == ("done", "covers", 2)
    cloth = cloth_of(cushion)
    problem = problem_of(cushion, row.size, cloth)
    lay = checking.known_lay(row, cloth)
    assert not faults_of(problem, lay)
    assert sorted(p.mirrored for p in lay) == [False, True]


def test_a_size_too_large_for_every_panel_is_proven(cushion):
    cushion.pattern.sizes.get().pieces.update(cut_line_mm=[[0, 0], [495, 0], [495, 20], [0, 20]])
    row = ask(cushion)
    assert row.outcome == "cannot"
    assert "fits nowhere" in row.proof["text"]
    assert not Lay.objects.filter(is_whole=True).exists()


def test_two_pieces_that_leave_no_room_for_both_are_never_a_yes(cushion):
    cushion.pattern.sizes.get().pieces.update(cut_line_mm=[[0, 0], [400, 0], [400, 400], [0, 400]])
    row = ask(cushion, budget_s=2)
    assert row.outcome in ("cannot", "undecided")


def test_the_database_holds_no_cannot_without_a_proof(cushion):
    row = ask(cushion)
    with pytest.raises(IntegrityError), transaction.atomic():
        SizeCheck.objects.filter(pk=row.pk).update(outcome="cannot", proof=None)


def test_a_verdict_is_of_today_until_the_cloth_changes(cushion):
    ask(cushion)
    assert sizes_of(cushion, cloth_of(cushion)).rows[0].word == "covers"
    builders.flaw(Panel.objects.get(), 250, 350, 60)
    row = sizes_of(cushion, cloth_of(cushion)).rows[0]
    assert (row.word, row.is_out_of_date) == ("unchecked", True)


@pytest.mark.parametrize("change", ["margin", "left out", "status", "rule", "removed"])
def test_every_rule_of_the_table_makes_a_verdict_out_of_date(cushion, change):
    ask(cushion)
    garment = Panel.objects.get().garment
    if change == "margin":
        cushion.edge_margin_mm = 12
        cushion.save()
    elif change == "left out":
        cushion.left_out.add(garment)
    elif change == "status":
        garment.status = "cut"
        garment.save()
    elif change == "rule":
        cushion.piece_rules.create(workshop=cushion.workshop, piece_name="side", garment=garment)
    else:
        Panel.objects.update(removed_at=timezone.now())
    assert sizes_of(cushion, cloth_of(cushion)).rows[0].is_out_of_date


def test_a_lay_that_still_holds_is_kept_when_cloth_is_added(cushion):
    ask(cushion)
    before = list(Placement.objects.values_list("panel", "x_mm", "y_mm"))
    builders.panel(Panel.objects.get().garment, 900, 900, name="Front")
    row = ask(cushion)
    assert row.outcome == "covers"
    assert list(Placement.objects.values_list("panel", "x_mm", "y_mm")) == before


def test_a_part_of_a_lay_is_begun_from_too(cushion):
    row = ask(cushion)
    Lay.objects.update(is_whole=False)
    assert len(checking.known_lay(row, cloth_of(cushion))) == 2


def test_asking_again_with_no_time_at_all_does_not_lose_the_yes(cushion):
    ask(cushion)
    assert ask(cushion, budget_s=0.2).outcome == "covers"


def test_a_lay_that_fails_here_is_no_lay_whatever_the_engine_says(cushion, monkeypatch):
    monkeypatch.setattr("planning.laying.faults_of", lambda problem, lay: ["overlap"])
    row = ask(cushion)
    assert row.outcome == "undecided"
    assert not Lay.objects.filter(is_whole=True).exists()


def half_done(problem, **options):
    """A check whose searches were both killed before they placed anything."""
    notes = ("the search 'whole' ended early (signal 9)",) * 2
    copies = tuple((piece.id, copy) for piece, copy in problem.copies())
    return Verdict("undecided", (), copies, None, None, 1.0, 0, "none", notes)


def test_a_search_that_broke_off_does_not_cost_the_part_that_was_found(cushion, monkeypatch):
    row = ask(cushion)
    Placement.objects.filter(copy=1).delete()
    SizeCheck.objects.update(outcome="undecided")
    monkeypatch.setattr("planning.checking.check", half_done)
    row = ask(cushion)
    assert (row.outcome, row.placed) == ("undecided", 1)
    assert row.unplaced == [{"piece": "side", "copy": 1}]
    assert Placement.objects.get().copy == 0
    assert row.message == (
        "A search broke off before its time, so less was tried than there was time for. "
        "Check again."
    )


def test_a_part_that_no_longer_holds_is_not_kept(cushion, monkeypatch):
    ask(cushion)
    Placement.objects.filter(copy=1).delete()
    laid = Placement.objects.get()
    builders.flaw(Panel.objects.get(), *laid.outline_mm[0], 30)
    monkeypatch.setattr("planning.checking.check", half_done)
    assert ask(cushion).placed == 0
    assert not Placement.objects.exists()


def test_nothing_is_proven_impossible_while_a_panel_waits_for_its_stripes(cushion):
    Garment.objects.update(surface="stripe", repeat_along_mm=30)
    cushion.matches.create(
        workshop=cushion.workshop, a_piece="side", a_copy=0, b_piece="side", b_copy=1
    )
    row = ask(cushion)
    assert (row.outcome, row.proof) == ("undecided", None)
    assert "wait for their stripes" in row.message
    Panel.objects.update(repeat_x_mm=0, repeat_y_mm=0)
    assert ask(cushion).outcome == "covers"


def test_a_rule_that_cannot_be_read_stops_the_check_with_a_sentence(cushion):
    ask(cushion)
    pocket = builders.detail(Panel.objects.get(), [[10, 10], [60, 10], [60, 60]])
    cushion.pins.create(
        workshop=cushion.workshop, detail=pocket, piece_name="side", copy=0, spot="tail"
    )
    row = ask(cushion)
    assert (row.state, row.outcome) == ("stopped", "covers")
    assert row.message == "“side” has no place called “tail” in this size."
    assert sizes_of(cushion, cloth_of(cushion)).rows[0].is_out_of_date


@pytest.mark.parametrize("is_left_out", [True, False])
def test_a_check_without_cloth_says_why(cushion, is_left_out):
    if is_left_out:
        cushion.left_out.add(Garment.objects.get())
    else:
        Panel.objects.all().delete()
    words = ask(cushion).message
    assert ("left out, cut or returned" in words) is is_left_out
    assert ("No panel is measured" in words) is not is_left_out


def test_too_many_panels_are_refused_with_what_to_do(cushion, monkeypatch):
    monkeypatch.setattr("planning.problems.MOST_PANELS", 0)
    assert "Leave out the garments" in ask(cushion).message


def test_the_largest_is_not_named_while_it_is_being_checked(cushion):
    row = ask(cushion)
    assert sizes_of(cushion, cloth_of(cushion)).largest_covered
    SizeCheck.objects.filter(pk=row.pk).update(state="running")
    assert not sizes_of(cushion, cloth_of(cushion)).largest_covered


def test_a_run_that_is_no_longer_wanted_changes_nothing(cushion):
    row = ask(cushion)
    SizeCheck.objects.update(state="waiting", run=row.run + 1, outcome="")
    checking.run(row.pk, row.run)
    row.refresh_from_db()
    assert (row.state, row.outcome) == ("waiting", "")


def test_a_crash_lands_in_the_row_as_a_sentence(cushion, monkeypatch, caplog):
    def fall(*args, **options):
        raise RuntimeError("native code gave up")

    monkeypatch.setattr("planning.checking.check", fall)
    row = ask(cushion)
    assert (row.state, row.outcome) == ("stopped", "")
    assert "fault of the program" in row.message
    assert "native code gave up" in caplog.text


def test_a_check_whose_worker_died_is_taken_up_again(cushion):
    row = ask(cushion)
    long_ago = timezone.now() - SILENT_AFTER - timedelta(seconds=1)
    SizeCheck.objects.update(state="running", heard_at=long_ago, outcome="")
    assert checking.take_up_again(timezone.now()) == 1
    row.refresh_from_db()
    assert (row.state, row.outcome) == ("done", "covers")
    assert checking.take_up_again(timezone.now()) == 0


def test_a_check_that_still_speaks_is_left_alone(cushion):
    ask(cushion)
    SizeCheck.objects.update(state="running", heard_at=timezone.now())
    assert checking.take_up_again(timezone.now()) == 0


def test_a_check_that_waited_very_long_is_offered_again(cushion):
    ask(cushion)
    SizeCheck.objects.update(state="waiting", asked_at=timezone.now() - timedelta(minutes=6))
    assert checking.take_up_again(timezone.now()) == 1
    assert SizeCheck.objects.get().state == "done"


def test_stopping_keeps_what_was_found_before(cushion):
    ask(cushion)
    SizeCheck.objects.update(state="running", heard_at=timezone.now())
    assert checking.stop(cushion) == 1
    row = SizeCheck.objects.get()
    assert (row.state, row.outcome) == ("stopped", "covers")


def test_larger_sizes_come_first(cushion, monkeypatch):
    asked = []
    monkeypatch.setattr("planning.checking.run", lambda pk, number: asked.append(pk))
    pattern = builders.pattern(cushion.workshop, heights_mm=(200, 100, 300))
    checking.ask(cushion, list(pattern.sizes.order_by("-height_mm")))
    heights = [SizeCheck.objects.get(pk=pk).size.height_mm for pk in asked]
    assert heights == [300, 200, 100]


def test_cloth_that_will_shrink_is_counted_as_shrunk(cushion):
    Panel.objects.update(is_measured_after_wash=False)
    cloth = cloth_of(cushion)
    assert cloth.is_shrinkage_predicted
    xs = [x for x, _ in cloth.panels[0].outline]
    assert max(xs) - min(xs) < 500


def test_details_kept_aside_are_no_cloth(cushion):
    panel = Panel.objects.get()
    ring = [[100, 100], [200, 100], [200, 220], [100, 220]]
    builders.detail(panel, ring, is_kept_aside=False)
    assert not cloth_of(cushion).panels[0].flaws
    builders.detail(panel, ring, is_kept_aside=True)
    assert len(cloth_of(cushion).panels[0].flaws) == 1


def test_a_lay_of_a_larger_size_is_a_start_for_a_smaller_one(workshop, monkeypatch):
    """The smaller size is not searched at all: its pieces lie where the larger ones do."""
    collection = builders.collection(workshop)
    builders.panel(builders.garment(collection), 500, 700)
    pattern = builders.pattern(workshop, heights_mm=(150, 200))
    keepsake = builders.keepsake(collection, pattern)
    small, large = pattern.sizes.order_by("height_mm")
    checking.ask(keepsake, [large], 5)
    monkeypatch.setattr("planning.coverage.check.look", lambda *asked: ())  # the search finds none
    checking.ask(keepsake, [small], 5)
    assert SizeCheck.objects.get(size=small).outcome == "covers"
    centre = {
        (each.lay.check_row.size_id, each.piece_name, each.copy): Polygon(each.outline_mm).centroid
        for each in Placement.objects.all()
    }
    for copy in range(2):
        a, b = centre[small.pk, "side", copy], centre[large.pk, "side", copy]
        assert a.distance(b) < 60  # about where it lay, then pushed away from the edges

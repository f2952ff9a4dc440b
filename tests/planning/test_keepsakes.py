import pytest

from inventory.models import Garment
from planning.drafting.library import KINDS
from planning.library import give_built_in
from planning.models import Keepsake, Pattern, SizeCheck
from tests import builders

pytestmark = pytest.mark.django_db(transaction=True)


def test_a_keepsake_is_planned(maker, workshop):
    collection = builders.collection(workshop)
    pattern = give_built_in(workshop)
    facts = {
        "name": "A bear for Ellen",
        "collection": collection.pk,
        "pattern": pattern.pk,
        "purpose": "toy",
        "recipient_age_months": "12",
    }
    page = maker.post("/keepsakes/new/", facts)
    row = Keepsake.objects.get()
    assert page.url == row.get_absolute_url()
    assert row.recipient_age_months == 12
    assert "No panel is measured" in maker.get(page.url).content.decode()


def test_another_workshops_cloth_and_patterns_cannot_be_chosen(maker, stranger):
    elsewhere = builders.workshop("Elsewhere 2")
    facts = {
        "name": "X",
        "collection": builders.collection(elsewhere).pk,
        "pattern": builders.pattern(elsewhere).pk,
        "purpose": "toy",
    }
    errors = maker.post("/keepsakes/new/", facts).context["form"].errors
    assert set(errors) == {"collection", "pattern"}
    assert not Keepsake.objects.exists()


PAGES = ("", "change/", "rules/", "sizes/")
STEPS = ("check", "stop", "choose", "remove", "put-back")


@pytest.mark.parametrize("page", PAGES)
def test_pages_open_for_their_workshop_only(maker, stranger, cushion, page):
    address = f"/keepsakes/{cushion.pk}/{page}"
    assert maker.get(address).status_code in (200, 286)
    assert stranger.get(address).status_code == 404


@pytest.mark.parametrize("step", STEPS)
def test_steps_are_posts_of_the_same_workshop(maker, stranger, cushion, step):
    assert maker.get(f"/keepsakes/{cushion.pk}/{step}/").status_code == 405
    assert stranger.post(f"/keepsakes/{cushion.pk}/{step}/").status_code == 404


def test_sizes_are_checked_and_the_largest_covered_is_marked(maker, workshop, cushion):
    cushion.pattern = builders.pattern(workshop, heights_mm=(200, 100, 600))
    cushion.save()
    maker.post(f"/keepsakes/{cushion.pk}/check/")
    page = maker.get(f"/keepsakes/{cushion.pk}/")
    words = {row.size.height_mm: row.word for row in page.context["sizes"].rows}
    assert words == {100: "covers", 200: "covers", 600: "cannot"}
    assert page.context["sizes"].largest_covered.size.height_mm == 200
    assert page.content.decode().count("Largest that is covered") == 1


def test_polling_stops_when_nothing_runs(maker, cushion):
    maker.post(f"/keepsakes/{cushion.pk}/check/")
    assert maker.get(f"/keepsakes/{cushion.pk}/sizes/").status_code == 286
    SizeCheck.objects.update(state="running")
    page = maker.get(f"/keepsakes/{cushion.pk}/sizes/")
    assert page.status_code == 200
    assert "Being checked" in page.content.decode()


def test_only_a_size_covered_today_can_be_chosen(maker, cushion):
    size = cushion.pattern.sizes.get()
    maker.post(f"/keepsakes/{cushion.pk}/choose/", {"size": size.pk})
    cushion.refresh_from_db()
    assert cushion.chosen_size is None
    maker.post(f"/keepsakes/{cushion.pk}/check/")
    maker.post(f"/keepsakes/{cushion.pk}/choose/", {"size": size.pk})
    cushion.refresh_from_db()
    assert cushion.chosen_size == size


def test_no_size_is_chosen_where_the_giver_does_not_allow_cutting(maker, cushion):
    maker.post(f"/keepsakes/{cushion.pk}/check/")
    cushion.collection.cut_consent = "no"
    cushion.collection.save()
    size = cushion.pattern.sizes.get()
    page = maker.post(f"/keepsakes/{cushion.pk}/choose/", {"size": size.pk}, follow=True)
    assert "does not allow cutting, so no size" in page.content.decode()
    cushion.refresh_from_db()
    assert cushion.chosen_size is None
    page = maker.get(SizeCheck.objects.get().get_absolute_url()).content.decode()
    assert "Choose this size" not in page


def test_cloth_that_is_all_left_out_is_not_called_unmeasured(maker, cushion):
    cushion.left_out.add(Garment.objects.get())
    for page in (
        maker.get(f"/keepsakes/{cushion.pk}/"),
        maker.post(f"/keepsakes/{cushion.pk}/check/", follow=True),
    ):
        assert "left out, cut or returned" in page.content.decode()
        assert "No panel is measured" not in page.content.decode()


def test_remarks_on_the_rules_lead_to_where_they_are_mended(maker, cushion):
    Garment.objects.update(surface="stripe", repeat_along_mm=30)
    cushion.matches.create(
        workshop=cushion.workshop, a_piece="side", a_copy=0, b_piece="side", b_copy=1
    )
    cushion.together.create(workshop=cushion.workshop, piece_names=["side"])
    page = maker.get(f"/keepsakes/{cushion.pk}/").content.decode()
    assert "nobody has measured where a stripe starts" in page
    assert "/measure/#id_repeat_x_mm" in page
    assert "Stripes meet" in page
    assert "must be mended first" not in page
    cushion.matches.update(a_spot="tail")
    page = maker.get(f"/keepsakes/{cushion.pk}/").content.decode()
    assert "must be mended first" in page


def test_a_proof_begins_like_a_sentence(maker, cushion):
    ring = [[0, 0], [495, 0], [495, 20], [0, 20]]
    cushion.pattern.sizes.get().pieces.update(cut_line_mm=ring)
    maker.post(f"/keepsakes/{cushion.pk}/check/")
    for address in (cushion.get_absolute_url(), SizeCheck.objects.get().get_absolute_url()):
        page = maker.get(address).content.decode()
        assert ">Side is" in page or "Side is 2.0 cm" in page


def test_nonsense_for_a_size_is_no_crash(maker, cushion):
    for nonsense in ("abc", "", "-1", "9" * 40):
        page = maker.post(f"/keepsakes/{cushion.pk}/choose/", {"size": nonsense})
        assert page.status_code == 404


def test_the_lay_is_drawn_and_told_in_a_table(maker, stranger, cushion):
    maker.post(f"/keepsakes/{cushion.pk}/check/")
    address = SizeCheck.objects.get().get_absolute_url()
    page = maker.get(address).content.decode()
    assert page.count('class="piece"') == 2
    assert "Where every piece lies" in page
    assert {"Left", "Right"} <= {word.strip() for word in page.replace("<", ">").split(">")}
    assert stranger.get(address).status_code == 404


def test_an_undecided_lay_never_reads_as_a_yes(maker, cushion, monkeypatch):
    monkeypatch.setattr("planning.laying.faults_of", lambda problem, lay: ["overlap"])
    maker.post(f"/keepsakes/{cushion.pk}/check/")
    for address in (cushion.get_absolute_url(), SizeCheck.objects.get().get_absolute_url()):
        page = maker.get(address).content.decode()
        assert "Undecided" in page
        assert "ot a yes" in page
        assert "Covers" not in page
        assert "Choose this size" not in page
    assert "Not all pieces are placed" in page
    assert 'class="piece unsure"' in page


def test_a_proof_is_drawn_where_the_piece_comes_nearest(maker, cushion):
    ring = [[0, 0], [495, 0], [495, 20], [0, 20]]
    cushion.pattern.sizes.get().pieces.update(cut_line_mm=ring)
    maker.post(f"/keepsakes/{cushion.pk}/check/")
    page = maker.get(SizeCheck.objects.get().get_absolute_url()).content.decode()
    assert "cannot be cut from this cloth" in page
    assert "side does not fit on Back" in page
    assert "Where every piece lies" not in page


def test_an_out_of_date_lay_is_not_for_cutting(maker, cushion):
    maker.post(f"/keepsakes/{cushion.pk}/check/")
    cushion.edge_margin_mm = 20
    cushion.save()
    page = maker.get(SizeCheck.objects.get().get_absolute_url()).content.decode()
    assert "Out of date" in page
    assert "Not for cutting" in page
    assert "Covers" not in page


@pytest.mark.parametrize(("consent", "words"), [("no", "does not allow"), ("ask", "has not said")])
def test_a_giver_who_has_not_said_yes_is_heard_on_every_page(maker, cushion, consent, words):
    maker.post(f"/keepsakes/{cushion.pk}/check/")
    cushion.collection.cut_consent = consent
    cushion.collection.save()
    for address in (cushion.get_absolute_url(), SizeCheck.objects.get().get_absolute_url()):
        assert words in maker.get(address).content.decode()


def test_a_garment_that_lies_in_a_lay_is_not_taken_off_the_list(maker, cushion):
    maker.post(f"/keepsakes/{cushion.pk}/check/")
    garment = Garment.objects.get()
    page = maker.post(f"/garments/{garment.pk}/remove/", follow=True).content.decode()
    assert "lies in a lay of “A cushion”" in page
    cushion.left_out.add(garment)
    maker.post(f"/garments/{garment.pk}/remove/")
    garment.refresh_from_db()
    assert garment.removed_at


def test_a_keepsake_off_the_list_can_be_put_back(maker, cushion):
    maker.post(f"/keepsakes/{cushion.pk}/remove/")
    assert maker.get("/keepsakes/").context["keepsakes"] == []
    maker.post(f"/keepsakes/{cushion.pk}/put-back/")
    assert len(maker.get("/keepsakes/").context["keepsakes"]) == 1


def test_a_new_workshop_has_every_built_in_pattern(client):
    client.post(
        "/first-workshop/",
        {
            "workshop": "Needle",
            "units": "cm",
            "username": "ada",
            "password1": "a-long-and-quiet-word",
            "password2": "a-long-and-quiet-word",
        },
    )
    assert set(Pattern.objects.values_list("kind", flat=True)) == set(KINDS)
    pattern = Pattern.objects.get(kind="bear")
    assert pattern.sizes.count() == 5
    for address in ("/patterns/", pattern.get_absolute_url(), "/"):
        assert client.get(address).status_code == 200
    for size in pattern.sizes.all():
        page = client.get(size.get_absolute_url()).content.decode()
        assert page.count("<figure") == size.pieces.count() >= 9
    assert give_built_in(pattern.workshop) == pattern


def test_patterns_stay_inside_their_workshop(stranger, cushion):
    assert stranger.get(cushion.pattern.get_absolute_url()).status_code == 404
    assert stranger.get(cushion.pattern.sizes.get().get_absolute_url()).status_code == 404


def test_a_pattern_of_few_pieces_carries_a_warning(maker, cushion):
    page = maker.get(cushion.pattern.sizes.get().get_absolute_url()).content.decode()
    assert "Fewer than six kinds of piece" in page


def test_a_lay_on_many_panels_asks_no_more_than_one_on_few(
    maker, cushion, django_assert_max_num_queries
):
    maker.post(f"/keepsakes/{cushion.pk}/check/")
    lay = SizeCheck.objects.get().lay
    for number in range(6):
        other = builders.panel(Garment.objects.get(), 210, 210, name=f"Part {number}")
        first = lay.placements.first()
        first.pk, first.copy, first.panel = None, 10 + number, other
        first.save()
    with django_assert_max_num_queries(30):
        page = maker.get(SizeCheck.objects.get().get_absolute_url())
    assert len(page.context["shown"].panels) == 7


def test_lists_ask_the_database_no_more_than_they_must(
    maker, cushion, django_assert_max_num_queries
):
    maker.post(f"/keepsakes/{cushion.pk}/check/")
    for address, most in (
        (cushion.get_absolute_url(), 28),
        (SizeCheck.objects.get().get_absolute_url(), 30),
    ):
        with django_assert_max_num_queries(most):
            maker.get(address)

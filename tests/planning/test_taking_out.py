"""Pieces, seams and sizes taken out of a pattern and put back; two windows open at once."""

import pytest

from planning.models import TakenOut
from tests import builders
from tests.planning.entered import SQUARE, estimates, points, put_back, seam, seam_page


def test_two_windows_never_remove_or_change_two_seams(maker, own, size, square):
    for edge in ("foot", "top", "back"):
        facts = seam(("side", edge), ("side", edge), name=edge)
        maker.post(f"/patterns/{own.pk}/seams/add/", facts)
    own.refresh_from_db()
    first = seam_page(own)
    maker.post(f"{first}remove/")
    again = maker.post(f"{first}remove/", follow=True)
    assert "nothing was done" in again.content.decode()
    changed = maker.post(first, seam(("side", "side"), ("side", "side")), follow=True)
    assert "another window" in changed.content.decode()
    own.refresh_from_db()
    assert [each["name"] for each in own.seams] == ["top", "back"]


def test_a_seam_whose_piece_is_gone_is_told_and_can_be_changed(maker, own, size, square):
    maker.post(f"/sizes/{size.pk}/pieces/add/?how=corners", points(SQUARE, name="back"))
    for piece in ("back", "side"):
        facts = seam((piece, "foot"), (piece, "foot"), name=f"{piece} seam")
        maker.post(f"/patterns/{own.pk}/seams/add/", facts)
    maker.post(f"/pieces/{size.pieces.get(name='back').pk}/remove/")
    own.refresh_from_db()
    page = maker.get(own.get_absolute_url())
    assert "Cannot be walked" in page.content.decode()
    assert f"{seam_page(own, 1)}remove/" in page.content.decode()
    assert maker.get(seam_page(own, 1)).context["form"]["name"].value() == "side seam"
    # the estimates go on without the seam that cannot be walked
    thread = [each for each, *_ in estimates(maker, size) if each.name == "thread"]
    assert thread


def test_a_piece_taken_out_can_be_put_back(maker, size, square):
    maker.post(f"/pieces/{square.pk}/remove/")
    assert not size.pieces.exists()
    put_back(maker, size.pattern)
    assert size.pieces.get().entry == square.entry
    assert not size.taken_out.exists()


def test_pieces_taken_out_one_after_another_all_come_back(maker, own, size, square):
    maker.post(f"/sizes/{size.pk}/pieces/add/?how=corners", points(SQUARE, name="back"))
    for piece in size.pieces.all():
        maker.post(f"/pieces/{piece.pk}/remove/")
    page = maker.get(size.get_absolute_url()).content.decode()
    assert page.count("was taken out") == 2
    put_back(maker, own)
    put_back(maker, own)
    assert {piece.name for piece in size.pieces.all()} == {"side", "back"}


def test_a_piece_comes_back_with_the_allowance_of_today(maker, own, size, square):
    maker.post(f"/pieces/{square.pk}/remove/")
    maker.post(f"/patterns/{own.pk}/change/", {"name": own.name, "seam_allowance": "1"})
    put_back(maker, own)
    assert min(x for x, _ in size.pieces.get().cut_line_mm) == pytest.approx(-10, abs=0.05)


def test_a_piece_whose_name_is_taken_stays_taken_out(maker, own, size, square):
    maker.post(f"/pieces/{square.pk}/remove/")
    maker.post(f"/sizes/{size.pk}/pieces/add/?how=corners", points(SQUARE, name="SIDE"))
    page = put_back(maker, own)
    assert "piece of that name again" in page.content.decode()
    assert size.pieces.count() == own.taken_out.count() == 1


def test_a_size_taken_out_can_be_put_back(maker, own, size, square):
    maker.post(f"/patterns/{own.pk}/grade/", {"graded_from": size.pk, "heights": "60"})
    refused = maker.post(f"/sizes/{size.pk}/remove/", follow=True)
    assert "graded from this one" in refused.content.decode()
    maker.post(f"/sizes/{own.sizes.get(height_mm=600).pk}/own/")
    maker.post(f"/sizes/{size.pk}/remove/")
    assert [each.height_mm for each in own.sizes.all()] == [600]
    put_back(maker, own)
    assert own.sizes.get(height_mm=300).pieces.get().entry == square.entry


def test_a_stranger_puts_nothing_back(maker, stranger, own, size, square):
    maker.post(f"/pieces/{square.pk}/remove/")
    address = f"/patterns/taken-out/{TakenOut.objects.get().pk}/put-back/"
    assert stranger.post(address).status_code == 404
    assert not size.pieces.exists()


def test_nothing_is_put_back_into_a_pattern_that_is_planned_with(
    maker, own, size, square, workshop
):
    maker.post(f"/pieces/{square.pk}/remove/")
    builders.keepsake(builders.collection(workshop), own)
    page = put_back(maker, own)
    assert "stays as it is" in page.content.decode()
    assert not size.pieces.exists()

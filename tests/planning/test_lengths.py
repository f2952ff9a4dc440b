"""How much of a bolt a size takes: verified, never less than the pieces' own area allows."""

import pytest

from planning.library import give_built_in
from tests import builders


@pytest.fixture
def size(workshop):
    return builders.pattern(workshop, {"name": "side", "side_mm": 200.0, "count": 4}).sizes.get()


def test_squares_side_by_side(maker, size):
    """Two squares of 20 cm lie abreast on 45 cm: two rows, a gap of 2 mm, two margins of 5 mm."""
    page = maker.get(f"/sizes/{size.pk}/length/", {"width": "45", "line": "cut", "pieces": "side"})
    found = page.context["found"]
    assert found.length_mm == pytest.approx(2 * 200 + 2 + 2 * 5, abs=0.5)
    assert "41.2 cm of a bolt" in page.content.decode()


def test_a_bear_takes_at_least_its_area_and_the_lay_holds(maker, workshop):
    row = give_built_in(workshop).sizes.get(height_mm=300)
    names = [piece.name for piece in row.pieces.all()]
    page = maker.get(f"/sizes/{row.pk}/length/", {"width": "90", "line": "seam", "pieces": names})
    found = page.context["found"]
    assert found.length_mm * 900 > found.used_mm2
    assert len(found.placements) == sum(piece.count for piece in row.pieces.all())
    assert found.density > 0.5


@pytest.mark.parametrize(
    ("asked", "field"),
    [
        ({"width": "15"}, "width"),
        ({"width": "900"}, "width"),
        ({"width": "x"}, "width"),
        ({"width": ""}, "width"),
        ({"width": "90", "pieces": "tail"}, "pieces"),
        ({"width": "90", "line": "hem"}, "line"),
    ],
)
def test_a_question_that_cannot_be_answered_names_the_field(maker, size, asked, field):
    asked = {"line": "cut", "pieces": "side", **asked}
    page = maker.get(f"/sizes/{size.pk}/length/", asked)
    assert field in page.context["form"].errors
    assert page.context["found"] is None


def test_the_question_alone(maker, stranger, size):
    page = maker.get(f"/sizes/{size.pk}/length/")
    assert not page.context["form"].errors
    assert stranger.get(f"/sizes/{size.pk}/length/").status_code == 404

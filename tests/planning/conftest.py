import pytest

from planning.models import Keepsake, Pattern
from tests import builders
from tests.planning.entered import SQUARE, points


@pytest.fixture
def cushion(workshop) -> Keepsake:
    """Two squares of 20 cm (one turned over) and a panel that holds them with room to spare."""
    collection = builders.collection(workshop)
    builders.panel(builders.garment(collection), 500, 700)
    return builders.keepsake(collection, builders.pattern(workshop))


@pytest.fixture
def own(maker, workshop):
    """A pattern of the maker's own with one empty size, 30 cm tall and a 6 mm allowance."""
    facts = {"name": "Grandmother’s bear", "height": "30", "seam_allowance": "0.6"}
    page = maker.post("/patterns/new/paper/", facts)
    assert page.status_code == 302
    return Pattern.objects.get(name="Grandmother’s bear")


@pytest.fixture
def size(own):
    return own.sizes.get()


@pytest.fixture
def square(maker, size):
    """A 10 cm square, cut as a left and a right."""
    page = maker.post(f"/sizes/{size.pk}/pieces/add/?how=corners", points(SQUARE))
    assert page.status_code == 302, page.context["form"].errors
    return size.pieces.get()

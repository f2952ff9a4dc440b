import pytest

from planning.models import Keepsake
from tests import builders


@pytest.fixture
def cushion(workshop) -> Keepsake:
    """Two squares of 20 cm (one turned over) and a panel that holds them with room to spare."""
    collection = builders.collection(workshop)
    builders.panel(builders.garment(collection), 500, 700)
    return builders.keepsake(collection, builders.pattern(workshop))

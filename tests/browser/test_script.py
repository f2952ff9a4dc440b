"""What the few small scripts add, each beside what works without them."""

from inventory.models import Flaw
from shared.models import Member
from tests import builders
from tests.browser.conftest import Visit


def test_a_panel_is_drawn_while_it_is_typed(visit: Visit, member: Member) -> None:
    garment = builders.garment(builders.collection(member.workshop))
    page = visit.go(f"/garments/{garment.pk}/panels/add/?shape=rectangle")
    page.get_by_label("Width").press_sequentially("46")
    page.get_by_text("Length is missing").wait_for()
    page.get_by_label("Length", exact=False).first.press_sequentially("60")
    page.get_by_role("img", name="The panel as measured so far").wait_for()
    assert page.get_by_text("2,760 cm² in all").is_visible()
    assert page.evaluate("document.activeElement.id") == "id_measure_length"


def test_a_tap_on_the_drawing_marks_the_place(visit: Visit, member: Member) -> None:
    panel = builders.panel(builders.garment(builders.collection(member.workshop)), 500, 700)
    page = visit.go(f"/panels/{panel.pk}/flaw/add/")
    drawing = page.get_by_role("img", name="Back")
    drawing.scroll_into_view_if_needed()
    box = drawing.bounding_box()
    assert box is not None
    page.mouse.click(box["x"] + box["width"] / 2, box["y"] + box["height"] / 2)
    page.get_by_label("Widest part").fill("4")
    page.get_by_role("button", name="Mark it").click()
    ((x_mm, y_mm),) = Flaw.objects.get().points_mm
    assert abs(x_mm - 250) < 15
    assert abs(y_mm - 350) < 60  # the drawing leaves room for its scale bar below


def test_a_new_collections_name_is_asked_for_only_when_needed(visit: Visit, member: Member) -> None:
    builders.collection(member.workshop)
    page = visit.go("/garments/take-in/")
    name = page.get_by_label("Name of the new collection")
    assert name.is_visible()
    page.get_by_label("Collection", exact=True).select_option(label="Dad’s shirts")
    assert not name.is_visible()


def test_everything_can_be_reached_by_keyboard(visit: Visit, member: Member) -> None:
    page = visit.go("/garments/")
    page.keyboard.press("Tab")
    assert page.evaluate("document.activeElement.className") == "skip"
    page.keyboard.press("Enter")
    assert page.evaluate("document.activeElement.id") == "main"

"""The lay under a person's hands: looked at closely, moved by keys, mouse and numbers, kept."""

import re
from typing import Any

import pytest
from django.utils import timezone
from playwright.sync_api import expect

from inventory.models import Panel
from planning.coverage.placing import placement_of
from planning.laying import keep_by_hand
from planning.models import LockedPiece, Placement, SizeCheck
from planning.problems import cloth_of, problem_of
from shared.models import Member
from tests import builders
from tests.browser.conftest import Visit
from tests.browser.test_pages import assert_in_order


@pytest.fixture
def laid(member: Member) -> SizeCheck:
    """A cushion that is covered: two squares of 20 cm side by side on a panel of 50 by 70."""
    collection = builders.collection(member.workshop)
    panel = builders.panel(builders.garment(collection))
    builders.flaw(panel, 400, 500, 30)
    keepsake = builders.keepsake(collection, builders.pattern(member.workshop))
    size, cloth = keepsake.pattern.sizes.get(), cloth_of(keepsake)
    problem = problem_of(keepsake, size, cloth)
    row = SizeCheck.objects.create(
        workshop=member.workshop,
        keepsake=keepsake,
        size=size,
        state="done",
        asked_at=timezone.now(),
    )
    spots = ((10.0, 10.0), (450.0, 10.0))
    lay = [
        placement_of(problem.pieces[0], copy, problem.panels[0].id, 0.0, spots[copy])
        for copy in (0, 1)
    ]
    assert keep_by_hand(row, cloth, problem, lay) == []
    return row


def left_and_low(copy: int) -> tuple[float, float]:
    ring = Placement.objects.get(copy=copy).outline_mm
    return round(min(x for x, _ in ring), 2), round(min(y for _, y in ring), 2)


def test_a_piece_is_moved_by_keys_and_numbers_saved_put_back_and_kept(
    visit: Visit, laid: SizeCheck
) -> None:
    page = visit.go(f"/lays/{laid.pk}/")
    assert_in_order(visit)
    page.get_by_role("link", name="Move a piece by hand").click()
    assert_in_order(visit)
    piece = page.get_by_role("button", name="side 1, left", exact=True)
    piece.focus()
    for _ in range(3):
        page.keyboard.press("ArrowUp")
    across, up = page.get_by_label("From the left"), page.get_by_label("From below")
    expect(up).to_have_value("1.3")
    expect(page.get_by_text("Every piece here keeps every rule")).to_be_visible()
    for _ in range(5):
        page.keyboard.press("Shift+ArrowRight")
    expect(across).to_have_value("6")
    expect(page.get_by_text("Side 1, left on")).to_contain_text("too close to side 2, right")
    expect(page.locator(".laid-piece.faulty")).to_have_count(2)
    assert_in_order(visit)
    page.get_by_role("button", name="Save this lay").click()
    expect(page.get_by_text("Not saved")).to_be_visible()

    across.fill("2")
    up.fill("40")
    up.press("Tab")
    expect(page.get_by_text("Every piece here keeps every rule")).to_be_visible()
    expect(page.locator(".laid-piece.faulty")).to_have_count(0)
    assert left_and_low(0) == (10, 10)
    page.get_by_role("button", name="Save this lay").click()
    page.get_by_role("heading", name="Where every piece lies").wait_for()
    assert left_and_low(0) == (20, 400)

    page.get_by_role("button", name="Put the pieces back where they lay").click()
    expect(page.get_by_text("lie where they lay before")).to_be_visible()
    assert left_and_low(0) == (10, 10)
    page.get_by_role("button", name=re.compile("Keep it here.*side 1, left")).click()
    expect(page.get_by_role("button", name=re.compile("Free it.*side 1, left"))).to_be_visible()
    assert LockedPiece.objects.get().copy == 0
    assert page.get_by_text("Where every piece lies").is_visible()
    assert_in_order(visit)


def test_a_piece_is_dragged_and_stays_on_the_panel(visit: Visit, laid: SizeCheck) -> None:
    page = visit.go(f"/lays/{laid.pk}/move/")
    piece = page.get_by_role("button", name="side 1, left", exact=True)
    piece.scroll_into_view_if_needed()
    box = piece.bounding_box()
    assert box is not None
    per_mm = piece.evaluate("piece => piece.getScreenCTM().a")
    middle = (box["x"] + box["width"] / 2, box["y"] + box["height"] / 2)
    page.mouse.move(*middle)
    page.mouse.down()
    page.mouse.move(middle[0] + 6, middle[1] - box["height"] * 1.2, steps=5)
    page.mouse.up()
    up = float(page.get_by_label("From below").input_value()) * 10
    assert abs(up - (10 + box["height"] * 1.2 / per_mm)) < 8
    page.mouse.move(middle[0], middle[1] - box["height"])
    page.mouse.down()
    page.mouse.move(middle[0] - 2000, middle[1] - box["height"], steps=4)
    page.mouse.up()
    expect(page.get_by_label("From the left")).to_have_value("0")
    expect(page.get_by_text("too close to the edge of the panel")).to_be_visible()
    page.get_by_label("From the left").fill("1")
    page.get_by_label("From the left").press("Tab")
    expect(page.get_by_text("Every piece here keeps every rule")).to_be_visible()
    page.get_by_role("button", name="Save this lay").click()
    page.get_by_role("heading", name="Where every piece lies").wait_for()
    assert left_and_low(0)[0] == 10


def test_a_piece_is_turned_chosen_and_sent_to_another_panel(visit: Visit, laid: SizeCheck) -> None:
    builders.panel(Panel.objects.get().garment, 300, 300, name="Front")
    page = visit.go(f"/lays/{laid.pk}/move/")
    page.get_by_label("Which piece").select_option(index=1)
    page.get_by_role("group", name="Side 2, right").wait_for()
    with page.expect_response("**/move/"):
        page.get_by_label("Turned by").select_option("180")
    expect(page.get_by_label("Turned by")).to_have_value("180")
    expect(page.get_by_text("Every piece here keeps every rule")).to_be_visible()
    page.get_by_label("Panel").select_option(
        label=page.locator("#id_panel option").nth(1).inner_text()
    )
    page.get_by_role("group", name="Front of Blue shirt with 1 piece").wait_for()
    page.get_by_label("From the left").fill("3")
    with page.expect_response("**/move/"):
        page.get_by_label("From the left").press("Enter")
    expect(page.get_by_label("From the left")).to_have_value("3")
    page.get_by_role("button", name="Save this lay").click()
    page.get_by_role("heading", name="Where every piece lies").wait_for()
    assert Placement.objects.get(copy=1).panel.name == "Front"
    assert left_and_low(1) == (30, 10)


def test_a_drawing_is_looked_at_closely(visit: Visit, laid: SizeCheck) -> None:
    page = visit.go(f"/lays/{laid.pk}/")
    drawing = page.get_by_role("img", name="Back of Blue shirt")

    def seen() -> list[float]:
        return [float(n) for n in (drawing.get_attribute("viewBox") or "").split()]

    whole = seen()
    page.get_by_role("button", name="Zoom in").click()
    assert seen()[2] < whole[2]
    page.get_by_role("button", name="Whole").click()
    assert seen() == pytest.approx(whole, abs=0.02)
    page.get_by_role("group", name="Drawing: plus and minus zoom").focus()
    page.keyboard.press("+")
    page.keyboard.press("+")
    close = seen()
    page.keyboard.press("ArrowRight")
    assert seen()[0] > close[0]
    page.keyboard.press("0")
    assert seen() == pytest.approx(whole, abs=0.02)
    drawing.hover()
    page.mouse.wheel(0, -300)
    assert seen()[2] < whole[2]  # the drawing still has the focus
    margin = page.locator(".halo").first
    assert margin.evaluate("halo => getComputedStyle(halo).visibility") == "hidden"
    page.get_by_label("Show the margins").check()
    assert margin.evaluate("halo => getComputedStyle(halo).visibility") == "visible"


def test_a_piece_is_moved_without_script(
    visit_with_or_without_script: Visit, laid: SizeCheck
) -> None:
    page = visit_with_or_without_script.go(f"/lays/{laid.pk}/move/")
    page.get_by_label("Which piece").select_option(index=1)
    choose: Any = page.get_by_role("button", name="Choose this piece")
    if choose.count():
        choose.click()
    page.get_by_role("group", name="Side 2, right").wait_for()
    page.get_by_label("From below").fill("60")
    page.get_by_role("button", name="Check this place").click()
    page.get_by_text("too close to the edge of the panel").wait_for()
    page.get_by_label("From below").fill("22")
    page.get_by_role("button", name="Save this lay").click()
    page.get_by_role("heading", name="Where every piece lies").wait_for()
    assert left_and_low(1) == (250, 220)

"""A maker's own pattern in a real browser: every page in order, and a piece drawn on the paper."""

import json
import re

import pytest
from playwright.sync_api import Page, expect

from planning.demo_data import FIXTURES
from planning.demo_patterns import add_pattern
from planning.drafts import mark_of
from planning.library import give_built_in
from planning.models import Pattern, PatternPiece, PatternSize
from shared.models import Member
from tests.browser.conftest import Visit
from tests.browser.test_pages import assert_in_order


@pytest.fixture
def owl(member: Member) -> Pattern:
    """The demo's own pattern: seven pieces entered by hand, one of them a handed wing."""
    facts = json.loads((FIXTURES / "workshop.json").read_text(encoding="utf-8"))
    return add_pattern(member.workshop, facts["patterns"][0])


@pytest.fixture
def empty_size(member: Member) -> PatternSize:
    row = Pattern.objects.create(workshop=member.workshop, name="From paper")
    return PatternSize.objects.create(workshop=member.workshop, pattern=row, height_mm=300)


def settle(page: Page) -> None:
    """Wait until no sketch is under way: all threads of a test share one database connection."""
    page.wait_for_timeout(600)
    page.wait_for_load_state("networkidle")


def test_every_page_of_a_pattern_is_in_order(visit: Visit, owl: Pattern, member: Member) -> None:
    give_built_in(member.workshop)
    size = owl.sizes.get(graded_from=None)
    wing, sole = (size.pieces.get(name=name) for name in ("wing", "sole"))
    addresses = [
        "/patterns/",
        "/patterns/new/",
        "/patterns/new/paper/",
        "/patterns/new/draft/",
        "/patterns/new/file/",
        *(f"/patterns/{owl.pk}/{page}" for page in ("", "change/", "grade/", "seams/add/")),
        f"/patterns/{owl.pk}/seams/{mark_of(owl.seams[6])}/",
        f"/sizes/{size.pk}/",
        f"/sizes/{size.pk}/length/?width=60&line=cut&pieces=wing&pieces=sole",
        f"/sizes/{size.pk}/pieces/add/",
        f"/sizes/{size.pk}/pieces/add/?how=corners",
        f"/sizes/{size.pk}/pieces/add/?how=limb",
        f"/pieces/{wing.pk}/",
        f"/pieces/{wing.pk}/change/",
        f"/pieces/{sole.pk}/change/",
    ]
    for address in addresses:
        page = visit.go(address)
        page.wait_for_load_state("networkidle")
        assert_in_order(visit)


def test_the_picture_of_a_mistake_is_in_order(visit: Visit, owl: Pattern) -> None:
    PatternPiece.objects.filter(name="wing").update(mirrored=0)
    page = visit.go(f"/patterns/{owl.pk}/")
    expect(page.get_by_role("img", name="both facing the same way")).to_be_visible()
    assert_in_order(visit)


def test_a_piece_is_drawn_on_the_paper_and_saved(visit: Visit, empty_size: PatternSize) -> None:
    page = visit.go(f"/sizes/{empty_size.pk}/pieces/add/?how=corners")
    page.get_by_label("Name needed").fill("sole")
    paper = page.locator("[data-paper]")
    for number, (across, low) in enumerate(((0.1, 0.9), (0.6, 0.9), (0.6, 0.4)), start=1):
        settle(page)  # the paper is drawn anew a moment after each change
        paper.scroll_into_view_if_needed()
        box = paper.bounding_box()
        assert box is not None
        page.mouse.click(box["x"] + across * box["width"], box["y"] + low * box["height"])
        page.locator(f"[data-row='{number}']").wait_for()
    page.locator("#sketch .piece-shape").wait_for()
    settle(page)
    page.get_by_role("button", name="Save the piece").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Sole")
    assert len(PatternPiece.objects.get().edges) == 3


def test_a_point_is_nudged_by_the_arrow_keys(visit: Visit, empty_size: PatternSize) -> None:
    page = visit.go(f"/sizes/{empty_size.pk}/pieces/add/?how=corners")
    for row, (across, up) in enumerate((("0", "0"), ("8", "0"), ("8", "6")), start=1):
        page.locator(f"[name=point_{row}_across]").fill(across)
        page.locator(f"[name=point_{row}_up]").fill(up)
    point = page.locator("[data-row='3']")
    point.focus()
    page.keyboard.press("Shift+ArrowUp")
    expect(page.locator("[name=point_3_up]")).to_have_value("7")
    # the paper is drawn anew, and the same point still has the focus
    page.wait_for_load_state("networkidle")
    page.keyboard.press("ArrowRight")
    expect(page.locator("[name=point_3_across]")).to_have_value("8.1")


def test_a_row_is_put_in_between(visit: Visit, empty_size: PatternSize) -> None:
    page = visit.go(f"/sizes/{empty_size.pk}/pieces/add/?how=corners")
    page.locator("[name=point_1_across]").fill("1")
    page.locator("[name=point_2_across]").fill("2")
    page.get_by_role("button", name="Insert a point after point 1", exact=True).click()
    expect(page.locator("[name=point_2_across]")).to_have_value("")
    expect(page.locator("[name=point_3_across]")).to_have_value("2")


def test_a_full_table_loses_no_row_to_one_put_in(visit: Visit, empty_size: PatternSize) -> None:
    page = visit.go(f"/sizes/{empty_size.pk}/pieces/add/?how=corners")
    page.locator("[name=point_12_across]").fill("12")
    page.get_by_role("button", name="Insert a point after point 1", exact=True).click()
    page.locator("[name=point_20_across]").wait_for()
    expect(page.locator("[name=point_12_across]")).to_have_value("12")


def test_a_point_is_taken_out_by_a_key_with_its_edge(visit: Visit, empty_size: PatternSize) -> None:
    page = visit.go(f"/sizes/{empty_size.pk}/pieces/add/?how=corners")
    for way, value in (("across", "2"), ("up", "3"), ("edge", "foot")):
        page.locator(f"[name=point_1_{way}]").fill(value)
    page.locator("[data-row='1']").focus()
    page.keyboard.press("Delete")
    for way in ("across", "up", "edge"):
        expect(page.locator(f"[name=point_1_{way}]")).to_have_value("")


def test_points_in_inches_are_fractions(
    visit: Visit, empty_size: PatternSize, member: Member
) -> None:
    Member.objects.filter(pk=member.pk).update(units="in")
    page = visit.go(f"/sizes/{empty_size.pk}/pieces/add/?how=corners")
    page.locator("[name=point_1_across]").fill("2 3/8")
    page.locator("[name=point_1_up]").fill("1/2")
    page.locator("[data-row='1']").focus()
    page.keyboard.press("ArrowRight")
    expect(page.locator("[name=point_1_across]")).to_have_value("2 7/16")
    expect(page.locator("[name=point_1_up]")).to_have_value("1/2")


def test_a_piece_comes_in_without_script_too(
    visit_with_or_without_script: Visit, empty_size: PatternSize
) -> None:
    page = visit_with_or_without_script.go(f"/sizes/{empty_size.pk}/pieces/add/")
    page.get_by_role("link", name="Circle", exact=True).click()
    page.get_by_label("Name needed").fill("sole")
    page.get_by_label("Diameter").fill("8")
    settle(page)
    page.get_by_role("button", name="Save the piece").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Sole")
    assert re.search(r"9\.2 cm", page.locator("main").inner_text())  # 8 cm and two allowances

"""Every page at two widths: no complaint in the console, no axe finding, nothing wider than the
window, one heading of the first rank."""

from datetime import date
from typing import Any

import pytest
from axe_playwright_python.sync_playwright import Axe

from inventory.models import ConditionNote, Garment
from planning import checking
from planning.library import give_built_in
from planning.models import SizeCheck
from shared.models import Member
from tests import builders
from tests.browser.conftest import Visit

RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"]


def assert_accessible(visit: Visit) -> None:
    found = Axe().run(visit.page, options={"runOnly": {"type": "tag", "values": RULES}})
    assert found.violations_count == 0, found.generate_report()


def assert_in_order(visit: Visit) -> None:
    page = visit.page
    page.wait_for_load_state()
    wide = page.evaluate("document.documentElement.scrollWidth - window.innerWidth")
    assert wide <= 0, f"{page.url} is {wide} px wider than the window"
    assert page.locator("h1").count() == 1
    assert_accessible(visit)
    assert visit.complaints == [], page.url


@pytest.fixture
def rows(member: Member) -> dict[str, Any]:
    """One of everything, with a keepsake that is covered in one size and not in another."""
    workshop = member.workshop
    collection = builders.collection(workshop, giver="Ruth", cut_consent="ask", keeps_scent=True)
    garment = builders.garment(
        collection,
        {"cotton": 60, "polyester": 40},
        troubles=["smoke", "mould"],
        label_marks={"wash": "40", "iron": "2"},
        fragility=2,
        fray=3,
        mass_g_m2=120,
    )
    panel = builders.panel(garment)
    builders.flaw(panel, 100, 100, 30)
    builders.detail(panel, [[300, 300], [400, 300], [400, 400], [300, 400]])
    ConditionNote.objects.create(
        workshop=workshop, garment=garment, grade=2, text="Thin.", noted_on=date(2026, 3, 1)
    )
    builders.garment(collection, {}, name="Unknown scarf", construction="")
    pattern = builders.pattern(workshop, heights_mm=(200, 600))
    keepsake = builders.keepsake(collection, pattern)
    checking.ask(keepsake, list(pattern.sizes.all()), 5)
    bear = give_built_in(workshop)
    covered, refused = (SizeCheck.objects.get(size__height_mm=mm).pk for mm in (200, 600))
    return {
        "collection": collection.pk,
        "garment": garment.pk,
        "panel": panel.pk,
        "keepsake": keepsake.pk,
        "covered": covered,
        "refused": refused,
        "bear": bear.pk,
        "size": bear.sizes.all()[0].pk,
    }


PAGES = (
    "/",
    "/collections/",
    "/collections/new/",
    "/collections/{collection}/",
    "/collections/{collection}/allows/",
    "/collections/{collection}/tags/",
    "/garments/",
    "/garments/?fibre=cotton&fray=4",
    "/garments/?fibre=silk",
    "/garments/take-in/",
    "/garments/{garment}/",
    "/garments/{garment}/advice/",
    "/garments/{garment}/tests/",
    "/garments/{garment}/overrides/add/",
    "/garments/{garment}/washes/add/",
    "/advice/",
    "/garments/compare/",
    "/garments/{garment}/describe/",
    "/garments/{garment}/notes/add/",
    "/garments/{garment}/photos/add/",
    "/garments/{garment}/panels/add/",
    "/garments/{garment}/panels/add/?shape=shirt-body",
    "/garments/{garment}/panels/add/?shape=corners",
    "/panels/{panel}/",
    "/panels/{panel}/measure/",
    "/panels/{panel}/flaw/add/",
    "/panels/{panel}/detail/add/?drawn=corners",
    "/keepsakes/",
    "/keepsakes/new/",
    "/keepsakes/{keepsake}/",
    "/keepsakes/{keepsake}/change/",
    "/keepsakes/{keepsake}/rules/",
    "/lays/{covered}/",
    "/lays/{covered}/move/",
    "/lays/{refused}/",
    "/patterns/",
    "/patterns/{bear}/",
    "/sizes/{size}/",
    "/settings/",
)


def test_every_page_is_in_order(visit: Visit, rows: dict[str, Any]) -> None:
    for address in PAGES:
        visit.go(address.format(**rows))
        assert_in_order(visit)


def test_every_page_is_in_order_in_the_dark(visit: Visit, rows: dict[str, Any]) -> None:
    visit.page.emulate_media(color_scheme="dark")
    for address in ("/", "/garments/{garment}/", "/keepsakes/{keepsake}/", "/lays/{covered}/"):
        visit.go(address.format(**rows))
        assert_accessible(visit)


def test_an_empty_workshop_says_what_to_do(visit: Visit) -> None:
    for address in ("/", "/collections/", "/garments/", "/keepsakes/", "/patterns/"):
        visit.go(address)
        assert_in_order(visit)
    visit.go("/").get_by_role("link", name="Take in a garment").last.click()
    assert visit.page.url.endswith("/garments/take-in/")


def test_a_page_that_is_not_there_is_in_order(visit: Visit) -> None:
    visit.go("/garments/999999/")
    visit.complaints.clear()  # the browser reports the 404 itself
    assert_in_order(visit)


def test_errors_are_read_first_and_lead_to_their_fields(visit: Visit) -> None:
    page = visit.go("/garments/take-in/")
    page.get_by_label("Percent", exact=True).fill("60")
    page.get_by_role("button", name="Take it in").click()
    assert page.title().startswith("Error: ")
    assert page.evaluate("document.activeElement.className") == "summary"
    assert_in_order(visit)
    page.get_by_role("link", name="Which fibre is this percentage of?").click()
    assert page.evaluate("document.activeElement.id || location.hash.slice(1)") == "id_fibre_1"
    assert Garment.objects.count() == 0

"""A real Chromium against a real server. Playwright's loop and the ORM share this thread."""

import os
from collections.abc import Iterator
from typing import Any

import pytest
from playwright.sync_api import Browser, BrowserContext, ConsoleMessage, Page

from shared.models import Member
from tests import builders
from tests.browser.chromium import HOW_TO_GET_IT, find_chromium

os.environ["DJANGO_ALLOW_ASYNC_UNSAFE"] = "true"

PHONE = {"width": 360, "height": 740}
DESK = {"width": 1280, "height": 900}


@pytest.fixture(scope="session")
def browser_type_launch_args() -> dict[str, Any]:
    found = find_chromium()
    if found is None:
        pytest.fail(HOW_TO_GET_IT)
    return {
        "executable_path": found,
        "args": [
            "--no-sandbox",
            "--disable-gpu",
            "--disable-background-networking",
            "--disable-component-update",
            "--disable-sync",
            "--no-first-run",
        ],
    }


@pytest.fixture
def member(transactional_db: None) -> Member:
    return builders.member(builders.workshop())


class Visit:
    """A browser window that remembers every complaint of the page."""

    def __init__(self, context: BrowserContext, address: str) -> None:
        self.page: Page = context.new_page()
        self.page.set_default_timeout(10_000)
        self.address = address
        self.complaints: list[str] = []
        self.page.on("console", self._heard)
        self.page.on("pageerror", lambda error: self.complaints.append(str(error)))

    def _heard(self, message: ConsoleMessage) -> None:
        if message.type in ("error", "warning"):
            self.complaints.append(message.text)

    def go(self, path: str) -> Page:
        self.page.goto(self.address + path)
        return self.page

    def log_in(self, username: str = "maker") -> Page:
        page = self.go("/log-in/")
        page.get_by_label("Username").fill(username)
        page.get_by_label("Password").fill("linen-and-thread")
        page.get_by_role("button", name="Log in").click()
        return page


@pytest.fixture(params=[PHONE, DESK], ids=["phone", "desk"])
def visit(
    request: pytest.FixtureRequest, browser: Browser, live_server: Any, member: Member
) -> Iterator[Visit]:
    """A logged-in window at phone and at desktop width; the page must not complain."""
    yield from _visit(browser, live_server.url, viewport=request.param)


@pytest.fixture(params=[True, False], ids=["script", "no script"])
def visit_with_or_without_script(
    request: pytest.FixtureRequest, browser: Browser, live_server: Any, member: Member
) -> Iterator[Visit]:
    yield from _visit(browser, live_server.url, viewport=PHONE, java_script_enabled=request.param)


def _visit(browser: Browser, address: str, **options: Any) -> Iterator[Visit]:
    context = browser.new_context(**options)
    visit = Visit(context, address)
    visit.log_in()
    yield visit
    assert visit.complaints == []
    context.close()

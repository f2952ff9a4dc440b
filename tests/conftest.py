"""What every test can ask for: two workshops that must never meet, and a data folder that goes."""

import os
from pathlib import Path
from typing import Any

import pytest
from django.test import Client

from shared.models import Workshop
from tests import builders
from tests.browser.chromium import HOW_TO_GET_IT, find_chromium


@pytest.fixture(autouse=True)
def own_data_folder(settings: Any, tmp_path: Path) -> None:
    """Photographs go to a folder of the test; checks run at once, in the same process."""
    settings.MEDIA_ROOT = tmp_path / "photos"
    settings.TASKS = {"default": {"BACKEND": "django.tasks.backends.immediate.ImmediateBackend"}}
    settings.PASSWORD_HASHERS = ["django.contrib.auth.hashers.MD5PasswordHasher"]


@pytest.fixture
def workshop(db: None) -> Workshop:
    return builders.workshop()


@pytest.fixture
def maker(workshop: Workshop) -> Client:
    """A logged-in member of the workshop."""
    client = Client()
    client.force_login(builders.member(workshop).user)
    return client


@pytest.fixture
def stranger(db: None) -> Client:
    """A logged-in member of another workshop on the same server."""
    client = Client()
    client.force_login(builders.member(builders.workshop("Elsewhere"), "stranger").user)
    return client


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    if find_chromium() is None and os.environ.get("BEARING_CLOTH_NEED_BROWSER") != "yes":
        skip = pytest.mark.skip(reason="Chromium is not installed")
        for item in items:
            if "tests/browser/" in item.path.as_posix():
                item.add_marker(skip)


def pytest_terminal_summary(terminalreporter: Any) -> None:
    if find_chromium() is None:
        terminalreporter.write_line(f"Browser tests were skipped: {HOW_TO_GET_IT}")

"""Finds the Chromium that the browser tests drive. Nothing is ever downloaded."""

import os
import shutil

HOW_TO_GET_IT = (
    "no Chromium was found. Install it (Debian, Ubuntu: apt-get install chromium) "
    "or name one in BEARING_CLOTH_CHROMIUM."
)


def find_chromium() -> str | None:
    named = os.environ.get("BEARING_CLOTH_CHROMIUM")
    if named:
        return named
    return shutil.which("chromium") or shutil.which("chromium-browser")

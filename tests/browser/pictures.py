"""Takes the README's pictures of the real pages, from the demo in a folder of its own.

python -m tests.browser.pictures
"""

import re
import subprocess
import sys
import tempfile
import time
from pathlib import Path

from PIL import Image
from playwright.sync_api import Page, ViewportSize, sync_playwright

from planning.demo_words import PASSWORD, USERNAME
from tests.browser.chromium import HOW_TO_GET_IT, find_chromium

ROOT = Path(__file__).resolve().parent.parent.parent
FOLDER = ROOT / "demo_fixtures" / "pages"
DESK = ViewportSize(width=1100, height=760)
PHONE = ViewportSize(width=360, height=740)
COLOURS = 160


def start(folder: str) -> tuple["subprocess.Popen[str]", str]:
    process = subprocess.Popen(
        [sys.executable, "manage.py", "demo", "--port=8790"],
        cwd=ROOT,
        env={"PATH": "/usr/bin:/bin", "BEARING_CLOTH_DATA": folder},
        stdout=subprocess.PIPE,
        text=True,
    )
    assert process.stdout is not None
    for line in process.stdout:
        if found := re.search(r"open at (http://\S+)", line):
            time.sleep(4)
            return process, found[1]
    raise SystemExit("The demo did not start.")


def log_in(page: Page, address: str) -> None:
    page.goto(address + "log-in/")
    page.get_by_label("Username").fill(USERNAME)
    page.get_by_label("Password").fill(PASSWORD)
    page.get_by_role("button", name="Log in").click()


def take(page: Page, name: str) -> None:
    page.wait_for_timeout(500)
    file = FOLDER / f"{name}.png"
    page.screenshot(path=file)
    with Image.open(file) as picture:
        picture.convert("RGB").quantize(COLOURS, dither=Image.Dither.NONE).save(file, optimize=True)


def wait_for_checks(page: Page, address: str) -> None:
    for number in (1, 2, 3):
        page.goto(f"{address}keepsakes/{number}/")
        while page.get_by_role("button", name="Stop").count():
            page.wait_for_timeout(2000)
            page.reload()


def main() -> None:
    FOLDER.mkdir(exist_ok=True)
    found = find_chromium()
    if found is None:
        raise SystemExit(HOW_TO_GET_IT)
    with tempfile.TemporaryDirectory() as folder, sync_playwright() as playwright:
        process, address = start(folder)
        browser = playwright.chromium.launch(executable_path=found, args=["--no-sandbox"])
        try:
            desk = browser.new_context(viewport=DESK).new_page()
            log_in(desk, address)
            wait_for_checks(desk, address)
            for name, path in {
                "bench": "",
                "garment": "garments/1/",
                "keepsake": "keepsakes/2/",
                "patterns": "patterns/",
            }.items():
                desk.goto(address + path)
                take(desk, name)
            desk.goto(address + "keepsakes/1/")
            desk.get_by_role("link", name="See the lay").first.click()
            laid = desk.locator("figure.laid")
            fullest = max(range(laid.count()), key=lambda n: laid.nth(n).locator(".piece").count())
            laid.nth(fullest).evaluate("figure => figure.scrollIntoView()")
            take(desk, "lay")
            desk.get_by_role("link", name="Move a piece by hand").click()
            take(desk, "move")
            desk.goto(address + "patterns/")
            desk.get_by_role("link", name="Barn owl").click()
            desk.get_by_role("link", name="26.2 cm").first.click()
            desk.get_by_role("link", name="Wing").first.click()
            desk.get_by_role("link", name="Change this piece").click()
            desk.locator("[data-paper]").wait_for()
            desk.get_by_role("heading", name="Points").or_(
                desk.get_by_text("Points", exact=True)
            ).first.evaluate("heading => heading.scrollIntoView()")
            take(desk, "piece")
            desk.goto(address + "garments/1/")
            desk.get_by_role("link", name="Measure a panel").click()
            desk.get_by_role("link", name="Sleeve").click()
            for label, words in {
                "Width at the armpit": "41",
                "Width at the cuff": "25.5",
                "Length": "58",
                "Height of the sleeve head": "12",
            }.items():
                desk.get_by_label(label, exact=False).first.fill(words)
            desk.get_by_role("img", name="The panel as measured so far").wait_for()
            take(desk, "panel")
            phone = browser.new_context(viewport=PHONE, device_scale_factor=2).new_page()
            log_in(phone, address)
            phone.goto(address + "garments/take-in/")
            take(phone, "take-in-phone")
        finally:
            browser.close()
            process.terminate()
            process.wait()


if __name__ == "__main__":
    main()

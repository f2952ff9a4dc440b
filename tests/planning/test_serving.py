"""The demo as a person starts it: real processes, a real port, a folder of its own."""

import os
import re
import signal
import sqlite3
import subprocess
import sys
import time
from collections.abc import Iterator
from contextlib import closing
from pathlib import Path
from urllib.request import urlopen

import pytest

from shared.serving import free_port

ROOT = Path(__file__).resolve().parent.parent.parent


class Demo:
    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.log = folder / "log.txt"
        with self.log.open("wb") as log:
            self.process = subprocess.Popen(
                [sys.executable, "manage.py", "demo", f"--port={free_port('127.0.0.1', 8700)}"],
                cwd=ROOT,
                env={**os.environ, "BEARING_CLOTH_DATA": str(folder / "data")},
                stdout=log,
                stderr=subprocess.STDOUT,
            )
        self.address = self._wait_for(r"open at (http://\S+)")

    def _wait_for(self, words: str) -> str:
        for _ in range(600):
            found = re.search(words, self.log.read_text())
            if found:
                return found[1]
            assert self.process.poll() is None, self.log.read_text()
            time.sleep(0.1)
        raise AssertionError(self.log.read_text())

    def page(self) -> str:
        for _ in range(100):
            try:
                with urlopen(self.address + "log-in/") as answer:  # noqa: S310 - our own server
                    return answer.read().decode()
            except OSError:
                time.sleep(0.1)
        raise AssertionError("the server does not answer")

    def count(self, table: str) -> int:
        with closing(sqlite3.connect(self.folder / "data" / "workshop.sqlite3")) as base:
            return int(base.execute(f"SELECT count(*) FROM {table}").fetchone()[0])  # noqa: S608

    def children(self) -> list[int]:
        listed = subprocess.run(
            ["ps", "-eo", "pid,ppid"], capture_output=True, text=True, check=True
        ).stdout
        pairs = [tuple(map(int, line.split())) for line in listed.splitlines()[1:]]
        return [pid for pid, parent in pairs if parent == self.process.pid]


@pytest.fixture
def demo(tmp_path: Path) -> Iterator[Demo]:
    found = Demo(tmp_path)
    yield found
    if found.process.poll() is None:
        found.process.kill()
        found.process.wait()


def gone(pids: list[int]) -> bool:
    for _ in range(100):
        if not any(Path(f"/proc/{pid}").exists() for pid in pids):
            return True
        time.sleep(0.1)
    return False


def test_the_demo_starts_answers_stops_and_loses_nothing(demo: Demo) -> None:
    assert "Log in" in demo.page()
    assert "bear-on-a-bench" in demo.log.read_text()
    garments = demo.count("inventory_garment")
    assert garments >= 14
    children = demo.children()
    demo.process.send_signal(signal.SIGINT)
    assert demo.process.wait(timeout=20) == 0
    assert gone(children)

    again = Demo(demo.folder)
    assert "Log in" in again.page()
    assert demo.count("inventory_garment") == garments
    again.process.terminate()
    assert again.process.wait(timeout=20) == 0


@pytest.mark.skipif(not Path("/proc/self").exists(), reason="looks at processes in /proc")
def test_a_demo_killed_outright_leaves_nothing_running(demo: Demo) -> None:
    demo.page()
    children = demo.children()
    assert len(children) == 2
    demo.process.kill()
    demo.process.wait()
    assert gone(children)


@pytest.mark.skipif(not Path("/proc/self").exists(), reason="looks at processes in /proc")
def test_a_child_that_falls_over_is_started_again(demo: Demo) -> None:
    demo.page()
    first = demo.children()
    os.kill(first[0], signal.SIGKILL)
    for _ in range(100):
        now = demo.children()
        if len(now) == 2 and first[0] not in now:
            break
        time.sleep(0.1)
    assert len(now) == 2
    assert "Log in" in demo.page()

"""Starts the web server and the worker as children and keeps them going until told to stop.

Each child watches the pipe it was given: when this process ends, however it ends, the pipe closes
and the child ends too, so nothing is left running.
"""

import os
import signal
import socket
import subprocess
import sys
import time
from dataclasses import dataclass
from types import FrameType

from django.conf import settings

PORTS_TRIED = 20
CALM_S = 10.0  # a child that lives this long was not in trouble
MOST_RESTARTS = 5


@dataclass
class Child:
    """One child process and how often it had to be started again in a row."""

    name: str
    arguments: list[str]
    process: "subprocess.Popen[bytes]"
    started_at: float
    restarts: int = 0


def free_port(host: str, wanted: int) -> int:
    """Return the port asked for, or the next one that is free.

    Raises OSError where none of the next twenty is.
    """
    for port in range(wanted, wanted + PORTS_TRIED):
        with socket.socket(socket.AF_INET, socket.SOCK_STREAM) as trial:
            trial.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
            try:
                trial.bind((host, port))
            except OSError:
                continue
            return port
    raise OSError(f"No free port between {wanted} and {wanted + PORTS_TRIED - 1}.")


def own_address() -> str | None:
    """Return this machine's address on the local network; nothing is sent to find it."""
    with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as probe:
        try:
            probe.connect(("192.0.2.1", 9))  # a documentation address (RFC 5737), never reached
            address: str = probe.getsockname()[0]
        except OSError:
            return None
    return address


class Supervisor:
    """Runs the children and brings back one that falls over."""

    def __init__(self, host: str, port: int, hosts: list[str]) -> None:
        known = [*settings.ALLOWED_HOSTS, *hosts]
        self.environment = {**os.environ, "BEARING_CLOTH_HOSTS": ",".join(dict.fromkeys(known))}
        self.stopping = False
        self.children = [
            self._start("web", ["web", f"--host={host}", f"--port={port}"]),
            self._start("worker", ["worker"]),
        ]

    def _start(self, name: str, arguments: list[str], restarts: int = 0) -> Child:
        process = subprocess.Popen(
            [sys.executable, str(settings.BASE_DIR / "manage.py"), *arguments, "--with-parent"],
            stdin=subprocess.PIPE,
            env=self.environment,
            start_new_session=True,  # Ctrl-C reaches this process alone, which then ends them
        )
        return Child(name, arguments, process, time.monotonic(), restarts)

    def run(self) -> int:
        """Watch over the children until a signal comes; the exit status to end with."""
        for number in (signal.SIGINT, signal.SIGTERM):
            signal.signal(number, self._stop)
        try:
            while not self.stopping:
                if not self._look_after():
                    return 1
                time.sleep(0.3)
        finally:
            self._end_all()
        return 0

    def _stop(self, number: int, frame: FrameType | None) -> None:
        self.stopping = True

    def _look_after(self) -> bool:
        for place, child in enumerate(self.children):
            if child.process.poll() is None or self.stopping:
                continue
            calm = time.monotonic() - child.started_at > CALM_S
            restarts = 1 if calm else child.restarts + 1
            if restarts > MOST_RESTARTS:
                print(f"The {child.name} does not stay up. Stopping.", file=sys.stderr)
                return False
            print(f"The {child.name} ended. Starting it again.", file=sys.stderr)
            self.children[place] = self._start(child.name, child.arguments, restarts)
        return True

    def _end_all(self) -> None:
        for child in self.children:
            if child.process.stdin:
                child.process.stdin.close()
            child.process.terminate()
        for child in self.children:
            try:
                child.process.wait(timeout=5)
            except subprocess.TimeoutExpired:
                child.process.kill()
                child.process.wait()


def end_with_parent() -> None:
    """End this process as soon as its standard input closes. Called once, by a child."""
    import threading

    def watch() -> None:
        sys.stdin.buffer.read()
        os._exit(0)

    threading.Thread(target=watch, daemon=True).start()

#!/usr/bin/env python3
"""The one door to every command. Says in one line when this Python is too old."""

import os
import sys
from pathlib import Path

OLDEST_PYTHON = (3, 12)
HERE = Path(__file__).resolve().parent


def main() -> int:
    if sys.version_info < OLDEST_PYTHON:
        found = ".".join(str(part) for part in sys.version_info[:3])
        print(f"Bearing Cloth needs Python 3.12 or newer; this is Python {found}.", file=sys.stderr)
        return 1
    command = sys.argv[1] if len(sys.argv) > 1 else ""
    if command == "python-ok":  # asked before Django is installed
        return 0
    if command == "demo":  # the invented workshop never shares a folder with real work
        os.environ.setdefault("BEARING_CLOTH_DATA", str(HERE / ".data" / "demo"))
    os.environ.setdefault("DJANGO_SETTINGS_MODULE", "shared.settings")
    from django.core.management import execute_from_command_line

    execute_from_command_line(sys.argv)
    return 0


if __name__ == "__main__":
    sys.exit(main())

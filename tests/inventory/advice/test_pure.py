import pkgutil
import subprocess
import sys
from pathlib import Path

import inventory.advice

ROOT = Path(__file__).resolve().parents[3]


def test_the_room_loads_no_django() -> None:
    names = [each.name for each in pkgutil.iter_modules(inventory.advice.__path__)]
    lines = [f"import inventory.advice.{name}" for name in names]
    lines += ["import sys", "sys.exit('django' in sys.modules)"]
    run = subprocess.run(
        [sys.executable, "-c", "\n".join(lines)], cwd=ROOT, check=False, capture_output=True
    )
    assert run.returncode == 0, run.stderr

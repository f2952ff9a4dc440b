"""Who may import whom, proved on the code as it is."""

import ast
import re
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parent.parent
PURE = (
    "inventory/advice",
    "inventory/measuring",
    "planning/drafting",
    "planning/coverage",
    "planning/safety",
)
PURE_MODULES = ("shared/units.py", "shared/errors.py")


def _modules(folder: str) -> list[Path]:
    return sorted(p for p in (ROOT / folder).rglob("*.py") if "migrations" not in p.parts)


def _imports(path: Path) -> set[str]:
    found: set[str] = set()
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            found |= {alias.name for alias in node.names}
        elif isinstance(node, ast.ImportFrom) and node.module:
            found.add(node.module)
    return found


def _names(paths: list[Path]) -> list[str]:
    return [".".join(p.relative_to(ROOT).with_suffix("").parts) for p in paths]


def test_pure_rooms_load_no_django() -> None:
    paths = [p for room in PURE for p in _modules(room)] + [ROOT / m for m in PURE_MODULES]
    names = [name.removesuffix(".__init__") for name in _names(paths)]
    program = (
        "import importlib, sys\n"
        f"for name in {names!r}: importlib.import_module(name)\n"
        "sys.exit(1 if 'django' in sys.modules else 0)"
    )
    done = subprocess.run(
        [sys.executable, "-c", program], cwd=ROOT, capture_output=True, check=False
    )
    assert done.returncode == 0, done.stderr.decode()


@pytest.mark.parametrize(
    ("folder", "forbidden"),
    [("shared", ("inventory", "planning")), ("inventory", ("planning",))],
)
def test_imports_run_one_way(folder: str, forbidden: tuple[str, ...]) -> None:
    allowed = {ROOT / "shared" / "urls.py", ROOT / "shared" / "settings.py"}
    for path in _modules(folder):
        if path not in allowed:
            rooms = {name.partition(".")[0] for name in _imports(path)}
            assert not rooms & set(forbidden), path


def test_views_reach_rows_only_through_the_workshop() -> None:
    for app in ("inventory", "planning"):
        for path in _modules(f"{app}/views"):
            for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), 1):
                asked = line.partition(".objects.")[2]
                if asked and not line.lstrip().startswith("#"):
                    assert asked.startswith(
                        (
                            "of(",
                            "create(",
                            "with_cloth()",
                            "select_related(",
                            "filter(removed_at=None)",
                            "order_by(",
                        )
                    ), f"{path}:{number}: {line.strip()}"


def test_every_command_and_setting_is_in_the_developers_guide() -> None:
    guide = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
    commands = {p.stem for p in ROOT.glob("*/management/commands/*.py")} - {"__init__"}
    assert {c for c in commands if f"manage.py {c}" not in guide} == set()
    sources = [ROOT / "shared" / "settings.py", *(ROOT / "tests").rglob("*.py")]
    text = " ".join(p.read_text(encoding="utf-8") for p in sources)
    names = set(re.findall("BEARING_CLOTH_[A-Z_]*[A-Z]", text))
    assert {name for name in names if f"`{name}`" not in guide} == set()


def test_no_file_is_lost_from_the_top_level() -> None:
    done = subprocess.run(
        ["git", "ls-files"], cwd=ROOT, capture_output=True, text=True, check=False
    )
    if done.returncode:
        pytest.skip("not a git checkout")
    top = {line.partition("/")[0] for line in done.stdout.splitlines()}
    expected = {
        "README.md",
        "DEVELOPERS.md",
        "LICENSE",
        "manage.py",
        "pyproject.toml",
        "pins.txt",
        "inventory",
        "planning",
        "tests",
        "demo_fixtures",
        "shared",
    }
    assert {name for name in top if not name.startswith(".")} <= expected

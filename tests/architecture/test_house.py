"""The house keeps its shape: sizes, docstrings, what a command loads."""

import ast
import subprocess
import sys
from pathlib import Path
from statistics import median

import pytest

ROOT = Path(__file__).resolve().parents[2]
MODULES = sorted((ROOT / "fitcalc").rglob("*.py"))
FUNCTION = (ast.FunctionDef, ast.AsyncFunctionDef)
HEAVY = ("PySide6", "matplotlib", "scipy", "pandas", "tomlkit", "ezdxf", "openpyxl")


def functions():
    for path in MODULES:
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, FUNCTION):
                yield path, node


@pytest.mark.parametrize("path", MODULES, ids=lambda path: path.relative_to(ROOT).as_posix())
def test_module_is_short_and_says_what_it_is(path):
    text = path.read_text(encoding="utf-8")
    assert len(text.splitlines()) <= 400
    assert ast.get_docstring(ast.parse(text))


def test_functions_are_short():
    lengths = {f"{path.name}:{node.name}": node.end_lineno - node.lineno + 1 for path, node in functions()}
    assert max(lengths.values()) <= 60, max(lengths, key=lengths.get)
    assert median(lengths.values()) <= 10


def test_packages_export_nothing():
    for path in MODULES:
        if path.name == "__init__.py":
            body = ast.parse(path.read_text(encoding="utf-8")).body
            assert all(isinstance(node, ast.Expr | ast.Assign) for node in body), path


def loaded_by(code, parts=1):
    listing = subprocess.run(
        [
            sys.executable,
            "-c",
            f"import sys\n{code}\nprint(*{{'.'.join(name.split('.')[:{parts}]) for name in sys.modules}})",
        ],
        capture_output=True,
        text=True,
        cwd=ROOT,
        check=True,
    )
    return set(listing.stdout.splitlines()[-1].split())


@pytest.mark.parametrize("command", ["check", "fit"])
def test_commands_load_no_heavy_library(command):
    code = f"from fitcalc.cli import main\nmain(['{command}', 'hillclimb', 'robin'])"
    assert loaded_by(code).isdisjoint(HEAVY)


def test_the_package_door_is_free():
    assert loaded_by("import fitcalc").isdisjoint({*HEAVY, "numpy", "pydantic", "shapely"})


def test_a_command_s_calculation_is_loaded_when_it_runs():
    rooms = {f"fitcalc.{room}" for room in ("posture", "making", "checks", "fit", "paper", "window")}
    assert loaded_by("import fitcalc.cli", parts=2).isdisjoint(rooms)

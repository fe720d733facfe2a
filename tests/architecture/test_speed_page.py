"""The page on speed and the scripts that its figures come from name the same things."""

import re
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
SCRIPTS = ROOT / "tests" / "benchmarks"
PAGE = (ROOT / "docs" / "speed.md").read_text(encoding="utf-8")
README = (SCRIPTS / "README.md").read_text(encoding="utf-8")
SECTIONS = [section for section in PAGE.split("\n## ")[1:] if "\n|---" in section]


def script_of(section):
    """The script that a section says its table is from, and what it says."""
    return (SCRIPTS / re.search(r"bench_\w+\.py", section).group()).read_text(encoding="utf-8")


def rows(section):
    """First cell of each row that is no number."""
    cells = [line.split("|")[1].strip() for line in section.splitlines() if line.startswith("| ")]
    return [cell for cell in cells if not re.fullmatch(r"[\d, ]+(cases.*)?", cell)]


@pytest.mark.parametrize("script", sorted(path.name for path in SCRIPTS.glob("bench_*.py")))
def test_every_benchmark_is_told_of(script):
    assert script in README


@pytest.mark.parametrize("section", SECTIONS, ids=[section.splitlines()[0] for section in SECTIONS])
def test_rows_are_what_the_script_prints(section):
    script = script_of(section) + (ROOT / "fitcalc" / "checks" / "catalogue.py").read_text(encoding="utf-8")
    for row in rows(section):
        words = re.split(r", (?:hillclimb|student|upright) and \w+", row)[0]
        assert words in script, row

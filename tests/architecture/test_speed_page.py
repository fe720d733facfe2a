"""The page on speed and the scripts that its figures come from name the same things."""

import re
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
SCRIPTS = ROOT / "tests" / "benchmarks"
PAGE = (ROOT / "docs" / "speed.md").read_text(encoding="utf-8")
README = (SCRIPTS / "README.md").read_text(encoding="utf-8")
SECTIONS = [section for section in PAGE.split("\n## ")[1:] if "Printed by" in section]
TOLD = re.compile(r", (?:hillclimb|student|upright) and \w+.*")
"""What a row says of one sample; the script puts the names there."""


def printed(section):
    """Texts that the script of a section prints, with the names of the catalogue's parts."""
    script = re.search(r"bench_\w+\.py", section).group()
    catalogue = ROOT / "fitcalc" / "checks" / "catalogue.py"
    return "".join(path.read_text(encoding="utf-8") for path in (SCRIPTS / script, catalogue))


def rows(section):
    """First cells of its first table, but for numbers of cases."""
    table = section.partition("\n|---")[2].partition("\n\n")[0]
    cells = [line.split("|")[1].strip() for line in table.splitlines()[1:]]
    return [TOLD.sub("", cell) for cell in cells if not re.fullmatch(r"[\d,]+", cell)]


@pytest.mark.parametrize("script", sorted(path.name for path in SCRIPTS.glob("bench_*.py")))
def test_every_benchmark_is_told_of(script):
    assert script in README


@pytest.mark.parametrize("section", SECTIONS, ids=[section.splitlines()[0] for section in SECTIONS])
def test_rows_are_what_the_script_prints(section):
    assert [row for row in rows(section) if row not in printed(section)] == []


def test_every_table_of_figures_is_found():
    assert [len(rows(section)) > 4 for section in SECTIONS] == [True, True, False, True, True]

"""What is written beside the program is true: links lead somewhere, examples run, generated pages are up to date."""

import re
import tomllib
from configparser import ConfigParser
from importlib import import_module
from pathlib import Path
from xml.etree import ElementTree

import pytest

from fitcalc.checks.limits import load_limit_set
from fitcalc.documents.as_built import Readings
from fitcalc.documents.store import parse

ROOT = Path(__file__).resolve().parents[2]
DOCS = ROOT / "docs"
PAGES = sorted([*ROOT.glob("*.md"), *DOCS.rglob("*.md")])
FENCED = re.compile(r"^ *```.*?^ *```", re.DOTALL | re.MULTILINE)
LINK = re.compile(r"\[[^\]]*\]\(([^)\s]+)\)")


def text_of(path):
    return path.read_text(encoding="utf-8")


def links(page):
    found = LINK.findall(FENCED.sub("", text_of(page)))
    return [link for link in found if "://" not in link]


def anchors(page):
    heads = re.findall(r"^#+ (.*)$", FENCED.sub("", text_of(page)), re.MULTILINE)
    return {re.sub(r"[^\w\- ]", "", head.lower()).replace(" ", "-") for head in heads}


def blocks(page, kind):
    return re.findall(rf"^ *```{kind}\n(.*?)^ *```", text_of(DOCS / page), re.DOTALL | re.MULTILINE)


@pytest.fixture
def made(monkeypatch):
    monkeypatch.syspath_prepend(str(DOCS))
    return import_module


@pytest.mark.parametrize("page", PAGES, ids=lambda path: path.relative_to(ROOT).as_posix())
def test_links_lead_somewhere(page):
    for link in links(page):
        name, _, anchor = link.partition("#")
        target = (page.parent / name) if name else page
        assert target.exists(), link
        assert not anchor or anchor in anchors(target), link


def test_examples_for_scripts_run(capsys):
    names = {}
    for block in blocks("scripting.md", "python"):
        exec(compile(block, "scripting.md", "exec"), names)
    told = capsys.readouterr().out
    assert "(240 mm would fit)" in told
    assert "was changed by another program" in told
    assert "robin: seat +60 mm" in told


def test_reference_of_the_files_is_what_the_script_makes(made):
    assert text_of(DOCS / "files.md") == made("make_files").page(), "run docs/make_files.py"


def test_outputs_in_the_tutorial_are_what_the_commands_print(made):
    page = text_of(DOCS / "tutorial.md")
    assert page.count("```console") >= 7
    assert page == made("make_tutorial").page(page), "run docs/make_tutorial.py"


def test_every_dependency_has_its_licence_listed(made):
    licences, listed = made("make_licences"), text_of(DOCS / "licences.md").lower().replace("_", "-")
    for line in tomllib.loads(text_of(ROOT / "pyproject.toml"))["project"]["dependencies"]:
        assert f"| {licences.name_of(line)} | {licences.bounds(line)} |" in listed, (
            "run docs/make_licences.py"
        )


def test_example_rules_load_and_are_those_of_the_page():
    ours = load_limit_set(DOCS / "example_rules.toml")
    ids = [row.id for row in ours.limits]
    assert ours.on("harness.shoulder.side_angle")[0].high == 30
    assert "club_crotch_angle" not in ids
    shown = "\n".join(re.sub("^   ", "", block, flags=re.MULTILINE) for block in blocks("rules.md", "toml"))
    assert tomllib.loads(shown) == tomllib.loads(text_of(DOCS / "example_rules.toml"))


def test_the_example_of_readings_loads():
    (block,) = blocks("as_built.md", "toml")
    example = parse(Readings, block, "example")
    assert example.bars[0].bar == "brake.stand_off"
    assert [each.figure for each in example.readings] == ["posture.knee_pressed.brake", "head.hoop_line"]


def test_desktop_entry_starts_a_command_that_exists():
    entry = ConfigParser(interpolation=None)
    entry.read(DOCS / "desktop" / "fitcalc.desktop", encoding="utf-8")
    assert entry["Desktop Entry"]["Exec"] == "fitcalc window %f"
    assert (
        ElementTree.parse(DOCS / "desktop" / f"{entry['Desktop Entry']['Icon']}.svg")
        .getroot()
        .tag.endswith("svg")
    )

"""The pages on limits agree with what the program reads, and every check has its drawing."""

import sys
from pathlib import Path
from xml.etree import ElementTree

import pytest

from fitcalc.checks.limits import load_limit_set
from fitcalc.checks.limits_table import every_set, limits_table
from fitcalc.checks.quantities import quantities
from fitcalc.present.limit_pictures import limit_pictures
from fitcalc.present.limits_page import TOPICS, pages

DOCS = Path(__file__).resolve().parents[2] / "docs"
NAMES = [each.id for each in every_set()]


@pytest.fixture(scope="module")
def script():
    sys.path.insert(0, str(DOCS))
    import make_limits

    sys.path.remove(str(DOCS))
    return make_limits


@pytest.fixture(scope="module")
def drawings(script):
    return script.drawings()


@pytest.fixture(scope="module")
def written():
    return pages(quantities())


@pytest.mark.parametrize("path", ["limits.md", *(f"limits/{name}.md" for name in NAMES)])
def test_page_is_what_the_script_makes(written, path):
    assert (DOCS / path).read_text(encoding="utf-8") == written[path], "run python docs/make_limits.py"


@pytest.mark.parametrize("id", quantities())
def test_every_check_is_on_the_page_with_points_and_drawing(written, id):
    text = written["limits.md"]
    assert f"### `{id}`" in text
    assert quantities()[id].points in text
    assert f"(limits/{id}.svg)" in text


def test_every_topic_has_checks():
    assert {id.split(".")[0] for id in quantities()} == set(TOPICS)


def test_every_row_stands_on_the_page_with_its_source(written):
    rows = [each for use in limits_table(every_set()) for each in use.uses]
    lines = written["limits.md"].splitlines()
    for each in rows:
        assert any(
            line.startswith(f"| {each.rules} | {each.bounds} |") and each.limit.confidence in line
            for line in lines
        ), each.limit.id


@pytest.mark.parametrize("name", [name for name in NAMES if name != "workshop"])
def test_each_set_says_what_it_covers_and_what_not(written, name):
    text, limits = written[f"limits/{name}.md"], load_limit_set(name)
    assert all(lack in text for lack in limits.missing)
    assert all(f"`{row.quantity}`" in text for row in limits.limits)
    assert all(rule.text in text and str(rule.source) in text for rule in limits.checklist)


def test_every_check_is_drawn(drawings):
    assert list(drawings) == list(quantities())


@pytest.mark.parametrize("id", quantities())
def test_drawing_shows_what_is_measured_inside_its_frame(drawings, script, id):
    picture = drawings[id]
    left, bottom, right, top = picture.frame
    dots = [each for each in picture.accent if each.key.startswith("dot")]
    assert dots
    assert all(left < each.centre[0] < right and bottom < each.centre[1] < top for each in dots)
    assert picture.context
    ElementTree.fromstring(script.svg(picture))


@pytest.mark.parametrize("id", quantities())
def test_drawing_is_in_the_tree(id):
    root = ElementTree.parse(DOCS / "limits" / f"{id}.svg").getroot()
    title = root.find("{http://www.w3.org/2000/svg}title")
    assert title is not None
    assert title.text.startswith(f"{id}:")


def test_what_no_result_has_a_place_for_is_not_drawn():
    assert not limit_pictures((), ("mirror.turn",))
    plain, drawn = (pages(names)["limits.md"] for names in ((), ("mirror.turn",)))
    assert "limits/mirror.turn.svg" in drawn
    assert "limits/mirror.turn.svg" not in plain

"""The page on measuring: what stands in `docs/` is what its script makes, and nothing in its drawings is cut off."""

import re
from pathlib import Path

import pytest

from fitcalc.documents.car import Car
from fitcalc.documents.driver import Driver
from fitcalc.documents.guide import guides

DOCS = Path(__file__).resolve().parents[2] / "docs"
DRAWN = sorted(path.name for path in DOCS.glob("measuring/*.svg"))


@pytest.fixture(scope="module")
def made():
    with pytest.MonkeyPatch.context() as patch:
        patch.syspath_prepend(str(DOCS))
        import make_measuring

        return make_measuring.files()


def test_page_in_the_tree_is_what_the_script_makes(made):
    assert (DOCS / "measuring.md").read_text(encoding="utf-8") == made["measuring.md"]


def test_drawings_in_the_tree_are_those_that_the_script_makes(made):
    told = {name: text for name, text in made.items() if name.endswith(".svg")}
    assert {
        f"measuring/{name}": (DOCS / "measuring" / name).read_text(encoding="utf-8") for name in DRAWN
    } == told


def test_every_measurement_is_on_the_page_with_a_drawing_of_its_own(made):
    fields = [*guides(Car), *guides(Driver)]
    assert all(f"`{field}`" in made["measuring.md"] for field in fields)
    assert len(DRAWN) == len(fields)


@pytest.mark.parametrize("name", DRAWN)
def test_nothing_is_cut_off(name):
    text = (DOCS / "measuring" / name).read_text(encoding="utf-8")
    size = float(re.search(r'viewBox="0 0 ([\d.]+)', text)[1])
    spots = [
        float(number) for run in re.findall(r'points="([^"]*)"', text) for number in re.split("[ ,]", run)
    ]
    boxes = re.findall(r'<rect x="([-\d.]+)" y="([-\d.]+)" width="([\d.]+)" height="([\d.]+)"', text)
    spots += [
        float(at) + float(more) for x, y, w, h in boxes for at, more in ((x, 0), (y, 0), (x, w), (y, h))
    ]
    assert boxes
    assert min(spots) >= 0
    assert max(spots) <= size

"""A file may be laid out in any way that TOML allows; saving keeps that way and loses nothing."""

import tomllib

import pytest

from fitcalc.documents.edit import value_at, with_value
from fitcalc.documents.store import load_driver, save

LAYOUTS = {
    "headed": '# who\nname = "A"\n\n[measurements] # tape\nstature = 1700 # wall\n\n[shoe]\nsole_ball = 6\n',
    "inline": 'name = "A" # who\nmeasurements = { stature = 1700 } # wall\nshoe = {sole_ball = 6}\n',
    "dotted": 'name = "A" # who\nmeasurements.stature = 1700 # wall\nshoe.sole_ball = 6\n',
    "out of order": "[shoe]\nsole_ball = 6\n[measurements]\nstature = 1700 # wall\n[helmet]\n[kit]\n",
    "quoted keys": '"name" = "A" # who\n["measurements"]\n"stature" = 17_00 # wall\n[shoe]\nlength = 300\n',
    "no last newline": '# who\nname = "A"\n[shoe]\nsole_ball = 6\n[measurements]\nstature = 1700 # wall',
    "literal text": "name = '''A\nB''' # who\n[measurements]\nstature = 17e2 # wall\n[shoe]\nsole_ball = 6\n",
}
EDITS = [
    ("measurements.stature", 1755.5),
    ("measurements.sitting_height", 905.0),
    ("shoe", {}),
    ("shoe.length", 301.0),
    ("kit.restraint", 20.0),
    ("sex", "female"),
    ("mass", 70.0),
    ("targets.elbow_low", 100.0),
    ("name", 'B "quoted" \\ \t Ä'),
]


@pytest.fixture(params=LAYOUTS.values(), ids=LAYOUTS.keys())
def file(request, tmp_path):
    path = tmp_path / "driver.toml"
    text = request.param if "name" in request.param else 'name = "A" # who\n' + request.param
    path.write_text(text, encoding="utf-8", newline="")
    return path


@pytest.mark.parametrize(("field", "value"), EDITS, ids=[field for field, _ in EDITS])
def test_edit_is_saved_and_comments_stay(file, field, value):
    changed = with_value(load_driver(file), field, value)
    save(changed, file)
    assert load_driver(file) == changed
    assert "# who" in file.read_text("utf-8")
    assert "# wall" in file.read_text("utf-8")


def test_every_edit_one_after_another(file):
    for field, value in EDITS:
        changed = with_value(load_driver(file), field, value)
        save(changed, file)
    assert value_at(load_driver(file), "measurements.stature") == 1755.5
    assert tomllib.loads(file.read_text("utf-8"))["targets"] == {"elbow_low": 100}


def test_saving_unchanged_touches_nothing(file):
    before = file.read_bytes()
    save(load_driver(file), file)
    assert file.read_bytes() == before

"""Whatever is wrong with a file, one sentence names the field and how to mend it; the file is left alone."""

# ruff: noqa: E501 - a table reads better with one case on one line

import os
from functools import partial

import pytest
from examples import CAR, DRIVER, changed

from fitcalc.documents.as_built import History, Readings
from fitcalc.documents.content import LARGEST
from fitcalc.documents.store import load, load_car, load_driver, load_effort, load_setup, save
from fitcalc.errors import InputError

SPOTS = "\n".join(
    f"{name} = {{ right = 100, down = 200 }}" for name in ("first", "second", "level_start", "level_end")
)
BAD_CARS = [
    ("arm = 250  # pivot to pad\n", "", "pedals.brake.arm", "missing", "a number from 90 to 450 mm"),
    ("arm = 250 ", "amr = 250 ", "pedals.brake.amr", "not a known field", "perhaps arm is meant"),
    ("arm = 250 ", "arm = 25 ", "pedals.brake.arm", "is 25 ", "in cm (250 mm would fit)"),
    ("arm = 250 ", "arm = 9.84 ", "pedals.brake.arm", "is 9.84 ", "in inches (249.9 mm would fit)"),
    ("arm = 250 ", "arm = 0.25 ", "pedals.brake.arm", "is 0.25 ", "in metres (250 mm would fit)"),
    ("arm = 250 ", "arm = 2500 ", "pedals.brake.arm", "is 2500 ", "ten times too large"),
    ("arm = 250 ", "arm = 6350 ", "pedals.brake.arm", "is 6350 ", "twice (250 mm would fit)"),
    ("arm = 250 ", "arm = -250 ", "pedals.brake.arm", "is -250 ", "wrong side of zero"),
    ("arm = 250 ", "arm = nan ", "pedals.brake.arm", "is nan ", "a number from 90 to 450 mm"),
    ("arm = 250 ", "arm = -inf ", "pedals.brake.arm", "is -inf ", "a number from 90 to 450 mm"),
    ("arm = 250 ", "arm = true ", "pedals.brake.arm", "is true ", "a number from 90 to 450 mm"),
    ("arm = 250 ", 'arm = "250 mm" ', "pedals.brake.arm", 'is "250 mm" ', "without quotes"),
    ("arm = 250 ", "arm = 1979-05-27 ", "pedals.brake.arm", "is 1979-05-27 ", "a number from 90 to 450 mm"),
    ("arm = 250 ", f"arm = {'9' * 400} ", "pedals.brake.arm", "more than 60 digits", "a number from 90 to 450 mm"),
    ("arm = 250 ", "arm = { mm = 250 } ", "pedals.brake.arm", "is a section ", "a number from 90 to 450 mm"),
    ("mounts = [{ x = 950, y = -150, z = 5 }, ", "mounts = [", "seat.mounts", "is a list of 1 ", "hold at least 2 entries"),
    ("arm = 250 ", "arm = [250] ", "pedals.brake.arm", "a list of 1", "a number from 90 to 450 mm"),
    ("arm = 250 ", "arm = 250\narm = 260 ", "pedals.brake.arm", "given twice", "line 30"),
    ("[rails]", "[seat]\n[rails]", "seat", "given twice", "keep one"),
    ('kind = "shell"', 'kind = "shel"', "seat.kind", 'is "shel" ', "perhaps shell is meant"),
    ("pivot = { x = 250, y = 0,", "pivot = { x = 1500, y = 0,", "pedals.brake.pivot.x", "is 1500 ", "seat.junction.x, which is 1250"),
    ("junction = { x = 1250", "junction = { x = 125", "seat.junction.x", "is 125 ", "in cm (1250 mm would fit)"),
    ("x = 1700, y = 100, z = 600", "x = 1700, y = 100, z = 60", "harness.shoulder_right.z", "is 60 ", "in cm (600 mm would fit)"),
    ("y = -220", "y = -22", "harness.lap_left.y", "is -22 ", "in cm (-220 mm would fit)"),
    ("joint_radius = 50", "joint_radius = 2", "pedals.brake.cylinder.joint_radius", "is 2 ", "in cm (20 mm would fit)"),
    ("joint_radius = 50", "joint_radius = 19.7", "pedals.brake.cylinder.joint_radius", "is 19.7 ", "agree with arm, which is 250"),
    ("[-350, 90]", "[-35, 9]", "seat.profile.0.0", "is -35 ", "in cm (-350 mm would fit)"),
    ("[250, 550]", "[250, true]", "seat.profile.2.1", "is true ", "must be a number"),
    ("[250, 550]", "[250]", "seat.profile.2.1", "missing", "must be a number"),
    ("[[-100, 0], [1200, 0]]", "[[1200, 0], [-100, 0]]", "footwell.floor.1.0", "is -100 ", "front to rear"),
    ("[[-100, 0], [1200, 0]]", "[[-10, 0], [120, 0]]", "footwell.floor.1.0", "is 120 ", "in mm"),
    ("pivot = { x = 250, y = 0, z = 400", "pivot = { x = 250, y = 0, z = 40", "pedals.brake.pivot.z", "is 40 ", "below the floor"),
    ("cleat_spacing = 56", "cleat_spacing = 65", "pedals.brake.cleat_spacing", "is 65 ", "pad_width, which is 60"),
    ("points = 6", "points = 5", "harness.points", "is 5 ", "needs 1 crotch anchors, and 2 are given"),
    ("pad_travel = 60", "", "pedals.throttle", "not usable", "either travel_angle or pad_travel"),
    ("arm = 240\nrest_angle = 10\npad_travel = 60", "arm = 100\nrest_angle = 10\npad_travel = 120", "pedals.throttle.pad_travel", "is 120 ", "not be more than arm, which is 100"),
    ("cleat_spacing = 56\n", "", "pedals.brake", "not usable", "give both, or neither"),
    ("cleat_height = 8", "cleat_height = 0.8", "pedals.brake.cleat_height", "is 0.8 ", "0, or 2 mm or more"),
    ("needed = 35\n", "needed = 35\n[pedals.throttle.cylinder]\njoint_radius = 60\nrod_end = { x = 80, z = 350 }\nbore = 19\nstroke = 30\n", "pedals.throttle", "not usable", "either cylinder or cable"),
    ("pad_y = 0\n", "pad_y = 130\n", "pedals.brake.pad_y", "is 130 ", "from -120 to 120 mm to agree with pivot.y, which is 0"),
    ("pad_y = 110\n", "pad_y = 20\n", "pedals.brake.pad_y", "is 0 ", "25 mm or more from pedals.throttle.pad_y, which is 20"),
    ("pivot = { x = 250, y = 110,", "pivot = { x = 450, y = 110,", "pedals.brake.pivot.x", "is 250 ", "pads lie within 150 mm of each other"),
    ("stroke = 30\n", "stroke = 30\nbalance_bar = { spacing = 62, pivot_to_front = 9, rear_bore = 19 }\n", "pedals.brake.cylinder.balance_bar.pivot_to_front", "is 9 ", "from 12.4 to 49.6 mm to agree with spacing, which is 62"),
    ("bulkhead = -50", "bulkhead = 300", "footwell.bulkhead", "is 300 ", "less than 293, the x of the brake pad"),
    ("bulkhead = -50", "heel_rest = { x = 900, z = 0 }", "footwell.heel_rest.x", "is 900 ", "from 243 to 743 mm, because the brake pad is at x 293"),
    ("bulkhead = -50", "roof = [[0, 400], [900, 90]]", "footwell.roof.1.1", "is 90 ", "100 or more, 100 mm above the floor there"),
    ("radius = 25\n", "", "footwell.obstacles.0", "not usable", "either centre and radius, or outline"),
    ("y_low = -200", "y_low = 200", "footwell.obstacles.0.y_low", "is 200 ", "less than y_high, which is 200"),
    ("shoulder_left = { x = 1700, y = -100,", "shoulder_left = { x = 1700, y = 100,", "harness.shoulder_left.y", "is 100 ", "less than shoulder_right.y, which is 100"),
    ("[rails]", "[hoops]\nmain_top = { x = 700, z = 600 }\nfront_top = { x = 1600, z = 900 }\n[rails]", "hoops.main_top.x", "is 700 ", "greater than front_top.x, which is 1600"),
    ("[250, 550]", "[250, 200]", "seat.profile.2.1", "is 200 ", "250 or more: the back ends above the junction"),
    ("[250, 550]", "[-400, 300]", "seat.profile.2.0", "is -400 ", "50 to 160 deg apart at the junction; they stand 22 deg apart"),
    ("[rails]", f"[photo]\npath = 'left.jpg'\ndistance = 2300\nat = {{ x = 0, z = 300 }}\n{SPOTS}\n[rails]", "photo.second.right", "is 100 ", "a pixel or more away from first"),
    ("format = 1", "format = 2", "format", "is 2 ", "update fitcalc"),
    ("format = 1", "format = true", "format", "is true ", "whole number 1"),
    ('name = "Test car"', 'name = "Test car"\n"od\\nd" = 1', '"od\\nd"', "not a known field", "the fields here are format, name"),
]  # fmt: skip
BAD_DRIVERS = [
    ("stature = 1755", "stature = 175.5", "measurements.stature", "is 175.5 ", "in cm (1755 mm would fit)"),
    ("stature = 1755", "stature = 1.755", "measurements.stature", "is 1.755 ", "in metres (1755 mm would fit)"),
    ("stature = 1755", "stature = 69.1", "measurements.stature", "is 69.1 ", "in inches (1755 mm would fit)"),
    ("stature = 1755", "stature = 17550", "measurements.stature", "is 17550 ", "ten times too large"),
    ("stature = 1755", "stature = 3000", "measurements.stature", "is 3000 ", "from 1200 to 2300 mm"),
    ("sitting_height = 915", "sitting_height = 915\neye_height_sitting = 915", "measurements.eye_height_sitting", "is 915 ", "less than"),
    ("[measurements]", "mass = 900\n[measurements]", "mass", "is 900 ", "in newtons (91.77 kg would fit)"),
    ("[measurements]", "[targets]\nelbow_low = 120\nelbow_high = 100\n[measurements]", "targets.elbow_low", "is 120 ", "not be more than elbow_high, which is 100"),
    ("[measurements]", "measurements = 3\n[shoe]", "measurements", "is 3 ", "a section with stature"),
]  # fmt: skip


def content(path):
    return path.read_bytes() if os.path.isfile(path) else None


def refusal(load, path):
    """The sentence that a load is refused with; the file's bytes are checked to be the same after it."""
    before = content(path)
    with pytest.raises(InputError) as refused:
        load(path)
    assert before == content(path)
    assert "\n" not in str(refused.value)
    assert str(refused.value).endswith((".", "?"))
    return refused.value


@pytest.mark.parametrize(("before", "after", "field", "value", "advice"), BAD_CARS)
def test_bad_car(tmp_path, before, after, field, value, advice):
    path = tmp_path / "car.toml"
    path.write_text(changed(CAR, before, after) if CAR.count(before) == 1 else CAR.replace(before, after, 1))
    error = refusal(load_car, path)
    assert error.field == field
    assert value in str(error)
    assert advice in str(error)
    assert "in car.toml" in str(error)


def test_a_pad_beyond_the_floor_s_end_stands_over_its_end(tmp_path):
    path = tmp_path / "car.toml"
    path.write_text(changed(CAR, "[[-100, 0], [1200, 0]]", "[[-100, 0], [250, 160]]"))
    assert "6 mm below the floor" in str(refusal(load_car, path))


@pytest.mark.parametrize("day", ["31.5.2026", "yesterday"])
def test_a_date_says_how_it_is_written(tmp_path, day):
    path = tmp_path / "readings.toml"
    path.write_text(f'date = "{day}"\n')
    error = refusal(partial(load, Readings), path)
    assert (error.field, "must be a day; write it as 2026-05-31" in str(error)) == ("date", True)


@pytest.mark.parametrize(
    ("kind", "text", "field"),
    [
        (History, 'driver = "Robin"\n[[builds]]\ncar = "Test car"\ndate = "2026-02-30"\n', "builds.0.date"),
        (Readings, 'date = "2026-02-30"\n', "date"),
    ],
)
def test_a_day_that_is_not_in_the_calendar(tmp_path, kind, text, field):
    path = tmp_path / "built.toml"
    path.write_text(text)
    error = refusal(partial(load, kind), path)
    assert (error.field, "there is no such day" in str(error)) == (field, True)


@pytest.mark.parametrize(("end", "refused"), [(900, None), (100, "photo.level_end.right")])
def test_a_photo_s_level_line_has_two_ends(tmp_path, end, refused):
    spots = {"first": 100, "second": 700, "level_start": 100, "level_end": end}
    lines = [f"{name} = {{ right = {right}, down = 200 }}" for name, right in spots.items()]
    head = "[photo]\npath = 'left.jpg'\ndistance = 2300\nat = { x = 0, z = 300 }\n"
    path = tmp_path / "car.toml"
    path.write_text(changed(CAR, "[rails]", head + "\n".join(lines) + "\n[rails]"))
    if refused is None:
        assert load_car(path).photo.distance == 2300.0
    else:
        assert refusal(load_car, path).field == refused


def test_a_bar_that_would_be_shortened(tmp_path):
    path = tmp_path / "effort.toml"
    path.write_text("[stand_off]\nlow = -10\n")
    error = refusal(load_effort, path)
    assert (error.field, "it only ever grows" in str(error)) == ("stand_off.low", True)


@pytest.mark.parametrize(("before", "after", "field", "value", "advice"), BAD_DRIVERS)
def test_bad_driver(tmp_path, before, after, field, value, advice):
    path = tmp_path / "driver.toml"
    path.write_text(changed(DRIVER, before, after))
    error = refusal(load_driver, path)
    assert error.field == field
    assert value in str(error)
    assert advice in str(error)


@pytest.mark.parametrize(
    ("content", "reason"),
    [
        (b"", "is empty"),
        (b" \r\n\t\n", "is empty"),
        (b"\xef\xbb\xbf", "is empty"),
        (b"\xff\xfen\x00a\x00", "is not UTF-8 text: line 1"),
        (b'name = "a"\nnote = "\xe4"', "is not UTF-8 text: line 2"),
        (b"name = 'a'\nthis is no toml", "is not TOML: line 2, column 6"),
        (b'name = "a', "is not TOML: at its end"),
        (b"stature = 17,5", "is not TOML: line 1, column 13"),
        (b"a = " + b"[" * 100_000, "nested too deeply"),
        (b"a" + b".a" * 400_000 + b" = 1", "nested too deeply"),
        (b"a = " + b"9" * 5_000, "is not TOML"),
        (b"a = 1979-13-99", "is not TOML"),
        (b"#" * (LARGEST + 1), "is too large"),
        (CAR.encode(), "is a car file: must be a driver file"),
    ],
    ids=range(14),
)
def test_file_that_holds_no_driver(tmp_path, content, reason):
    path = tmp_path / "driver.toml"
    path.write_bytes(content)
    error = refusal(load_driver, path)
    assert error.field == str(path)
    assert reason in str(error)


@pytest.mark.parametrize("load", [load_car, load_driver, load_setup])
def test_missing_file_and_directory(tmp_path, load):
    assert "is missing: there is no such file" in str(refusal(load, tmp_path / "none.toml"))
    assert "is a directory: must be a file" in str(refusal(load, tmp_path))


def test_name_that_no_file_can_have(tmp_path):
    assert "too long" in str(refusal(load_car, tmp_path / ("x" * 300)))
    with pytest.raises(InputError, match="unreadable"):
        load_car("car\0.toml")


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="this system has no named pipes")
def test_pipe_is_refused_without_waiting(tmp_path):
    os.mkfifo(tmp_path / "pipe")
    assert "is not a file on a disk" in str(refusal(load_car, tmp_path / "pipe"))


def test_unreadable_file(tmp_path, monkeypatch):
    path = tmp_path / "car.toml"
    path.write_text(CAR)
    # a mock, because the superuser may read anything
    monkeypatch.setattr(
        "pathlib.Path.open", lambda *_: (_ for _ in ()).throw(PermissionError(13, "Permission denied"))
    )
    with pytest.raises(InputError, match="is unreadable: Permission denied; check its permissions"):
        load_car(path)


def test_further_faults_are_counted(tmp_path):
    path = tmp_path / "car.toml"
    path.write_text(CAR.replace("arm = 2", "arm = 999").replace("pad_y = 110\n", ""))
    assert str(refusal(load_car, path)).endswith("(and 2 more).")


def test_many_unknown_keys_are_refused_soon(tmp_path):
    path = tmp_path / "driver.toml"
    path.write_text(
        "\n".join(f"key{number} = 1" for number in range(20_000)) + "\n" + DRIVER.partition("\n")[2]
    )
    assert str(refusal(load_driver, path)).endswith("(and 20000 more).")


def test_saving_over_a_file_of_unknown_content_is_refused(tmp_path):
    path = tmp_path / "driver.toml"
    path.write_text(DRIVER)
    driver = load_driver(path)
    for other in (CAR, "this is no toml", "format = 9\n" + DRIVER, DRIVER + "shoe_colour = 'red'\n"):
        path.write_text(other)
        error = refusal(lambda where: save(driver, where), path)
        assert "can't be updated" in str(error)
        assert "save under another name" in str(error)


def test_a_clash_about_zero_is_not_told_to_be_ten_times_too_large(tmp_path):
    """Any figure divided often enough comes to lie in a span about 0: that is no evidence of a slip."""
    path = tmp_path / "car.toml"
    path.write_text(changed(CAR, "pad_y = 110\n", "pad_y = 610\n"))
    assert "too large" not in str(refusal(load_car, path))


def test_a_car_in_place_of_an_effort_file(tmp_path):
    path = tmp_path / "car.toml"
    path.write_text(CAR)
    assert "is a car file: must be an effort file" in str(refusal(load_effort, path))

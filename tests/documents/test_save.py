"""Saving keeps what a person wrote around the numbers, and never leaves a file half written."""

import errno
import os
import re
import stat
import tomllib

import pytest
from examples import CAR, DRIVER, SETUP

from fitcalc.documents.edit import value_at, with_value
from fitcalc.documents.samples import sample_cars
from fitcalc.documents.setup import Setup
from fitcalc.documents.stamp import stamp_of
from fitcalc.documents.store import load_car, load_driver, load_setup, save
from fitcalc.errors import InputError


@pytest.fixture
def car_file(tmp_path):
    (tmp_path / "cars").mkdir()
    path = tmp_path / "cars" / "car.toml"
    path.write_text(CAR, encoding="utf-8", newline="")
    return path


def lines_that_differ(before, after):
    pairs = zip(before.splitlines(), after.splitlines(), strict=True)
    return [(old, new) for old, new in pairs if old != new]


@pytest.mark.parametrize(
    ("field", "value", "old", "new"),
    [
        ("pedals.brake.arm", 255.0, "arm = 250  # pivot to pad", "arm = 255  # pivot to pad"),
        ("pedals.brake.arm", 250.5, "arm = 250  # pivot to pad", "arm = 250.5  # pivot to pad"),
        ("pedals.brake.foot", "left", 'foot = "right"  # heel and toe', 'foot = "left"  # heel and toe'),
        ("seat.profile.0", (-360, 95), "    [-350, 90],  # front lip", "    [-360, 95],  # front lip"),
        ("seat.profile.2.1", 560, "    [250, 550],  # top of the back", "    [250, 560],  # top of the back"),
        ("footwell.obstacles.0.name", "rod", 'name = "rack"  # hard on', 'name = "rod"  # hard on'),
    ],
)  # fmt: skip
def test_only_the_line_of_the_changed_value_changes(car_file, field, value, old, new):
    save(with_value(load_car(car_file), field, value), car_file)
    assert lines_that_differ(CAR, car_file.read_text("utf-8")) == [(old, new)]


@pytest.mark.parametrize("path", sample_cars().values(), ids=sample_cars().keys())
def test_every_comment_of_a_sample_survives_an_edit(path, tmp_path):
    copy = tmp_path / "car.toml"
    copy.write_bytes(path.read_bytes())
    car = load_car(path)
    save(with_value(car, "pedals.brake.arm", car.pedals.brake.arm + 1), copy)
    assert re.findall("#.*", copy.read_text("utf-8")) == re.findall("#.*", path.read_text("utf-8"))


def test_new_key_joins_its_section_and_removed_key_goes(car_file):
    car = with_value(load_car(car_file), "footwell.bulkhead", None)
    save(with_value(car, "pedals.box_forward", 40.0), car_file)
    data = tomllib.loads(car_file.read_text("utf-8"))
    assert data["pedals"]["box_forward"] == 40
    assert "bulkhead" not in data["footwell"]


def test_removed_and_added_entries_keep_the_comments_of_the_others(car_file):
    car = load_car(car_file)
    rack = car.footwell.obstacles[0]
    tube = rack.model_copy(update={"name": "tube"})
    save(with_value(car, "footwell.obstacles", (tube, rack)), car_file)
    assert 'name = "rack"  # hard on' in car_file.read_text("utf-8")
    save(car, car_file)
    assert load_car(car_file) == car
    assert 'name = "rack"  # hard on' in car_file.read_text("utf-8")


def test_defaults_that_were_not_in_the_file_stay_out(car_file):
    car = with_value(load_car(car_file), "seat.mass", 6.0)
    save(car, car_file)
    save(with_value(car, "seat.mass", 5.0), car_file)
    data = tomllib.loads(car_file.read_text("utf-8"))
    assert data["seat"]["mass"] == 5
    assert "cushion_padding" not in data["seat"]
    assert "controls" not in data


def test_rework_of_nothing_is_a_file_that_loads(tmp_path):
    save(Setup(), tmp_path / "setup.toml")
    assert load_setup(tmp_path / "setup.toml") == Setup()


def test_setup_is_read(tmp_path):
    (tmp_path / "setup.toml").write_text(SETUP)
    assert load_setup(str(tmp_path / "setup.toml")).brake.stand_off == 30


@pytest.mark.parametrize("mark", [b"", b"\xef\xbb\xbf"], ids=["plain", "byte order mark"])
@pytest.mark.parametrize("newline", [b"\n", b"\r\n"], ids=["LF", "CRLF"])
def test_line_ends_and_byte_order_mark_are_kept(tmp_path, mark, newline):
    path = tmp_path / "driver.toml"
    path.write_bytes(mark + DRIVER.encode().replace(b"\n", newline))
    driver = with_value(load_driver(path), "measurements.knee_height", 540.0)
    save(with_value(driver, "shoe.sole_ball", 9.0), path)
    content = path.read_bytes()
    assert content.startswith(mark + b"name")
    assert content.count(b"\n") == content.count(newline)
    assert load_driver(path).measurements.knee_height == 540


FAULTS = [
    (errno.ENOSPC, "disk is full"),
    (errno.EACCES, "read-only"),
    (errno.EIO, "fault"),
    (errno.EROFS, "read-only"),
]


@pytest.mark.parametrize("step", ["os.replace", "os.fsync", "pathlib.Path.open", "pathlib.Path.chmod"])
@pytest.mark.parametrize(("number", "reason"), FAULTS)
def test_failing_save_leaves_the_old_file_and_nothing_else(car_file, monkeypatch, step, number, reason):
    changed = with_value(load_car(car_file), "pedals.brake.arm", 260.0)
    real = os.fdopen

    def fail(*given, **_):
        if given[1:2] != ("rb",):
            raise OSError(number, os.strerror(number))
        return real(os.open(given[0], os.O_RDONLY), "rb")

    monkeypatch.setattr(step, fail)  # a disk that fails can't be had otherwise
    with pytest.raises(InputError, match=reason) as refused:
        save(changed, car_file)
    monkeypatch.undo()
    assert "the file is as it was" in str(refused.value)
    assert car_file.read_text("utf-8") == CAR
    assert os.listdir(car_file.parent) == ["car.toml"]


def test_folder_that_can_not_be_flushed_is_told(car_file, monkeypatch):
    changed, real = with_value(load_car(car_file), "pedals.brake.arm", 260.0), os.fsync

    def fail(handle):
        if stat.S_ISDIR(os.fstat(handle).st_mode):
            raise OSError(errno.EIO, "fault")
        real(handle)

    monkeypatch.setattr("os.fsync", fail)
    with pytest.raises(InputError, match="may not outlive a power cut"):
        save(changed, car_file)
    assert load_car(car_file) == changed


def test_folder_on_a_disk_that_can_not_flush_folders(car_file, monkeypatch):
    def refuse(handle):
        if stat.S_ISDIR(os.fstat(handle).st_mode):
            raise OSError(errno.EINVAL, "not supported")

    monkeypatch.setattr("os.fsync", refuse)
    changed = with_value(load_car(car_file), "pedals.brake.arm", 260.0)
    save(changed, car_file)
    assert load_car(car_file) == changed


def test_interrupted_save_leaves_no_part(car_file, monkeypatch):
    def interrupt(*_):
        raise KeyboardInterrupt

    monkeypatch.setattr("os.replace", interrupt)
    changed = with_value(load_car(car_file), "pedals.brake.arm", 260.0)
    with pytest.raises(KeyboardInterrupt):
        save(changed, car_file)
    assert os.listdir(car_file.parent) == ["car.toml"]


def test_missing_folder_and_directory_are_told(tmp_path):
    with pytest.raises(InputError, match="there is no such folder"):
        save(Setup(), tmp_path / "none" / "setup.toml")
    with pytest.raises(InputError, match="is a directory"):
        save(Setup(), tmp_path)


def test_permissions_and_link_are_kept(car_file, tmp_path):
    car_file.chmod(0o640)
    link = tmp_path / "link.toml"
    link.symlink_to(car_file)
    save(with_value(load_car(link), "pedals.brake.arm", 260.0), link)
    assert link.is_symlink()
    assert stat.S_IMODE(car_file.stat().st_mode) == 0o640
    assert value_at(load_car(car_file), "pedals.brake.arm") == 260


def test_read_only_file_is_not_replaced(car_file, monkeypatch):
    monkeypatch.setattr("os.access", lambda *_: False)  # the superuser may write anything
    changed = with_value(load_car(car_file), "pedals.brake.arm", 260.0)
    with pytest.raises(InputError, match="read-only"):
        save(changed, car_file)
    assert car_file.read_text("utf-8") == CAR


@pytest.mark.parametrize("name", ["Größe ü.toml", "車.toml", "a" * 250 + ".toml", "with space '\".toml"])
def test_names_of_any_script_and_length(tmp_path, name):
    save(Setup(seat_travel=20), tmp_path / name)
    assert load_setup(tmp_path / name).seat_travel == 20


def test_the_stamp_of_a_file_that_is_gone_counts_as_touched(tmp_path):
    assert stamp_of(tmp_path / "gone.toml", b"").mtime_ns == 0

"""The previous version, what another program wrote, files of other formats, and disks that refuse."""

import os
import stat
import time
from typing import Literal

import pytest
from examples import CAR, DRIVER

from fitcalc.documents import driver, migrate
from fitcalc.documents.atomic import previous_version
from fitcalc.documents.content import LARGEST
from fitcalc.documents.edit import with_value
from fitcalc.documents.fields import mm
from fitcalc.documents.schema import KINDS
from fitcalc.documents.setup import Setup
from fitcalc.documents.stamp import is_touched
from fitcalc.documents.store import load, load_driver, load_setup, load_stamped, save
from fitcalc.errors import InputError


@pytest.fixture
def file(tmp_path):
    (tmp_path / "people").mkdir()
    path = tmp_path / "people" / "driver.toml"
    path.write_text(DRIVER)
    return path


@pytest.fixture
def taller(file):
    return with_value(load_driver(file), "measurements.stature", 1800.0)


def test_previous_version_is_kept_beside_the_file(file, taller):
    save(taller, file)
    assert previous_version(file).read_text() == DRIVER
    save(with_value(taller, "name", "Third"), file)
    assert load_driver(previous_version(file)) == taller
    assert sorted(os.listdir(file.parent)) == ["driver.toml", "driver.toml~"]


def test_saving_what_the_file_says_already_keeps_the_version_before(file, taller):
    save(taller, file)
    save(taller, file)
    assert previous_version(file).read_text() == DRIVER


def test_first_save_has_no_previous_version(tmp_path, taller):
    save(taller, tmp_path / "new.toml")
    assert not previous_version(tmp_path / "new.toml").exists()


@pytest.mark.parametrize("steps", [["os.link"], ["os.link", "pathlib.Path.read_bytes"]])
def test_disk_that_keeps_no_second_name_still_saves(file, taller, monkeypatch, steps):
    for step in steps:
        monkeypatch.setattr(step, lambda *_, **__: (_ for _ in ()).throw(PermissionError(1, "no")))
    save(taller, file)
    monkeypatch.undo()
    assert load_driver(file) == taller
    assert previous_version(file).exists() == (len(steps) == 1)
    assert not list(file.parent.glob(".fitcalc*"))


def test_part_of_a_killed_save_goes_with_a_later_save(file, taller):
    stale, fresh = (file.with_name(f".fitcalc-{name}.part") for name in ("stale", "fresh"))
    stale.touch()
    fresh.touch()
    os.utime(stale, (time.time() - 200_000,) * 2)
    save(taller, file)
    assert fresh.exists()
    assert not stale.exists()


def test_file_that_another_program_changed_is_not_overwritten(file, taller):
    _, stamp = load_stamped(driver.Driver, file)
    theirs = DRIVER.replace("1755", "1756")
    file.write_text(theirs)
    with pytest.raises(InputError, match="was changed by another program since it was opened") as refused:
        save(taller, file, stamp)
    assert str(refused.value).endswith(".")
    assert file.read_text() == theirs
    save(taller, file)
    assert load_driver(file) == taller


def test_own_save_gives_the_stamp_for_the_next(file, taller):
    _, stamp = load_stamped(driver.Driver, file)
    stamp = save(taller, file, stamp)
    assert not is_touched(file, stamp)
    save(with_value(taller, "name", "Third"), file, stamp)
    assert load_driver(file).name == "Third"


def test_file_written_anew_with_the_same_bytes_is_no_change(file, taller):
    _, stamp = load_stamped(driver.Driver, file)
    os.utime(file, (1, 1))
    assert is_touched(file, stamp)
    save(taller, file, stamp)
    assert load_driver(file) == taller


def test_file_that_is_gone_is_written_again(file, taller):
    _, stamp = load_stamped(driver.Driver, file)
    file.unlink()
    assert is_touched(file, stamp)
    save(taller, file, stamp)
    assert load_driver(file) == taller


def newer_setup():
    """A made-up format 2 of the setup file, in which the seat's travel is called by another name."""

    class Setup(KINDS["setup"]):
        format: Literal[2] = 2
        seat_travel: None = None
        seat_forward: float = mm("seat forward", "Along the rail.", (-400, 400), 0.0)

    return Setup


def rename(table):
    if "seat_travel" in table:
        table["seat_forward"] = table.pop("seat_travel")


@pytest.fixture
def made_up_step(monkeypatch):
    monkeypatch.setattr(migrate, "STEPS", {"setup": {1: rename}})


@pytest.mark.parametrize("head", ["", "format = 1\n"], ids=["no format", "format 1"])
@pytest.mark.parametrize("newline", ["\n", "\r\n"], ids=["LF", "CRLF"])
def test_older_file_is_brought_up_to_date_and_keeps_its_comments(tmp_path, made_up_step, head, newline):
    path, old = tmp_path / "setup.toml", f"# shed\n{head}seat_travel = 40\n[brake]  # left\nstand_off = 30\n"
    path.write_text(old, newline=newline)
    found = load(newer_setup(), path)
    assert (found.seat_forward, found.format) == (40, 2)
    assert path.read_text() == old
    save(with_value(found, "seat_forward", 60.0), path)
    again = load(type(found), path)
    assert (again.seat_forward, again.brake.stand_off) == (60, 30)
    assert {"# shed", "[brake]  # left", "format = 2", "seat_forward = 60"} <= set(
        path.read_text().splitlines()
    )
    assert path.read_bytes().count(b"\n") == path.read_bytes().count(newline.encode())
    assert load_setup(previous_version(path)).seat_travel == 40


@pytest.mark.parametrize("number", [0, -1, 3, 10**30])
def test_format_without_a_way_to_this_one_is_refused(tmp_path, made_up_step, number):
    path = tmp_path / "setup.toml"
    path.write_text(f"format = {number}\nseat_travel = 40\n")
    with pytest.raises(InputError, match="format is"):
        load(newer_setup(), path)


def test_new_file_names_the_present_format(tmp_path):
    save(newer_setup()(), tmp_path / "setup.toml")
    assert (tmp_path / "setup.toml").read_text().startswith("format = 2\n")


@pytest.mark.parametrize("kind", KINDS)
def test_every_older_format_has_its_step(kind):
    present = migrate.present_format(KINDS[kind])
    assert set(migrate.STEPS[kind]) == set(range(migrate.FIRST, present))


def test_document_that_would_be_too_large_to_load_is_not_saved(file):
    whole = load_driver(file)
    with pytest.raises(InputError, match="is too large: must be 1 MB or less"):
        save(with_value(whole, "note", "x" * LARGEST), file)
    assert file.read_text() == DRIVER


@pytest.mark.parametrize("name", ["x" * 300, "d/" * 2_500 + "x", "a\0b", "driver.toml/x"], ids=range(4))
def test_name_that_no_file_can_have_is_one_sentence(file, taller, name):
    for act in (load_driver, lambda where: save(taller, where)):
        with pytest.raises(InputError) as refused:
            act(file.parent / name)
        assert "\n" not in str(refused.value)


def test_folders_as_deep_as_the_system_allows(tmp_path, taller):
    deep = tmp_path.joinpath(*["Fahrer-mit-Größe-und-車" * 4] * 20)
    deep.mkdir(parents=True)
    save(taller, deep / "x.toml")
    save(with_value(taller, "name", "Ünïcode 車"), deep / "x.toml")
    assert load_driver(deep / "x.toml").name == "Ünïcode 車"


@pytest.mark.skipif(os.name == "nt" or os.geteuid() == 0, reason="the superuser may write anywhere")
def test_folder_that_may_not_be_written(file, taller):
    file.parent.chmod(0o500)
    with pytest.raises(InputError, match="the folder or the file is read-only"):
        save(taller, file)
    file.parent.chmod(0o700)
    assert file.read_text() == DRIVER


def test_file_that_may_be_read_by_nobody_else_keeps_that(file, taller):
    file.chmod(0o600)
    save(taller, file)
    save(with_value(taller, "name", "Third"), file)
    modes = [stat.S_IMODE(path.stat().st_mode) for path in (file, previous_version(file))]
    assert modes == [0o600, 0o600]


@pytest.mark.parametrize(
    "text", ["\ufeff" + CAR, CAR.replace("\n", "\r\n"), "\ufeff" + CAR.replace("\n", "\r\n")]
)
def test_line_ends_and_byte_order_mark_are_read(tmp_path, text):
    path = tmp_path / "car.toml"
    path.write_bytes(text.encode())
    assert load(KINDS["car"], path).pedals.brake.arm == 250


def test_rework_without_anything_left_is_saved_over_one(tmp_path):
    path = tmp_path / "setup.toml"
    save(Setup(seat_travel=40.0), path)
    save(Setup(), path)
    assert load_setup(path) == Setup()

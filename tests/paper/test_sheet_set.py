"""A set of sheets in a folder: whole, matched to its documents, and rid of parts of an older rework."""

import json
from dataclasses import replace

import pytest
from sheet_jobs import DATE, car_and_driver, small_job

from fitcalc.documents.digest import digest
from fitcalc.documents.edit import with_value
from fitcalc.documents.store import load_car, load_setup
from fitcalc.errors import InputError
from fitcalc.paper.page import A4
from fitcalc.paper.sheets import sheet_files, write_sheets


def test_the_documents_beside_the_sheets_are_those_it_was_made_from(tmp_path):
    job = small_job()
    write_sheets(job, A4, tmp_path / "new" / "folder")
    folder = tmp_path / "new" / "folder"
    assert load_car(folder / "car.toml") == job.after.car
    assert load_setup(folder / "rework.toml") == job.after.setup
    listed = json.loads((folder / "contents.json").read_text(encoding="utf-8"))
    assert listed["documents"] == job.about.digest
    assert {path.name for path in folder.iterdir()} == {*listed["files"], "contents.json"}


def test_a_digest_changes_with_any_number_and_not_with_the_object():
    car, driver = car_and_driver("hillclimb", "robin")
    assert digest(car, driver) == digest(car.model_copy(deep=True), driver)
    assert digest(car, driver) != digest(with_value(car, "seat.mass", 5.6), driver)


def test_parts_of_an_older_rework_are_taken_away_and_a_stranger_s_file_stays(tmp_path):
    job = small_job()
    write_sheets(job, A4, tmp_path)
    (tmp_path / "mine.dxf").write_text("mine", encoding="utf-8")
    fewer = replace(job, bench=replace(job.bench, parts=job.bench.parts[1:]))
    write_sheets(fewer, A4, tmp_path)
    gone = job.bench.parts[0].id
    assert not (tmp_path / f"{gone}.dxf").exists()
    assert (tmp_path / "mine.dxf").read_text(encoding="utf-8") == "mine"


@pytest.mark.parametrize("content", [b"", b"[]", b'{"files": 3}', b'{"files": ["../x.dxf"]}', b"\xff"])
def test_a_damaged_list_of_files_does_no_harm(tmp_path, content):
    outside = tmp_path / "x.dxf"
    outside.write_text("keep", encoding="utf-8")
    folder = tmp_path / "set"
    folder.mkdir()
    (folder / "contents.json").write_bytes(content)
    write_sheets(small_job(), A4, folder)
    assert outside.exists()


def test_a_folder_that_can_t_be_made_is_refused(tmp_path):
    (tmp_path / "file").write_text("", encoding="utf-8")
    with pytest.raises(InputError, match="folder"):
        write_sheets(small_job(), A4, tmp_path / "file" / "below")


def test_the_same_job_gives_the_same_pdf():
    job = small_job()
    assert sheet_files(job, A4)["sheets.pdf"] == sheet_files(job, A4)["sheets.pdf"]
    assert job.about.date == DATE


def test_a_set_that_is_called_off_writes_nothing(tmp_path):
    assert write_sheets(small_job(), A4, tmp_path / "set", lambda done: False) == []
    assert not (tmp_path / "set").exists()

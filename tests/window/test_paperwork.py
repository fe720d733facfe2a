import csv

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QDesktopServices
from PySide6.QtWidgets import QFileDialog

from fitcalc.documents.store import load_setup
from fitcalc.window.filled_in import FilledIn
from fitcalc.window.paperwork import sheets_written, worksheet_written


@pytest.fixture
def choose_folder(dialog, qtbot):
    """Takes a folder in the open folder choice."""

    def take(folder):
        asked = dialog(QFileDialog)
        asked.fileSelected.emit(str(folder))
        asked.reject()

    return take


def told(window, qtbot, part):
    """Waits until the notice says something."""
    qtbot.waitUntil(lambda: part in window.notice.words.text(), timeout=120_000)
    return window.notice.words.text()


def test_bench_sheets_of_this_rework_are_written_with_progress(
    window, session, choose_folder, tmp_path, qtbot
):
    session.edit("setup.seat_travel", 40.0, "seat forward")
    done = []
    window.jobs.progressed.connect(done.append)
    qtbot.keyClick(window, Qt.Key.Key_B, Qt.KeyboardModifier.ControlModifier)
    choose_folder(tmp_path / "sheets")
    assert window.status.cancel.isVisible()
    assert "files" in told(window, qtbot, "bench sheets are in")
    assert load_setup(tmp_path / "sheets" / "rework.toml").seat_travel == 40.0
    assert (tmp_path / "sheets" / "sheets.pdf").read_bytes().startswith(b"%PDF")
    assert done == sorted(done)
    assert done[-1] == 1.0


def test_the_folder_can_be_opened_from_the_notice(window, choose_folder, tmp_path, qtbot, monkeypatch):
    opened = []
    monkeypatch.setattr(QDesktopServices, "openUrl", opened.append)
    window.menus.actions["measuring_worksheet"].trigger()
    choose_folder(tmp_path / "sheet")
    told(window, qtbot, "measuring worksheet is in")
    qtbot.mouseClick(window.notice.buttons[0], Qt.MouseButton.LeftButton)
    assert opened[0].toLocalFile() == str(tmp_path / "sheet")


def test_a_folder_that_can_t_be_made_is_one_sentence(window, choose_folder, tmp_path, qtbot):
    (tmp_path / "file").write_text("", encoding="utf-8")
    window.menus.actions["measuring_worksheet"].trigger()
    choose_folder(tmp_path / "file" / "below")
    assert told(window, qtbot, "can't be made").endswith(".")
    assert not window.status.cancel.isVisible()


@pytest.mark.parametrize("stop", [0.1, 0.4])
def test_sheets_that_are_called_off_leave_no_file(session, tmp_path, stop):
    folder = tmp_path / "sheets"
    assert sheets_written(session.work, "", "a4", folder, lambda done: done < stop) == []
    assert not folder.exists()


def test_a_worksheet_that_is_called_off_leaves_no_file(session, tmp_path):
    assert worksheet_written(session.work, "a4", tmp_path / "sheet", lambda done: False) == []
    assert not (tmp_path / "sheet").exists()


@pytest.fixture
def filled(session, tmp_path):
    """The worksheet of everything, with one stature and one mass entered."""
    from fitcalc.paper.worksheet_file import worksheet_csv
    from fitcalc.present.worksheet_rows import worksheet

    path = tmp_path / "filled.csv"
    path.write_bytes(worksheet_csv(worksheet(session.work.car.document, session.work.driver, True)))
    rows = list(csv.DictReader(path.read_text(encoding="utf-8-sig").splitlines()))
    entered = {"measurements.stature": "1702", "mass": "66,5"}
    with path.open("w", encoding="utf-8", newline="") as file:
        table = csv.DictWriter(file, rows[0].keys())
        table.writeheader()
        table.writerows(
            row | {"entered": entered.get(row["path"], "") if row["document"] == "driver" else ""}
            for row in rows
        )
    return path


def test_a_filled_worksheet_is_shown_then_taken_in_as_one_step(
    window, session, filled, dialog, name_file, qtbot
):
    window.menus.actions["read_worksheet"].trigger()
    name_file(filled)
    preview = dialog(FilledIn)
    assert preview.table.topLevelItemCount() == 2
    assert session.work.driver.measurements.stature == 1680.0
    qtbot.mouseClick(preview.take, Qt.MouseButton.LeftButton)
    assert (session.work.driver.measurements.stature, session.work.driver.mass) == (1702.0, 66.5)
    session.undo_stack.undo()
    assert session.work.driver.measurements.stature == 1680.0


def test_a_file_that_is_no_worksheet_is_one_sentence(window, session, tmp_path, qtbot):
    (tmp_path / "other.csv").write_text("a,b\n1,2\n", encoding="utf-8")
    window.paperwork.read_filled(str(tmp_path / "other.csv"))
    assert told(window, qtbot, "other.csv").endswith(".")
    assert session.undo_stack.count() == 0

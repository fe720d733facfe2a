import pytest
from PySide6.QtCore import QMimeData, QPointF, Qt, QUrl
from PySide6.QtGui import QDragEnterEvent, QDropEvent
from PySide6.QtWidgets import QApplication, QFileDialog, QMessageBox

from fitcalc.documents.driver import Driver, Measurements
from fitcalc.documents.samples import sample_path
from fitcalc.documents.setup import Setup
from fitcalc.documents.store import load_car, load_driver, load_setup, save

BUTTON = QMessageBox.StandardButton


@pytest.fixture
def moved(session, control, qtbot):
    """The seat one hole forward: the rework is not saved."""
    qtbot.keyClick(control("setup.seat_travel").slider, Qt.Key.Key_Right)
    assert session.unsaved()


@pytest.fixture
def visitor(tmp_path):
    path = tmp_path / "visitor.toml"
    save(Driver(name="Visitor", measurements=Measurements(stature=1710.0)), path)
    return path


def test_saving_asks_for_a_name_where_there_is_none(window, session, moved, name_file, tmp_path, qtbot):
    qtbot.keyClick(window, Qt.Key.Key_S, Qt.KeyboardModifier.ControlModifier)
    name_file(tmp_path / "rework.toml")
    assert load_setup(tmp_path / "rework.toml").seat_travel == 20.0
    assert not session.unsaved()


def test_saving_again_asks_no_more(window, session, moved, name_file, control, tmp_path, qtbot):
    window.menus.actions["save"].trigger()
    name_file(tmp_path / "rework.toml")
    qtbot.keyClick(control("setup.seat_travel").slider, Qt.Key.Key_Right)
    window.menus.actions["save"].trigger()
    assert load_setup(tmp_path / "rework.toml").seat_travel == 40.0


def test_saving_keeps_the_comments_of_a_file(window, session, typed, tmp_path):
    path = tmp_path / "car.toml"
    path.write_text(sample_path("hillclimb").read_text(encoding="utf-8"), encoding="utf-8")
    window.filing.open(path)
    typed("car.hoops.main_top.z", "1075")
    window.menus.actions["save"].trigger()
    assert load_car(path).hoops.main_top.z == 1075.0
    marks = [text.read_text(encoding="utf-8").count("#") for text in (path, sample_path("hillclimb"))]
    assert marks[0] == marks[1] > 0


def test_what_is_typed_and_not_left_yet_is_saved_too(window, session, field, name_file, tmp_path, qtbot):
    entry = field("driver.measurements.stature")
    entry.selectAll()
    qtbot.keyClicks(entry, "1691")
    window.menus.actions["save"].trigger()
    name_file(tmp_path / "robin.toml")
    assert load_driver(tmp_path / "robin.toml").measurements.stature == 1691.0


def test_undoing_back_to_the_file_is_saved(session, moved):
    session.undo_stack.undo()
    assert not session.unsaved()


def test_opening_another_car_can_be_undone_and_keeps_its_file_apart(window, session, tmp_path):
    path = tmp_path / "own.toml"
    path.write_text(sample_path("student").read_text(encoding="utf-8"), encoding="utf-8")
    window.filing.open(path)
    assert session.path_of(session.work.car) == path
    session.undo_stack.undo()
    assert "Hillclimb" in session.work.car.document.name
    assert session.path_of(session.work.car) is None


def test_a_driver_file_adds_a_driver(window, session, visitor):
    window.filing.open(visitor)
    assert [person.driver.document.name for person in session.work.occupants][1] == "Visitor"
    assert session.work.driver.name == "Visitor"


def test_a_rework_file_is_the_chosen_drivers(window, session, tmp_path):
    save(Setup(seat_travel=40.0, name="tried"), tmp_path / "rework.toml")
    window.filing.open(tmp_path / "rework.toml")
    assert session.work.setup.seat_travel == 40.0


@pytest.mark.parametrize("text", ["", "not toml [", "[pedals]\nx = 1\n", "[measurements]\nstature = 17\n"])
def test_a_bad_file_is_one_sentence_and_changes_nothing(window, session, tmp_path, text):
    first, path = session.work, tmp_path / "bad.toml"
    path.write_text(text, encoding="utf-8")
    window.filing.open(path)
    assert window.notice.isVisible()
    assert window.notice.words.text().endswith(".")
    assert session.work is first
    assert path.read_text(encoding="utf-8") == text


def test_a_refused_save_is_one_sentence_and_stays_unsaved(window, session, moved, name_file, tmp_path):
    window.menus.actions["save"].trigger()
    window.filing.write(session.work.occupant.setup, tmp_path / "none" / "rework.toml")
    assert "could not be saved" in window.notice.words.text()
    assert session.unsaved()
    name_file(tmp_path / "rework.toml")


def test_opened_files_are_listed_as_recent(window, session, visitor):
    window.filing.open(visitor)
    window.menus._fill_recent()
    assert window.menus._recent.actions()[0].text() == str(visitor)


def test_a_file_that_is_dropped_is_opened(window, session, visitor):
    dropped = QMimeData()
    dropped.setUrls([QUrl.fromLocalFile(str(visitor))])
    actions, buttons, keys = (
        Qt.DropAction.CopyAction,
        Qt.MouseButton.LeftButton,
        Qt.KeyboardModifier.NoModifier,
    )
    enter = QDragEnterEvent(window.rect().center(), actions, dropped, buttons, keys)
    QApplication.sendEvent(window, enter)
    assert enter.isAccepted()
    QApplication.sendEvent(window, QDropEvent(QPointF(9, 9), actions, dropped, buttons, keys))
    assert session.work.driver.name == "Visitor"


def test_opening_by_dialog(window, session, visitor, name_file, qtbot):
    qtbot.keyClick(window, Qt.Key.Key_O, Qt.KeyboardModifier.ControlModifier)
    name_file(visitor)
    assert session.work.driver.name == "Visitor"


def test_closing_with_nothing_unsaved_asks_nothing(window):
    assert window.close()


def test_closing_with_unsaved_work_asks_and_can_be_called_off(window, session, moved, answer):
    window.close()
    answer(BUTTON.Cancel)
    assert window.isVisible()
    assert session.unsaved()


def test_closing_and_throwing_away(window, moved, answer):
    window.close()
    answer(BUTTON.Discard)
    assert not window.isVisible()


def test_closing_and_saving(window, moved, answer, name_file, tmp_path, qtbot):
    window.close()
    answer(BUTTON.Save)
    name_file(tmp_path / "rework.toml")
    qtbot.waitUntil(lambda: not window.isVisible())
    assert load_setup(tmp_path / "rework.toml").seat_travel == 20.0


def test_calling_off_the_name_leaves_the_window_open(window, moved, answer, dialog, qtbot):
    window.close()
    answer(BUTTON.Save)
    dialog(QFileDialog).reject()
    assert window.isVisible()

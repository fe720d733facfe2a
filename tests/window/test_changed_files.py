"""Files that another program or a second window has written to."""

import os

import pytest
from PySide6.QtCore import QEvent, Qt

from fitcalc.documents.driver import Driver, Measurements
from fitcalc.documents.store import load_driver, save
from fitcalc.window.autosave import recover, recovery_folder

MINE, THEIRS = 1691.0, 1733.0


def driver(stature):
    return Driver(name="Visitor", measurements=Measurements(stature=stature))


@pytest.fixture
def path(window, tmp_path):
    """The file of a driver who is worked on."""
    made = tmp_path / "visitor.toml"
    save(driver(1710.0), made)
    window.filing.open(made)
    return made


@pytest.fixture
def changed(path):
    """The same, after somebody else wrote to it."""
    save(driver(THEIRS), path)
    return path


@pytest.fixture
def press(window, qtbot):
    """Presses a button of the notice."""

    def press_it(text):
        button = next(each for each in window.notice.buttons if each.text() == text)
        qtbot.mouseClick(button, Qt.MouseButton.LeftButton)

    return press_it


def come_back(window, qtbot):
    """The person was elsewhere and comes back to the window."""
    window.activateWindow()
    qtbot.waitUntil(window.isActiveWindow)
    window.changeEvent(QEvent(QEvent.Type.ActivationChange))


def stature(session):
    return session.work.driver.measurements.stature


@pytest.fixture
def clash(window, session, typed, path, qtbot):
    """Both changed it, and the person saves."""
    typed("driver.measurements.stature", f"{MINE:g}")
    save(driver(THEIRS), path)
    window.menus.actions["save"].trigger()
    return path


def test_a_save_over_somebody_else_s_change_is_said_and_not_done(window, session, clash):
    assert "visitor.toml was changed by another program or window" in window.notice.words.text()
    assert load_driver(clash).measurements.stature == THEIRS
    assert session.unsaved()


def test_mine_is_kept_on_purpose_and_theirs_stays_beside_it(session, clash, press):
    press("Keep mine")
    assert load_driver(clash).measurements.stature == MINE
    assert load_driver(clash.with_name("visitor.toml~")).measurements.stature == THEIRS
    assert not session.unsaved()


def test_theirs_is_taken_as_one_undo_step(session, clash, press):
    press("Take theirs")
    assert stature(session) == THEIRS
    assert not session.unsaved()
    session.undo_stack.undo()
    assert stature(session) == MINE
    assert session.unsaved()


def test_mine_goes_under_another_name(session, clash, press, name_file):
    press("Save as…")
    name_file(clash.with_name("mine.toml"))
    assert load_driver(clash.with_name("mine.toml")).measurements.stature == MINE
    assert load_driver(clash).measurements.stature == THEIRS
    assert not session.unsaved()


def test_coming_back_to_the_window_tells_of_the_change_once(window, session, changed, qtbot, press):
    come_back(window, qtbot)
    assert window.notice.isVisible()
    window.notice.close_button.click()
    come_back(window, qtbot)
    assert not window.notice.isVisible()


def test_theirs_can_be_taken_on_coming_back(window, session, changed, qtbot, press):
    come_back(window, qtbot)
    press("Take theirs")
    assert stature(session) == THEIRS


def test_a_file_that_was_only_touched_is_no_change(window, path, qtbot):
    os.utime(path, ns=(1, 1))
    come_back(window, qtbot)
    assert not window.notice.isVisible()


def test_a_file_that_is_gone_is_written_again(window, session, typed, path, qtbot):
    path.unlink()
    come_back(window, qtbot)
    assert not window.notice.isVisible()
    typed("driver.measurements.stature", f"{MINE:g}")
    window.menus.actions["save"].trigger()
    assert load_driver(path).measurements.stature == MINE


def test_theirs_that_can_t_be_read_is_one_sentence_and_changes_nothing(window, session, clash, press):
    clash.write_text("not toml [", encoding="utf-8")
    press("Take theirs")
    assert window.notice.words.text().endswith(".")
    assert stature(session) == MINE


def test_a_change_is_noticed_after_a_crash_too(window, session, typed, path):
    typed("driver.measurements.stature", f"{MINE:g}")
    window.autosave.keep()
    kept = recover(next(recovery_folder().glob("*.json")))
    assert [file.stamp for file in kept.files.values()] == [file.stamp for file in session.files.values()]

"""As built in the window: entered, refused, compared, kept in the command's file, asked for on closing."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QAccessible
from PySide6.QtWidgets import QLineEdit, QMessageBox

from fitcalc.cli import main
from fitcalc.documents.as_built import History
from fitcalc.documents.samples import sample_path
from fitcalc.documents.store import load

SEAT, KNEE = "made.seat_travel", "posture.knee_released.brake"


@pytest.fixture
def settled(window, qtbot):
    """Waits until nothing is worked out any more."""
    return lambda: qtbot.waitUntil(lambda: not window.jobs.is_busy, timeout=60_000)


@pytest.fixture
def built(window, settled):
    """The window of the chosen driver, asked for from the menu."""
    window.menus.actions["as_built"].trigger()
    settled()
    return window.desk.built[window.session.work.occupant.driver.key]


@pytest.fixture
def enter(built, qtbot):
    """Types into a line as a person does."""

    def type_in(key, text):
        field = built.rows.lines[key].value
        field.setFocus()
        field.selectAll()
        qtbot.keyClick(field, Qt.Key.Key_Delete)
        qtbot.keyClicks(field, text)

    return type_in


@pytest.fixture
def pressed(qtbot, settled):
    def press(button):
        qtbot.mouseClick(button, Qt.MouseButton.LeftButton)
        settled()

    return press


def test_lines_say_what_the_plan_has(session, built):
    line = built.rows.lines[KNEE]
    knee = next(each for each in session.result.figures if each.id == KNEE)
    assert line.told.text() == session.shown.amount(knee.value[0], "deg")
    assert not built.is_unkept


def test_entries_are_held_against_plan_and_prediction(built, enter, pressed):
    enter(SEAT, "20")
    enter(KNEE, "175")
    pressed(built.compare)
    text = built.tables.toPlainText()
    assert built.parts.currentWidget() is built.tables
    assert "X fail" in text
    assert [each.made for each in built._built.record.work if each.key == SEAT] == [20.0]


def test_what_is_no_number_is_told_beside_the_field(built, enter, pressed):
    enter(KNEE, "about 120")
    pressed(built.compare)
    assert "brake: knee, pedal released" in built.told.text()
    assert built.parts.currentWidget() is built.area
    field = built.rows.lines[KNEE].value
    assert built.focusWidget() is field
    assert field.visibleRegion().boundingRect().height() == field.height()


def test_the_file_is_the_command_s_own(built, enter, pressed, settled, name_file, tmp_path, capsys):
    file = tmp_path / "robin.toml"
    enter(KNEE, "120 deg")
    pressed(built.add)
    name_file(file)
    settled()
    assert not built.is_unkept
    assert [each.value for each in load(History, file).builds[0].readings] == [120.0]
    words = ["built", sample_path("hillclimb"), sample_path("robin"), "--history", file]
    assert main([*map(str, words), "--set", "posture.recline=41", "--date", "2030-01-01"]) in (0, 1)
    assert "History of Robin" in capsys.readouterr().out
    enter(KNEE, "121")
    pressed(built.add)
    assert len(load(History, file).builds) == 2


def test_somebody_else_s_file_is_refused_in_words(built, enter, pressed, settled, name_file, tmp_path):
    file = tmp_path / "otto.toml"
    file.write_text('driver = "Otto"\n', "utf-8")
    enter(KNEE, "120")
    pressed(built.add)
    name_file(file)
    settled()
    assert "the history of Otto" in built.told.text()
    assert built.is_unkept
    assert file.read_text("utf-8") == 'driver = "Otto"\n'


def test_plain_numbers_are_turned_into_inches(session, built, enter, pressed):
    enter(SEAT, "50.8")
    session.prefer(inches=True)
    line = built.rows.lines[SEAT]
    assert (line.value.text(), line.unit.text()) == ("2", "in")
    enter(SEAT, "1")
    pressed(built.compare)
    assert [each.made for each in built._built.record.work if each.key == SEAT] == [pytest.approx(25.4)]


def test_readings_in_inches_are_told_as_they_were_entered(session, built, enter, pressed):
    session.prefer(inches=True)
    enter("seat.behind", "2.9")
    pressed(built.compare)
    assert "2.90 in" in built.tables.toPlainText()


def test_another_plan_is_told_and_entries_stay(session, built, enter, pressed):
    enter(KNEE, "120")
    session.edit("setup.seat_travel", 20.0, "seat")
    assert "changed since" in built.told.text()
    pressed(built.compare)
    assert "changed since" not in built.told.text()
    assert built.rows.lines[KNEE].value.text() == "120"
    assert built.rows.lines[SEAT].told.text() == "20 mm"


def test_every_driver_has_a_window_of_his_own(window, built, enter, settled):
    enter(KNEE, "120")
    window.filing.open(sample_path("otto"))
    window.menus.actions["as_built"].trigger()
    settled()
    second = window.desk.built[window.session.work.occupant.driver.key]
    assert second is not built
    assert second.rows.typed() == ()
    assert "Otto" in second.windowTitle()


def test_a_filled_sheet_is_taken_in(built, tmp_path):
    sheet = tmp_path / "sheet.csv"
    sheet.write_text(f"key,entered,unit,error\n{KNEE},121,deg,3\nposture.tail,4,,\n", "utf-8")
    built._read_sheet(str(sheet))
    line = built.rows.lines[KNEE]
    assert (line.value.text(), line.error.text()) == ("121 deg", "3 deg")
    assert "posture.tail" in built.told.text()


def test_closing_asks_what_becomes_of_the_readings(window, built, enter, answer, name_file, tmp_path, qtbot):
    enter(KNEE, "120")
    window.close()
    assert window.isVisible()
    answer(QMessageBox.StandardButton.Save)
    name_file(tmp_path / "robin.toml")
    qtbot.waitUntil(lambda: not window.isVisible(), timeout=60_000)
    assert len(load(History, tmp_path / "robin.toml").builds) == 1


def test_every_field_has_a_name(built):
    fields = built.findChildren(QLineEdit)
    names = [QAccessible.queryAccessibleInterface(each).text(QAccessible.Text.Name) for each in fields]
    assert len(fields) > 50
    assert all(names)

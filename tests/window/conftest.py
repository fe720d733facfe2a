"""A window for each test, as the first start opens it, and nothing left of it afterwards."""

import gc
import threading

import pytest
from PySide6.QtCore import QEvent, Qt, QTimer
from PySide6.QtWidgets import QApplication, QFileDialog, QLineEdit, QMessageBox
from shiboken6 import isValid

from fitcalc.window.program import open_window


@pytest.fixture(autouse=True)
def nothing_left(qapp):
    yield
    qapp.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    qapp.processEvents()
    assert qapp.topLevelWidgets() == []
    assert threading.enumerate() == [threading.main_thread()]
    assert running_timers() == []


def running_timers():
    """Every timer that somebody forgot."""
    timers = (each for each in gc.get_objects() if type(each) is QTimer)
    return [each.objectName() or repr(each.parent()) for each in timers if isValid(each) and each.isActive()]


@pytest.fixture
def shut(qapp):
    """Closes a window without a question, and waits until all of it is gone."""

    def close(window):
        window._close_now()
        window.deleteLater()
        for widget in (
            each for each in qapp.topLevelWidgets() if each.parent() is None and each is not window
        ):
            widget.deleteLater()
        qapp.sendPostedEvents(None, QEvent.Type.DeferredDelete)
        qapp.processEvents()

    return close


@pytest.fixture
def window(qapp, qtbot, shut):
    opened = open_window(qapp, [])
    opened.resize(1280, 800)
    opened.show()
    qtbot.waitExposed(opened)
    opened.activateWindow()
    opened.session.finish_evaluation()
    opened.findings.refresh()
    yield opened
    shut(opened)


@pytest.fixture
def session(window):
    return window.session


@pytest.fixture
def field(window):
    """The worksheet's field of a ref, its section opened."""

    def found(ref):
        window.session.wanted.emit(ref)
        return next(f for s in window.worksheet.sections for r in s.rows for f in r.fields if f.ref == ref)

    return found


@pytest.fixture
def typed(qtbot, field):
    """Types into a field as a person does: over what is there, then on to the next one."""

    def type_in(ref, text):
        into = field(ref)
        into.selectAll()
        qtbot.keyClick(into, Qt.Key.Key_Delete)
        qtbot.keyClicks(into, text)
        qtbot.keyClick(into, Qt.Key.Key_Tab)
        return into

    return type_in


@pytest.fixture
def control(window):
    """The rework strip's slider and box for a ref."""
    return lambda ref: next(each for each in window.rework.controls if each.control.ref == ref)


@pytest.fixture
def dialog(qtbot):
    """The open dialog of a kind."""

    def found(kind):
        qtbot.waitUntil(
            lambda: any(isinstance(w, kind) and w.isVisible() for w in QApplication.topLevelWidgets())
        )
        return next(w for w in QApplication.topLevelWidgets() if isinstance(w, kind) and w.isVisible())

    return found


@pytest.fixture
def name_file(qtbot, dialog):
    """Goes to a folder in the open file dialog, types a name, and presses Enter."""

    def name(path):
        asked = dialog(QFileDialog)
        asked.setDirectory(str(path.parent))
        line = asked.findChild(QLineEdit)
        line.selectAll()
        qtbot.keyClicks(line, path.name)
        qtbot.keyClick(line, Qt.Key.Key_Return)
        qtbot.waitUntil(lambda: not asked.isVisible())

    return name


@pytest.fixture
def answer(qtbot, dialog):
    """Presses a button of the open question."""
    return lambda button: qtbot.mouseClick(dialog(QMessageBox).button(button), Qt.MouseButton.LeftButton)

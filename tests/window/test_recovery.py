import json
import os
import signal
import subprocess
import sys
import textwrap

import pytest

from fitcalc.window.autosave import left_behind, recover, recovery_folder
from fitcalc.window.crash import CrashGuard
from fitcalc.window.program import open_window

EDIT_AND_WAIT = """
    import sys, time
    from PySide6.QtWidgets import QApplication
    from fitcalc.window.program import open_window
    application = QApplication([])
    window = open_window(application, [])
    window.session.edit("setup.seat_travel", 40.0, "seat forward")
    window.session.edit("driver.measurements.stature", 1699.0, "stature")
    until = time.monotonic() + 60
    while time.monotonic() < until:
        application.processEvents()
        if list(sys.path) and any(__import__("pathlib").Path(sys.argv[1]).glob("*.json")):
            print("kept", flush=True)
        time.sleep(0.05)
"""


@pytest.fixture
def killed(qapp):
    """A program that was killed in the middle of its work."""
    script = textwrap.dedent(EDIT_AND_WAIT)
    child = subprocess.Popen(
        [sys.executable, "-c", script, str(recovery_folder())],
        stdout=subprocess.PIPE,
        stderr=subprocess.DEVNULL,
    )
    assert child.stdout.readline() == b"kept\n"
    os.kill(child.pid, signal.SIGKILL)
    child.wait()
    child.stdout.close()


@pytest.fixture
def again(qapp, shut):
    opened = open_window(qapp, [])
    yield opened
    shut(opened)


def test_work_of_a_killed_program_is_there_again(killed, again):
    assert again.session.work.setup.seat_travel == 40.0
    assert again.session.work.driver.measurements.stature == 1699.0
    assert len(again.session.unsaved()) == 2
    assert "ended unexpectedly" in again.notice.words.text()


def test_recovered_work_can_be_put_aside_and_undone(killed, again):
    again.notice.buttons[0].click()
    assert again.session.work.setup.seat_travel == 0.0
    again.session.undo_stack.undo()
    assert again.session.work.setup.seat_travel == 40.0


def test_work_of_a_program_that_still_runs_is_left_alone(window, session):
    session.edit("setup.seat_travel", 20.0, "seat forward")
    window.autosave.keep()
    assert list(recovery_folder().glob("*.json"))
    assert left_behind() == []


def test_a_clean_end_leaves_nothing_behind(window, session, qapp):
    session.edit("setup.seat_travel", 20.0, "seat forward")
    window.autosave.keep()
    window._close_now()
    assert list(recovery_folder().glob("*")) == []


@pytest.mark.parametrize("text", ["", "{}", "[]", '{"car": 3}'])
def test_a_spoilt_recovery_file_is_passed_over(tmp_path, text):
    path = tmp_path / "spoilt.json"
    path.write_text(text, encoding="utf-8")
    assert recover(path) is None


@pytest.fixture
def guard(window):
    made = CrashGuard(window.autosave.keep, window.autosave.text, window.notice.say)
    yield made
    made.release()


def test_a_bug_keeps_the_work_and_writes_a_report(window, session, guard, capsys):
    session.edit("setup.seat_travel", 20.0, "seat forward")
    error = ZeroDivisionError("made for the test")
    guard.caught(type(error), error, None)
    reports = list((recovery_folder().parent / "crashes").glob("*.txt"))
    assert "made for the test" in reports[0].read_text(encoding="utf-8")
    assert list(recovery_folder().glob("*.json"))
    assert window.isVisible()
    assert str(reports[0]) in window.notice.words.text()
    assert "ZeroDivisionError" in capsys.readouterr().err


BREAK_IN_AN_EVENT = """
    import sys
    from PySide6.QtCore import QTimer
    from fitcalc.window import program
    from fitcalc.window.centre import Centre
    opened = program.open_window
    def broken(*_):
        raise ZeroDivisionError("made for the test")
    def opens(application, paths):
        window = opened(application, paths)
        def spoil():
            window.session.edit("driver.measurements.stature", 1699.0, "stature")
            window.centre.found.toggled.connect(broken)
            window.centre.found.click()
            QTimer.singleShot(0, lambda: sys.stdout.write("open\\n" if window.isVisible() else "shut\\n"))
            QTimer.singleShot(0, window._close_now)
        QTimer.singleShot(0, spoil)
        return window
    program.open_window = opens
    sys.exit(program.run([]))
"""


def test_an_error_in_an_event_leaves_a_report_with_the_documents_on_this_machine(qapp):
    script = textwrap.dedent(BREAK_IN_AN_EVENT)
    ran = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, timeout=60)
    assert (ran.returncode, ran.stdout) == (0, "open\n"), ran.stderr
    (report,) = (recovery_folder().parent / "crashes").iterdir()
    trace, _, documents = report.read_text(encoding="utf-8").rstrip().rpartition("\n")
    assert "ZeroDivisionError: made for the test" in trace
    assert json.loads(documents)["occupants"][0]["driver"]["document"]["measurements"]["stature"] == 1699.0


@pytest.mark.parametrize("fault", [ValueError("spoilt"), RecursionError()])
def test_documents_that_can_not_be_attached_do_not_lose_the_report(qapp, fault):
    def spoilt():
        raise fault

    told = []
    guard = CrashGuard(lambda: None, spoilt, told.append)
    guard.caught(KeyError, KeyError("first"), None)
    guard.release()
    (report,) = (recovery_folder().parent / "crashes").iterdir()
    assert "can't be attached" in report.read_text(encoding="utf-8")
    assert str(report) in told[0]

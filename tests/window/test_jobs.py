import gc
import subprocess
import sys
import threading
import time
import weakref
from collections import Counter

import pytest
from PySide6.QtCore import QObject, QTimer

from fitcalc.window.background import Run
from fitcalc.window.jobs import Jobs
from fitcalc.window.session import REST

ENDS_WHILE_A_TASK_RUNS = """
from PySide6.QtCore import QObject
from PySide6.QtWidgets import QApplication
from fitcalc.window.jobs import Jobs

def endless(tell):
    while tell(0.5):
        pass
    return "found"

application, owner = QApplication([]), QObject()
jobs = Jobs(owner)
jobs.start("endless", endless, print)
application.processEvents()
"""
ENDS_WHILE_RESULTS_ARE_DUE = """
from PySide6.QtWidgets import QApplication
from fitcalc.window.program import open_window

def main():
    application = QApplication([])
    window = open_window(application, [])
    window.show()
    application.processEvents()
    window.session.edit("setup.recline", 3.0, "recline")
    window.session.hurry()
    assert window.session.evaluation.is_busy

main()
"""


@pytest.fixture
def jobs(qapp):
    owner = QObject()
    made = Jobs(owner)
    yield made
    made.wait()


def endless(tell):
    while tell(0.5):
        time.sleep(0.001)


def test_the_answer_of_a_task_called_off_is_not_used_for_the_next(jobs, qtbot):
    used, told = [], threading.Event()

    def first(tell):
        told.set()
        return "first"

    jobs.start("first", first, used.append)
    told.wait()
    jobs.start("second", lambda tell: "second", used.append)
    qtbot.waitUntil(lambda: not jobs.is_busy)
    assert used == ["second"]


def test_a_task_begins_when_the_one_before_it_has_stopped(jobs, qtbot):
    at_work, begun = [], threading.Event()

    def first(tell):
        at_work.append("first")
        begun.set()
        endless(tell)
        at_work.pop()

    found = []
    jobs.start("first", first, found.append)
    begun.wait()
    jobs.start("between", lambda tell: "between", found.append)
    jobs.start("last", lambda tell: list(at_work), found.append)
    qtbot.waitUntil(lambda: not jobs.is_busy)
    assert found == [[]]


def test_a_finished_task_leaves_nothing_behind(jobs, qtbot):
    class Found:
        pass

    found = Found()
    gone = weakref.ref(found)
    kept = [found]
    del found
    for _ in range(20):
        jobs.start("one", lambda tell: kept.pop() if kept else None, lambda found: None)
        qtbot.waitUntil(lambda: not jobs.is_busy)
    gc.collect()
    assert gone() is None
    assert Counter(type(each) for each in gc.get_objects())[Run] <= 2


@pytest.mark.parametrize("script", [ENDS_WHILE_A_TASK_RUNS, ENDS_WHILE_RESULTS_ARE_DUE])
def test_a_program_that_ends_calls_its_tasks_off(script):
    ran = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, timeout=60)
    assert (ran.returncode, ran.stdout) == (0, "")
    assert "Error" not in ran.stderr


def test_a_window_that_closes_calls_its_task_off(window):
    begun = threading.Event()

    def task(tell):
        begun.set()
        endless(tell)

    window.jobs.start("endless", task, print)
    begun.wait()
    window._close_now()
    assert threading.enumerate() == [threading.main_thread()]


def test_a_window_that_has_closed_evaluates_no_more(window, session, qtbot):
    session.edit("setup.seat_travel", 20.0, "seat", "drag")
    window._close_now()
    qtbot.wait(2 * REST)
    assert threading.enumerate() == [threading.main_thread()]
    assert not session.evaluation.is_busy
    assert session.result.setup.seat_travel == 0.0


def test_garbage_of_the_window_is_not_collected_in_the_thread_of_a_task(window, qtbot):
    class Held(QObject):
        pass

    where = []
    held = Held()
    held.itself, held.timer = held, QTimer(held)
    held.timer.start(10_000)
    weakref.finalize(held, lambda: where.append(threading.current_thread()))
    del held

    def much_garbage(tell):
        for _ in range(100_000):
            each = []
            each.append(each)

    window.jobs.start("much garbage", much_garbage, print)
    qtbot.waitUntil(lambda: not window.jobs.is_busy, timeout=20_000)
    window.session.finish_evaluation()
    gc.collect()
    assert where == [threading.main_thread()]


def test_garbage_is_collected_while_the_window_stands(window, qtbot):
    class Held:
        pass

    held = Held()
    held.itself = held
    gone = weakref.ref(held)
    del held
    much = [[] for _ in range(2000)]
    qtbot.waitUntil(lambda: gone() is None)
    assert len(much) == 2000

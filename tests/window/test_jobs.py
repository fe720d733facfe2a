import time

from PySide6.QtCore import QObject

from fitcalc.window.jobs import Jobs


def test_the_answer_of_a_task_called_off_is_not_used_for_the_next(qapp, qtbot):
    owner, used = QObject(), []
    jobs = Jobs(owner)
    jobs.start("first", lambda tell: "first", used.append)
    time.sleep(0.2)
    jobs.start("second", lambda tell: "second", used.append)
    qtbot.waitUntil(lambda: not jobs.is_busy)
    jobs.wait()
    assert used == ["second"]

"""Work in a thread of its own, which outlives neither the program nor what it tells of itself."""

import atexit
from collections.abc import Callable
from threading import Thread
from typing import Any

from PySide6.QtCore import QObject, Signal

from fitcalc.fit.progress import Progress

Task = Callable[[Progress], Any]
"""Work that tells the part done and asks whether to go on."""
_runs: list["Run"] = []
"""Every run whose thread may still go on. Only the window's thread takes runs out: with the last hold on a report goes
the report, and a thread may neither meet one that is gone nor take it away under the window's thread."""


class Report(QObject):
    """Carries what a task tells and finds to the window's thread.

    Signals:
        progressed: the part of the task that is done, 0 to 1.
        finished: the run, what its task returned, and the error that ended the task.
    """

    progressed = Signal(float)
    finished = Signal(object, object, object)


class Run:
    """One task in a thread of its own.

    Attributes:
        wanted: somebody still waits for it; otherwise it ends at the next place where its task asks.
    """

    def __init__(self, task: Task, former: "Run | None" = None) -> None:
        """Prepares a task, which begins when `former` has ended."""
        self.report, self.wanted = Report(), True
        self._task, self._former = task, former
        self._thread = Thread(target=self._work, daemon=True)

    def start(self) -> None:
        """Begins."""
        _runs[:] = [*(each for each in _runs if each.is_running), self]
        self._thread.start()

    @property
    def is_running(self) -> bool:
        """Whether its thread has not ended yet."""
        return self._thread.is_alive()

    def wait(self) -> None:
        """Waits until its thread has ended."""
        self._thread.join()

    def _work(self) -> None:
        """Does the work, and lets go of it."""
        task, former = self._task, self._former
        del self._task, self._former
        if former is not None:
            former.wait()
        if not self.wanted:
            return
        try:
            self.report.finished.emit(self, task(self._tell), None)
        except Exception as error:  # noqa: BLE001 - it is raised again in the window's thread
            self.report.finished.emit(self, None, error)

    def _tell(self, done: float) -> bool:
        self.report.progressed.emit(done)
        return self.wanted


def end_all() -> None:
    """Calls every task off and waits until no thread runs."""
    for run in _runs:
        run.wanted = False
    for run in _runs:
        run.wait()
    _runs.clear()


# Registered after Qt for Python's own farewell, so it runs before that takes the reports away.
atexit.register(end_all)

"""Long work off the window's thread, one piece at a time, with a way to call it off."""

from collections.abc import Callable
from typing import Any

from PySide6.QtCore import QObject, QRunnable, QThreadPool, Signal

from fitcalc.errors import InputError
from fitcalc.fit.progress import Progress

Task = Callable[[Progress], Any]
"""Work that tells the part done and asks whether to go on."""


class _Report(QObject):
    """Carries what a task tells and finds to the window's thread."""

    progressed = Signal(float)
    finished = Signal(object, object)


class Run(QRunnable):
    """One task in a thread of the pool.

    Attributes:
        wanted: somebody still waits for it.
        is_done: its thread has left it.
    """

    def __init__(self, task: Task) -> None:
        super().__init__()
        self.setAutoDelete(False)
        self.report, self.wanted, self.is_done = _Report(), True, False
        self._task = task

    def run(self) -> None:
        """Does the work, and lets go of it: Qt for Python keeps every run as long as its pool."""
        task = self._task
        del self._task
        try:
            self.report.finished.emit(task(self._tell), None)
        except Exception as error:  # noqa: BLE001 - it is raised again in the window's thread
            self.report.finished.emit(None, error)
        self.is_done = True

    def _tell(self, done: float) -> bool:
        self.report.progressed.emit(done)
        return self.wanted


class Jobs(QObject):
    """Runs one task at a time; a task that was called off is not heard of again.

    Signals:
        started: a task runs; what it is, in words.
        progressed: the part of it that is done, 0 to 1.
        ended: none runs any more.
        refused: the sentence on why a task could not be done.
    """

    started = Signal(str)
    progressed = Signal(float)
    ended = Signal()
    refused = Signal(str)

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        self._pool = QThreadPool(self)
        self._run: Run | None = None
        self._use: Callable[[Any], None] | None = None
        self._runs: list[Run] = []

    @property
    def is_busy(self) -> bool:
        """Whether a task runs that somebody waits for."""
        return self._run is not None

    def start(self, text: str, task: Task, use: Callable[[Any], None]) -> None:
        """Runs a task off the window's thread and hands what it returns to `use`."""
        self.cancel()
        self._run, self._use = Run(task), use
        self._runs = [*(each for each in self._runs if not each.is_done), self._run]
        self._run.report.progressed.connect(self.progressed)
        self._run.report.finished.connect(self._finish)
        self.started.emit(text)
        self._pool.start(self._run)

    def cancel(self) -> None:
        """Calls the task off: it is told to stop, and what it finds is not used."""
        if self._run is not None:
            self._run.wanted = False
            self._run.report.progressed.disconnect(self.progressed)
            self._run.report.finished.disconnect(self._finish)
            self._run = None
            self.ended.emit()

    def wait(self) -> None:
        """Calls the task off and waits until no thread runs."""
        self.cancel()
        self._pool.waitForDone()
        self._runs.clear()

    def _finish(self, found: Any, error: Exception | None) -> None:
        if self._run is None or self.sender() is not self._run.report:
            return  # of a task that was called off after it had told
        use, self._run = self._use, None
        self.ended.emit()
        if isinstance(error, InputError):
            self.refused.emit(str(error))
        elif error is not None:
            raise error
        elif use is not None:
            use(found)

"""Long work off the window's thread, one piece at a time, with a way to call it off."""

from collections.abc import Callable
from typing import Any

from PySide6.QtCore import QObject, QRunnable, QThreadPool, Signal

from fitcalc.errors import InputError


class _Report(QObject):
    """Carries what a task found to the window's thread."""

    finished = Signal(object, object)


class _Task(QRunnable):
    def __init__(self, work: Callable[[], Any]) -> None:
        super().__init__()
        self.setAutoDelete(False)
        self.report = _Report()
        self._work = work

    def run(self) -> None:
        """Does the work in a thread of the pool."""
        try:
            self.report.finished.emit(self._work(), None)
        except Exception as error:  # noqa: BLE001 - it is raised again in the window's thread
            self.report.finished.emit(None, error)


class Jobs(QObject):
    """Runs one task at a time; a task that was called off is not heard of again.

    Signals:
        started: a task runs; what it is, in words.
        ended: none runs any more.
        refused: the sentence on why a task could not be done.
    """

    started = Signal(str)
    ended = Signal()
    refused = Signal(str)

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        self._pool = QThreadPool(self)
        self._task: _Task | None = None
        self._use: Callable[[Any], None] | None = None
        self._tasks: list[_Task] = []

    @property
    def is_busy(self) -> bool:
        """Whether a task runs that somebody waits for."""
        return self._task is not None

    def start(self, text: str, work: Callable[[], Any], use: Callable[[Any], None]) -> None:
        """Runs `work` off the window's thread and hands what it returns to `use`."""
        self.cancel()
        self._task, self._use = _Task(work), use
        self._tasks.append(self._task)
        self._task.report.finished.connect(self._finish)
        self.started.emit(text)
        self._pool.start(self._task)

    def cancel(self) -> None:
        """Calls the task off: what it finds is not used."""
        if self._task is not None:
            self._task.report.finished.disconnect(self._finish)
            self._task = None
            self.ended.emit()

    def wait(self) -> None:
        """Calls the task off and waits until no thread runs."""
        self.cancel()
        self._pool.waitForDone()
        self._tasks.clear()

    def _finish(self, found: Any, error: Exception | None) -> None:
        use, self._task = self._use, None
        self.ended.emit()
        if isinstance(error, InputError):
            self.refused.emit(str(error))
        elif error is not None:
            raise error
        elif use is not None:
            use(found)

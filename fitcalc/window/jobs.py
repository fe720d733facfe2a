"""Long work off the window's thread, one piece at a time, with a way to call it off."""

from collections.abc import Callable
from typing import Any

from PySide6.QtCore import QObject, Signal

from fitcalc.errors import InputError
from fitcalc.window.background import Run, Task


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
        self._run: Run | None = None
        self._last: Run | None = None
        self._use: Callable[[Any], None] | None = None

    @property
    def is_busy(self) -> bool:
        """Whether a task runs that somebody waits for."""
        return self._run is not None

    def start(self, text: str, task: Task, use: Callable[[Any], None]) -> None:
        """Runs a task off the window's thread and hands what it returns to `use`."""
        self.cancel()
        self._run = self._last = Run(task, self._last)
        self._use = use
        self._run.report.progressed.connect(self.progressed)
        self._run.report.finished.connect(self._finish)
        self.started.emit(text)
        self._run.start()

    def cancel(self) -> None:
        """Calls the task off: it is told to stop, and what it finds is not used."""
        if self._run is not None:
            self._run.wanted = False
            self._run.report.progressed.disconnect(self.progressed)
            self._run.report.finished.disconnect(self._finish)
            self._run = self._use = None
            self.ended.emit()

    def wait(self) -> None:
        """Calls the task off and waits until no thread runs."""
        self.cancel()
        if self._last is not None:
            self._last.wait()

    def _finish(self, run: Run, found: Any, error: Exception | None) -> None:
        if run is not self._run:
            return  # of a task that was called off after it had told
        use, self._run, self._use = self._use, None, None
        self.ended.emit()
        if isinstance(error, InputError):
            self.refused.emit(str(error))
        elif error is not None:
            raise error
        elif use is not None:
            use(found)

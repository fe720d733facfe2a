"""Evaluation off the window's thread: of what is asked for meanwhile, only the latest is worked out and handed over."""

from collections.abc import Callable

from PySide6.QtCore import QObject, Signal

from fitcalc.errors import InputError
from fitcalc.window.background import Run
from fitcalc.window.results import Results

Asked = Callable[[], Results]


class Evaluation(QObject):
    """One evaluation at a time.

    Signals:
        done: the results that were asked for last.
        refused: the sentence on why there are none.
    """

    done = Signal(object)
    refused = Signal(str)

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        self._run: Run | None = None
        self._next: Asked | None = None
        self._is_wanted = False

    @property
    def is_busy(self) -> bool:
        """Whether results are still to come."""
        return self._is_wanted

    def ask(self, asked: Asked) -> None:
        """Works something out in place of whatever was asked for before."""
        self._next, self._is_wanted = asked, True
        if self._run is None:
            self._start()

    def drop(self) -> None:
        """Nobody waits for results any more."""
        self._next, self._is_wanted = None, False

    def wait(self) -> None:
        """Drops everything and waits until no thread runs."""
        self.drop()
        if self._run is not None:
            self._run.wait()

    def _start(self) -> None:
        asked, self._next = self._next, None
        if asked is None:
            return
        self._run = Run(lambda _tell: asked())
        self._run.report.finished.connect(self._finish)
        self._run.start()

    def _finish(self, run: Run, found: Results | None, error: Exception | None) -> None:
        run.wait()
        self._run = None
        if self._next is not None:
            self._start()
            return
        wanted, self._is_wanted = self._is_wanted, False
        if isinstance(error, InputError):
            self.refused.emit(str(error))
        elif error is not None:
            raise error
        elif wanted:
            self.done.emit(found)

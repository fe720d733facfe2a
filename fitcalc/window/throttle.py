"""Work that is asked for faster than it can be done: the first at once, then only the latest."""

from collections.abc import Callable

from PySide6.QtCore import QObject, QTimer


class Throttle(QObject):
    """Runs an action at most once per pause, and never leaves the last request undone."""

    def __init__(self, action: Callable[[], None], pause: int, parent: QObject) -> None:
        super().__init__(parent)
        self._action, self._waiting = action, False
        self._timer = QTimer(self, singleShot=True, interval=pause)
        self._timer.timeout.connect(self._resume)

    def request(self) -> None:
        """Asks for the action once more."""
        if self._timer.isActive():
            self._waiting = True
        else:
            self._run()

    def finish(self) -> None:
        """Does at once what is still waiting, and waits for nothing more."""
        self._timer.stop()
        if self._waiting:
            self._waiting = False
            self._action()

    def _resume(self) -> None:
        if self._waiting:
            self._run()

    def _run(self) -> None:
        self._waiting = False
        self._timer.start()
        self._action()

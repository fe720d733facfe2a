"""Python's garbage is collected in the window's thread alone.

Python collects in whichever thread happens to run when garbage is due, and takes apart there what it finds: a dialog that
has gone would be destroyed, with its timers, under the hands of the window's thread.
"""

import gc

from PySide6.QtCore import QObject, QTimer

EVERY = 200
"""How often it is looked whether garbage is due, ms."""


class Garbage(QObject):
    """Collects as often as Python would, at the window's own time, until the window lets go of it."""

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        gc.disable()
        self._timer = QTimer(self, interval=EVERY)
        self._timer.timeout.connect(collect_due)
        self._timer.start()

    def let_go(self) -> None:
        """No task runs any more: Python collects again by itself."""
        self._timer.stop()
        gc.enable()


def collect_due() -> None:
    """Collects the oldest generation that is due."""
    counts, limits = gc.get_count(), gc.get_threshold()
    due = [age for age, (count, limit) in enumerate(zip(counts, limits, strict=True)) if count > limit > 0]
    if due:
        gc.collect(due[-1])

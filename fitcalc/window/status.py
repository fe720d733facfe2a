"""The foot of the window: what runs, and where the cursor is in the car's frame."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QLabel, QProgressBar, QPushButton

from fitcalc.present.picture import AXES, View

if TYPE_CHECKING:
    from fitcalc.window.main_window import MainWindow

AXIS_NAMES = "xyz"


class Status(QObject):
    """Keeps the status bar."""

    def __init__(self, window: "MainWindow") -> None:
        super().__init__(window)
        self._window = window
        bar = window.statusBar()
        self.what, self.progress = QLabel(window), QProgressBar(window)
        self.progress.setMaximumWidth(120)
        self.progress.setTextVisible(False)
        self.progress.setAccessibleName("progress")
        self.cancel = QPushButton("Call it off", window)
        self.cancel.clicked.connect(window.jobs.cancel)
        self.place = QLabel(window)
        self.place.setAccessibleName("cursor in the car's frame")
        for widget in (self.what, self.progress, self.cancel):
            bar.addWidget(widget)
        bar.addPermanentWidget(self.place)
        window.jobs.started.connect(self._show_job)
        window.jobs.progressed.connect(self._show_progress)
        window.jobs.ended.connect(self._hide_job)
        window.centre.cursor_moved.connect(self.show_place)
        self._hide_job()

    def show_place(self, right: float, up: float, view: View) -> None:
        """Where the cursor is."""
        shown = self._window.session.shown
        axes = [AXIS_NAMES[axis] for axis in AXES[view]]
        named = (f"{axis} {shown.amount(value, 'mm')}" for axis, value in zip(axes, (right, up), strict=True))
        self.place.setText("   ".join(named))

    def _show_job(self, text: str) -> None:
        self.what.setText(f"{text[:1].upper()}{text[1:]}")
        self.progress.setRange(0, 0)
        self._set_visible(True)

    def _show_progress(self, done: float) -> None:
        self.progress.setRange(0, 100)
        self.progress.setValue(round(100 * done))

    def _hide_job(self) -> None:
        self.what.setText("")
        self._set_visible(False)

    def _set_visible(self, visible: bool) -> None:
        for widget in (self.what, self.progress, self.cancel):
            widget.setVisible(visible)

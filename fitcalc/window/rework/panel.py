"""The rework strip: every change that the car allows, live, and the search for the least of them."""

from itertools import groupby

from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import (
    QFrame,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QScrollArea,
    QVBoxLayout,
    QWidget,
)

from fitcalc.window.look import Look
from fitcalc.window.rework.control import ControlWidget
from fitcalc.window.rework.spans import Control, controls_of
from fitcalc.window.session import Session

ABOVE, ROWS_APART = 4, 3
SIDE, BETWEEN = 6, 14
"""Room beside the controls and between two columns of them, px."""
HEAD_TEXT = "Rework seat 123 mm rearward As found Find least rework and their frames"
"""What the heading must have room for, or else the seat is left out."""
MOST_COLUMNS = 3
"""Seat, then box and wheel, then a row for each kind of pedal bar: clutch, brake and throttle side by side."""


class Rework(QFrame):
    """The changes to the car for the chosen driver.

    Signals:
        fit_wanted: the least rework is to be found.
        reset_wanted: everything is to be as found.
    """

    fit_wanted = Signal()
    reset_wanted = Signal()

    def __init__(self, session: Session, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session, self._look = session, look
        self.controls: list[ControlWidget] = []
        self._car = session.work.car.document
        self.setAccessibleName("rework")
        self._page = page = QVBoxLayout(self)
        page.setContentsMargins(SIDE, ABOVE, SIDE, ABOVE)
        self._head_row = self._head()
        page.addLayout(self._head_row)
        self._area = QScrollArea(self, widgetResizable=True)
        self._area.setFrameShape(QFrame.Shape.NoFrame)
        self._area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._area.setAccessibleName("changes")
        page.addWidget(self._area, 1)
        session.work_changed.connect(self.refresh)
        session.preferences_changed.connect(self._follow_preferences)
        session.wanted.connect(self.go_to)
        self._build()

    def refresh(self) -> None:
        """Shows the rework as it is; another car brings other controls."""
        car = self._session.work.car.document
        if car is not self._car:
            self._car = car
            if [each.control for each in self.controls] != self._wanted():
                self._build()
        for control in self.controls:
            control.refresh()
        self._told.setText(self._seat_move())

    def _follow_preferences(self) -> None:
        self.refresh()
        self._arrange()

    def go_to(self, ref: str) -> None:
        """Gives the box of a change the keyboard."""
        for control in self.controls:
            if control.control.ref == ref:
                control.box.setFocus(Qt.FocusReason.OtherFocusReason)
                self._area.ensureWidgetVisible(control)

    def height_for(self, most: int) -> int:
        """Height that shows whole rows and no part of one, at most this, px."""
        row = max(control.sizeHint().height() for control in self.controls) + ROWS_APART
        head = self._head_row.sizeHint().height() + self._page.spacing() + 2 * ABOVE
        return head + max(1, min(self._grid.rowCount(), (most - head) // row)) * row

    def resizeEvent(self, event: QResizeEvent) -> None:
        """As many columns as there is room for."""
        super().resizeEvent(event)
        self._arrange()

    def changeEvent(self, event: QEvent) -> None:
        """Makes room for another text size."""
        super().changeEvent(event)
        if event.type() == QEvent.Type.FontChange and self.controls:
            self._arrange()

    def _head(self) -> QHBoxLayout:
        head = QHBoxLayout()
        title = QLabel("Rework", self)
        title.setProperty("role", "heading")
        self._told = QLabel(self)
        self._told.setProperty("role", "quiet")
        self.find_button = QPushButton("Find &least rework", self)
        self.find_button.setToolTip(
            "Seat first, then pedal bars: the smallest change that meets limits and knees (F5)"
        )
        self.find_button.clicked.connect(self.fit_wanted)
        self.reset_button = QPushButton("As fo&und", self)
        self.reset_button.setToolTip("Take every change back; one undo step")
        self.reset_button.clicked.connect(self.reset_wanted)
        head.addWidget(title)
        head.addWidget(self._told)
        head.addStretch(1)
        head.addWidget(self.reset_button)
        head.addWidget(self.find_button)
        return head

    def _seat_move(self) -> str:
        travel = self._session.work.setup.seat_travel
        if travel == 0.0:
            return "seat as found"
        return (
            f"seat {self._session.shown.amount(abs(travel), 'mm')} {'forward' if travel > 0 else 'rearward'}"
        )

    def _wanted(self) -> list[Control]:
        return list(controls_of(self._session.work.car.document))

    def _build(self) -> None:
        page = QWidget(self._area)
        self.controls = [
            ControlWidget(self._session, self._look, control, page) for control in self._wanted()
        ]
        self._grid = QGridLayout(page)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setVerticalSpacing(ROWS_APART)
        self._grid.setHorizontalSpacing(BETWEEN)
        self._grid.setAlignment(Qt.AlignmentFlag.AlignTop)
        self._area.setWidget(page)
        self._arrange()
        self.refresh()

    def _arrange(self) -> None:
        wide = max(control.least_width() for control in self.controls) + BETWEEN
        columns = max(1, min(MOST_COLUMNS, (self.width() - 2 * SIDE + BETWEEN) // wide))
        self._told.setVisible(self.width() > self.fontMetrics().horizontalAdvance(HEAD_TEXT))
        for control in self.controls:
            self._grid.removeWidget(control)
        for row, controls in enumerate(_rows(self.controls, columns)):
            for column, control in enumerate(controls):
                self._grid.addWidget(control, row, column)
        for column in range(MOST_COLUMNS):
            self._grid.setColumnStretch(column, 1 if column < columns else 0)


def _rows(controls: list[ControlWidget], columns: int) -> list[list[ControlWidget]]:
    """The controls in rows; each group begins a row of its own."""
    groups = (list(group) for _, group in groupby(controls, key=lambda each: each.control.group))
    return [group[at : at + columns] for group in groups for at in range(0, len(group), columns)]

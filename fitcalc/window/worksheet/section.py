"""One part of the worksheet: a heading that opens and shuts, and its lines, made when first opened."""

from PySide6.QtCore import Qt, QTimer, Signal
from PySide6.QtWidgets import QToolButton, QVBoxLayout, QWidget

from fitcalc.window.session import Session
from fitcalc.window.worksheet.estimates import Taken
from fitcalc.window.worksheet.fields import Chooser, Entry
from fitcalc.window.worksheet.lines import Row, lines_of
from fitcalc.window.worksheet.order import Section
from fitcalc.window.worksheet.rows import RowWidget

AT_ONCE = 16
"""How many lines are made in one go, about as many as can be seen; those after them follow."""


class SectionWidget(QWidget):
    """A part of the worksheet.

    Signals:
        entered: the ref of a field that has the keyboard.
        made: a line that is new.
    """

    entered = Signal(str)
    made = Signal(RowWidget)

    def __init__(self, session: Session, section: Section, parent: QWidget) -> None:
        super().__init__(parent)
        self.section, self._session = section, session
        self._lines: tuple[Row, ...] = ()
        self._waiting: tuple[Row, ...] = ()
        self._rows: list[RowWidget] = []
        self._taken: dict[str, Taken] = {}
        self._timer = QTimer(self, singleShot=True, interval=0)
        self._timer.timeout.connect(self._make)
        page = QVBoxLayout(self)
        page.setContentsMargins(0, 0, 0, 0)
        page.setSpacing(2)
        self.heading = self._heading()
        page.addWidget(self.heading)
        self._body = QWidget(self)
        self._body.hide()
        self._column = QVBoxLayout(self._body)
        self._column.setContentsMargins(8, 4, 6, 8)
        self._column.setSpacing(4)
        page.addWidget(self._body)

    @property
    def rows(self) -> list[RowWidget]:
        """Every line; those that are still to be made are made now."""
        while self._waiting:
            self._make()
        return self._rows

    def open(self) -> None:
        """Shows the lines."""
        self.heading.setChecked(True)

    def refresh(self, taken: dict[str, Taken]) -> None:
        """Shows what the documents say now, where the section is open."""
        self._taken = taken
        if not self.heading.isChecked():
            return
        lines = lines_of(self._session.work, self.section)
        if lines != self._lines:
            self._rebuild(lines)
            return
        for row in self._rows:
            row.refresh(taken.get(row.row.ref))

    def fit(self, in_other_units: bool) -> None:
        """Fits the lines to other letters or other units."""
        for row in self._rows:
            row.fit()
            if in_other_units:
                row.drop_drafts()

    def forget(self) -> None:
        """Has the lines made anew, for another text size."""
        self._lines = ()

    def field(self, ref: str) -> Entry | Chooser | None:
        """The field of a ref, or the first field of the part that it names."""
        fields = [field for row in self.rows for field in row.fields]
        exact = [field for field in fields if field.ref == ref]
        within = [field for field in fields if field.ref.startswith(f"{ref}.")]
        return next(iter((*exact, *within)), None)

    def _heading(self) -> QToolButton:
        heading = QToolButton(self)
        heading.setText(self.section.title)
        heading.setCheckable(True)
        heading.setProperty("role", "section")
        heading.setAccessibleName(self.section.title)
        heading.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonTextBesideIcon)
        heading.setArrowType(Qt.ArrowType.RightArrow)
        heading.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        heading.setSizePolicy(heading.sizePolicy().Policy.Expanding, heading.sizePolicy().Policy.Fixed)
        heading.toggled.connect(self._toggle)
        return heading

    def _toggle(self, is_open: bool) -> None:
        self.heading.setArrowType(Qt.ArrowType.DownArrow if is_open else Qt.ArrowType.RightArrow)
        self._body.setVisible(is_open)
        if is_open:
            self.entered.emit("")

    def _rebuild(self, lines: tuple[Row, ...]) -> None:
        for row in self._rows:
            self._column.removeWidget(row)
            row.hide()
            row.deleteLater()
        self._lines = self._waiting = lines
        self._rows = []
        self._make()

    def _make(self) -> None:
        """Makes the next lines."""
        lines, self._waiting = self._waiting[:AT_ONCE], self._waiting[AT_ONCE:]
        for line in lines:
            row = RowWidget(self._session, line, self._body)
            row.entered.connect(self.entered)
            row.refresh(self._taken.get(line.ref))
            self._column.addWidget(row)
            self._rows.append(row)
            self.made.emit(row)
        if self._waiting:
            self._timer.start()

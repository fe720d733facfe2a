"""One part of the worksheet: a heading that opens and shuts, and its lines, made when first opened."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QToolButton, QVBoxLayout, QWidget

from fitcalc.window.session import Session
from fitcalc.window.worksheet.estimates import Taken
from fitcalc.window.worksheet.fields import Chooser, Entry
from fitcalc.window.worksheet.lines import Row, lines_of
from fitcalc.window.worksheet.order import Section
from fitcalc.window.worksheet.rows import RowWidget


class SectionWidget(QWidget):
    """A part of the worksheet.

    Signals:
        entered: the ref of a field that has the keyboard.
    """

    entered = Signal(str)

    def __init__(self, session: Session, section: Section, parent: QWidget) -> None:
        super().__init__(parent)
        self.section, self._session = section, session
        self._lines: tuple[Row, ...] = ()
        self.rows: list[RowWidget] = []
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

    def open(self) -> None:
        """Shows the lines."""
        self.heading.setChecked(True)

    def refresh(self, taken: dict[str, Taken]) -> None:
        """Shows what the documents say now, where the section is open."""
        if not self.heading.isChecked():
            return
        lines = lines_of(self._session.work, self.section)
        if lines != self._lines:
            self._rebuild(lines)
        for row in self.rows:
            row.refresh(taken.get(row.row.ref))

    def fit(self, in_other_units: bool) -> None:
        """Fits the lines to other letters or other units."""
        for row in self.rows:
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
        for row in self.rows:
            self._column.removeWidget(row)
            row.hide()
            row.deleteLater()
        self._lines = lines
        self.rows = [self._row(line) for line in lines]

    def _row(self, line: Row) -> RowWidget:
        row = RowWidget(self._session, line, self._body)
        row.entered.connect(self.entered)
        self._column.addWidget(row)
        return row

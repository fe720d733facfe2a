"""One line of the worksheet as widgets."""

from collections.abc import Callable

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QFont, QPalette
from PySide6.QtWidgets import QHBoxLayout, QLabel, QToolButton, QVBoxLayout, QWidget

from fitcalc.errors import InputError
from fitcalc.window.session import Session
from fitcalc.window.work import at_ref, declared_for
from fitcalc.window.worksheet.draft import Draft
from fitcalc.window.worksheet.estimates import Taken
from fitcalc.window.worksheet.fields import Chooser, Entry, field_for
from fitcalc.window.worksheet.lines import Row

AXES = ("x", "y", "z")
INDENT = 10
INKS = {
    "quiet": QPalette.ColorRole.PlaceholderText,
    "estimated": QPalette.ColorRole.Shadow,
    "refused": QPalette.ColorRole.BrightText,
}
"""What stands less strong than a title, or stronger, and the colour of the palette that it has."""


def label(text: str, role: str = "", parent: QWidget | None = None) -> QLabel:
    """Words as one of `INKS`, or as a heading."""
    made = QLabel(text, parent)
    made.setWordWrap(role in ("", "heading"))
    show_role(made, role)
    return made


def show_role(label: QLabel, role: str) -> None:
    """Colour and letters of a role; the colour is the palette's, so that it follows the theme."""
    label.setForegroundRole(INKS.get(role, QPalette.ColorRole.WindowText))
    if label.font().italic() != (role == "estimated") or role == "heading":
        font = QFont()
        font.setItalic(role == "estimated")
        font.setBold(role == "heading")
        label.setFont(font)


class RowWidget(QWidget):
    """A line: title, fields, unit, how sure; below it a sentence on what can't be used.

    Signals:
        entered: the ref of a field that has the keyboard.
    """

    entered = Signal(str)

    def __init__(self, session: Session, row: Row, parent: QWidget) -> None:
        super().__init__(parent)
        self.row, self._session = row, session
        self._stacked = session.preferences.stacked
        self.fields: list[Entry | Chooser] = []
        self.drafts: list[Draft] = []
        self._units: list[tuple[QLabel, str]] = []
        self._widths: list[tuple[QWidget, str, str, int]] = []
        """What is of fixed width, a text that it has room for in mm, one in inches, and px beside it."""
        self._sureness = label("", "quiet", self)
        self._sentence: QLabel | None = None
        self._page = QVBoxLayout(self)
        self._page.setContentsMargins(row.depth * INDENT, 0, 0, 0)
        self._page.setSpacing(1)
        self._build()
        self.fit()

    def fit(self) -> None:
        """Fixes widths by the size of letters and the units."""
        for widget, in_mm, in_inches, beside in self._widths:
            sample = in_inches if self._session.shown.inches else in_mm
            widget.setFixedWidth(widget.fontMetrics().horizontalAdvance(sample) + beside)

    def drop_drafts(self) -> None:
        """Puts away what was begun, since it was typed in other units."""
        for draft in self.drafts:
            draft.hide()
            draft.deleteLater()
        self.drafts = []

    def refresh(self, taken: Taken | None) -> None:
        """Shows what the document says, in the units chosen."""
        for field in self.fields:
            field.refresh(taken)
        for shown, unit in self._units:
            shown.setText(self._session.shown.unit(unit).strip("-"))
        self._show_sureness(taken)

    def _build(self) -> None:
        match self.row.form:
            case "value":
                self._build_value()
            case "point":
                self._build_point()
            case "pair":
                self._build_pair()
            case _:
                self._build_heading()

    def _build_value(self) -> None:
        title = label(self.row.title)
        field = self._field(self.row.ref, self.row.title)
        title.setBuddy(field)
        line = self._line()
        line.addWidget(title, 1)
        if self._stacked:
            line = self._line()
        if self.row.declared.kind == "number":
            self._fix_width(field)
            line.addWidget(field)
            line.addWidget(self._unit(self.row.declared.unit))
            if self._stacked:
                line.addStretch(1)
                self._page.addWidget(self._sureness)
            else:
                line.addWidget(self._sureness)
                self._widths.append((self._sureness, "1234 to 1234 ", "12.34 to 12.34 ", 0))
        else:
            line.addWidget(field, 2)

    def _build_point(self) -> None:
        head = self._line()
        head.addWidget(label(self.row.title), 1)
        if self._stacked:
            head = self._line()
        head.addWidget(label("±", "quiet"))
        tolerance = self._field(f"{self.row.ref}.tolerance", f"{self.row.title}, tolerance")
        self._fix_width(tolerance, "10.5", "0.394")
        head.addWidget(tolerance)
        head.addWidget(self._unit("mm"))
        if self._stacked:
            head.addStretch(1)
        line = self._line()
        for axis in filter(self.row.declared.names.__contains__, AXES):
            if self._stacked and axis != "x":
                line.addStretch(1)
                line = self._line()
            self._axis(line, axis, f"{self.row.ref}.{axis}")
        line.addStretch(1)
        self._build_note(line)

    def _build_note(self, line: QHBoxLayout) -> None:
        note = self._field(f"{self.row.ref}.note", f"{self.row.title}, note")
        note.setPlaceholderText("note")
        note.setVisible(bool(at_ref(self._session.work, f"{self.row.ref}.note")))
        opener = self._button(line, "note", "write a note", lambda: (note.show(), note.setFocus()))
        opener.setHidden(not note.isHidden())
        opener.clicked.connect(opener.hide)
        self._page.addWidget(note)

    def _build_pair(self) -> None:
        line = self._line()
        number = label(self.row.title, "quiet")
        line.addWidget(number)
        unit = self._unit("mm")
        if self._stacked:
            line.addWidget(unit)
        for at in (0, 1):
            if self._stacked:
                line.addStretch(1)
                line = self._line()
            ref = f"{self.row.ref}.{at}"
            self._axis(line, declared_for(ref).title, ref)
        if not self._stacked:
            line.addWidget(unit)
        line.addStretch(1)

    def _axis(self, line: QHBoxLayout, axis: str, ref: str) -> None:
        name = label(axis, "quiet")
        field = self._field(ref, f"{self.row.title}, {axis}")
        name.setBuddy(field)
        self._fix_width(field, "-1234.5", "-1234.5")
        line.addWidget(name)
        line.addWidget(field)

    def _build_heading(self) -> None:
        line = self._line()
        line.addWidget(label(self.row.title, "heading"), 1)
        if self._stacked and self.row.form == "absent":
            line = self._line()
        if self.row.form == "absent":
            line.addWidget(label("not given", "quiet"))
            self._button(line, "give", "give it", self._begin_draft)
            line.addStretch(int(self._stacked))
        if self.row.form == "list":
            self._button(line, "+", "add one more after the last", self._add_entry)
            self._button(line, "−", "take the last one away", self._drop_entry)

    def _line(self) -> QHBoxLayout:
        line = QHBoxLayout()
        line.setSpacing(4)
        self._page.addLayout(line)
        return line

    def _field(self, ref: str, title: str) -> Entry | Chooser:
        field = field_for(self._session, ref, title, self)
        field.entered.connect(self.entered)
        field.judged.connect(self._show_sentence)
        self.fields.append(field)
        return field

    def _unit(self, unit: str) -> QLabel:
        shown = label("", "quiet")
        self._units.append((shown, unit))
        self._widths.append((shown, "mm ", "mm ", 0))
        return shown

    def _fix_width(self, field: QWidget, in_mm: str = "-12345.6", in_inches: str = "-12345.6") -> None:
        self._widths.append((field, in_mm, in_inches, 12))

    def _button(self, line: QHBoxLayout, mark: str, does: str, action: Callable[[], object]) -> QToolButton:
        button = QToolButton(self)
        button.setText(mark)
        button.setAccessibleName(f"{self.row.title}: {does}")
        button.setToolTip(does.capitalize())
        button.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        button.clicked.connect(lambda: action())
        line.addWidget(button)
        return button

    def _begin_draft(self) -> None:
        self._draft(self.row.ref)

    def _draft(self, ref: str) -> None:
        if self.drafts:
            return
        draft = Draft(self._session, ref, self.row.title, self)
        draft.judged.connect(self._show_sentence)
        self._page.insertWidget(self._page.count() - (self._sentence is not None), draft)
        self.drafts.append(draft)
        draft.setFocus()

    def _add_entry(self) -> None:
        entries = at_ref(self._session.work, self.row.ref)
        if entries:
            self._replace((*entries, entries[-1]), f"add to {self.row.title}")
        else:
            self._draft(f"{self.row.ref}.0")

    def _drop_entry(self) -> None:
        self._replace(at_ref(self._session.work, self.row.ref)[:-1], f"take from {self.row.title}")

    def _replace(self, entries: tuple[object, ...], text: str) -> None:
        try:
            self._session.edit(self.row.ref, entries, text)
            self._show_sentence("")
        except InputError as error:
            self._show_sentence(str(error))

    def _show_sentence(self, sentence: str) -> None:
        if self._sentence is None:
            if not sentence:
                return
            self._sentence = self._sentence_label()
        self._sentence.setText(sentence)
        self._sentence.setVisible(bool(sentence))

    def _sentence_label(self) -> QLabel:
        made = label("", "refused", self)
        made.setWordWrap(True)
        made.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        self._page.addWidget(made)
        return made

    def _show_sureness(self, taken: Taken | None) -> None:
        if taken is None:
            self._sureness.setText("")
            self._sureness.setHidden(self._stacked)
            return
        shown, unit = self._session.shown, self.row.declared.unit
        low, high = shown.rounded(taken.low, unit), shown.rounded(taken.high, unit)
        self._sureness.setText("measured" if taken.measured else f"{low} to {high}")
        self._sureness.show()
        meant = f"Estimated: 90 of 100 such people lie between {low} and {high}"
        self._sureness.setToolTip("" if taken.measured else meant)
        show_role(self._sureness, "quiet" if taken.measured else "estimated")

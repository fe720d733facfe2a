"""The widgets that one value is typed or chosen in."""

from typing import Any

from PySide6.QtCore import QEvent, QRectF, Qt, Signal
from PySide6.QtGui import QFocusEvent, QFont, QKeyEvent, QPainter, QPaintEvent, QPalette, QPen
from PySide6.QtWidgets import QComboBox, QLineEdit, QWidget

from fitcalc.documents.declared import Declared
from fitcalc.errors import InputError
from fitcalc.window.session import Session
from fitcalc.window.typed import stored_number
from fitcalc.window.work import at_ref, declared_for
from fitcalc.window.worksheet.estimates import Taken

NOT_GIVEN = "not given"
INSET = (4, 0, 4, 0)
"""Room for frame and padding: left, above, right, below, px."""


class Line(QLineEdit):
    """Something typed; the frame tells whether it has the keyboard, is only estimated, or can't be used."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.refused = self._is_estimated = False
        self.setFrame(False)
        self.setTextMargins(*INSET)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draws the frame round what is typed."""
        super().paintEvent(event)
        colours, wide = self.palette(), 2 if self.refused or self.hasFocus() else 1
        if self.refused:
            ink = colours.brightText()
        elif self.hasFocus():
            ink = colours.highlight()
        else:
            ink = colours.shadow() if self._is_estimated else colours.mid()
        painter = QPainter(self)
        painter.setPen(QPen(ink, wide, Qt.PenStyle.DashLine if self._is_estimated else Qt.PenStyle.SolidLine))
        inside = wide / 2
        painter.drawRect(QRectF(self.rect()).adjusted(inside, inside, -inside, -inside))
        painter.end()

    def show_refused(self, refused: bool) -> None:
        """Shows whether what is typed can be used."""
        self.refused = refused
        self.update()

    def show_estimated(self, estimated: bool) -> None:
        """Shows whether what stands here is only an estimate."""
        if estimated != self._is_estimated:
            self._is_estimated = estimated
            font = QFont()
            font.setItalic(estimated)
            self.setFont(font)
            self.setPalette(QPalette())
            self._colour_estimate()

    def changeEvent(self, event: QEvent) -> None:
        """Follows the theme."""
        super().changeEvent(event)
        if event.type() == QEvent.Type.PaletteChange:
            self._colour_estimate()

    def _colour_estimate(self) -> None:
        """Has an estimate written in the colour of estimates; Qt writes it in the colour of what is not given."""
        wanted = self.palette().shadow()
        if self._is_estimated and self.palette().placeholderText() != wanted:
            own = QPalette()
            own.setBrush(QPalette.ColorRole.PlaceholderText, wanted)
            self.setPalette(own)


class Entry(Line):
    """A number or a text of a document, typed.

    What can be used is used at once; what can't stays as typed, with a sentence on it, until it is mended.

    Signals:
        entered: it has the keyboard.
        judged: the sentence on what was typed; empty when it is used.
    """

    entered = Signal(str)
    judged = Signal(str)

    def __init__(self, session: Session, ref: str, title: str, parent: QWidget) -> None:
        super().__init__(parent)
        self.ref, self.declared = ref, declared_for(ref)
        self._session, self._title = session, title
        self.setAccessibleDescription(self.declared.description)
        self.setToolTip(self.declared.description)
        self.textEdited.connect(self._use_if_valid)
        self.editingFinished.connect(self._settle)
        self.refresh()

    def refresh(self, taken: Taken | None = None) -> None:
        """Shows the document's value, unless what stands here can't be used or says the same."""
        value, unit = at_ref(self._session.work, self.ref), self._session.shown.unit(self.declared.unit)
        self.setAccessibleName(f"{self._title}, {unit}" if unit.strip("-") else self._title)
        estimated = value is None and taken is not None
        guess = self._session.shown.rounded(taken.value, self.declared.unit) if taken else ""
        self.setPlaceholderText(guess if estimated else self._default())
        self.show_estimated(estimated)
        if not self.refused and not self._says(value):
            self.setText(self._written(value))
            self.setCursorPosition(0)

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Tells which value is looked at."""
        super().focusInEvent(event)
        self.entered.emit(self.ref)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Escape puts back what the document says."""
        if event.key() == Qt.Key.Key_Escape:
            self._accept()
            self.setText("")
            self.refresh()
            self.judged.emit("")
            return
        super().keyPressEvent(event)

    def _use_if_valid(self) -> None:
        try:
            self._use()
        except InputError:
            return
        self._accept()
        self.judged.emit("")

    def _settle(self) -> None:
        sentence = ""
        try:
            self._use()
            self._accept()
        except InputError as error:
            sentence = str(error)
            self.show_refused(True)
        self._session.end_gesture()
        self.judged.emit(sentence)

    def _accept(self) -> None:
        self.show_refused(False)

    def _use(self) -> None:
        value = self._read(self.text())
        if value != at_ref(self._session.work, self.ref):
            self._session.edit(self.ref, value, self._title, gesture=self.ref)

    def _says(self, value: Any) -> bool:
        try:
            return bool(self._read(self.text()) == value)
        except InputError:
            return False

    def _read(self, text: str) -> Any:
        if self.declared.kind == "text":
            return text
        if not text.strip():
            return self.declared.default
        written = self._written(at_ref(self._session.work, self.ref))
        if text.strip() == written:
            return at_ref(self._session.work, self.ref)
        path = self.ref.partition(".")[2]
        return stored_number(text, self.declared.unit, self._session.shown, path)

    def _written(self, value: Any) -> str:
        if value is None:
            return ""
        return value if isinstance(value, str) else self._session.shown.typed(value, self.declared.unit)

    def _default(self) -> str:
        return "" if self.declared.default is None else self._written(self.declared.default)


class Chooser(QComboBox):
    """One of a few values of a document.

    Signals:
        entered: it has the keyboard.
        judged: the sentence on what was chosen; empty when it is used.
    """

    entered = Signal(str)
    judged = Signal(str)

    def __init__(self, session: Session, ref: str, title: str, parent: QWidget) -> None:
        super().__init__(parent)
        self.ref, self.declared, self.refused = ref, declared_for(ref), False
        self._session, self._title = session, title
        self.setAccessibleName(title)
        self.setAccessibleDescription(self.declared.description)
        self.setToolTip(self.declared.description)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        for value in choices_of(self.declared):
            self.addItem(NOT_GIVEN if value is None else str(value), value)
        self.activated.connect(self._use)
        self.refresh()

    def refresh(self, taken: Taken | None = None) -> None:
        """Shows the document's value."""
        self.setCurrentIndex(choices_of(self.declared).index(at_ref(self._session.work, self.ref)))

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Tells which value is looked at."""
        super().focusInEvent(event)
        self.entered.emit(self.ref)

    def wheelEvent(self, event: Any) -> None:
        """Leaves the wheel to the page, so that scrolling changes no value."""
        event.ignore()

    def _use(self) -> None:
        try:
            self._session.edit(self.ref, self.currentData(), self._title)
            self.judged.emit("")
        except InputError as error:
            self.judged.emit(str(error))
            self.refresh()


def choices_of(declared: Declared) -> list[Any]:
    """Every value that may be chosen; None first where nothing need be given."""
    return [*([] if declared.required or declared.default is not None else [None]), *declared.choices]


def field_for(session: Session, ref: str, title: str, parent: QWidget) -> Entry | Chooser:
    """The widget that suits what is declared at a ref."""
    kind = Chooser if declared_for(ref).kind == "choice" else Entry
    return kind(session, ref, title, parent)

"""The middle of the window: which view is drawn, and the sketch."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QButtonGroup, QCheckBox, QHBoxLayout, QLabel, QToolButton, QVBoxLayout, QWidget

from fitcalc.window.look import Look
from fitcalc.window.session import Session

VIEWS = (("side", "Side"), ("plan", "Plan"), ("pads", "Pedals"))


class Centre(QWidget):
    """The sketch with its view switch."""

    cursor_moved = Signal(float, float, str)

    def __init__(self, session: Session, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self.view = "side"
        self.buttons = QButtonGroup(self)
        self.found = QCheckBox("as found in grey", self)
        self.found.setChecked(True)
        self.title = QLabel(self)
        self.canvas = QLabel("sketch", self)
        self.canvas.setAlignment(Qt.AlignmentFlag.AlignCenter)
        page = QVBoxLayout(self)
        page.setContentsMargins(0, 0, 0, 0)
        page.addLayout(self._head())
        page.addWidget(self.canvas, 1)

    def show_view(self, view: str) -> None:
        self.view = view

    def fit_view(self) -> None: ...

    def _head(self) -> QHBoxLayout:
        head = QHBoxLayout()
        head.setContentsMargins(6, 4, 6, 0)
        for view, text in VIEWS:
            button = QToolButton(self, text=text, checkable=True)
            button.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
            self.buttons.addButton(button)
            head.addWidget(button)
        head.addWidget(self.title, 1)
        head.addWidget(self.found)
        return head

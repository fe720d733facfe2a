"""A line at the head of the window that says something without stopping anybody."""

from collections.abc import Callable

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QPushButton, QWidget


class Notice(QFrame):
    """One sentence at a time, until it is put away."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setProperty("role", "bar")
        self.words = QLabel(self)
        self.words.setWordWrap(True)
        self.words.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        self.words.setAccessibleName("notice")
        self.action = QPushButton(self)
        self.close_button = QPushButton("Put away", self)
        self.close_button.setAccessibleName("put the notice away")
        self.close_button.clicked.connect(self.hide)
        self.action.clicked.connect(self._act)
        self._does: Callable[[], None] | None = None
        line = QHBoxLayout(self)
        line.setContentsMargins(8, 4, 8, 4)
        line.addWidget(self.words, 1)
        line.addWidget(self.action)
        line.addWidget(self.close_button)
        self.hide()

    def say(self, sentence: str, action: str = "", does: Callable[[], None] | None = None) -> None:
        """Shows a sentence, with something that can be done about it."""
        self.words.setText(sentence)
        self.action.setText(action)
        self.action.setVisible(bool(action))
        self._does = does
        self.show()

    def _act(self) -> None:
        self.hide()
        if self._does:
            self._does()

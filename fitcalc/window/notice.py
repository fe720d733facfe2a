"""A line at the head of the window that says something without stopping anybody."""

from collections.abc import Callable
from functools import partial

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QPushButton, QWidget

MOST = 3
"""How many things can be offered at once."""
Offer = tuple[str, Callable[[], None]]
"""What can be done, in a word or two, and what does it."""


class Notice(QFrame):
    """One sentence at a time, until it is put away.

    Attributes:
        buttons: of what can be done about it; those that are not needed are hidden.
    """

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setProperty("role", "bar")
        self.words = QLabel(self)
        self.words.setWordWrap(True)
        self.words.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        self.words.setAccessibleName("notice")
        self.buttons = [QPushButton(self) for _ in range(MOST)]
        self.close_button = QPushButton("Put away", self)
        self.close_button.setAccessibleName("put the notice away")
        self.close_button.clicked.connect(self.hide)
        self._offers: tuple[Offer, ...] = ()
        line = QHBoxLayout(self)
        line.setContentsMargins(8, 4, 8, 4)
        line.addWidget(self.words, 1)
        for at, button in enumerate(self.buttons):
            button.clicked.connect(partial(self._act, at))
            line.addWidget(button)
        line.addWidget(self.close_button)
        self.hide()

    def say(self, sentence: str, *offers: Offer) -> None:
        """Shows a sentence, with what can be done about it."""
        self.words.setText(sentence)
        self._offers = offers
        for at, button in enumerate(self.buttons):
            button.setText(offers[at][0] if at < len(offers) else "")
            button.setVisible(at < len(offers))
        self.show()

    def _act(self, at: int) -> None:
        self.hide()
        self._offers[at][1]()

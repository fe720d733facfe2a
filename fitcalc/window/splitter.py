"""A splitter whose handles are plain rules between its parts."""

from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QSplitter, QSplitterHandle


class Rule(QSplitterHandle):
    """A handle in the colour of every other rule."""

    def paintEvent(self, event: QPaintEvent) -> None:
        """Fills itself."""
        painter = QPainter(self)
        painter.fillRect(self.rect(), self.palette().mid())
        painter.end()


class Splitter(QSplitter):
    """Parts with rules between them."""

    def createHandle(self) -> QSplitterHandle:
        """The rule before a part."""
        return Rule(self.orientation(), self)

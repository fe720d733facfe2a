"""The cautions, always in sight."""

from PySide6.QtCore import QEvent, QSize, Qt
from PySide6.QtWidgets import QFrame, QLabel, QScrollArea, QWidget

from fitcalc.present.wording import CAUTIONS

MOST_LINES, LARGE_LINES, LARGE = 3, 2, 24
"""Lines shown at once, and how many of large text, from this height of a line, px; the rest is scrolled to."""


ABOVE = 2
"""Room above the first line, px; below the last one there is none, so that no line is cut."""


class Cautions(QScrollArea):
    """Every caution, at the foot of the window."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setAccessibleName("cautions")
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setWidgetResizable(True)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.words = QLabel("<b>Cautions.</b> " + " ".join(CAUTIONS), self)
        self.words.setWordWrap(True)
        self.words.setContentsMargins(8, ABOVE, 8, 0)
        self.words.setAlignment(Qt.AlignmentFlag.AlignTop | Qt.AlignmentFlag.AlignLeft)
        self.words.setAccessibleName("cautions")
        self.setWidget(self.words)
        self._fit()

    def sizeHint(self) -> QSize:
        """The lines that its words need at this width, up to `MOST_LINES`."""
        line = self.fontMetrics().lineSpacing()
        most = (LARGE_LINES if line >= LARGE else MOST_LINES) * line + ABOVE
        return QSize(200, min(most, self.words.heightForWidth(max(self.width(), 200))))

    def resizeEvent(self, event: object) -> None:
        """Fewer lines where there is width for them."""
        super().resizeEvent(event)  # type: ignore[arg-type]
        self._fit()

    def changeEvent(self, event: QEvent) -> None:
        """More room for larger text."""
        super().changeEvent(event)
        if event.type() == QEvent.Type.FontChange:
            self._fit()

    def _fit(self) -> None:
        self.setFixedHeight(self.sizeHint().height())

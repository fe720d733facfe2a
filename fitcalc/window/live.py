"""Words over the foot of the sketch: what a hand is doing, without a dialog and without moving the drawing."""

from PySide6.QtCore import QEvent, QObject, Qt
from PySide6.QtWidgets import QLabel

from fitcalc.window.sketch.view import SketchView

ASIDE = 5
"""Room at both sides, in lines of text, that axes and scale bar need."""


class Live(QLabel):
    """One or two lines in the middle of the sketch's foot; nothing where there is nothing to say."""

    def __init__(self, sketch: SketchView) -> None:
        super().__init__(sketch)
        self._sketch = sketch
        self.setProperty("role", "live")
        self.setAccessibleName("what the hand is doing")
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self.setWordWrap(True)
        self.setAlignment(Qt.AlignmentFlag.AlignCenter)
        sketch.installEventFilter(self)
        self.hide()

    def say(self, text: str) -> None:
        """Shows words, or takes them away."""
        if text != self.text():
            self.setText(text)
            self._place()
        self.setVisible(bool(text))

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Stays at the foot of the sketch."""
        if event.type() == QEvent.Type.Resize:
            self._place()
        return False

    def _place(self) -> None:
        line = self.fontMetrics().lineSpacing()
        room = max(self._sketch.width() - 2 * ASIDE * line, 8 * line)
        wide = min(room, self.fontMetrics().horizontalAdvance(self.text()) + 2 * line)
        high = self.heightForWidth(wide)
        self.setGeometry((self._sketch.width() - wide) // 2, self._sketch.height() - high - 4, wide, high)

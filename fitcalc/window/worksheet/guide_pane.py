"""How to take the measurement that has the keyboard: words, allowed span, and a drawing of where the tape goes."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QBuffer, QPointF, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen, QPolygonF, QResizeEvent
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QScrollArea, QWidget

from fitcalc.documents.declared import Declared
from fitcalc.window.look import Look
from fitcalc.window.session import Session
from fitcalc.window.work import KINDS, declared_for

if TYPE_CHECKING:
    from fitcalc.documents.guide import Guide
    from fitcalc.documents.guide_drawing import Drawing, Line

NOTHING = "Go to a line: here stands how to take its measurement."

TIP_LINES = 8
"""Side of the drawing in a tool tip, in lines of text."""


class GuideDrawing(QWidget):
    """A small line drawing with the tape in it."""

    def __init__(self, look: Look, parent: QWidget) -> None:
        super().__init__(parent)
        self._look = look
        self._drawing: Drawing | None = None
        self.setAccessibleName("where the tape goes")
        self.hide()

    def show_drawing(self, drawing: "Drawing | None") -> None:
        """Shows a drawing, or nothing."""
        self._drawing = drawing
        self.setVisible(drawing is not None)
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draws the figure thin, tapes, angles and measured points heavy."""
        if self._drawing is None:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        ink, accent = QColor(self._look.colours.ink), QColor(self._look.colours.accent)
        painter.setPen(QPen(ink, 1.4))
        self._draw_runs(painter, self._drawing.lines)
        for x, y, radius in self._drawing.circles:
            size = radius * self._scale()
            painter.drawEllipse(self._at(x, y), size, size)
        painter.setPen(QPen(ink, 0.8, Qt.PenStyle.DashDotLine))
        self._draw_runs(painter, self._drawing.thin)
        self._draw_measured(painter, self._drawing, accent)
        painter.end()

    def _draw_measured(self, painter: QPainter, drawing: "Drawing", accent: QColor) -> None:
        painter.setPen(QPen(accent, 1.4))
        self._draw_runs(painter, tuple(arc.legs() for arc in drawing.arcs))
        painter.setPen(QPen(accent, 3, Qt.PenStyle.SolidLine, Qt.PenCapStyle.RoundCap))
        self._draw_runs(
            painter, (*(tape.ends for tape in drawing.tapes), *(arc.curve() for arc in drawing.arcs))
        )
        for x, y in (*drawing.spots, *(end for tape in drawing.tapes for end in tape.ends)):
            painter.drawEllipse(self._at(x, y), 2.5, 2.5)
        if len(drawing.tapes) > 1:
            self._write_labels(painter, drawing)

    def _write_labels(self, painter: QPainter, drawing: "Drawing") -> None:
        for tape in drawing.tapes:
            (x, y), (to_x, to_y) = tape.ends
            painter.drawText(self._at((x + to_x) / 2 + 2, (y + to_y) / 2 + 2), tape.label)

    def _draw_runs(self, painter: QPainter, runs: "tuple[Line, ...]") -> None:
        for run in runs:
            painter.drawPolyline(QPolygonF([self._at(*spot) for spot in run]))

    def _scale(self) -> float:
        return min(self.width(), self.height()) / 104

    def _at(self, x: float, y: float) -> QPointF:
        return QPointF(2 + x * self._scale(), (102 - y) * self._scale())


class GuidePane(QFrame):
    """The foot of the worksheet."""

    def __init__(self, session: Session, look: Look, parent: QWidget) -> None:
        super().__init__(parent)
        self._session, self._look = session, look
        self.setProperty("role", "bar")
        self._words = QLabel(NOTHING, self)
        self._words.setWordWrap(True)
        self._words.setAlignment(Qt.AlignmentFlag.AlignTop | Qt.AlignmentFlag.AlignLeft)
        self._words.setMargin(6)
        self._words.setAccessibleName("how to take this measurement")
        area = QScrollArea(self, widgetResizable=True)
        area.setFrameShape(QFrame.Shape.NoFrame)
        area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        area.setAccessibleName("how to take this measurement")
        area.setWidget(self._words)
        self._drawing = GuideDrawing(look, self)
        line = QHBoxLayout(self)
        line.setContentsMargins(0, 0, 0, 0)
        line.addWidget(area, 1)
        line.addWidget(self._drawing)

    def show_ref(self, ref: str, before: str = "") -> None:
        """Shows how to measure what a ref names; `before` is said ahead of its name."""
        from fitcalc.documents.guide import guide_for

        declared = declared_for(ref)
        guide = guide_for(KINDS[ref.partition(".")[0]], declared.path)
        self._drawing.show_drawing(guide.drawing if guide else None)
        lines = [f"{before}<b>{declared.title.capitalize()}</b>", declared.description, self._span(declared)]
        if guide:
            whole = guide.how if guide.how != declared.description else ""
            lines += [whole, guide.care, self._error(guide), f"Decides most: {guide.decides}"]
        self._words.setText("<br>".join(filter(None, lines)))

    def tip(self, ref: str) -> str:
        """The same in short, as rich text with the drawing in it."""
        from html import escape

        from fitcalc.documents.guide import guide_for

        declared = declared_for(ref)
        guide = guide_for(KINDS[ref.partition(".")[0]], declared.path)
        words = "<br>".join(filter(None, (f"<b>{escape(declared.title)}</b>", escape(declared.description))))
        if guide is None or guide.drawing is None:
            return f"<p>{words}</p>"
        image = f'<img src="data:image/png;base64,{self._picture(guide.drawing)}">'
        return f'<table><tr><td>{image}</td><td style="padding-left: 8px">{words}</td></tr></table>'

    def _picture(self, drawing: "Drawing") -> str:
        """A drawing as PNG in base 64."""
        side = TIP_LINES * self.fontMetrics().lineSpacing()
        canvas = GuideDrawing(self._look, self)
        canvas.resize(side, side)
        canvas.show_drawing(drawing)
        content = QBuffer()
        content.open(QBuffer.OpenModeFlag.WriteOnly)
        canvas.grab().save(content, "PNG")
        canvas.hide()
        canvas.deleteLater()
        return bytes(content.data().toBase64().data()).decode()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Leaves the words at least three fifths of the width."""
        super().resizeEvent(event)
        self._drawing.setFixedWidth(min(self.height(), self.width() * 2 // 5))

    def _error(self, guide: "Guide") -> str:
        shown = self._session.shown
        unit = shown.unit(guide.unit).strip("-")
        return f"Usual error by hand: ±{shown.typed(guide.error, guide.unit)} {unit}".rstrip() + "."

    def _span(self, declared: Declared) -> str:
        if declared.low is None or declared.high is None:
            return ""
        return f"Possible: {self._session.shown.span(declared.low, declared.high, declared.unit)}."

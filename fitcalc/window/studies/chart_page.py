"""A chart with its title, its legend and its notes."""

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QGridLayout, QLabel, QVBoxLayout, QWidget

from fitcalc.present.chart import Chart, ChartLegend, Spot
from fitcalc.window.look import Look
from fitcalc.window.sketch.palette import pen_for
from fitcalc.window.studies.plot import Plot


class Swatch(QWidget):
    """What one entry of a legend looks like on the plot."""

    def __init__(self, entry: ChartLegend, plot: Plot, look: Look, parent: QWidget) -> None:
        super().__init__(parent)
        self._entry, self._plot, self._look = entry, plot, look

    def sizeHint(self) -> QSize:
        """As high as a line of words."""
        line = self.fontMetrics().lineSpacing()
        return QSize(2 * line, line)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draws the line, the area or the mark."""
        painter, high = QPainter(self), self.fontMetrics().lineSpacing()
        dark = self._look.colours.name == "dark"
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        middle = QPointF(high, high / 2)
        if self._entry.kind == "spot":
            spot = Spot("", self._entry.style, "", (0.0, 0.0), self._entry.shape)
            self._plot.symbol(painter, middle, spot)
        elif self._entry.kind == "line":
            painter.setPen(pen_for(self._entry.style, dark, float(high) / 1.3))
            painter.drawLine(QPointF(2.0, high / 2), QPointF(2.0 * high - 2.0, high / 2))
        else:
            painter.fillRect(
                QRectF(2.0, 0.2 * high, 2.0 * high - 4.0, 0.6 * high), self._plot.fill(self._entry.style)
            )


class ChartPage(QWidget):
    """One chart, whole."""

    def __init__(self, chart: Chart, look: Look, parent: QWidget, can_choose: bool = False) -> None:
        super().__init__(parent)
        title = QLabel(chart.title, self)
        title.setProperty("role", "heading")
        self.plot = Plot(chart, look, self, can_choose)
        page = QVBoxLayout(self)
        page.addWidget(title)
        page.addWidget(self.plot, 1)
        rows = QGridLayout()
        rows.setColumnStretch(1, 1)
        for at, entry in enumerate(chart.legend):
            rows.addWidget(Swatch(entry, self.plot, look, self), at, 0, Qt.AlignmentFlag.AlignTop)
            rows.addWidget(_words(entry.text, self), at, 1)
        page.addLayout(rows)
        for note in chart.notes:
            page.addWidget(_words(note, self))


def _words(text: str, parent: QWidget) -> QLabel:
    label = QLabel(text, parent)
    label.setWordWrap(True)
    label.setProperty("role", "quiet")
    return label

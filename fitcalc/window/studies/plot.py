"""A plot on screen: the same data as on paper, drawn with the sketch's pens; a place on it can be pointed at."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QBrush,
    QColor,
    QFontInfo,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPen,
    QPolygonF,
)
from PySide6.QtWidgets import QWidget

from fitcalc.present.chart import Axis, Chart, ChartMark, Spot
from fitcalc.present.picture import XY, Area, Style
from fitcalc.window.look import Look
from fitcalc.window.sketch.palette import STROKES, brush_for, inks, letters_for, pen_for

NAMES = 0.5
"""Row names take at most this part of the width."""
ROW = 1.5
"""Height of a row of names, in heights of the lettering."""
STEPS = 60
"""Steps of the keyboard's cross from one end of an axis to the other."""
STRONG = 120
"""How strongly an area of a status is filled, 0 to 255."""
STATUSES = ("pass", "advise", "fail")
MOVES = {
    Qt.Key.Key_Left: (-1, 0),
    Qt.Key.Key_Right: (1, 0),
    Qt.Key.Key_Up: (0, 1),
    Qt.Key.Key_Down: (0, -1),
}


@dataclass(frozen=True)
class Frame:
    """Where the plot's axes lie on the widget, px."""

    chart: Chart
    box: QRectF

    def point(self, place: XY) -> QPointF:
        """A place of the axes on the widget."""
        (x, y), box = (self.chart.x, self.chart.y), self.box
        return QPointF(
            box.left() + (place[0] - x.low) / (x.high - x.low) * box.width(),
            box.bottom() - (place[1] - y.low) / (y.high - y.low) * box.height(),
        )

    def place(self, point: QPointF) -> XY:
        """A point of the widget on the axes, kept on the plot."""
        (x, y), box = (self.chart.x, self.chart.y), self.box
        right = min(max((point.x() - box.left()) / box.width(), 0.0), 1.0)
        up = min(max((box.bottom() - point.y()) / box.height(), 0.0), 1.0)
        return x.low + right * (x.high - x.low), y.low + up * (y.high - y.low)


class Plot(QWidget):
    """One chart.

    Signals:
        chosen: the place that was clicked, or where the keyboard's cross was when Enter was pressed.
    """

    chosen = Signal(float, float)

    def __init__(self, chart: Chart, look: Look, parent: QWidget, can_choose: bool = False) -> None:
        super().__init__(parent)
        self.chart, self._look, self._can_choose = chart, look, can_choose
        self._cross: XY | None = None
        self.setAccessibleName(chart.title)
        self.setAccessibleDescription(" ".join([*(entry.text for entry in chart.legend), *chart.notes]))
        if can_choose:
            self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
            self.setCursor(Qt.CursorShape.CrossCursor)
            self.setToolTip("Click a place, or move the cross with the arrow keys and press Enter, to try it")

    def sizeHint(self) -> QSize:
        """Room for the axes' words and for every row."""
        high = round(self._letters * (ROW * len(self.chart.y.ticks) + 5)) if not self.chart.y.ruled else 360
        return QSize(480, max(high, 160))

    def minimumSizeHint(self) -> QSize:
        """Rows are never crushed; the rest may be small."""
        return QSize(260, self.sizeHint().height() if not self.chart.y.ruled else 200)

    @property
    def frame(self) -> Frame:
        """Where the axes lie now."""
        metrics, letters, y = self.fontMetrics(), self._letters, self.chart.y
        names = max((metrics.horizontalAdvance(tick.text) for tick in y.ticks), default=0)
        left = min(names, NAMES * self.width()) + letters * (2.2 if y.label else 0.8)
        right = 2.5 * letters if y.ruled else metrics.horizontalAdvance("100.0 to 100.0") + 0.8 * letters
        foot = letters * (3.8 if self.chart.x.label else 2.2)
        top = 0.8 * letters
        wide, high = max(self.width() - left - right, 40.0), max(self.height() - top - foot, 40.0)
        return Frame(self.chart, QRectF(left, top, wide, high))

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draws ground, marks, and the keyboard's cross."""
        painter, frame = QPainter(self), self.frame
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.fillRect(frame.box, self._ink("paper"))
        self._ground(painter, frame)
        painter.save()
        painter.setClipRect(frame.box)
        for mark in self.chart.marks:
            if not isinstance(mark, Spot):
                self._shape(painter, frame, mark)
        painter.restore()
        painter.setPen(QPen(self._ink("ink"), 1.0))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRect(frame.box)
        for mark in self.chart.marks:
            if isinstance(mark, Spot):
                self._spot(painter, frame, mark)
        self._draw_cross(painter, frame)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Chooses the place that is clicked."""
        frame = self.frame
        if self._can_choose and frame.box.contains(event.position()):
            self._cross = frame.place(event.position())
            self.update()
            self.chosen.emit(*self._cross)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Arrows move the cross, Enter chooses its place."""
        key = Qt.Key(event.key())
        if self._can_choose and key in MOVES:
            self._move(*MOVES[key])
        elif self._can_choose and self._cross and key in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.chosen.emit(*self._cross)
        else:
            super().keyPressEvent(event)

    def _move(self, right: int, up: int) -> None:
        axes = self.chart.x, self.chart.y
        at = self._cross or ((axes[0].low + axes[0].high) / 2, (axes[1].low + axes[1].high) / 2)
        moved = (
            min(max(value + step * (axis.high - axis.low) / STEPS, axis.low), axis.high)
            for value, step, axis in zip(at, (right, up), axes, strict=True)
        )
        self._cross = (next(moved), next(moved))
        self.update()

    @property
    def _letters(self) -> float:
        return float(QFontInfo(self.font()).pixelSize())

    @property
    def _dark(self) -> bool:
        return self._look.colours.name == "dark"

    def _ink(self, name: str) -> QColor:
        return QColor(inks(self._dark)[name])  # type: ignore[index]

    def _ground(self, painter: QPainter, frame: Frame) -> None:
        """Rules, and the words beside the axes."""
        letters, box = self._letters, frame.box
        ends = self.chart.x.high, self.chart.y.high
        for point, _, text in _ticks(self.chart.x, lambda at: (at, self.chart.y.low), frame):
            self._rule(painter, point, QPointF(point.x(), box.top()))
            place = QRectF(point.x() - 6 * letters, box.bottom() + 0.3 * letters, 12 * letters, 1.3 * letters)
            self._write(painter, place, Qt.AlignmentFlag.AlignCenter, text)
        for point, _, text in _ticks(self.chart.y, lambda at: (self.chart.x.low, at), frame):
            if self.chart.y.ruled:
                self._rule(painter, point, QPointF(frame.point(ends).x(), point.y()))
            place = QRectF(0.0, point.y() - letters, box.left() - 0.5 * letters, 2 * letters)
            fitted = painter.fontMetrics().elidedText(text, Qt.TextElideMode.ElideRight, int(place.width()))
            self._write(painter, place, Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter, fitted)
        self._labels(painter, box)

    def _labels(self, painter: QPainter, box: QRectF) -> None:
        letters = self._letters
        low = QRectF(0.0, box.bottom() + 2.0 * letters, self.width(), 1.5 * letters)
        self._write(painter, low, Qt.AlignmentFlag.AlignCenter, self.chart.x.label)
        painter.save()
        painter.translate(0.8 * letters, box.center().y())
        painter.rotate(-90.0)
        aside = QRectF(-box.height() / 2, -0.8 * letters, box.height(), 1.6 * letters)
        self._write(painter, aside, Qt.AlignmentFlag.AlignCenter, self.chart.y.label)
        painter.restore()

    def _rule(self, painter: QPainter, start: QPointF, end: QPointF) -> None:
        painter.setPen(QPen(self._ink("solid"), 1.0))
        painter.drawLine(start, end)

    def _write(self, painter: QPainter, box: QRectF, flags: Qt.AlignmentFlag, text: str) -> None:
        painter.setPen(self._ink("ink"))
        painter.drawText(box, flags, text)

    def _shape(self, painter: QPainter, frame: Frame, mark: ChartMark) -> None:
        assert not isinstance(mark, Spot)
        points = QPolygonF([frame.point(point) for point in mark.points])
        painter.setPen(pen_for(mark.style, self._dark, self._letters))
        if isinstance(mark, Area):
            painter.setBrush(self.fill(mark.style))
            painter.drawPolygon(points)
        else:
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawPolyline(points)

    def fill(self, style: Style) -> QBrush:
        """What an area of a style is filled with."""
        if style in STATUSES:
            colour = letters_for(style, self._dark)
            colour.setAlpha(STRONG)
            return QBrush(colour)
        return brush_for(style, self._dark)

    def _spot(self, painter: QPainter, frame: Frame, spot: Spot) -> None:
        at, letters = frame.point(spot.at), self._letters
        self.symbol(painter, at, spot)
        if not spot.text:
            return
        wide, reach = painter.fontMetrics().horizontalAdvance(spot.text), 0.7 * letters
        across = {"right": reach, "left": -reach - wide}.get(spot.side, -wide / 2)
        down = {"above": -reach, "below": reach}.get(spot.side, 0.0)
        x = min(max(at.x() + across, 0.0), self.width() - wide)
        y = min(max(at.y() + down, frame.box.top() + 0.7 * letters), frame.box.bottom() - 0.7 * letters)
        box = QRectF(x - 0.2 * letters, y - 0.65 * letters, wide + 0.4 * letters, 1.3 * letters)
        if frame.box.contains(at) and (spot.framed or spot.shape != "none"):
            painter.setPen(QPen(self._ink("faint"), 1.0) if spot.framed else QPen(Qt.PenStyle.NoPen))
            painter.setBrush(self._ink("paper"))
            painter.drawRect(box)
        self._write(painter, box, Qt.AlignmentFlag.AlignCenter, spot.text)

    def symbol(self, painter: QPainter, at: QPointF, spot: Spot) -> None:
        """The mark of a spot."""
        stroke = STROKES[spot.style]
        colour, reach = QColor(inks(self._dark)[stroke.line or "ink"]), 0.4 * self._letters
        painter.setPen(QPen(colour, 2.0))
        painter.setBrush(colour if spot.shape == "dot" else Qt.BrushStyle.NoBrush)
        if spot.shape == "cross":
            painter.drawLine(at + QPointF(-reach, -reach), at + QPointF(reach, reach))
            painter.drawLine(at + QPointF(-reach, reach), at + QPointF(reach, -reach))
        elif spot.shape in ("ring", "dot"):
            size = reach * (1.3 if spot.shape == "ring" else 0.8)
            painter.drawEllipse(at, size, size)
        elif spot.shape == "tick":
            painter.drawLine(at + QPointF(0.0, -reach), at + QPointF(0.0, reach))

    def _draw_cross(self, painter: QPainter, frame: Frame) -> None:
        if self._cross is None:
            return
        at, box = frame.point(self._cross), frame.box
        painter.setPen(QPen(self._ink("grip"), 1.0, Qt.PenStyle.DashLine))
        painter.drawLine(QPointF(box.left(), at.y()), QPointF(box.right(), at.y()))
        painter.drawLine(QPointF(at.x(), box.top()), QPointF(at.x(), box.bottom()))


def _ticks(axis: Axis, placed: Callable[[float], XY], frame: Frame) -> Iterator[tuple[QPointF, float, str]]:
    for tick in axis.ticks:
        yield frame.point(placed(tick.at)), tick.at, tick.text

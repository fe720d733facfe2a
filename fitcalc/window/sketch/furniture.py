"""What frames a drawing in the window: title, legend, axes and scale bar, all of one size at any zoom."""

import math

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QBrush, QColor, QPainter, QPen, QPixmap, QPolygonF

from fitcalc.present.picture import Legend, Picture
from fitcalc.units import MM_PER_INCH
from fitcalc.window.sketch.marks import BACKING, Look
from fitcalc.window.sketch.palette import STROKES, brush_for, inks, pen_for

TOP, BOTTOM, SIDE = 3.6, 5.4, 1.6
"""Margins that a fitted drawing leaves for the furniture, in heights of the lettering."""
MOST_TOP, MOST_BOTTOM = 0.2, 0.16
"""The most that they take of the height of a low window."""
BAR_PX = 110.0


def margins(high: float, letters: float) -> tuple[float, float]:
    """What a fitted drawing leaves above and below it, px."""
    return min(TOP * letters, MOST_TOP * high), min(BOTTOM * letters, MOST_BOTTOM * high)


def draw_furniture(painter: QPainter, area: QRectF, picture: Picture, look: Look) -> None:
    """Title and legend along the top, axes and scale bar along the bottom."""
    painter.setFont(look.font)
    _title(painter, area, picture, look)
    _legend(painter, area, picture.legend, look)
    _axes(painter, area, picture, look)
    _scale_bar(painter, area, look)


class Furniture:
    """The furniture of a view on screen: two strips, drawn again only when something of them is another."""

    def __init__(self) -> None:
        self._state: tuple[object, ...] = ()
        self._strips: list[tuple[QPointF, QPixmap]] = []

    def draw(self, painter: QPainter, area: QRectF, picture: Picture, look: Look) -> None:
        """Lays both strips over the drawing."""
        ratio = painter.device().devicePixelRatioF()
        state = area, picture.title, picture.legend, picture.axes, look, ratio
        if state != self._state:
            high, low = math.ceil(TOP * look.letters), math.ceil(BOTTOM * look.letters)
            rooms = (
                area.adjusted(0, 0, 0, high - area.height()),
                area.adjusted(0, area.height() - low, 0, 0),
            )
            self._strips = [(room.topLeft(), _strip(room, area, picture, look, ratio)) for room in rooms]
            self._state = state
        for place, strip in self._strips:
            painter.drawPixmap(place, strip)


def _strip(room: QRectF, area: QRectF, picture: Picture, look: Look, ratio: float) -> QPixmap:
    """What lies of the furniture in a part of the area, on nothing."""
    strip = QPixmap(math.ceil(room.width() * ratio), math.ceil(room.height() * ratio))
    strip.setDevicePixelRatio(ratio)
    strip.fill(Qt.GlobalColor.transparent)
    painter = QPainter(strip)
    painter.setRenderHints(QPainter.RenderHint.Antialiasing | QPainter.RenderHint.TextAntialiasing)
    painter.translate(-room.topLeft())
    draw_furniture(painter, area, picture, look)
    painter.end()
    return strip


def bar_length(unit: float) -> float:
    """Length of the scale bar in what `unit` is per pixel: one, two or five of some power of ten."""
    wanted = BAR_PX * unit
    power = 10.0 ** math.floor(math.log10(wanted))
    return max(step * power for step in (1.0, 2.0, 5.0) if step * power <= wanted)


def scale_bar(look: Look) -> tuple[float, str]:
    """Length of the scale bar in mm, and what it says."""
    if look.inches:
        long = bar_length(look.unit / MM_PER_INCH)
        return long * MM_PER_INCH, f"{long:g} in"
    long = bar_length(look.unit)
    return long, f"{long:g} mm"


def _title(painter: QPainter, area: QRectF, picture: Picture, look: Look) -> None:
    height = look.letters
    bold = painter.font()
    bold.setBold(True)
    painter.save()
    painter.setFont(bold)
    painter.setPen(QColor(inks(look.dark)["ink"]))
    box = QRectF(area.left() + height, area.top() + 0.5 * height, area.width() - 2 * height, 1.6 * height)
    _veil(
        painter,
        QRectF(box.left(), box.top(), min(_wide(painter, picture.title), box.width()), box.height()),
        look,
    )
    title = painter.fontMetrics().elidedText(picture.title, Qt.TextElideMode.ElideRight, int(box.width()))
    painter.drawText(box, Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter, title)
    painter.restore()


def _legend(painter: QPainter, area: QRectF, legend: tuple[Legend, ...], look: Look) -> None:
    height = look.letters
    x, y = area.left() + height, area.top() + 2.7 * height
    for entry in legend:
        wide = _wide(painter, entry.text)
        if x + 3.2 * height + wide > area.right():
            return
        _veil(painter, QRectF(x, y - 0.7 * height, 3.0 * height + wide, 1.4 * height), look)
        painter.setPen(pen_for(entry.style, look.dark, look.letters))
        painter.setBrush(brush_for(entry.style, look.dark))
        if STROKES[entry.style].fill:
            painter.drawRect(QRectF(x, y - 0.35 * height, 2.2 * height, 0.7 * height))
        else:
            painter.drawLine(QPointF(x, y), QPointF(x + 2.2 * height, y))
        painter.setPen(QColor(inks(look.dark)["soft"]))
        box = QRectF(x + 2.7 * height, y - 0.8 * height, wide + height, 1.6 * height)
        painter.drawText(box, Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter, entry.text)
        x += 4.4 * height + wide


def _wide(painter: QPainter, text: str) -> float:
    return float(painter.fontMetrics().horizontalAdvance(text))


def _veil(painter: QPainter, box: QRectF, look: Look) -> None:
    """Paper behind words, so that no line of the drawing strikes them through."""
    paper = QColor(inks(look.dark)["paper"])
    paper.setAlpha(BACKING)
    painter.fillRect(box, paper)


def _axes(painter: QPainter, area: QRectF, picture: Picture, look: Look) -> None:
    height = look.letters
    origin = QPointF(area.left() + 1.4 * height, area.bottom() - 1.3 * height)
    painter.setPen(_ink(look))
    painter.setBrush(QBrush(QColor(inks(look.dark)["soft"])))
    for name, dx, dy in ((picture.axes[0], 1.0, 0.0), (picture.axes[1], 0.0, -1.0)):
        tip = origin + QPointF(2.0 * height * dx, 2.0 * height * dy)
        painter.drawLine(origin, tip)
        _arrow(painter, tip, dx, dy, height)
        at = tip + QPointF(0.8 * height * dx, 0.8 * height * dy)
        painter.drawText(
            QRectF(at.x() - height, at.y() - height, 2 * height, 2 * height),
            Qt.AlignmentFlag.AlignCenter,
            name,
        )


def _arrow(painter: QPainter, tip: QPointF, dx: float, dy: float, height: float) -> None:
    back, half = (
        QPointF(-0.7 * height * dx, -0.7 * height * dy),
        QPointF(-0.16 * height * dy, 0.16 * height * dx),
    )
    painter.drawPolygon(QPolygonF([tip, tip + back + half, tip + back - half]))


def _scale_bar(painter: QPainter, area: QRectF, look: Look) -> None:
    height, (long, told) = look.letters, scale_bar(look)
    right, y = area.right() - 1.4 * height, area.bottom() - 1.3 * height
    wide = long / look.unit
    painter.setPen(_ink(look))
    for part in range(4):
        fill = inks(look.dark)["soft" if part % 2 == 0 else "paper"]
        painter.setBrush(QBrush(QColor(fill)))
        painter.drawRect(QRectF(right - wide + part * wide / 4, y - 0.35 * height, wide / 4, 0.35 * height))
    box = QRectF(right - wide - 6 * height, y - 2.0 * height, wide + 6 * height, 1.5 * height)
    _veil(painter, box.adjusted(box.width() - _wide(painter, told), 0.0, 0.0, 0.0), look)
    painter.drawText(box, Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter, told)


def _ink(look: Look) -> QPen:
    return QPen(QColor(inks(look.dark)["soft"]), look.letters / 12.0)

"""How a finding is drawn: status word and mark at the left; what, value, limit and margin beside it."""

from collections.abc import Hashable
from typing import NamedTuple

from PySide6.QtCore import QRect, QSize, Qt
from PySide6.QtGui import QColor, QFont, QFontMetrics, QPainter
from PySide6.QtWidgets import QAbstractItemView, QStyledItemDelegate, QStyleOptionViewItem

from fitcalc.checks.check import STATUSES
from fitcalc.present.wording import MARKS
from fitcalc.window.findings.finding import Finding
from fitcalc.window.findings.model import FINDING, Index
from fitcalc.window.look import Look

PAD = 5
MOST_KEPT = 5000
"""Heights that are remembered, so that a drag measures only words that changed."""
WRAP = Qt.TextFlag.TextWordWrap | Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop


class Parts(NamedTuple):
    """Where the parts of a line lie."""

    status: QRect
    what: QRect
    figures: QRect
    compared: QRect


class FindingDelegate(QStyledItemDelegate):
    """Paints findings; text is wrapped, never cut."""

    def __init__(self, view: QAbstractItemView, look: Look) -> None:
        super().__init__(view)
        self._view, self._look = view, look
        self._heights: dict[tuple[Hashable, ...], int] = {}

    def sizeHint(self, option: QStyleOptionViewItem, index: Index) -> QSize:
        """High enough for all its words at the width of the list."""
        finding: Finding = index.data(FINDING)
        width = self._view.viewport().width()
        key = (finding.what, finding.figures, finding.compared, width, self._view.font().key())
        if key not in self._heights:
            if len(self._heights) > MOST_KEPT:
                self._heights.clear()
            self._heights[key] = self._parts(finding, QRect(0, 0, width, 0)).compared.bottom() + PAD + 1
        return QSize(width, self._heights[key])

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        """Paints one finding."""
        finding: Finding = index.data(FINDING)
        rect = option.rect
        parts, colours = self._parts(finding, rect), self._look.colours
        chosen = index == self._view.currentIndex()
        painter.save()
        painter.fillRect(rect, QColor(colours.raised if chosen else colours.paper))
        painter.fillRect(
            QRect(rect.left(), rect.top(), 4, rect.height() - 1), QColor(colours.status(finding.status))
        )
        painter.setPen(QColor(colours.status(finding.status)))
        painter.setFont(self._bold())
        painter.drawText(parts.status, WRAP, finding.verdict)
        painter.setPen(QColor(colours.ink))
        painter.drawText(parts.what, WRAP, finding.what)
        painter.setFont(self._view.font())
        painter.drawText(parts.figures, WRAP, finding.figures)
        painter.setPen(QColor(colours.quiet))
        painter.drawText(parts.compared, WRAP, finding.compared)
        painter.setPen(QColor(colours.accent if chosen and self._view.hasFocus() else colours.rule))
        painter.drawLine(rect.bottomLeft(), rect.bottomRight())
        painter.restore()

    def _parts(self, finding: Finding, rect: QRect) -> Parts:
        bold, plain = QFontMetrics(self._bold()), self._view.fontMetrics()
        aside = max(bold.horizontalAdvance(f"{MARKS[word]} {word}") for word in STATUSES) + 2 * PAD
        left, top, width = rect.left() + 4 + PAD, rect.top() + PAD, rect.width() - 4 - 2 * PAD
        status = QRect(left, top, aside, bold.height())
        if width - aside < 2 * aside:
            top += bold.height()
            aside = 0
        what = _fitted(bold, QRect(left + aside, top, width - aside, 0), finding.what)
        figures = _fitted(plain, QRect(left + aside, what.bottom() + 2, width - aside, 0), finding.figures)
        compared = _fitted(
            plain, QRect(left + aside, figures.bottom() + 1, width - aside, 0), finding.compared
        )
        return Parts(status, what, figures, compared)

    def _bold(self) -> QFont:
        font = QFont(self._view.font())
        font.setBold(True)
        return font


def _fitted(metrics: QFontMetrics, rect: QRect, text: str) -> QRect:
    """The rectangle made as high as its text."""
    if not text:
        return rect
    high = metrics.boundingRect(QRect(0, 0, rect.width(), 10_000), WRAP, text).height()
    return QRect(rect.left(), rect.top(), rect.width(), high)

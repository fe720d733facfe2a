"""One change as slider and spin box, with its allowed span and a mark at "as found"."""

from PySide6.QtCore import QEvent, QObject, QPointF, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import (
    QDoubleSpinBox,
    QHBoxLayout,
    QLabel,
    QSizePolicy,
    QSlider,
    QStyle,
    QStyleOptionSlider,
    QVBoxLayout,
    QWidget,
)

from fitcalc.errors import InputError
from fitcalc.window.look import Look
from fitcalc.window.rework.spans import Control
from fitcalc.window.session import Session
from fitcalc.window.shown import Shown
from fitcalc.window.work import at_ref

BETWEEN = 8
"""Room between title and span, and between slider and box, px."""
DECIMALS = {"mm": 1, "in": 3, "deg": 1}


class MarkedSlider(QSlider):
    """A slider in steps, with a mark where the car was found."""

    def __init__(self, look: Look, parent: QWidget) -> None:
        super().__init__(Qt.Orientation.Horizontal, parent)
        self._look = look

    def wheelEvent(self, event: QEvent) -> None:
        """Leaves the wheel to the page, so that scrolling changes no value."""
        event.ignore()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draws the mark, then the slider upon it."""
        painter = QPainter(self)
        painter.setPen(QPen(QColor(self._look.colours.accent), 2))
        at = self._place_of(0)
        painter.drawLine(QPointF(at, 0), QPointF(at, self.height()))
        painter.end()
        super().paintEvent(event)

    def _place_of(self, value: int) -> float:
        option = QStyleOptionSlider()
        self.initStyleOption(option)
        handle = self.style().pixelMetric(QStyle.PixelMetric.PM_SliderLength, option, self)
        room = self.width() - handle
        return handle / 2 + QStyle.sliderPositionFromValue(self.minimum(), self.maximum(), value, room)


class ControlWidget(QWidget):
    """One change: title and span, below them slider and box."""

    def __init__(self, session: Session, look: Look, control: Control, parent: QWidget) -> None:
        super().__init__(parent)
        self.control, self._session = control, session
        self._seen: tuple[float, Shown] | None = None
        self.title = QLabel(control.title, self)
        self.slider = MarkedSlider(look, self)
        self.box = QDoubleSpinBox(self)
        self.span = QLabel(self)
        self.span.setProperty("role", "quiet")
        self.title.setBuddy(self.box)
        self.slider.setAccessibleName(f"{control.title}, slider")
        self.slider.setToolTip("The mark is the car as found")
        self.box.setKeyboardTracking(True)
        self.slider.valueChanged.connect(self._slid)
        self.slider.sliderReleased.connect(session.end_gesture)
        self.box.valueChanged.connect(self._typed)
        self.box.editingFinished.connect(session.end_gesture)
        for widget in (self.slider, self.box):
            widget.installEventFilter(self)
        self._lay_out()
        self.refresh()

    def refresh(self) -> None:
        """Shows the rework as it is, in the units chosen."""
        value, control, shown = (
            float(at_ref(self._session.work, self.control.ref)),
            self.control,
            self._session.shown,
        )
        if (value, shown) == self._seen:
            return
        self._seen = (value, shown)
        self._show_slider(value)
        low, high = min(control.low, value), max(control.high, value)
        unit = shown.unit(control.unit)
        was = self.box.blockSignals(True)
        self.box.setDecimals(DECIMALS[unit])
        self.box.setRange(shown.value(low, control.unit), shown.value(high, control.unit))
        self.box.setSingleStep(shown.value(control.step, control.unit))
        self.box.setSuffix(f" {unit}")
        self.box.setValue(shown.value(value, control.unit))
        self.box.blockSignals(was)
        self.box.setAccessibleName(f"{control.title}, {unit}")
        self.span.setText(self._span())
        for widget in (self.slider, self.box):
            widget.setEnabled(low != high)

    def least_width(self) -> int:
        """Room that its words need now, whatever the layout remembers."""
        texts = self.title.sizeHint().width() + self.span.sizeHint().width()
        return BETWEEN + max(texts, self.slider.minimumWidth() + self.box.sizeHint().width())

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Points at what has the keyboard, and ends a run of key presses when it leaves."""
        if event.type() == QEvent.Type.FocusIn:
            self._session.pointed_at.emit(self.control.ref)
        if event.type() == QEvent.Type.FocusOut:
            self._session.end_gesture()
        if event.type() == QEvent.Type.Wheel and watched is self.box:
            event.ignore()
            return True
        return False

    def _lay_out(self) -> None:
        page = QVBoxLayout(self)
        page.setContentsMargins(0, 0, 0, 0)
        page.setSpacing(0)
        self.slider.setMinimumWidth(40)
        self.box.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
        for left, right in ((self.title, self.span), (self.slider, self.box)):
            line = QHBoxLayout()
            line.setSpacing(BETWEEN)
            line.addWidget(left, 1)
            line.addWidget(right)
            page.addLayout(line)

    def _span(self) -> str:
        control, shown = self.control, self._session.shown
        if control.is_fixed:
            return "fixed"
        low, high = (shown.rounded(bound, control.unit) for bound in (control.low, control.high))
        return f"{low} to {high}"

    def _show_slider(self, value: float) -> None:
        step = self.control.step
        was = self.slider.blockSignals(True)
        self.slider.setRange(round(self.control.low / step), round(self.control.high / step))
        self.slider.setPageStep(max(1, (self.slider.maximum() - self.slider.minimum()) // 8))
        self.slider.setValue(round(value / step))
        self.slider.blockSignals(was)

    def _slid(self, steps: int) -> None:
        self._use(steps * self.control.step)

    def _typed(self, value: float) -> None:
        self._use(self._session.shown.stored(value, self.control.unit))

    def _use(self, value: float) -> None:
        try:
            self._session.edit(self.control.ref, value, self.control.title, gesture=self.control.ref)
        except InputError as error:
            self._session.said.emit(str(error))
            self._seen = None
            self.refresh()

"""The sketch: a canvas that says what was pointed at, picked and dragged."""

from PySide6.QtCore import QPoint, QRectF, Qt, Signal
from PySide6.QtGui import QKeyEvent, QMouseEvent, QWheelEvent
from PySide6.QtWidgets import QWidget

from fitcalc.present.picture import XY, Handle
from fitcalc.window.sketch.canvas import Canvas
from fitcalc.window.sketch.drag import Drag
from fitcalc.window.sketch.marks import Mark

STEP = 1.25
"""One step of zoom."""
REACH_PX = 5
"""How near to a line a click must be."""
PAN_PX = 4
"""A press that moves less than this is a click."""
PANS = {
    Qt.Key.Key_Left: (-40, 0),
    Qt.Key.Key_Right: (40, 0),
    Qt.Key.Key_Up: (0, -40),
    Qt.Key.Key_Down: (0, 40),
}
"""How far an arrow key moves what is looked at, in pixels to the right and down."""


class SketchView(Canvas):
    """One view of car and driver.

    Signals:
        cursor_moved: pointer in the view's own coordinates, mm: to the right, up.
        picked: path or check under a click; empty on bare ground.
        hovered: path or check under the pointer, once when it changes.
        handle_moved, handle_dropped: path of a grip and where it belongs, mm.
        handle_cancelled: path of a grip let go by Escape.
    """

    cursor_moved = Signal(float, float)
    picked = Signal(str)
    hovered = Signal(str)
    handle_moved = Signal(str, float, float)
    handle_dropped = Signal(str, float, float)
    handle_cancelled = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._under = ""
        self._drag: Drag | None = None
        self._press: QPoint | None = None
        self._pan: QPoint | None = None
        self.setMouseTracking(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Zooms about the pointer."""
        self.zoom(STEP ** (event.angleDelta().y() / 120.0), event.position().toPoint())
        event.accept()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Plus, minus and 0 zoom; arrows pan; Escape lets go of a grip."""
        key = event.key()
        if key == Qt.Key.Key_Escape and self._drag is not None:
            path, self._drag = self._drag.handle.ref, None
            self.handle_cancelled.emit(path)
        elif key in (Qt.Key.Key_Plus, Qt.Key.Key_Equal):
            self.zoom(STEP)
        elif key == Qt.Key.Key_Minus:
            self.zoom(1.0 / STEP)
        elif key in (Qt.Key.Key_0, Qt.Key.Key_Home):
            self.fit()
        elif key in PANS:
            self.pan(*PANS[Qt.Key(key)])
        else:
            super().keyPressEvent(event)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Takes a grip, or begins a click or a pan."""
        at = event.position().toPoint()
        self.setFocus()
        handle = self._handle_at(at) if event.button() == Qt.MouseButton.LeftButton else None
        if handle is not None:
            self._drag = Drag(handle, self._car_point(at))
        elif event.button() in (Qt.MouseButton.LeftButton, Qt.MouseButton.MiddleButton):
            self._press = self._pan = at

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Moves a grip, pans, or tells what is under the pointer."""
        at = event.position().toPoint()
        self.cursor_moved.emit(*self._car_point(at))
        if self._drag is not None:
            self.handle_moved.emit(self._drag.handle.ref, *self._drag.place(self._car_point(at)))
        elif self._pan is not None:
            self._pan_to(at)
        else:
            self._hover(at)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Drops a grip, or picks what was clicked."""
        at = event.position().toPoint()
        if self._drag is not None:
            drag, self._drag = self._drag, None
            self.handle_dropped.emit(drag.handle.ref, *drag.place(self._car_point(at)))
        elif self._press is not None and event.button() == Qt.MouseButton.LeftButton:
            self.picked.emit(self._ref_at(at))
        self._press = self._pan = None

    def _pan_to(self, at: QPoint) -> None:
        if self._press is not None and (at - self._press).manhattanLength() < PAN_PX:
            return
        self._press = None
        moved = at - (self._pan or at)
        self._pan = at
        self.pan(-moved.x(), -moved.y())

    def _hover(self, at: QPoint) -> None:
        handle = self._handle_at(at)
        self.viewport().setCursor(Qt.CursorShape.SizeAllCursor if handle else Qt.CursorShape.ArrowCursor)
        ref = self._ref_at(at)
        if ref != self._under:
            self._under = ref
            self.hovered.emit(ref)

    def _car_point(self, at: QPoint) -> XY:
        point = self.mapToScene(at)
        return point.x(), point.y()

    def _marks_at(self, at: QPoint) -> list[Mark]:
        """What lies under a point of the window, front first."""
        box = QRectF(at.x() - REACH_PX, at.y() - REACH_PX, 2 * REACH_PX, 2 * REACH_PX).toRect()
        found = (item.topLevelItem() for item in self.items(box))
        return [mark for mark in found if isinstance(mark, Mark)]

    def _handle_at(self, at: QPoint) -> Handle | None:
        found = (mark.primitive for mark in self._marks_at(at))
        return next((primitive for primitive in found if isinstance(primitive, Handle)), None)

    def _ref_at(self, at: QPoint) -> str:
        refs = (mark.primitive.ref for mark in self._marks_at(at) if mark.primitive is not None)
        return next((ref for ref in refs if ref), "")

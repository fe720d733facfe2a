"""The sketch: shows a picture, zooms and pans, and says what was pointed at, picked and dragged."""

from PySide6.QtCore import QEvent, QPoint, QRectF, Qt, Signal
from PySide6.QtGui import QColor, QFontInfo, QKeyEvent, QMouseEvent, QPainter, QResizeEvent, QTransform, QWheelEvent
from PySide6.QtWidgets import QFrame, QGraphicsScene, QGraphicsView, QWidget

from fitcalc.present.labels import places
from fitcalc.present.picture import XY, Bounds, Handle, Picture, bounds_of
from fitcalc.window.sketch.drag import Drag
from fitcalc.window.sketch.furniture import BOTTOM, SIDE, TOP, draw_furniture
from fitcalc.window.sketch.marks import Look, Mark, Marks
from fitcalc.window.sketch.palette import inks

STEP = 1.25
CLOSEST, WIDEST = 0.02, 40.0
"""Least and most mm of the car per pixel."""
REACH_PX = 5
"""How near to a line a click must be."""
PAN_PX = 4
"""A press that moves less than this is a click."""
AROUND = 2.5
"""A focused part is shown with this much round it, times its size; never less than LEAST_FOCUS mm."""
LEAST_FOCUS = 160.0


class SketchView(QGraphicsView):
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
        self._scene = QGraphicsScene(self)
        self._scene.setItemIndexMethod(QGraphicsScene.ItemIndexMethod.NoIndex)
        self.setScene(self._scene)
        self._marks = Marks(self._scene)
        self._picture: Picture | None = None
        self._dark = False
        self._marked = ""
        self._under = ""
        self._follows_size = True
        self._drag: Drag | None = None
        self._press: QPoint | None = None
        self._pan: QPoint | None = None
        self._set_up()

    def _set_up(self) -> None:
        self.setRenderHints(QPainter.RenderHint.Antialiasing | QPainter.RenderHint.TextAntialiasing)
        self.setViewportUpdateMode(QGraphicsView.ViewportUpdateMode.FullViewportUpdate)
        self.setTransformationAnchor(QGraphicsView.ViewportAnchor.NoAnchor)
        self.setResizeAnchor(QGraphicsView.ViewportAnchor.NoAnchor)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setMouseTracking(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName("sketch")
        self.set_dark(False)

    @property
    def unit(self) -> float:
        """Millimetres of the car per pixel."""
        return 1.0 / self.transform().m11()

    @property
    def picture(self) -> Picture | None:
        """What is shown."""
        return self._picture

    def set_dark(self, dark: bool) -> None:
        """Draws on dark or on light ground."""
        self._dark = dark
        self.setBackgroundBrush(QColor(inks(dark)["paper"]))
        self.refresh()

    def show_picture(self, picture: Picture) -> int:
        """Shows a picture; of one that shares keys with the last only what differs is drawn anew.

        Returns:
            How many items had to be touched.
        """
        is_new = self._picture is None or self._picture.view != picture.view
        self._picture = picture
        if is_new:
            left, bottom, right, top = picture.bounds
            wide, high = right - left, top - bottom
            self._scene.setSceneRect(left - 2 * wide, bottom - 3 * high, 5 * wide, 7 * high)
            self._place_frame()
            self.setAccessibleName(f"sketch, {picture.view} view: {picture.title}")
        return self.refresh()

    def refresh(self) -> int:
        """Brings lettering, arrowheads and pens up to date with zoom, theme and font."""
        if self._picture is None:
            return 0
        look = self._look()
        where = places(self._picture, look.letters * look.unit, self._page(look.letters))
        self.viewport().update()
        return self._marks.show(self._picture.primitives, where, look, self._marked)

    def _look(self) -> Look:
        return Look(self._dark, self.font(), float(QFontInfo(self.font()).pixelSize()), self.unit)

    def _page(self, letters: float) -> Bounds:
        """What of the car can be seen between title and scale bar: left, bottom, right, top."""
        room = self.viewport().rect()
        top_left = self.mapToScene(room.left(), room.top() + round(TOP * letters))
        low_right = self.mapToScene(room.right(), room.bottom())
        return top_left.x(), low_right.y(), low_right.x(), top_left.y()

    def highlight(self, ref: str) -> None:
        """Picks out what shows a path or a check; empty picks out nothing."""
        self._marked = ref
        self.refresh()

    def focus_on(self, ref: str) -> bool:
        """Zooms to what shows a path or a check and picks it out; whether there is anything."""
        found = tuple(self._picture.about(ref)) if self._picture else ()
        self._marked = ref
        if found:
            self._follows_size = False
            left, bottom, right, top = bounds_of(found)
            wide = max(AROUND * (right - left), LEAST_FOCUS)
            high = max(AROUND * (top - bottom), LEAST_FOCUS)
            self._fit_box((left + right) / 2, (bottom + top) / 2, wide, high)
        self.refresh()
        return bool(found)

    def fit(self) -> None:
        """Shows the whole drawing, and keeps doing so when the window changes size."""
        self._follows_size = True
        self._place_frame()
        self.refresh()

    def _place_frame(self) -> None:
        if self._picture is not None and self._follows_size:
            left, bottom, right, top = self._picture.frame
            self._fit_box((left + right) / 2, (bottom + top) / 2, right - left, top - bottom)

    def _fit_box(self, x: float, y: float, wide: float, high: float) -> None:
        letters = float(QFontInfo(self.font()).pixelSize())
        room_x = max(self.viewport().width() - 2 * SIDE * letters, 40.0)
        room_y = max(self.viewport().height() - (TOP + BOTTOM) * letters, 40.0)
        unit = min(max(wide / room_x, high / room_y, CLOSEST), WIDEST)
        self.setTransform(QTransform.fromScale(1.0 / unit, -1.0 / unit))
        self.centerOn(x, y + (TOP - BOTTOM) / 2 * letters * unit)

    def zoom(self, factor: float, about: QPoint | None = None) -> None:
        """Zooms in by a factor, about a point of the window or its middle."""
        at = about if about is not None else self.viewport().rect().center()
        before = self.mapToScene(at)
        unit = min(max(self.unit / factor, CLOSEST), WIDEST)
        self._follows_size = False
        self.setTransform(QTransform.fromScale(1.0 / unit, -1.0 / unit))
        moved = self.mapFromScene(before) - at
        self._scroll(moved.x(), moved.y())
        self.refresh()

    def _scroll(self, right: int, down: int) -> None:
        self.horizontalScrollBar().setValue(self.horizontalScrollBar().value() + right)
        self.verticalScrollBar().setValue(self.verticalScrollBar().value() + down)

    def drawForeground(self, painter: QPainter, rect: QRectF) -> None:
        """Title, legend, axes and scale bar over the drawing."""
        if self._picture is None:
            return
        back, _ = self.viewportTransform().inverted()
        painter.setWorldTransform(back, True)
        draw_furniture(painter, QRectF(self.viewport().rect()), self._picture, self._look())

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Zooms about the pointer."""
        self.zoom(STEP ** (event.angleDelta().y() / 120.0), event.position().toPoint())
        event.accept()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Keeps a fitted drawing fitted."""
        super().resizeEvent(event)
        self._place_frame()
        self.refresh()

    def changeEvent(self, event: QEvent) -> None:
        """Follows the size of the lettering."""
        super().changeEvent(event)
        if event.type() == QEvent.Type.FontChange:
            self._place_frame()
            self.refresh()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Plus, minus and 0 zoom; arrows pan; Escape lets go of a grip."""
        key = event.key()
        pans = {Qt.Key.Key_Left: (-40, 0), Qt.Key.Key_Right: (40, 0), Qt.Key.Key_Up: (0, -40), Qt.Key.Key_Down: (0, 40)}
        if key == Qt.Key.Key_Escape and self._drag is not None:
            path, self._drag = self._drag.handle.ref, None
            self.handle_cancelled.emit(path)
        elif key in (Qt.Key.Key_Plus, Qt.Key.Key_Equal):
            self.zoom(STEP)
        elif key == Qt.Key.Key_Minus:
            self.zoom(1.0 / STEP)
        elif key in (Qt.Key.Key_0, Qt.Key.Key_Home):
            self.fit()
        elif key in pans:
            self._follows_size = False
            self._scroll(*pans[Qt.Key(key)])
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
        self._press, self._follows_size = None, False
        moved = at - (self._pan or at)
        self._pan = at
        self._scroll(-moved.x(), -moved.y())

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

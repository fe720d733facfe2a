"""A canvas that shows a picture, fitted, zoomed or panned, with its furniture."""

from PySide6.QtCore import QEvent, QPoint, QRect, QRectF, Qt
from PySide6.QtGui import QColor, QFontInfo, QPainter, QResizeEvent, QTransform
from PySide6.QtWidgets import QFrame, QGraphicsScene, QGraphicsView, QWidget

from fitcalc.present.labels import Way, carried, places, ways
from fitcalc.present.picture import Bounds, Picture, bounds_of
from fitcalc.window.sketch.furniture import SIDE, Furniture, draw_furniture, margins
from fitcalc.window.sketch.marks import Look, Marks
from fitcalc.window.sketch.palette import inks

CLOSEST, WIDEST = 0.02, 40.0
"""Least and most mm of the car per pixel."""
AROUND = 2.5
"""A focused part is shown with this much round it, times its size; never less than LEAST_FOCUS mm."""
LEAST_FOCUS = 420.0


class Canvas(QGraphicsView):
    """Shows one picture; lettering and lines keep their size on screen at any zoom."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._scene = QGraphicsScene(self)
        self._scene.setItemIndexMethod(QGraphicsScene.ItemIndexMethod.NoIndex)
        self.setScene(self._scene)
        self.setViewport(QWidget(self))
        self._marks = Marks(self._scene)
        self._picture: Picture | None = None
        self._dark = self._inches = False
        self._marked = ""
        self._ways: dict[str, Way] = {}
        self._last_look: Look | None = None
        self._furniture = Furniture()
        self._follows_size = True
        self._set_up()

    def _set_up(self) -> None:
        self.setRenderHints(QPainter.RenderHint.Antialiasing | QPainter.RenderHint.TextAntialiasing)
        self.setViewportUpdateMode(QGraphicsView.ViewportUpdateMode.FullViewportUpdate)
        self.setTransformationAnchor(QGraphicsView.ViewportAnchor.NoAnchor)
        self.setResizeAnchor(QGraphicsView.ViewportAnchor.NoAnchor)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setFrameShape(QFrame.Shape.NoFrame)
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

    def set_inches(self, inches: bool) -> None:
        """Draws the scale bar in inches or mm; the words of a picture are as they are given."""
        self._inches = inches
        self.viewport().update()

    def show_picture(self, picture: Picture, in_motion: bool = False) -> int:
        """Shows a picture; of one that shares keys with the last only what differs is drawn anew.

        Args:
            picture: to show.
            in_motion: others will follow at once, so that words go along and find no new places yet.

        Returns:
            How many items had to be touched.
        """
        is_new = self._picture is None or self._picture.view != picture.view
        self._picture = picture
        if in_motion and not is_new and self._ways:
            return self._show_moved(picture)
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
        size = look.letters * look.unit
        where = places(self._picture, size, self._page(look.letters), thins_out=True)
        self._ways = ways(self._picture, size, where)
        self.viewport().update()
        return self._marks.show(self._picture.primitives, where, look, self._marked)

    def _show_moved(self, picture: Picture) -> int:
        look = self._look()
        where = carried(picture, look.letters * look.unit, self._ways)
        self.viewport().update()
        return self._marks.show(picture.primitives, where, look, self._marked)

    def _look(self) -> Look:
        """How the scene is drawn now; the very same as last time where that has not changed."""
        letters = float(QFontInfo(self.font()).pixelSize())
        look = Look(self._dark, self.font(), letters, self.unit, self._inches)
        if look != self._last_look:
            self._last_look = look
        return self._last_look

    def _page(self, letters: float) -> Bounds:
        """What of the car can be seen between title and scale bar: left, bottom, right, top."""
        room = self.viewport().rect()
        top, _ = margins(room.height(), letters)
        top_left = self.mapToScene(room.left(), room.top() + round(top))
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
            whole = self._picture.frame if self._picture else (left, bottom, right, top)
            wide = min(max(AROUND * (right - left), LEAST_FOCUS), whole[2] - whole[0])
            high = min(max(AROUND * (top - bottom), LEAST_FOCUS), whole[3] - whole[1])
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
        top, bottom = margins(self.viewport().height(), letters)
        room_y = max(self.viewport().height() - top - bottom, 40.0)
        unit = min(max(wide / room_x, high / room_y, CLOSEST), WIDEST)
        self.setTransform(QTransform.fromScale(1.0 / unit, -1.0 / unit))
        self.centerOn(x, y + (top - bottom) / 2 * unit)

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

    def pan(self, right: int, down: int) -> None:
        """Moves what is looked at, in pixels."""
        self._follows_size = False
        self._scroll(right, down)

    def _scroll(self, right: int, down: int) -> None:
        self.horizontalScrollBar().setValue(self.horizontalScrollBar().value() + right)
        self.verticalScrollBar().setValue(self.verticalScrollBar().value() + down)

    def drawForeground(self, painter: QPainter, rect: QRectF | QRect) -> None:
        """Title, legend, axes and scale bar over the drawing."""
        if self._picture is None:
            return
        back, _ = self.viewportTransform().inverted()
        painter.setWorldTransform(back, True)
        on_screen = painter.device() is self.viewport()
        draw = self._furniture.draw if on_screen else draw_furniture
        draw(painter, QRectF(self.viewport().rect()), self._picture, self._look())

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

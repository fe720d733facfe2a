"""Points picked in the sketch, one after another: for the ruler, for squaring a photo, for a field."""

from collections.abc import Callable

from PySide6.QtCore import QEvent, QObject, QPoint, QPointF, Qt, Signal
from PySide6.QtGui import QColor, QKeyEvent, QMouseEvent, QPainterPath, QPen
from PySide6.QtWidgets import QGraphicsPathItem

from fitcalc.present.picture import XY, Handle, points_of
from fitcalc.window.look import Look
from fitcalc.window.sketch.view import SketchView

REACH_PX = 8
"""How near to a point of the drawing a pick takes that point."""
CROSS_PX = 6
ABOVE_ALL = 1e6
TAKEN = (
    QEvent.Type.KeyPress,
    QEvent.Type.KeyRelease,
    QEvent.Type.MouseMove,
    QEvent.Type.MouseButtonPress,
    QEvent.Type.MouseButtonDblClick,
    QEvent.Type.MouseButtonRelease,
)
Then = Callable[[list[XY]], None]


class Picker(QObject):
    """Takes clicks in the sketch as points until it has as many as were asked for.

    Signals:
        told: what to pick next, or what is picked so far, in words.
        ended: it takes no more clicks.
    """

    told = Signal(str)
    ended = Signal()

    def __init__(self, sketch: SketchView, look: Look) -> None:
        super().__init__(sketch)
        self._sketch, self._look = sketch, look
        self._prompts: tuple[str, ...] = ()
        self._points: list[XY] = []
        self._words: Callable[[list[XY]], str] | None = None
        self._then: Then | None = None
        self._snaps = True
        self._path = QGraphicsPathItem()
        self._path.setZValue(ABOVE_ALL)
        sketch.scene().addItem(self._path)
        sketch.viewport().installEventFilter(self)
        sketch.installEventFilter(self)

    @property
    def is_picking(self) -> bool:
        """Whether clicks are taken."""
        return bool(self._prompts)

    def ask(
        self,
        prompts: tuple[str, ...],
        then: Then | None = None,
        words: Callable[[list[XY]], str] | None = None,
        snaps: bool = True,
    ) -> None:
        """Asks for points.

        Args:
            prompts: what to say before each of them.
            then: takes all of them, and ends the picking; without it they are asked for over and over.
            words: says what the points so far and the pointer mean.
            snaps: a pick near a point of the drawing takes that point.
        """
        self.stop()
        self._prompts, self._then, self._words, self._snaps = prompts, then, words, snaps
        self._sketch.viewport().setCursor(Qt.CursorShape.CrossCursor)
        self._sketch.setFocus()
        self.told.emit(prompts[0])

    def stop(self) -> None:
        """Takes no more points, and wipes those that were picked."""
        if not self._prompts:
            return
        self._prompts, self._points = (), []
        self._path.setPath(QPainterPath())
        self._sketch.viewport().unsetCursor()
        self.told.emit("")
        self.ended.emit()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Takes clicks and Escape while it is picking."""
        if not self._prompts or event.type() not in TAKEN:
            return False
        if isinstance(event, QKeyEvent) and event.key() == Qt.Key.Key_Escape:
            if event.type() == QEvent.Type.KeyPress:
                self.stop()
            return True
        if watched is self._sketch.viewport() and isinstance(event, QMouseEvent):
            return self._take(event)
        return False

    def _take(self, event: QMouseEvent) -> bool:
        at = self._place(event.position().toPoint())
        if event.type() == QEvent.Type.MouseMove:
            self._draw([*self._points, at])
            if self._words and self._points and len(self._points) < len(self._prompts):
                self.told.emit(self._words([*self._points, at]))
            return False
        if event.button() != Qt.MouseButton.LeftButton:
            return False
        if event.type() in (QEvent.Type.MouseButtonPress, QEvent.Type.MouseButtonDblClick):
            self._add(at)
        return True

    def _add(self, at: XY) -> None:
        if len(self._points) == len(self._prompts):
            self._points = []
        self._points.append(at)
        self._draw(self._points)
        if len(self._points) < len(self._prompts):
            self.told.emit(self._prompts[len(self._points)])
        elif self._then is not None:
            points, then = self._points, self._then
            self.stop()
            then(points)
        elif self._words:
            self.told.emit(self._words(self._points))

    def _place(self, at: QPoint) -> XY:
        """Where a point of the window lies, mm; a point of the drawing where one is near."""
        free, reach = self._sketch.mapToScene(at), REACH_PX * self._sketch.unit
        here, picture = (free.x(), free.y()), self._sketch.picture
        if picture is None or not self._snaps:
            return here
        drawn = (each for each in picture.primitives if not isinstance(each, Handle))
        near = [(_far(point, here), point) for each in drawn for point in points_of(each)]
        distance, point = min(near, default=(reach, here))
        return point if distance < reach else here

    def _draw(self, points: list[XY]) -> None:
        shown = points[: len(self._prompts)]
        path, arm = QPainterPath(), CROSS_PX * self._sketch.unit
        for at, (x, y) in enumerate(shown):
            for dx, dy in ((arm, 0.0), (0.0, arm)):
                path.moveTo(x - dx, y - dy)
                path.lineTo(x + dx, y + dy)
            if at % 2:
                path.moveTo(QPointF(*shown[at - 1]))
                path.lineTo(x, y)
        pen = QPen(QColor(self._look.colours.failed), 2)
        pen.setCosmetic(True)
        self._path.setPen(pen)
        self._path.setPath(path)


def _far(a: XY, b: XY) -> float:
    return float(((a[0] - b[0]) ** 2 + (a[1] - b[1]) ** 2) ** 0.5)

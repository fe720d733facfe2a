"""The scene's items, one per primitive, kept by key: only what differs is touched."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QBrush, QColor, QFont, QFontMetricsF, QPainter, QPainterPath, QPen
from PySide6.QtWidgets import (
    QGraphicsItem,
    QGraphicsPathItem,
    QGraphicsScene,
    QStyleOptionGraphicsItem,
    QWidget,
)

from fitcalc.present.labels import Place, lettering
from fitcalc.present.picture import Area, Circle, Handle, Primitive, is_about
from fitcalc.window.sketch.palette import brush_for, inks, letters_for, pen_for
from fitcalc.window.sketch.paths import heads_of, lines_of

BACKING = 215
"""How much of what lies behind it a text hides, 0 to 255."""


@dataclass(frozen=True)
class Look:
    """How the whole scene is drawn.

    Attributes:
        dark: on dark ground.
        font: of the lettering.
        letters: its pixel size.
        unit: mm of the car per pixel.
        inches: lengths are shown in inches.
    """

    dark: bool
    font: QFont
    letters: float
    unit: float
    inches: bool = False


class Words(QGraphicsItem):
    """A text that keeps its size on screen, centred on its place."""

    def __init__(self, parent: QGraphicsItem) -> None:
        super().__init__(parent)
        self.setFlag(QGraphicsItem.GraphicsItemFlag.ItemIgnoresTransformations)
        self._text, self._font, self._box = "", QFont(), QRectF()
        self._ink, self._paper = QColor(), QColor()
        self._state: tuple[str, Look, QColor] | None = None

    def show_words(self, text: str, look: Look, ink: QColor) -> None:
        """Changes what is written."""
        if (text, look, ink) == self._state:
            return
        self._state = text, look, ink
        self.prepareGeometryChange()
        metrics = QFontMetricsF(look.font)
        wide, high = metrics.horizontalAdvance(text) + 0.4 * look.letters, metrics.height()
        self._text, self._font, self._ink = text, look.font, ink
        self._paper = QColor(inks(look.dark)["paper"])
        self._paper.setAlpha(BACKING)
        self._box = QRectF(-wide / 2, -high / 2, wide, high)
        self.update()

    def boundingRect(self) -> QRectF:
        """Where it paints, in pixels about its place."""
        return self._box

    def paint(
        self, painter: QPainter, option: QStyleOptionGraphicsItem, widget: QWidget | None = None
    ) -> None:
        """Letters on a veil of paper."""
        painter.fillRect(self._box.adjusted(0.0, 1.0, 0.0, -1.0), self._paper)
        painter.setFont(self._font)
        painter.setPen(QPen(self._ink))
        painter.drawText(self._box, Qt.AlignmentFlag.AlignCenter, self._text)


class Mark(QGraphicsPathItem):
    """One primitive on the scene, with its arrowheads and words as children."""

    def __init__(self) -> None:
        super().__init__()
        self.primitive: Primitive | None = None
        self.order = -1
        self._state: tuple[object, ...] = ()
        self._box = QRectF()
        self._heads: QGraphicsPathItem | None = None
        self._words: Words | None = None

    def show_primitive(self, primitive: Primitive, place: Place | None, look: Look, marked: bool) -> bool:
        """Draws what is new; whether anything was."""
        state = (primitive, place, look, marked)
        if state == self._state:
            return False
        self.primitive, self._state = primitive, state
        size = look.letters * look.unit
        pen = pen_for(primitive.style, look.dark, look.letters, marked)
        path, edge = lines_of(primitive, place, size), pen.widthF() * look.unit
        self.setPath(path)
        self.setPen(pen)
        self._box = path.controlPointRect().adjusted(-edge, -edge, edge, edge)
        if isinstance(primitive, Area | Circle | Handle):
            self.setBrush(brush_for(primitive.style, look.dark))
        self._show_heads(heads_of(primitive, size), pen)
        self._show_words(primitive, place, look)
        return True

    def boundingRect(self) -> QRectF:
        """Where it paints; Qt itself would find it by widening the whole path by its pen, as if that were in mm."""
        return self._box

    def _show_heads(self, path: QPainterPath, pen: QPen) -> None:
        if self._heads is None and path.isEmpty():
            return
        if self._heads is None:
            self._heads = QGraphicsPathItem(self)
            self._heads.setPen(QPen(Qt.PenStyle.NoPen))
        self._heads.setPath(path)
        self._heads.setBrush(QBrush(pen.color()))

    def _show_words(self, primitive: Primitive, place: Place | None, look: Look) -> None:
        if self._words is not None:
            self._words.setVisible(place is not None)
        if place is None:
            return
        if self._words is None:
            self._words = Words(self)
        self._words.setPos(QPointF(*place.at))
        self._words.setRotation(-place.turn)
        self._words.show_words(lettering(primitive), look, letters_for(primitive.style, look.dark))


class Marks:
    """All items of one scene by the key of their primitive."""

    def __init__(self, scene: QGraphicsScene) -> None:
        self._scene = scene
        self._marks: dict[str, Mark] = {}

    def show(
        self, primitives: tuple[Primitive, ...], places: Mapping[str, Place], look: Look, marked: str = ""
    ) -> int:
        """Brings the scene up to date; how many items had to be touched."""
        keys = {primitive.key for primitive in primitives}
        gone = [key for key in self._marks if key not in keys]
        for key in gone:
            self._scene.removeItem(self._marks.pop(key))
        touched = len(gone)
        for order, primitive in enumerate(primitives):
            mark = self._mark(primitive.key, order)
            is_marked = bool(marked) and is_about(primitive, marked)
            touched += mark.show_primitive(primitive, places.get(primitive.key), look, is_marked)
        return touched

    def about(self, ref: str) -> Iterator[Mark]:
        """The items that show a path, anything below it, or a check."""
        return (
            mark
            for mark in self._marks.values()
            if mark.primitive is not None and is_about(mark.primitive, ref)
        )

    def mark(self, key: str) -> Mark:
        """The item of one primitive."""
        return self._marks[key]

    def _mark(self, key: str, order: int) -> Mark:
        mark = self._marks.get(key)
        if mark is None:
            mark = self._marks[key] = Mark()
            self._scene.addItem(mark)
        if mark.order != order:
            mark.order = order
            mark.setZValue(order)
        return mark

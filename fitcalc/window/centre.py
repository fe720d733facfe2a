"""The middle of the window: which view is drawn, and the sketch, which can be pointed at and dragged."""

from functools import partial
from math import hypot

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QButtonGroup, QCheckBox, QHBoxLayout, QToolButton, QVBoxLayout, QWidget

from fitcalc.errors import InputError
from fitcalc.present.chosen import view_of
from fitcalc.present.picture import AXES, XY, Handle, View, in_inches
from fitcalc.window.drags import AXIS_NAMES, Grip, dragged, gripped
from fitcalc.window.edits import Gesture
from fitcalc.window.live import Live
from fitcalc.window.look import Look
from fitcalc.window.photo_bar import PhotoBar
from fitcalc.window.picking import Picker
from fitcalc.window.pictures import TITLES, picture_of
from fitcalc.window.session import Session
from fitcalc.window.sketch.view import SketchView
from fitcalc.window.sweep_bar import SweepBar
from fitcalc.window.work import KINDS, Work, at_ref

SIDE = 6
"""Room beside the buttons, px."""


class Centre(QWidget):
    """The sketch with its view switch.

    Attributes:
        looked_at: the ref of the value that was pointed at last.

    Signals:
        cursor_moved: where the pointer is in the view, mm to the right and up, and which view that is.
    """

    cursor_moved = Signal(float, float, str)

    def __init__(self, session: Session, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session, self._look = session, look
        self.view: View = "side"
        self.looked_at = ""
        self._check, self._car = "", session.work.car.key
        self._held: tuple[Grip, Work, Gesture] | None = None
        self.sketch = SketchView(self)
        self.buttons: dict[str, QToolButton] = {}
        self.found = QCheckBox("as foun&d", self)
        self.found.setChecked(True)
        self.found.setToolTip("The driver as found, in grey behind the driver after the rework")
        self.live = Live(self.sketch)
        self.picker = Picker(self.sketch, look)
        self.photo = PhotoBar(session, self.sketch, self)
        self.sweep = SweepBar(session, self)
        page = QVBoxLayout(self)
        page.setContentsMargins(0, 0, 0, 0)
        page.addLayout(self._head())
        page.addLayout(self._second)
        page.addWidget(self.sketch, 1)
        page.addLayout(self._foot())
        self._connect()
        self._follow_look()
        self.show_view("side")

    def show_view(self, view: View) -> None:
        """Draws another view."""
        self.picker.stop()
        self.view = view
        self.buttons[view].setChecked(True)
        self.refresh()

    def fit_view(self) -> None:
        """Shows the whole picture."""
        self.sketch.fit()

    def refresh(self) -> None:
        """Draws what the results say now; another car from its whole."""
        is_other, self._car = self._car != self._session.work.car.key, self._session.work.car.key
        if is_other:
            self._check = ""
        emphasis = {self._check} if self._check else None
        drawn = self.sweep.at_moment(self._session.drawn)
        picture = picture_of(drawn, self.view, self.found.isChecked(), emphasis)
        inches = self._session.preferences.inches
        self.sketch.set_inches(inches)
        self.sketch.show_picture(in_inches(picture) if inches else picture, in_motion=self._held is not None)
        self.photo.refresh(self.view)
        if not (self._held or self.picker.is_picking):
            self.live.say(self.sweep.words)
        if is_other:
            self.sketch.fit()

    def point_at(self, ref: str) -> None:
        """Marks what shows a value; zooms to the evidence of a check, in the view that shows it best."""
        if ref.partition(".")[0] in KINDS:
            self.looked_at = ref
            self._drop_check()
            self.sketch.highlight(self._drawn_part(ref))
            return
        check = next((each for each in self._session.result.checks if each.id == ref), None)
        if check is None or not check.figure.evidence:
            self._drop_check()
            self.sketch.highlight("")
            return
        self._check = ref
        self.show_view(view_of(check))
        self.sketch.focus_on(ref)

    def _drop_check(self) -> None:
        if self._check:
            self._check = ""
            self.refresh()
            self.sketch.fit()

    def _drawn_part(self, ref: str) -> str:
        """The ref itself, or the least part round it, that is drawn."""
        picture = self.sketch.picture
        while "." in ref:
            if picture and any(True for _ in picture.about(ref)):
                return ref
            ref = ref.rpartition(".")[0]
        return ""

    def _head(self) -> QHBoxLayout:
        head = QHBoxLayout()
        head.setContentsMargins(SIDE, 4, SIDE, 4)
        group = QButtonGroup(self)
        for view, text in TITLES.items():
            button = QToolButton(self)
            button.setText(text)
            button.setCheckable(True)
            button.setAccessibleName(f"{text} view")
            button.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
            button.clicked.connect(partial(self._switch, view))
            group.addButton(button)
            self.buttons[view] = button
            head.addWidget(button)
        self._whole = self._tool("Whole", "show the whole picture")
        self._whole.clicked.connect(self._show_whole)
        self.ruler = self._tool("Ruler", "measure between two points")
        self.ruler.setCheckable(True)
        self.ruler.setToolTip("Click two points: their distance in this view (Ctrl+R); Escape ends it")
        head.addWidget(self._whole)
        self._first, self._second = head, QHBoxLayout()
        return head

    def resizeEvent(self, event: QResizeEvent) -> None:
        """One line of buttons where there is room for it."""
        super().resizeEvent(event)
        self._arrange()

    def _arrange(self) -> None:
        """Puts ruler and switch into a line of their own where one line has no room for all."""
        tools = (*self.buttons.values(), self.ruler, self.found)
        needed = sum(tool.sizeHint().width() + self._first.spacing() for tool in tools)
        stacked = needed + self._whole.sizeHint().width() + 2 * SIDE > self.width()
        here, other = (self._second, self._first) if stacked else (self._first, self._second)
        for widget in (self.ruler, self.found):
            other.removeWidget(widget)
            here.removeWidget(widget)
            here.addWidget(widget)
        here.setStretchFactor(self.found, 1)
        side = SIDE if stacked else 0
        self._second.setContentsMargins(side, 0, side, side)

    def _tool(self, text: str, name: str) -> QToolButton:
        tool = QToolButton(self)
        tool.setText(text)
        tool.setAccessibleName(name)
        tool.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        return tool

    def _foot(self) -> QHBoxLayout:
        foot = QHBoxLayout()
        foot.setContentsMargins(0, 0, 0, 0)
        foot.addWidget(self.sweep, 1)
        foot.addWidget(self.photo)
        return foot

    def _connect(self) -> None:
        self._session.results_changed.connect(self.refresh)
        self._session.posed.connect(self.refresh)
        self._session.pointed_at.connect(self.point_at)
        self._session.preferences_changed.connect(self._arrange)
        self._session.preferences_changed.connect(self.refresh)
        self._look.changed.connect(self._follow_look)
        self.found.toggled.connect(self.refresh)
        self.sweep.moved.connect(self.refresh)
        self.ruler.toggled.connect(self._measure)
        self.picker.told.connect(self.live.say)
        self.picker.ended.connect(self._end_picking)
        self.sketch.cursor_moved.connect(self._tell_cursor)
        self.sketch.picked.connect(self._pick)
        self.sketch.handle_moved.connect(self._drag)
        self.sketch.handle_dropped.connect(self._drop)
        self.sketch.handle_cancelled.connect(self._let_go)

    def _follow_look(self) -> None:
        self.sketch.set_dark(self._look.colours.name == "dark")

    def _switch(self, view: View) -> None:
        self.show_view(view)

    def _show_whole(self) -> None:
        self._drop_check()
        self.fit_view()

    def _tell_cursor(self, right: float, up: float) -> None:
        self.cursor_moved.emit(right, up, self.view)

    def _pick(self, ref: str) -> None:
        if ref.partition(".")[0] in KINDS:
            self._session.wanted.emit(ref)
        elif ref:
            self._session.pointed_at.emit(ref)
        else:
            self._drop_check()
            self.sketch.highlight("")

    def _drag(self, ref: str, right: float, up: float) -> None:
        if self._held is None:
            handle = self._handle(ref)
            if handle is None:
                return
            work = self._session.work
            grip = gripped(work, handle)
            self._held = (grip, work, self._session.gesture(grip.name))
        grip, begun, gesture = self._held
        try:
            gesture.move(dragged(begun, grip, (right, up), self.view))
        except InputError as error:
            self.live.say(str(error))
            return
        self._show_live(grip)

    def _drop(self, ref: str, right: float, up: float) -> None:
        if self._held is None:
            return
        self._drag(ref, right, up)
        self._held[2].commit()
        self._end_drag()

    def _let_go(self, ref: str) -> None:
        if self._held is not None:
            self._held[2].cancel()
            self._end_drag()

    def _end_drag(self) -> None:
        self._held = None
        self.live.say(self.sweep.words)
        self.refresh()
        self._session.hurry()

    def _handle(self, ref: str) -> Handle | None:
        about = self.sketch.picture.about(ref) if self.sketch.picture else ()
        return next((each for each in about if isinstance(each, Handle)), None)

    def _show_live(self, grip: Grip) -> None:
        value, shown = at_ref(self._session.work, grip.handle.ref), self._session.shown
        if isinstance(value, float):
            self.live.say(f"{grip.name} {shown.signed(value, grip.unit)}")
            return
        point = dict(zip("xz", value, strict=True)) if isinstance(value, tuple) else dict(value)
        places = (f"{axis} {shown.amount(point[axis], 'mm')}" for axis in "xyz" if axis in point)
        self.live.say(f"{grip.name}: {', '.join(places)}")

    def _measure(self, on: bool) -> None:
        if on:
            self.picker.ask(("Click the first point", "Click the second point"), words=self._length)
        else:
            self.picker.stop()

    def _length(self, points: list[XY]) -> str:
        (x1, y1), (x2, y2) = points[-2:]
        shown, axes = self._session.shown, [AXIS_NAMES[axis] for axis in AXES[self.view]]
        parts = ", ".join(
            f"{axis} {shown.signed(part, 'mm')}" for axis, part in zip(axes, (x2 - x1, y2 - y1), strict=True)
        )
        return f"{shown.amount(hypot(x2 - x1, y2 - y1), 'mm')} ({parts})"

    def _end_picking(self) -> None:
        self.ruler.setChecked(False)
        self.live.say(self.sweep.words)

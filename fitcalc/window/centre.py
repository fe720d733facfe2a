"""The middle of the window: which view is drawn, and the sketch, which can be pointed at and dragged."""

from functools import partial

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QButtonGroup, QCheckBox, QHBoxLayout, QLabel, QToolButton, QVBoxLayout, QWidget

from fitcalc.errors import InputError
from fitcalc.present.chosen import view_of
from fitcalc.present.picture import Handle, View
from fitcalc.window.drags import dragged, live_text
from fitcalc.window.edits import Gesture
from fitcalc.window.look import Look
from fitcalc.window.pictures import TITLES, picture_of
from fitcalc.window.session import Session
from fitcalc.window.sketch.view import SketchView
from fitcalc.window.work import KINDS, Work, at_ref


class Centre(QWidget):
    """The sketch with its view switch.

    Signals:
        cursor_moved: where the pointer is in the view, mm to the right and up, and which view that is.
    """

    cursor_moved = Signal(float, float, str)

    def __init__(self, session: Session, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session, self._look = session, look
        self.view: View = "side"
        self._check, self._car = "", session.work.car.key
        self._held: tuple[Handle, Work, Gesture] | None = None
        self.sketch = SketchView(self)
        self.buttons: dict[str, QToolButton] = {}
        self.found = QCheckBox("as foun&d", self)
        self.found.setChecked(True)
        self.found.setToolTip("The driver as found, in grey behind the driver after the rework")
        self.live = QLabel(self)
        page = QVBoxLayout(self)
        page.setContentsMargins(0, 0, 0, 0)
        page.addLayout(self._head())
        page.addWidget(self.sketch, 1)
        self._connect()
        self._follow_look()
        self.show_view("side")

    def show_view(self, view: View) -> None:
        """Draws another view."""
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
        self.sketch.show_picture(picture_of(self._session.drawn, self.view, self.found.isChecked(), emphasis))
        if is_other:
            self.sketch.fit()

    def point_at(self, ref: str) -> None:
        """Marks what shows a value; zooms to the evidence of a check, in the view that shows it best."""
        if ref.partition(".")[0] in KINDS:
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
        head.setContentsMargins(6, 4, 6, 4)
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
        whole = QToolButton(self)
        whole.setText("Whole")
        whole.setAccessibleName("show the whole picture")
        whole.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        whole.clicked.connect(self._show_whole)
        head.addWidget(whole)
        head.addWidget(self.live, 1)
        head.addWidget(self.found)
        return head

    def _connect(self) -> None:
        self._session.results_changed.connect(self.refresh)
        self._session.posed.connect(self.refresh)
        self._session.pointed_at.connect(self.point_at)
        self._look.changed.connect(self._follow_look)
        self.found.toggled.connect(self.refresh)
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
            name, _ = live_text(self._session.work, handle)
            self._held = (handle, self._session.work, self._session.gesture(name))
        handle, begun, gesture = self._held
        try:
            gesture.move(dragged(begun, handle, (right, up), self.view))
        except InputError as error:
            self.live.setText(str(error))
            return
        self._show_live(handle)

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
        self.live.setText("")
        self._session.finish_evaluation()

    def _handle(self, ref: str) -> Handle | None:
        about = self.sketch.picture.about(ref) if self.sketch.picture else ()
        return next((each for each in about if isinstance(each, Handle)), None)

    def _show_live(self, handle: Handle) -> None:
        name, unit = live_text(self._session.work, handle)
        value = at_ref(self._session.work, handle.ref)
        shown = self._session.shown
        if isinstance(value, float):
            self.live.setText(f"{name} {shown.signed(value, unit)}")
        else:
            places = (
                f"{axis} {shown.amount(getattr(value, axis), 'mm')}" for axis in "xyz" if hasattr(value, axis)
            )
            self.live.setText(f"{name}: {', '.join(places)}")
